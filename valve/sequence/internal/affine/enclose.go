package affine

import "math"

// MostInputs and MostOutputs are how many lines a function may take and give.
const (
	MostInputs  = 6
	MostOutputs = 3
)

// Input is a line that a function takes, and the step at which the function's slope
// is taken where the line hardly moves: well above the function's own noise.
type Input struct {
	Line
	Step float64
}

// Function is a smooth function of some numbers.
type Function func(x [MostInputs]float64) ([MostOutputs]float64, error)

// least and greatest of a line on the way from nought to span.
func (l Line) least(span float64) float64 {
	return l.F.Least() + math.Min((l.S-l.D)*span, 0)
}

func (l Line) greatest(span float64) float64 {
	return l.F.Greatest() + math.Max((l.S+l.D)*span, 0)
}

// Between is what a line lies between on the way from nought to span.
func (l Line) Between(span float64) (least, greatest float64) {
	return l.least(span), l.greatest(span)
}

// Enclose encloses what a function makes of lines on the way from nought to span:
// each result is straight in the lines, with the secants of the function over the
// range of each as its slopes, and a remainder.
//
// The remainder is the sum of what the function leaves of that at the halves and ends
// of the range of each line alone, and of what the lines do to each other at the
// corners of their box, and a quarter more (half more, and twice as many places, where
// it has a kink): all that second derivatives make of it, and more than third and
// fourth ones add where they are as small as those of an equation of state. Lines that don't move at all are numbers, and
// then so is the result.
func Enclose(in []Input, span float64, kink bool, f Function) ([MostOutputs]Line, error) {
	var out [MostOutputs]Line
	var mid, half [MostInputs]float64
	var moving [MostInputs]int
	n := 0
	for k, l := range in {
		lo, hi := l.Between(span)
		mid[k], half[k] = lo+(hi-lo)/2, (hi-lo)/2
		if half[k] > 0 {
			moving[n] = k
			n++
		}
	}
	base, err := f(mid)
	if err != nil {
		return out, err
	}
	if n == 0 {
		for o := range out {
			out[o] = Flat(Const(base[o]))
		}
		return out, nil
	}
	var slope [MostOutputs][MostInputs]float64
	for _, k := range moving[:n] {
		d := math.Max(half[k], in[k].Step)
		x, y := mid, mid
		x[k] -= d
		y[k] += d
		a, err := f(x)
		if err != nil {
			return out, err
		}
		b, err := f(y)
		if err != nil {
			return out, err
		}
		for o := range out {
			slope[o][k] = (b[o] - a[o]) / (2 * d)
		}
	}
	// What is left of the function at a place.
	left := func(x [MostInputs]float64) (r [MostOutputs]float64, err error) {
		y, err := f(x)
		for o := range out {
			r[o] = y[o] - base[o]
			for _, k := range moving[:n] {
				r[o] -= slope[o][k] * (x[k] - mid[k])
			}
		}
		return r, err
	}
	shares := [...]float64{1, 0.5, 0.25, 0.75}
	more, count := 1.25, 2
	if kink {
		more, count = 1.5, 4
	}
	// Of each line by itself, and what they do to each other at the corners: what is
	// left of a function is no more than the sum.
	var low, high [MostOutputs]float64
	var ends [MostInputs][2][MostOutputs]float64
	for _, k := range moving[:n] {
		var least, most [MostOutputs]float64
		for m, share := range shares[:count] {
			for side, sign := range [2]float64{-1, 1} {
				x := mid
				x[k] += sign * share * half[k]
				r, err := left(x)
				if err != nil {
					return out, err
				}
				if m == 0 {
					ends[k][side] = r
				}
				for o := range out {
					least[o], most[o] = math.Min(least[o], r[o]), math.Max(most[o], r[o])
				}
			}
		}
		for o := range out {
			low[o], high[o] = low[o]+least[o], high[o]+most[o]
		}
	}
	if n > 1 {
		var least, most [MostOutputs]float64
		for corner := range 1 << n {
			x := mid
			for b, k := range moving[:n] {
				x[k] += float64(2*(corner>>b&1)-1) * half[k]
			}
			r, err := left(x)
			if err != nil {
				return out, err
			}
			for o := range out {
				for b, k := range moving[:n] {
					r[o] -= ends[k][corner>>b&1][o]
				}
				least[o], most[o] = math.Min(least[o], r[o]), math.Max(most[o], r[o])
			}
		}
		for o := range out {
			low[o], high[o] = low[o]+least[o], high[o]+most[o]
		}
	}
	for o := range out {
		l := Flat(Const(base[o] + (high[o]+low[o])/2).Widen(more * (high[o] - low[o]) / 2))
		for _, k := range moving[:n] {
			l = l.Plus(in[k].Line.PlusForm(Const(-mid[k])).Times(slope[o][k]))
		}
		out[o] = l
	}
	return out, nil
}
