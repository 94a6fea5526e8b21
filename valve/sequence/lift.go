package sequence

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
)

// Outflow section by section: between where zones come in the string carries what has come
// in below, so that its weight is the mean of their densities by rate, and its friction that
// of the bores at that rate. Both depend on the rates that they make:
//
//	ρ_i = Σ q_k·ρ_k / Σ q_k     Δp_i = Σ (dp/ds)(bore, ρ_i, Σ q_k)·Δs     k from the bottom up to i
//
// found by turns until neither changes.

// lifted tells whether a step's outflow is worked out so.
func (p *Produce) lifted() bool { return p.Viscosity > 0 }

// section is the string above a zone, up to the next.
type section struct {
	density unit.Density
	loss    unit.Pressure
	rate    unit.FlowRate
}

// told is its loss as package production takes it.
func (s section) told() production.Loss {
	if s.loss == 0 || s.rate == 0 {
		return production.Loss{}
	}
	return production.Loss{At: unit.FlowRate(math.Abs(float64(s.rate))), Turbulent: unit.Pressure(math.Abs(float64(s.loss)))} // it turns with the rate
}

// errNotLifted says that the turns come to no end.
var errNotLifted = errors.New("the rates and what they make of the string's weight and friction come to no end together; give density, loss and rate, or an outflow")

// errOrder says that zones come in along the hole in another order than by depth.
var errOrder = errors.New("the zone that is deepest isn't the first along the hole, as in a lateral that rises: what flows past which isn't modelled section by section; give density, loss and rate, or an outflow, in place of viscosity")

// mostTurns is how often rates and sections are found from each other.
const mostTurns = 200

// flow is what zones give at pressures of their formations, and the sections that it makes
// of the string where those follow from it.
func (c *compiled) flow(p *Produce, zs []zone, pressure func(f int) unit.Pressure) (production.Flow, []section, error) {
	if p.lifted() {
		return c.lift(p, zs, pressure)
	}
	f, err := c.production(p, zs, nil, pressure).Flow()
	return f, nil, err
}

func (c *compiled) lift(p *Produce, zs []zone, pressure func(f int) unit.Pressure) (production.Flow, []section, error) {
	for i := 1; i < len(zs); i++ {
		if zs[i].md >= zs[i-1].md {
			return production.Flow{}, nil, errOrder
		}
	}
	all := make([]section, len(zs))
	for i := range all { // no friction, and what is lightest
		all[i].density = c.plan.Formations[zs[i].formation].Inflow.weighs()
		if i > 0 {
			all[i].density = min(all[i].density, all[i-1].density)
		}
	}
	share := 1.0
	for turn := range mostTurns {
		f, err := c.production(p, zs, all, pressure).Flow()
		if err != nil {
			return f, nil, err
		}
		next, err := c.sections(p, zs, &f)
		if err != nil {
			return f, nil, err
		}
		far := 0.0
		for i := range all {
			far = max(far, math.Abs(float64(next[i].density/all[i].density-1)), math.Abs(float64(next[i].loss-lossAt(all[i], next[i].rate)))/float64(unit.Bar))
			all[i].density += unit.Density(share) * (next[i].density - all[i].density)
			all[i].loss, all[i].rate = lossAt(all[i], next[i].rate)+unit.Pressure(share)*(next[i].loss-lossAt(all[i], next[i].rate)), next[i].rate
		}
		if far < 1e-11 {
			return f, all, nil
		}
		if turn > 20 {
			share = 0.5 // it swings
		}
	}
	return production.Flow{}, nil, errNotLifted
}

// lossAt is the loss of a section at another rate, which grows with its square.
func lossAt(s section, rate unit.FlowRate) unit.Pressure {
	if s.rate == 0 {
		return 0
	}
	r := float64(rate / s.rate)
	return s.loss * unit.Pressure(r*math.Abs(r))
}

// sections are what zones that flow make of the string above each.
func (c *compiled) sections(p *Produce, zs []zone, f *production.Flow) ([]section, error) {
	all := make([]section, len(zs))
	var rate, mass float64
	for i, z := range zs {
		q, own := float64(f.Zones[i].Rate), c.plan.Formations[z.formation].Inflow.weighs()
		rate += q
		mass += max(q, 0) * float64(own)
		given := 0.0
		for k := range i + 1 {
			given += max(float64(f.Zones[k].Rate), 0)
		}
		x := section{density: own, rate: unit.FlowRate(rate)}
		if given > 0 {
			x.density = unit.Density(mass / given)
		}
		top := float64(c.plan.Compartments[c.by.compartment[p.Compartment]].TopMD)
		if i+1 < len(zs) {
			top = zs[i+1].md
		}
		loss, err := c.friction(p, x.density, rate, top, z.md)
		if err != nil {
			return nil, err
		}
		x.loss = unit.Pressure(loss)
		all[i] = x
	}
	return all, nil
}

// friction is what a rate loses between two measured depths of a step's string.
func (c *compiled) friction(p *Produce, density unit.Density, rate, from, to float64) (float64, error) {
	k := &c.Network.Compartments[c.by.compartment[p.Compartment]]
	if rate == 0 || len(k.Bores) == 0 {
		return 0, nil
	}
	sum, at := 0.0, from
	for n := range k.Bores {
		end := min(max(k.Bores[n].Bottom, at), to)
		if n == len(k.Bores)-1 {
			end = to // on below its end as in its last bore
		}
		if end <= at {
			continue
		}
		x, err := flow.Stream{Conduit: k.Bores[n].Conduit, Rheology: flow.Newtonian(p.Viscosity), Density: density, Rate: unit.FlowRate(math.Abs(rate))}.Friction()
		if err != nil {
			return 0, err
		}
		sum += math.Copysign(float64(x.Gradient)*(end-at), rate)
		at = end
	}
	return sum, nil
}

// under is the density of what stands below all zones that flow.
func (c *compiled) under(p *Produce, zs []zone) unit.Density {
	if !p.lifted() {
		return p.Density
	}
	return c.plan.Formations[slices.MaxFunc(zs, func(a, b zone) int { return cmp.Compare(a.tvd, b.tvd) }).formation].Inflow.weighs()
}
