package sleeve

import "completion.example/hydrostatics/working"

// Steps shows how the panel pressures come about, at the greatest resistance.
func (x Shifting) Steps() []working.Step {
	F := working.Input{Symbol: "F", Value: working.Of(x.Resistance.Greatest)}
	h := working.Input{Symbol: "h", Value: working.Of(x.Head)}
	ao := working.Input{Symbol: "Ao", Value: working.Of(x.sleeve.OpenArea)}
	ac := working.Input{Symbol: "Ac", Value: working.Of(x.sleeve.CloseArea)}
	const source = "balance of forces on the piston"
	return []working.Step{
		{Name: "panel pressure that opens it for certain", Symbol: "po", Equation: "(F + (Ac - Ao)*h)/Ao", Source: source,
			Value: working.Of(x.Open.Greatest), Inputs: []working.Input{F, ac, ao, h}},
		{Name: "panel pressure that closes it for certain", Symbol: "pc", Equation: "(F + (Ao - Ac)*h)/Ac", Source: source,
			Value: working.Of(x.Close.Greatest), Inputs: []working.Input{F, ao, ac, h}},
	}
}
