package unit

import (
	"math"
	"strconv"
	"strings"
)

// symbol is one way to write a unit, with its size in SI.
type symbol struct {
	text   string
	factor float64
}

// trade is a unit that values are printed in, from a magnitude in SI upward.
type trade struct {
	text   string
	factor float64
	from   float64
}

// table is all that text needs to know of a quantity. The first symbol is SI,
// with factor 1; the trade's units stand largest threshold first.
type table struct {
	quantity string
	symbols  []symbol
	trade    []trade
}

// natural picks the unit that a person would take for a value of this size;
// nothing is nothing of the largest: a level of 0 ft.
func (t *table) natural(x float64) trade {
	if x == 0 {
		return t.trade[0]
	}
	for _, u := range t.trade {
		if math.Abs(x) >= u.from {
			return u
		}
	}
	return t.trade[len(t.trade)-1]
}

// format writes x without loss: in the trade's unit, unless another of the
// table says in few digits what the trade's takes all digits for, as 35 bar
// does.
func (t *table) format(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', -1, 64) + " " + t.symbols[0].text
	}
	best := ""
	try := func(text string, factor float64) {
		number, ok := shortest(x, factor)
		if !ok {
			return
		}
		if s := number + " " + text; best == "" || len(s) < len(best) {
			best = s
		}
	}
	first := t.natural(x)
	try(first.text, first.factor)
	for _, u := range t.trade {
		try(u.text, u.factor)
	}
	if best == "" || figures(best) > longDigits {
		if s := t.plain(x); s != "" {
			return s
		}
	}
	if best == "" {
		try(t.symbols[0].text, 1)
	}
	return best
}

// People type no more than plainDigits, and nothing computed has so few by
// chance; only what has more than longDigits is worth another unit.
const (
	plainDigits = 8
	longDigits  = 12
)

// plain writes x in whichever unit does so in few digits, or returns nothing:
// first one in which it is 0.1 to 1000, then the shortest.
func (t *table) plain(x float64) string {
	best, handy := "", false
	for _, u := range t.symbols {
		v := x / u.factor
		number := strconv.FormatFloat(v, 'g', plainDigits, 64)
		if d, err := strconv.ParseFloat(number, 64); err != nil || !same(d*u.factor, x) {
			continue
		}
		if strings.Contains(number, "e-") && !strings.Contains(t.natural(x).text, "/") {
			continue // nobody writes a wall in millionths of a kilometre
		}
		now := math.Abs(v) >= 0.1 && math.Abs(v) < 1000
		if s := number + " " + u.text; best == "" || now && !handy || now == handy && len(s) < len(best) {
			best, handy = s, now
		}
	}
	return best
}

// shortest finds the shortest decimal d for which d*factor is x to the bit.
// Where factor is above one in its binade no float64 meets some x; then it is a
// decimal of more digits than a float64 has, see product.
func shortest(x, factor float64) (number string, ok bool) {
	v := x / factor
	for digits := 0; digits < 17; digits++ {
		s := strconv.FormatFloat(v, 'e', digits, 64)
		if d, err := strconv.ParseFloat(s, 64); err == nil && same(d*factor, x) {
			return strconv.FormatFloat(d, 'g', -1, 64), true
		}
	}
	return between(x, factor)
}

func same(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) }

// rounded writes x for people: at least that many significant digits, never
// fewer than the whole units; in the natural unit unless another of the
// trade's units says the same exactly in fewer digits and no longer, as 10 ft
// does beside 120 in.
func (t *table) rounded(x float64, digits int) string {
	u := t.natural(x)
	best := Significant(x/u.factor, digits)
	text := u.text
	for _, u := range t.trade {
		s := Significant(x/u.factor, digits)
		v, err := strconv.ParseFloat(s, 64)
		if exact := math.Abs(v*u.factor-x) <= 1e-12*math.Abs(x); err == nil && exact && math.Abs(x) >= 0.999*u.factor && figures(s) < figures(best) && len(s) <= len(best) {
			best, text = s, u.text
		}
	}
	return best + " " + text
}

