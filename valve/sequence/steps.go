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
	rising := t.Direction == valve.Rising
	felt, end, name, symbol := t.Greatest, t.Threshold.Least, "margin to "+t.Action, "near"
	if !rising {
		felt, end = t.Least, t.Threshold.Greatest
	}
	equation := map[bool]string{true: "near - felt", false: "felt - near"}[rising]
	if t.Intended {
		name, symbol, end = "reach beyond "+t.Action, "far", t.Threshold.Greatest
		equation = "felt - far"
		if !rising {
			end = t.Threshold.Least
			equation = "far - felt"
		}
		// What it would have felt at the worst choice, had it not happened.
		felt = level(t.Margin.axial, end.si+t.Margin.si)
		if !rising {
			felt = level(t.Margin.axial, end.si-t.Margin.si)
		}
	}
	return working.Step{
		Name: name, Symbol: "m", Equation: equation,
		Inputs: []working.Input{{Symbol: symbol, Value: end.value()}, {Symbol: "felt", Value: felt.value()}},
		Value:  t.Margin.value(), Source: "the end of the band that counts, over all choices of values",
	}
}

func (l Level) value() working.Value {
	if l.axial {
		return working.Of(unit.Force(l.si))
	}
	return working.Of(unit.Pressure(l.si))
}
