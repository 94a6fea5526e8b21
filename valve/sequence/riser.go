package sequence

import (
	"math"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// riser is what flows up through a string: straight in true vertical depth between where
// zones come in, or section by section.
type riser struct {
	c        *compiled
	produce  *Produce
	zones    []zone // the deepest first
	knots    []knot // from the wellhead down
	pressure []affine.Input
	solve    flowAt
}

// profile is the riser in a compartment.
func (r *riser) profile(k *well.Compartment) (well.Profile, error) {
	profile := make(well.Profile, len(k.Depths))
	top, err := r.at(k.Depths[0])
	if err != nil {
		return nil, err
	}
	for d := 1; d < len(profile); d++ {
		x, err := r.at(k.Depths[d])
		if err != nil {
			return nil, err
		}
		profile[d] = x.Minus(top)
	}
	return profile, nil
}

// at is the pressure at a depth of it.
func (r *riser) at(d well.Depth) (affine.Form, error) {
	n := 1
	for n < len(r.knots)-1 && r.knots[n].tvd < d.TVD {
		n++
	}
	a, b := r.knots[n-1], r.knots[n]
	switch {
	case d.TVD >= b.tvd || b.tvd == a.tvd: // under all zones
		return b.pressure.Shift(float64(r.c.under(r.produce, r.zones)) * well.Gravity * (d.TVD - b.tvd)), nil
	case d.TVD == a.tvd && d.MD == a.md:
		return a.pressure, nil
	case r.produce.lifted():
		out, err := affine.Enclose(r.pressure, 0, true, func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			y[0], err = r.inSection(x, d)
			return y, err
		})
		return out[0].F, err
	}
	// Friction lies anywhere between its share of true vertical depth and that of the hole.
	share := (d.TVD - a.tvd) / (b.tvd - a.tvd)
	f := a.pressure.Times(1-share).PlusTimes(b.pressure, share)
	friction := b.pressure.Minus(a.pressure).Shift(-float64(r.produce.Density) * well.Gravity * (b.tvd - a.tvd))
	along := math.Min(math.Max((d.MD-a.md)/(b.md-a.md), 0), 1)
	return f.Widen(math.Abs(along-share) * math.Max(math.Abs(friction.Least()), math.Abs(friction.Greatest()))), nil
}

// inSection is the pressure at a depth where the string is worked out section by section:
// that where the zone under it comes in, less the weight and the friction up to there.
func (r *riser) inSection(x [affine.MostInputs]float64, d well.Depth) (float64, error) {
	a, err := r.solve(x)
	if err != nil {
		return 0, err
	}
	i := 0
	for i+1 < len(r.zones) && d.MD <= r.zones[i+1].md {
		i++
	}
	s, z := &a.sections[i], &r.zones[i]
	lost, err := r.c.friction(r.produce, s.density, float64(s.rate), d.MD, z.md)
	return float64(a.flow.Zones[i].Tubing) - float64(s.density)*well.Gravity*(float64(z.tvd)-d.TVD) - lost, err
}
