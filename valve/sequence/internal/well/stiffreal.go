package well

import (
	"fmt"
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/root"
	"completion.example/valve/sequence/internal/affine"
)

// Real is a liquid that knows its own density, compressibility and expansivity, as fresh
// water does.
type Real interface {
	hydrostatics.Fluid
	Compressibility(unit.Pressure, unit.Temperature) (unit.Compressibility, error)
	Expansivity(unit.Pressure, unit.Temperature) (unit.Expansivity, error)
}

// compression is the compressibility of what stands in a stretch; nought where it isn't
// known. What is stated comes before what a fluid knows of itself: that is taken at the
// middle of the stretch as it stands, so that for a change of pressure it is the first
// term of a series (of water some 3 % of it for each 3,000 psi).
func (s *State) compression(i int, x stretch) float64 {
	switch {
	case x.fluid.Gas():
		return 0
	case x.fluid.Compression > 0 || x.fluid.Real == nil:
		return x.fluid.Compression
	}
	p, t, err := s.middle(i, x)
	if err != nil {
		return 0
	}
	c, err := x.fluid.Real.Compressibility(p, t)
	if err != nil {
		return 0
	}
	return float64(c)
}

// expansion is the thermal expansion likewise; false where it isn't known.
func (s *State) expansion(i int, x stretch) (float64, bool) {
	if x.fluid.Real == nil {
		return x.fluid.Expansion, x.fluid.Expansion > 0
	}
	p, t, err := s.middle(i, x)
	if err != nil {
		return 0, false
	}
	a, err := x.fluid.Real.Expansivity(p, t)
	return float64(a), err == nil
}

// middle is the pressure and the temperature in the middle of a stretch.
func (s *State) middle(i int, x stretch) (unit.Pressure, unit.Temperature, error) {
	md := x.from + (x.to-x.from)/2
	tvd := s.tvd(i, md)
	p, err := s.carryTo(i, affine.Flat(affine.Const(s.Top[i].F.C)), Depth{md, tvd})
	return unit.Pressure(p.F.C), s.Temperatures[s.Temperature].At(unit.Length(tvd)), err
}

// holdsReal tells whether such a liquid stands in one of a body.
func (s *State) holdsReal(members []int) bool {
	for _, m := range members {
		for _, x := range s.stretches(m) {
			if x.fluid.Real != nil {
				return true
			}
		}
	}
	return false
}

// grain is a short length of a trapped body that is heated.
type grain struct {
	fluid    *Fluid
	wall     *Wall
	weight   float64 // m³
	over     float64 // pressure over that at the top of the body's first compartment
	from, to unit.Temperature
}

// heatedReal is by how much another temperature raises a trapped body in which a liquid
// stands that knows its own density: what it holds keeps its mass,
//
//	Σ V·(g - β·ΔT - C·Δp) = 0
//
// with g = ln(ρ(p, T) / ρ(p+Δp, T')), and α·ΔT - c·Δp of what has a constant expansion and
// compressibility. It is enclosed over what the pressure and both temperatures may be.
func (s *State) heatedReal(members []int, to int) (affine.Form, error) {
	all, loose, err := s.grains(members, to)
	if err != nil {
		return affine.Form{}, err
	}
	volume := 0.0
	for k := range all {
		volume += all[k].weight
	}
	first := s.Top[members[0]]
	out, err := affine.Enclose([]affine.Input{{Line: affine.Flat(first.F), Step: stepPressure}, {Line: affine.Flat(s.Heat[s.Temperature]), Step: stepHeat},
		{Line: affine.Flat(s.Heat[to]), Step: stepHeat}, {Line: affine.Flat(affine.Const(0).Widen(loose)), Step: stepPressure}}, 0, false,
		func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			var fault error
			left := func(dp float64) float64 {
				sum := 0.0
				for k := range all {
					g, e := all[k].grows(x[0]+x[3], dp, x[1], x[2])
					if e != nil {
						fault = e
						return math.Copysign(math.MaxFloat64, -dp) // further than it is good for
					}
					sum += all[k].weight * g
				}
				return sum
			}
			y[0], err = root.Find(left, -mostHeated, mostHeated, 1e-3)
			off := left(y[0])
			return y, rooted(err, fault, off, settled*volume) // the liquid may be known no further
		})
	if err != nil {
		return affine.Form{}, fmt.Errorf("trapped %q: heated between known walls: %w", s.Compartments[members[0]].Name, err)
	}
	return out[0].F, nil
}

// settled is the share of a volume that is left of a heated body's balance at its root: a few Pa.
const settled = 1e-9

// mostHeated is further than heat takes a pressure that a liquid is known at, in Pa.
const mostHeated = 1e8

// grows is by how much a length grows, as a share, by a change of pressure and from one
// temperature to the other, each off by something.
func (g *grain) grows(top, dp, off, then float64) (float64, error) {
	from, to := g.from.Add(unit.TemperatureDifference(off)), g.to.Add(unit.TemperatureDifference(then))
	warms := float64(to.Sub(from))
	share := -g.wall.Expansion*warms - g.wall.Compliance*dp
	if g.fluid.Real == nil {
		return share + g.fluid.Expansion*warms - g.fluid.Compression*dp, nil
	}
	p := unit.Pressure(top + g.over)
	a, err := g.fluid.Real.Density(p, from)
	if err != nil {
		return 0, err
	}
	if c := g.fluid.Compression; c > 0 { // stated
		b, err := g.fluid.Real.Density(p, to)
		return share + math.Log(float64(a)/float64(b)) - c*dp, err
	}
	b, err := g.fluid.Real.Density(p+unit.Pressure(dp), to)
	if err != nil {
		return 0, err
	}
	return share + math.Log(float64(a)/float64(b)), nil
}

// grains parts a trapped body into short lengths, by Simpson's rule, and tells by how
// much their pressures may be off against each other.
func (s *State) grains(members []int, to int) (all []grain, loose float64, err error) {
	first := s.Top[members[0]].F
	for _, m := range members {
		for _, x := range s.stretches(m) {
			if x.fluid.Real == nil && x.fluid.Expansion <= 0 {
				return nil, 0, notKnown{s.Compartments[m].Name, fmt.Sprintf("it is heated or cooled between known walls: %q wants its thermal expansion", x.fluid.Name)}
			}
			n := math.Ceil((x.to - x.from) / warmPiece)
			h := (x.to - x.from) / n
			for k := range 2*int(n) + 1 {
				weight := 2.0
				switch {
				case k == 0 || k == 2*int(n):
					weight = 1
				case k%2 == 1:
					weight = 4
				}
				md := x.from + float64(k)*h/2
				tvd := unit.Length(s.tvd(m, md))
				p, err := s.carryTo(m, s.Top[m], Depth{md, float64(tvd)})
				if err != nil {
					return nil, 0, err
				}
				over := p.F.Minus(first)
				loose = max(loose, over.Radius())
				all = append(all, grain{x.fluid, x.wall, x.wall.Area * h / 6 * weight, over.C, s.Temperatures[s.Temperature].At(tvd), s.Temperatures[to].At(tvd)})
			}
		}
	}
	return all, loose, nil
}
