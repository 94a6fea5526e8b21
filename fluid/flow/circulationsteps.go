package flow

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps shows the working: the sum at the pump, and the equivalent circulating
// density at the bottom where it has a depth.
func (c Circulating) Steps() []working.Step {
	in := func(symbol string, p unit.Pressure) working.Input {
		return working.Input{Symbol: symbol, Value: working.Of(p)}
	}
	steps := []working.Step{{Name: "pump pressure", Symbol: "p", Equation: "pb + dpp + dpx + dpa",
		Inputs: []working.Input{in("pb", c.BackPressure), in("dpp", c.PipeLoss), in("dpx", c.ExitLoss), in("dpa", c.AnnulusLoss)},
		Value:  working.Of(c.PumpPressure), Source: "balance of pressures"}}
	if c.Bottom.TVD > 0 {
		steps = append(steps, working.Step{Name: "equivalent circulating density", Symbol: "ECD", Equation: "P/(g*z)",
			Inputs: []working.Input{in("P", c.Bottom.Pressure), {Symbol: "z", Value: working.Of(c.Bottom.TVD)}},
			Value:  working.Of(c.Bottom.Equivalent), Source: "definition"})
	}
	return steps
}
