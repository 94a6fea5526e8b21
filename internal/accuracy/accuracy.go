package accuracy

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// Formula is one whose digits are counted.
type Formula struct {
	Name  string
	Range string
	// Limit is what the deviation must not pass, in units of the last place.
	Limit float64
	// loose marks a limit that is a promise, not a measure of what is reached.
	loose bool
	// draw puts it to inputs of its range. Scale is what the deviation is counted
	// against where that isn't the answer itself: the terms that cancel in it.
	draw func(d draw) (got float64, want number, scale float64)
}

// Result is how a formula did.
type Result struct {
	Formula
	Draws int
	Worst float64 // deviation, in units of the last place
	Got   float64 // of the worst draw
	Want  float64
}

// Met tells whether the formula kept its limit.
func (r Result) Met() bool { return r.Worst <= r.Limit }

func (r Result) String() string {
	return fmt.Sprintf("%s: got %.17g, want %.17g: %.1f units of the last place, %.0f allowed", r.Name, r.Got, r.Want, r.Worst, r.Limit)
}

// draw makes inputs, the same in every run.
type draw struct{ *rand.Rand }

// between is even over a range.
func (d draw) between(lo, hi float64) float64 { return lo + (hi-lo)*d.Float64() }

// over is even over the logarithm of a range.
func (d draw) over(lo, hi float64) float64 { return lo * math.Exp(d.Float64()*math.Log(hi/lo)) }

const lastPlace = 0x1p-52

// Run puts every formula to a number of draws.
func Run(draws int) []Result {
	var results []Result
	for _, f := range Formulas() {
		r := Result{Formula: f, Draws: draws}
		d := draw{rand.New(rand.NewPCG(1, 2))}
		for range draws {
			got, want, scale := f.draw(d)
			if scale == 0 {
				scale = math.Abs(want.float())
			}
			off := math.Inf(1)
			if !math.IsNaN(got) && !math.IsInf(got, 0) {
				off = exact(got).minus(want).abs().over(exact(scale)).float() / lastPlace
			}
			if off > r.Worst || r.Got == 0 {
				r.Worst, r.Got, r.Want = off, got, want.float()
			}
		}
		results = append(results, r)
	}
	return results
}