// figures counts the digits of a number, with its unit or without, between its
// outer zeros.
func figures(number string) int {
	number, _, _ = strings.Cut(number, " ")
	if i := strings.IndexAny(number, "eE"); i >= 0 {
		number = number[:i]
	}
	return len(strings.Trim(strings.ReplaceAll(strings.TrimLeft(number, "+-"), ".", ""), "0"))
}

// Significant writes v with at least digits significant digits and never
// fewer than its whole units: (12345.6, 3) is "12346", (0.012345, 3) is
// "0.0123". Magnitudes below 1e-4 and from 1e15 take an exponent. Trailing
// zeros after the point are dropped.
func Significant(v float64, digits int) string {
	if v == 0 {
		return "0" // and never "-0"
	}
	if math.IsNaN(v) || math.IsInf(v, 0) { // which have no exponent to be asked for
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	digits = min(max(digits, 1), 17)
	exponent := int(math.Floor(math.Log10(math.Abs(v))))
	format, places := byte('f'), max(digits-1-exponent, 0)
	if size := math.Abs(v); size < 1e-4 || size >= 1e15 {
		format, places = 'e', digits-1
	}
	s, power := strconv.FormatFloat(v, format, places, 64), ""
	if i := strings.IndexByte(s, 'e'); i >= 0 {
		s, power = s[:i], s[i:]
	}
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s + power
}

// marshal is format, with an error for what can't be read back.
func (t *table) marshal(x float64) ([]byte, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil, t.fault(t.format(x), "not a finite number")
	}
	return []byte(t.format(x)), nil
}

// parse reads a number with its unit into SI.
func (t *table) parse(text string) (float64, error) {
	number, unit := split(text)
	r, err := t.unit(text, unit)
	if number == "" {
		return 0, t.fault(text, "no number found")
	}
	number, problem := ungrouped(number, r.symbol)
	if problem != "" {
		return 0, t.fault(text, problem)
	}
	v, problem := t.number(number)
	if problem != "" {
		return 0, t.fault(text, problem)
	}
	if err != nil {
		return 0, err
	}
	x := product(number, v, r.factor)
	if math.IsInf(x, 0) {
		return 0, t.fault(text, "too large")
	}
	if r.offset != 0 {
		if x < 0 {
			return 0, t.fault(text, "below a vacuum")
		}
		x -= r.offset
	}
	return x, nil
}

// unit finds what a unit's text says, or says whose unit it is.
func (t *table) unit(text, unit string) (reading, error) {
	if unit == "" {
		return reading{}, t.fault(text, "no unit given")
	}
	if r, ok := t.read(unit); ok {
		return r, nil
	}
	if why, ok := twofold[t.quantity][plainLetters.Replace(unit)]; ok {
		return reading{}, t.fault(text, strconv.Quote(unit)+" is "+why)
	}
	if owner := ownerOf(unit); owner != nil {
		return reading{}, t.fault(text, strconv.Quote(unit)+" is a unit of "+owner.quantity)
	}
	for _, s := range t.symbols {
		if strings.EqualFold(s.text, unit) {
			return reading{}, t.fault(text, strconv.Quote(unit)+" is not a unit here; "+strconv.Quote(s.text)+" is (case counts)")
		}
	}
	return reading{}, t.fault(text, strconv.Quote(unit)+" is not a unit here")
}

// ownerOf finds the quantity that a unit belongs to: the first that writes it
// so, or else the first that reads it.
func ownerOf(unit string) *table {
	for _, t := range tables() {
		for _, s := range t.symbols {
			if s.text == unit {
				return t
			}
		}
	}
	for _, t := range tables() {
		if _, ok := t.read(unit); ok {
			return t
		}
	}
	return nil
}
