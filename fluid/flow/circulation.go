package flow

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Circulation is one liquid going round at a steady rate.
type Circulation struct {
	Well         Well          `json:"well"`
	Liquid       PumpedFluid   `json:"liquid"`
	Rate         unit.FlowRate `json:"rate"`
	BackPressure unit.Pressure `json:"back_pressure"` // held on the returns; gauge
	Reverse      bool          `json:"reverse"`       // down the annulus, up the pipe
}

// Part is one section's share of the friction.
type Part struct {
	Name     string        `json:"name"`
	Side     Side          `json:"side"`
	Length   unit.Length   `json:"length"`
	Friction Friction      `json:"friction"`
	Loss     unit.Pressure `json:"loss"` // wall friction over the length
	Minor    unit.Pressure `json:"minor"`
}

// Node is a place on the annulus side: a section's lower end.
type Node struct {
	Name       string        `json:"name"`
	MD         unit.Length   `json:"md"`
	TVD        unit.Length   `json:"tvd"`        // true vertical
	Pressure   unit.Pressure `json:"pressure"`   // while circulating
	Static     unit.Pressure `json:"static"`     // with the pump off and the back pressure held
	Equivalent unit.Density  `json:"equivalent"` // circulating density at this depth; 0 at no depth
}

// Circulating is what a circulation needs and does.
type Circulating struct {
	PumpPressure unit.Pressure `json:"pump_pressure"` // back pressure and all losses: the liquid is the same on both sides
	PipeLoss     unit.Pressure `json:"pipe_loss"`     // minor losses included
	AnnulusLoss  unit.Pressure `json:"annulus_loss"`
	ExitLoss     unit.Pressure `json:"exit_loss"`
	Bottom       Node          `json:"bottom"` // at the end of the pipe
	Nodes        []Node        `json:"nodes"`  // down the annulus
	Parts        []Part        `json:"parts"`  // in the order of flow
	Power        float64       `json:"power"`  // hydraulic, at the pump, W
	BackPressure unit.Pressure `json:"back_pressure"`
}

// Solve returns pump pressure, its parts, and the equivalent circulating density
// along the annulus,
//
//	p(pump) = p(back) + Δp(pipe) + Δp(exit) + Δp(annulus)
//	p(z) = p(back) + ρ g z + friction between z and the returns
//	ECD(z) = p(z)/(g z)
//
// The liquid is incompressible; its density and rheology are the caller's at
// the mean conditions.
//
// Errors: faults of c; those of Stream.Friction.
//
// Source: API RP 13D (2006), 7; White, Fluid Mechanics, 6.
func (c Circulation) Solve() (Circulating, error) {
	f := fault.In("flow")
	f.At("Well", c.Well.Validate())
	f.At("Liquid", c.Liquid.Validate())
	f.Add(fault.Between("Rate", c.Rate, 0, mostRate))
	f.Add(fault.Between("BackPressure", c.BackPressure, 0, 1e9*unit.Pascal))
	if err := f.Err(); err != nil {
		return Circulating{}, err
	}
	legs, inlet, _ := c.Well.legs(c.Reverse)
	r := Circulating{BackPressure: c.BackPressure}
	for _, l := range legs {
		_, friction, err := l.loss(c.Liquid, c.Rate)
		if err != nil {
			return Circulating{}, fmt.Errorf("%s %q: %w", l.side, l.section.Name, err)
		}
		p := Part{
			Name: l.section.Name, Side: l.side, Length: l.section.Length, Friction: friction,
			Loss:  friction.Loss(l.section.Length),
			Minor: MinorLoss(l.section.Minor, c.Liquid.Density, friction.Velocity),
		}
		if p.Side == PipeSide {
			r.PipeLoss += p.Loss + p.Minor
		} else {
			r.AnnulusLoss += p.Loss + p.Minor
		}
		r.Parts = append(r.Parts, p)
	}
	if c.Well.Exit.Count > 0 {
		r.ExitLoss = c.Well.Exit.Loss(c.Liquid.Density, c.Rate)
	}
	r.PumpPressure = c.BackPressure + r.PipeLoss + r.ExitLoss + r.AnnulusLoss
	r.Power = float64(r.PumpPressure) * float64(c.Rate)
	r.Nodes = c.nodes(legs, inlet, r)
	r.Bottom = r.Nodes[len(r.Nodes)-1]
	return r, nil
}

// nodes walks down the annulus.
func (c Circulation) nodes(legs []leg, inlet int, r Circulating) []Node {
	top := c.BackPressure // pressure at the top of the annulus
	sign := unit.Pressure(1)
	if c.Reverse {
		top, sign = r.PumpPressure, -1
	}
	var nodes []Node
	var lost unit.Pressure
	for i := range c.Well.Annulus {
		k := i // the leg of this section: flow order is the list's order in reverse circulation
		if !c.Reverse {
			k = len(legs) - 1 - i
		}
		s := c.Well.Annulus[i]
		lost += r.Parts[k].Loss + r.Parts[k].Minor
		column := unit.Pressure(float64(c.Liquid.Density) * standardGravity * float64(s.BottomTVD))
		n := Node{
			Name: s.Name, MD: unit.Length(max(legs[k].md0, legs[k].md1)), TVD: s.BottomTVD,
			Pressure: top + column + sign*lost, Static: c.BackPressure + column,
		}
		if s.BottomTVD > 0 {
			n.Equivalent = hydrostatics.EquivalentDensity(n.Pressure, s.BottomTVD)
		}
		nodes = append(nodes, n)
	}
	return nodes
}
