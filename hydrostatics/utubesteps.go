package hydrostatics

import (
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Standing is the height that a fluid of constant density takes up in a leg.
type Standing struct {
	Density unit.Density `json:"density"`
	Height  unit.Length  `json:"height"` // vertical
}

// stands lists what lies between two volumes of a leg, if anything does.
func (b *bore) stands(density, top, bottom float64) []Standing {
	weight := b.weight(density, top, bottom)
	if weight == 0 {
		return nil
	}
	return []Standing{{unit.Density(density), Head(unit.Pressure(weight), unit.Density(density))}}
}

// afterFall lists the fluids of a leg that has lost a volume, from the top down.
func (b *bore) afterFall(v float64) []Standing {
	var all []Standing
	for i, rho := range b.density {
		all = append(all, b.stands(rho, b.top[i]-v, b.top[i+1]-v)...)
	}
	return all
}

// afterRise lists the fluids of a leg into which a volume has come from
// another, from the top down: what came last stands at the port.
func (b *bore) afterRise(v float64, from *bore) []Standing {
	var all []Standing
	for i, rho := range b.density {
		all = append(all, b.stands(rho, b.top[i]+v, b.top[i+1]+v)...)
	}
	for i, rho := range slices.Backward(from.density) {
		all = append(all, b.stands(rho, v-from.top[i+1], v-min(from.top[i], v))...)
	}
	return all
}

// Steps shows the working: both legs at the port before it opens, what holds
// the difference, and both legs once they are at rest.
func (r AtRest) Steps() []working.Step {
	steps := []working.Step{
		weighed("tubing at the port, before", "pt", r.Tubing.Surface, r.Tubing.Filled, r.Tubing.Before),
		weighed("annulus at the port, before", "pa", r.Annulus.Surface, r.Annulus.Filled, r.Annulus.Before),
		{Name: "differential before the port opens, tubing minus annulus", Symbol: "dp", Equation: "pt-pa", Source: balanceAtPort,
			Inputs: []working.Input{{Symbol: "pt", Value: working.Of(r.Tubing.Before)}, {Symbol: "pa", Value: working.Of(r.Annulus.Before)}},
			Value:  working.Of(r.Differential)},
		{Name: "surface pressure on the lighter leg that holds it", Symbol: "ph", Equation: "abs(dp)", Source: balanceAtPort,
			Inputs: []working.Input{{Symbol: "dp", Value: working.Of(r.Differential)}}, Value: working.Of(r.Holding)},
	}
	if r.Moved == 0 {
		return steps
	}
	return append(steps,
		weighed("tubing at the port, at rest", "p", r.Tubing.Surface, r.Tubing.Settled, r.Pressure),
		weighed("annulus at the port, at rest", "p", r.Annulus.Surface, r.Annulus.Settled, r.Pressure))
}

const balanceAtPort = "balance at the port"

// weighed is the pressure under fluids, from the surface pressure down.
func weighed(name, symbol string, surface unit.Pressure, fluids []Standing, p unit.Pressure) working.Step {
	step := working.Step{Name: name, Symbol: symbol, Value: working.Of(p), Source: balanceAtPort,
		Inputs: []working.Input{{Symbol: "ps", Value: working.Of(surface)}}}
	var sum strings.Builder
	sum.WriteString("ps")
	for i, f := range fluids {
		r, h := fmt.Sprintf("r%d", i+1), fmt.Sprintf("h%d", i+1)
		sum.WriteString("+" + r + "*g*" + h)
		step.Inputs = append(step.Inputs, working.Input{Symbol: r, Value: working.Of(f.Density)}, working.Input{Symbol: h, Value: working.Of(f.Height)})
	}
	step.Equation = sum.String()
	return step
}
