package hydrostatics

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// MeanTVD returns the mean true vertical depth between two measured depths, along the
// hole: that at which the mean of what is straight with depth is, such as the pressure in
// one fluid, or the temperature by a straight gradient.
//
//	h = 1/(b - a) ∫ TVD(s) ds, from a to b
//
// Errors: depths off the path, and a second one that isn't below the first along it.
//
// Source: definition of the mean; Path, whose arcs have a closed integral.
func (p *Path) MeanTVD(from, to unit.Length) (unit.Length, error) {
	f := fault.In(scope)
	first, err := p.interval(from)
	f.At("from", err)
	last, err := p.interval(to)
	f.At("to", err)
	if !f.Any() && !(to > from) {
		f.New("to", "is %s; must be more than %s", to.Rounded(7), from.Rounded(7))
	}
	if err := f.Err(); err != nil {
		return 0, err
	}
	sum := 0.0
	for i := first; i <= last; i++ {
		a, start := p.arc(i), &p.nodes[i]
		low, high := max(float64(from), start.md), min(float64(to), p.nodes[i+1].md)
		sum += start.pos.v*(high-low) + a.sunk(high-start.md) - a.sunk(low-start.md)
	}
	return unit.Length(sum / float64(to-from)), nil
}

// sunk is the integral of the vertical displacement from the start of the arc through a
// length s:
//
//	θ = β·s/l
//	∫ Δv ds = s²·[(1 − cos θ)/θ²·tv + (θ − sin θ)/θ²·nv]
func (a arc) sunk(s float64) float64 {
	θ := a.bend * (s / a.length)
	sine, bulge := 1.0, θ/6*(1-θ*θ/20*(1-θ*θ/42*(1-θ*θ/72*(1-θ*θ/110))))
	if θ > 0 {
		sine = math.Sin(θ/2) / (θ / 2)
	}
	if θ > 0.3 { // below, the series leaves out less than 1e-17 and the difference would lose digits
		bulge = (θ - math.Sin(θ)) / (θ * θ)
	}
	return s * s * (sine*sine/2*a.along.v + bulge*a.aside.v)
}
