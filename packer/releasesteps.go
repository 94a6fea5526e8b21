package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps works the readings from their terms.
func (p Parting) Steps() []working.Step {
	in := func(symbol string, v unit.Force) working.Input {
		return working.Input{Symbol: symbol, Value: working.Of(v)}
	}
	b := p.Nominal
	steps := []working.Step{{
		Name: "hook load at nominal pins, without drag", Symbol: "R0", Equation: "P + Fend + W + Fs + Fcap + block",
		Inputs: []working.Input{in("P", b.Joint), in("Fend", b.End), in("W", b.Weight), in("Fs", b.Shoulders), in("Fcap", b.Cap), in("block", b.Block)},
		Value:  working.Of(b.Reading), Source: "equilibrium of the string; Lubinski et al. 1962",
	}, {
		Name: "reading at nominal pins", Symbol: "R", Equation: "R0 + drag",
		Inputs: []working.Input{in("R0", b.Reading), in("drag", p.drag)}, Value: working.Of(p.Reading.Nominal), Source: "sum",
	}}
	for _, u := range p.Parts {
		steps = append(steps, working.Step{
			Name: u.Name + ", share of its rating at the strongest pins", Symbol: "u", Equation: "F/T",
			Inputs: []working.Input{in("F", u.Load), in("T", u.Rating)}, Value: working.Number(u.Usage), Source: "definition",
		})
	}
	return steps
}
