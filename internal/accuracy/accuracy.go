package accuracy

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"slices"

	"completion.example/internal/precise"
)

// Formula is one whose digits are counted.
type Formula struct {
	Name  string
	Range string
	// Limit is what the deviation must not pass, in units of the last place.
	Limit float64
	// loose marks a limit that is a promise, not a measure of what is reached.
	loose bool
	// equation is the answer as a text for package precise. Where answer names a
	// symbol, the equation is one that is zero for the right answer.
	equation string
	answer   string
	// draw puts the formula to inputs of its range.
	draw func(d draw) sample
}

// sample is one answer, with the values of the equation's symbols. Scale is what
// the deviation is counted against where that isn't the answer itself: the terms
// that cancel in it.
type sample struct {
	got   float64
	of    precise.Values
	scale float64
	err   error
}

// formulas are all whose digits are counted, floor by floor.
func formulas() []Formula {
	return slices.Concat(wellFormulas, pipeFormulas, gasFormulas, flowFormulas, inflowFormulas)
}

// Result is how a formula did.
type Result struct {
	Formula
	Draws int
	Worst float64 // deviation, in units of the last place
	Got   float64 // of the worst draw
	Err   error
}

// Met tells whether the formula kept its limit.
func (r Result) Met() bool { return r.Err == nil && r.Worst <= r.Limit }

func (r Result) String() string {
	if r.Err != nil {
		return fmt.Sprintf("%s: %v", r.Name, r.Err)
	}
	return fmt.Sprintf("%s: off by %.1f units of the last place at %.17g; %.0f are allowed", r.Name, r.Worst, r.Got, r.Limit)
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
	for _, f := range formulas() {
		r := Result{Formula: f, Draws: draws}
		d := draw{rand.New(rand.NewPCG(1, 2))}
		for range draws {
			s := f.draw(d)
			off, err := f.deviation(s)
			if err != nil {
				r.Err = err
				break
			}
			if off >= r.Worst {
				r.Worst, r.Got = off, s.got
			}
		}
		results = append(results, r)
	}
	return results
}

// deviation is that of an answer, in units of the last place.
func (f Formula) deviation(s sample) (float64, error) {
	if s.err != nil {
		return 0, s.err
	}
	if math.IsNaN(s.got) || math.IsInf(s.got, 0) {
		return math.Inf(1), nil
	}
	off, err := f.off(s)
	if err != nil {
		return 0, err
	}
	if s.scale == 0 {
		s.scale = math.Abs(s.got)
	}
	return math.Abs(off) / s.scale / lastPlace, nil
}

// off is how far the answer is from the right one.
func (f Formula) off(s sample) (float64, error) {
	if f.answer == "" {
		want, err := precise.Eval(f.equation, s.of)
		if err != nil {
			return 0, err
		}
		x, _ := new(big.Float).Sub(big.NewFloat(s.got).SetPrec(want.Prec()), want).Float64()
		return x, nil
	}
	// One step of Newton's from an answer that is nearly right is more exact than the
	// answer is.
	const step = 0x1p-30
	s.of[f.answer] = s.got
	at, err := precise.Eval(f.equation, s.of)
	if err != nil {
		return 0, err
	}
	s.of[f.answer] = s.got * (1 + step)
	beside, err := precise.Eval(f.equation, s.of)
	if err != nil {
		return 0, err
	}
	slope, _ := new(big.Float).Sub(beside, at).Float64()
	x, _ := at.Float64()
	return x * s.got * step / slope, nil
}
