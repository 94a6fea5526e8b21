package sequence

import (
	"fmt"
	"math"
	"slices"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Pump is something that is pumped through the well at a rate: from the top of one
// compartment through whatever ports are open, out at the top of another or into a
// formation.
type Pump struct {
	Into      string        `json:"into,omitzero"`      // compartment at surface
	Returns   string        `json:"returns,omitzero"`   // compartment at surface, whose pressure there stays as it is, or
	Formation string        `json:"formation,omitzero"` // it goes in here, behind the compartment that stands open to it
	Rate      unit.FlowRate `json:"rate,omitzero"`
	Fluid     string        `json:"fluid,omitzero"` // what is pumped; what stands in the well goes round where left out
	Volume    unit.Volume   `json:"volume,omitzero"`
	// Injection is by how much the formation takes more than its own pressure at the
	// rate, and in proportion below it.
	Injection unit.Pressure `json:"injection,omitzero"`
}

// Bore is a compartment's cross-section down to a measured depth.
type Bore struct {
	To        unit.Length `json:"to,omitzero"`
	Outer     unit.Length `json:"outer,omitzero"` // inside diameter of the pipe or casing
	Inner     unit.Length `json:"inner,omitzero"` // outside diameter of the pipe within; zero: none
	Roughness unit.Length `json:"roughness,omitzero"`
	// Thicknesses of the walls of both: with them a trapped compartment gives way as
	// fluid/confined has it.
	OuterWall unit.Length `json:"outer_wall,omitzero"`
	InnerWall unit.Length `json:"inner_wall,omitzero"`
}

func (b Bore) conduit() flow.Conduit {
	return flow.Conduit{Outer: b.Outer, Inner: b.Inner, Roughness: b.Roughness}
}

// capacity is a compartment's volume per length: as stated, or that of its bores.
func (c Compartment) capacity() unit.Area {
	if c.Capacity != 0 || len(c.Bores) == 0 {
		return c.Capacity
	}
	volume, top := 0.0, c.TopMD
	for _, b := range c.Bores {
		volume += float64(b.conduit().Area()) * float64(b.To-top)
		top = b.To
	}
	return unit.Area(volume / float64(c.BottomMD-c.TopMD))
}

// rheology is how a fluid flows; nil: it isn't said.
func (f Fluid) rheology() *flow.Rheology {
	switch {
	case f.Viscosity != 0:
		r := flow.Bingham(f.Viscosity, f.Yield)
		return &r
	case f.Consistency != 0:
		return &flow.Rheology{Yield: f.Yield, Consistency: f.Consistency, Index: f.Index}
	}
	return nil
}

func (v *validation) rheology(path string, f Fluid) {
	if f.Viscosity != 0 && (f.Consistency != 0 || f.Index != 0) {
		v.fault(path+".viscosity", "stands beside a consistency or a flow index; give a viscosity (with a yield point), or a consistency with its flow index")
		return
	}
	r := f.rheology()
	switch {
	case r == nil && (f.Yield != 0 || f.Index != 0):
		v.fault(path, "has a yield point or a flow index, but neither a viscosity nor a consistency")
	case r != nil && f.Kind.Gas():
		v.fault(path, "is a gas; pumping of gas isn't modelled")
	case r != nil:
		v.faultIf(path+" (how it flows)", r.Validate())
	}
}

func (v *validation) bores(path string, c Compartment) {
	top := c.TopMD
	for i, b := range c.Bores {
		at := fmt.Sprintf("%s.bores[%d]", path, i)
		v.faultIf(at, b.conduit().Validate())
		if !(b.To > top && b.To <= c.BottomMD) {
			v.fault(at+".to", "is %v; must be below %v and no deeper than the compartment's bottom at %v", b.To, top, c.BottomMD)
			return
		}
		top = b.To
		v.walls(at, c, b)
	}
	if len(c.Bores) == 0 {
		return
	}
	if top != c.BottomMD {
		v.fault(path+".bores", "end at %v; they must reach the compartment's bottom at %v", top, c.BottomMD)
		return
	}
	stated := c
	stated.Capacity = 0
	if of := stated.capacity(); c.Capacity != 0 && math.Abs(float64(c.Capacity/of-1)) > 0.02 {
		v.fault(path+".capacity", "is %v; its bores make %v: leave it out, or put one of them right", c.Capacity, of)
	}
}

func (v *validation) pumps(path string, s Step) {
	for i, p := range s.Pump {
		at := fmt.Sprintf("%s.pump[%d]", path, i)
		v.surface(at+".into", p.Into)
		v.positive(at+".rate", p.Rate, float64(p.Rate))
		switch {
		case (p.Returns == "") == (p.Formation == ""):
			v.fault(at, "wants either returns, a compartment at surface, or a formation")
		case p.Returns == p.Into:
			v.fault(at+".returns", "is %q, which is pumped into", p.Returns)
		case p.Returns != "":
			v.surface(at+".returns", p.Returns)
		case known(v, at+".formation", "formation", p.Formation, v.plan.Formations, formationName) &&
			!slices.ContainsFunc(v.plan.Compartments, func(c Compartment) bool { return c.Formation == p.Formation }):
			v.fault(at+".formation", "no compartment stands open to %q", p.Formation)
		}
		v.notNegative(at+".injection", p.Injection, float64(p.Injection))
		if p.Injection != 0 && p.Formation == "" {
			v.fault(at+".injection", "belongs to pumping into a formation")
		}
		v.notNegative(at+".volume", p.Volume, float64(p.Volume))
		if (p.Fluid == "") != (p.Volume == 0) {
			v.fault(at+".volume", "a fluid and its volume go together")
		}
		if p.Fluid != "" {
			known(v, at+".fluid", "fluid", p.Fluid, v.plan.Fluids, fluidName)
		}
	}
}

// pumps puts the pumps of a step together.
func (c *compiler) pumps(s Step) []well.Pump {
	var all []well.Pump
	for _, p := range s.Pump {
		x := well.Pump{Into: c.by.compartment[p.Into], Formation: -1, Rate: float64(p.Rate), Fluid: -1, Volume: float64(p.Volume), Injection: float64(p.Injection)}
		if p.Fluid != "" {
			x.Fluid = c.fluid(p.Fluid)
		}
		if p.Formation != "" {
			x.Formation = c.by.formation[p.Formation]
			x.To = c.Network.Formations[x.Formation].Face
		} else {
			x.To = c.by.compartment[p.Returns]
		}
		all = append(all, x)
	}
	return all
}

// PumpResult is what a pump of a step does, with the nominal values.
type PumpResult struct {
	Into    string        `json:"into"`
	To      string        `json:"to"` // compartment or formation
	Rate    unit.FlowRate `json:"rate"`
	Way     unit.Volume   `json:"way"` // from the pump to where it leaves
	Points  []PumpPoint   `json:"points"`
	Returns []VolumeMoved `json:"returns"` // what leaves, in the order in which it comes
	// Greatest is the greatest rate at which the step is proved, up to eight times the
	// planned one; zero: none was found.
	Greatest unit.FlowRate `json:"greatest,omitempty"`
}

// PumpPoint is the well while it is pumped.
type PumpPoint struct {
	Pumped   unit.Volume   `json:"pumped"`
	Pressure unit.Pressure `json:"pressure"` // at the pump
	// Falls says that the pressure is below zero: the fluid falls by itself, the pump
	// shows nothing, and the well takes more than is pumped.
	Falls   bool         `json:"falls,omitempty"`
	Devices []PressureAt `json:"devices"`
}

// pumped keeps what the nominal walk shows of pumps.
func (k *checker) pumped(x walk.Pumped) {
	for len(k.pumpResults) <= x.Step {
		k.pumpResults = append(k.pumpResults, nil)
	}
	all := k.pumpResults[x.Step]
	p := k.plan.Steps[x.Step].Pump[x.Number]
	for len(all) <= x.Number {
		all = append(all, PumpResult{})
	}
	r := &all[x.Number]
	if n := len(r.Points); n > 0 && unit.Volume(x.Volume) <= r.Points[n-1].Pumped {
		return // another order of what was due at once
	}
	*r = PumpResult{Into: p.Into, To: p.Returns + p.Formation, Rate: p.Rate, Way: unit.Volume(x.Way.Total()), Points: r.Points}
	s := x.World.State
	at := PumpPoint{Pumped: unit.Volume(x.Volume), Pressure: unit.Pressure(s.Top[k.by.compartment[p.Into]].F.C)}
	at.Falls = at.Pressure < -0.01*unit.PSI
	at.Devices, k.pumpFault = k.atDevices(s)
	r.Points = append(r.Points, at)
	fluids, volumes := x.Way.Out(x.Volume)
	for n, f := range fluids {
		r.Returns = append(r.Returns, VolumeMoved{Compartment: r.To, What: k.Network.Fluids[f].Name, Volume: unit.Volume(volumes[n])})
	}
	k.pumpResults[x.Step] = all
}

// greatestRates finds the greatest rate at which each pump's step is proved, with all
// else as planned: friction grows with the rate, and so does every pressure before
// where it returns.
func (k *checker) greatestRates() error {
	for i := range k.programme.Steps {
		if i >= len(k.out.Before) {
			break
		}
		for n := range k.programme.Steps[i].Pumps {
			r, err := k.greatestRate(i, n)
			if err != nil {
				return err
			}
			k.programme.Steps[i].Pumps[n].Greatest = r
		}
	}
	return nil
}

func (k *checker) greatestRate(i, n int) (unit.FlowRate, error) {
	planned := k.Steps[i].Pumps[n].Rate
	good := func(rate float64) (bool, error) {
		p := k.Problem
		p.Steps = slices.Clone(p.Steps)
		p.Steps[i].Pumps = slices.Clone(p.Steps[i].Pumps)
		p.Steps[i].Pumps[n].Rate = rate
		run, err := p.Walk(k.ctx, affine.Box(len(k.Network.Symbols), k.Nominal()), proof.Options{Quiet: true, From: i, To: i + 1, Begin: k.out.Before[i]})
		if k.ctx.Err() != nil {
			return false, k.ctx.Err()
		}
		if err != nil {
			return false, nil // faster than what friction is known for
		}
		return run.Open == nil && run.Died < 0 && len(run.Judge.Passed()) == 0, nil
	}
	low, high := 0.0, planned
	for range 4 {
		ok, err := good(high)
		if err != nil {
			return 0, err
		}
		if !ok {
			break
		}
		if low = high; high >= 8*planned {
			return unit.FlowRate(low), nil
		}
		high *= 2
	}
	for range 7 {
		mid := (low + high) / 2
		ok, err := good(mid)
		if err != nil {
			return 0, err
		}
		if ok {
			low = mid
		} else {
			high = mid
		}
	}
	return unit.FlowRate(low), nil
}
