package root

import "math"

// From solves f(x) = 0 for a rising f that is nearly a straight line of a known
// slope, from a start that is near, or from the middle: a few secant steps, and
// where those don't settle, or would leave lo to hi, Find between them. An error of
// f ends the search only there.
//
// Method: secant steps; Find.
func From(f func(float64) (float64, error), x, slope, lo, hi float64) (float64, error) {
	if !(x > lo && x < hi) {
		x = (lo + hi) / 2
	}
	y, err := f(x)
	if err != nil {
		return 0, err
	}
	for range secants {
		step := -y / slope
		if !(x+step > lo && x+step < hi) {
			break
		}
		next, err := f(x + step)
		if err != nil || math.IsNaN(next) || math.IsInf(next, 0) {
			break
		}
		x += step
		if math.Abs(next) < settledValue || math.Abs(step) < settledStep {
			return x, nil
		}
		if s := (next - y) / step; s > 0 {
			slope = s
		}
		y = next
	}
	// At the very ends the function may have no value.
	inset := 1e-9 * (hi - lo)
	return Find(func(x float64) float64 {
		y, err := f(x)
		if err != nil {
			return math.NaN()
		}
		return y
	}, lo+inset, hi-inset, settledStep)
}

// Steps of From, and where it has arrived: its users scale x and f to about one.
const (
	secants      = 8
	settledValue = 1e-12
	settledStep  = 1e-13
)
