package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/valve"
)

// Steps shows how the margins of a step come about: what is felt against the
// end of the band that counts.
func (r *StepResult) Steps() []working.Step {
	var all []working.Step
	for _, t := range r.Triggers {
		all = append(all, t.step())
	}
	for _, t := range r.Tests {
		all = append(all, working.Step{
			Name: "test of " + t.Barrier + " from " + t.Side, Symbol: "dp", Equation: "pin - pout",
			Inputs: []working.Input{{Symbol: "pin", Value: working.Of(t.Inside)}, {Symbol: "pout", Value: working.Of(t.Outside)}},
			Value:  working.Of(t.Differential), Source: "differential: inside minus outside",
		})
	}
	for _, b := range r.Balance {
		all = append(all, working.Step{
			Name: "balance of " + b.Compartment + " against " + b.Formation, Symbol: "OB", Equation: "pw - pf",
			Inputs: []working.Input{{Symbol: "pw", Value: working.Of(b.Well)}, {Symbol: "pf", Value: working.Of(b.Pore)}},
			Value:  working.Of(b.Overbalance), Source: "overbalance: well pressure minus formation pressure",
		})
	}
	return all
}

// step is the worked line of a margin. Margins count in the direction of the
// trigger.
func (t TriggerResult) step() working.Step {
	felt, end, name := t.Greatest, t.Threshold.Least, "margin to "+t.Action
	rising := t.Direction == valve.Rising
	if !rising {
		felt, end = t.Least, t.Threshold.Greatest
	}
	equation := "near - felt"
	if t.Intended {
		name = "reach beyond " + t.Action
		felt, end = t.Reach, t.Threshold.Greatest
		if !rising {
			end = t.Threshold.Least
		}
		equation = "felt - far"
	}
	if !rising {
		equation = map[string]string{"near - felt": "felt - near", "felt - far": "far - felt"}[equation]
	}
	symbol := "near"
	if t.Intended {
		symbol = "far"
	}
	of := func(p unit.Pressure) working.Value {
		if t.Axial {
			return working.Of(unit.Force(p))
		}
		return working.Of(p)
	}
	return working.Step{
		Name: name, Symbol: "m", Equation: equation,
		Inputs: []working.Input{{Symbol: symbol, Value: of(end)}, {Symbol: "felt", Value: of(felt)}},
		Value:  of(t.Margin), Source: "the end of the band that counts, over all worlds",
	}
}
