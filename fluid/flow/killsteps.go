package flow

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps shows the working of the pump's pressure at the start and when the kill
// fluid is at the end of the way in; s is k worked out.
func (k Kill) Steps(s Killing) []working.Step {
	if len(k.Well.Annulus) == 0 {
		return nil
	}
	const source = "balance of pressures; constant bottom-hole pressure"
	depth := k.Well.Annulus[len(k.Well.Annulus)-1].BottomTVD
	step := func(name, symbol string, l PumpedFluid, pump unit.Pressure) working.Step {
		column := unit.Pressure(float64(l.Density) * standardGravity * float64(depth))
		friction := pump - (k.Formation + k.Margin - column)
		return working.Step{Name: name, Symbol: symbol, Equation: "pf+m-r*g*D+F", Source: source, Value: working.Of(pump), Inputs: []working.Input{
			{Symbol: "pf", Value: working.Of(k.Formation)}, {Symbol: "m", Value: working.Of(k.Margin)}, {Symbol: "r", Value: working.Of(l.Density)},
			{Symbol: "D", Value: working.Of(depth)}, {Symbol: "F", Value: working.Of(friction)}}}
	}
	return []working.Step{
		step("pump pressure at the start, fluid of the well", "p1", k.InWell, s.Initial()),
		step("pump pressure with kill fluid at the end of the way in", "p2", k.Liquid, s.Final()),
	}
}
