package sketch

import (
	"math"
	"strconv"
	"strings"
)

// scale turns values into px.
type scale struct {
	least, greatest float64 // values at the ends
	from, to        float64 // px there
}

func (s scale) at(v float64) float64 {
	return s.from + (v-s.least)/(s.greatest-s.least)*(s.to-s.from)
}

// ticks are round values inside the scale, at most about that many.
func (s scale) ticks(most int) (at []float64, names []string) {
	step := roundStep((s.greatest - s.least) / float64(most))
	digits := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	for k := math.Ceil(s.least/step - 1e-9); k*step <= s.greatest+step*1e-9; k++ {
		at = append(at, k*step)
		names = append(names, number(k*step, digits))
	}
	return at, names
}

// roundStep is 1, 2 or 5 times a power of ten, and not less than the wanted one.
func roundStep(wanted float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(wanted)))
	for _, f := range []float64{1, 2, 5} {
		if f*power >= wanted*(1-1e-9) {
			return f * power
		}
	}
	return 10 * power
}

// number writes v with its thousands apart.
func number(v float64, digits int) string {
	s := strconv.FormatFloat(math.Abs(v), 'f', digits, 64)
	whole, part, fraction := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0 && len(s) > 4; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if fraction {
		whole += "." + part
	}
	if v < 0 && strings.Trim(s, "0.") != "" {
		whole = "−" + whole
	}
	return whole
}

// spanOf is the least and the greatest of values, with a little air, and never
// nothing. Zero belongs to it if it is near.
func spanOf(values []float64) (least, greatest float64) {
	least, greatest = math.Inf(1), math.Inf(-1)
	for _, v := range values {
		least, greatest = min(least, v), max(greatest, v)
	}
	if math.IsInf(least, 1) {
		return 0, 1
	}
	width := greatest - least
	if width == 0 {
		width = max(math.Abs(greatest), 1)
	}
	air := 0.04 * width
	if least >= 0 && least < 0.5*width {
		least = air // then the air ends at nothing
	}
	return least - air, greatest + air
}
