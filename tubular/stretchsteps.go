package tubular

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps shows how the stretch comes about, section by section from the top.
func (s HangingStretch) Steps() []working.Step {
	var steps []working.Step
	sum := working.Step{Name: "stretch of the string", Symbol: "e", Value: inches(s.Total()), Source: "sum"}
	for i, part := range s.Sections {
		steps = append(steps, part.steps(i+1)...)
		symbol := fmt.Sprintf("e%d", i+1)
		if i > 0 {
			sum.Equation += " + "
		}
		sum.Equation += symbol
		sum.Inputs = append(sum.Inputs, working.Input{Symbol: symbol, Value: inches(part.Total())})
	}
	return append(steps, sum)
}

func inches(l unit.Length) working.Value { return working.In(l, unit.Inch, "in") }

func (s SectionStretch) steps(number int) []working.Step {
	const source = "API RP 7G (1998); Lubinski et al. 1962"
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	p := s.section.Pipe
	L, E := in("L", working.Of(s.section.Length)), in("E", working.Of(p.Material.Young))
	As, pm := in("As", working.Of(p.SteelArea())), in("pm", working.Of(s.MeanPressure))
	causes := []working.Input{in("eW", inches(s.Weight)), in("eP", inches(s.Pressure)), in("eB", inches(s.Ballooning)),
		in("eT", inches(s.Thermal)), in("eF", inches(s.Pull))}
	at := fmt.Sprintf(", section %d", number)
	hung, w := in("Wb", working.Of(s.Hung)), in("w", working.Of(p.WeightInAir()))
	weight := working.Step{Name: "by weight in air" + at, Symbol: "eW", Equation: "(Wb + w*L/2)*L/(E*As)", Value: causes[0].Value, Source: source, Inputs: []working.Input{hung, w, L, E, As}}
	if s.along {
		weight.Equation = "(Wb + w*(he - hm))*L/(E*As)"
		weight.Inputs = []working.Input{hung, w, in("he", working.Of(s.end)), in("hm", working.Of(s.middle)), L, E, As}
	}
	return []working.Step{
		{Name: "steel area" + at, Symbol: "As", Equation: "pi/4*(D*D - d*d)", Value: As.Value, Source: "geometry",
			Inputs: []working.Input{in("D", working.Of(p.OD)), in("d", working.Of(p.ID))}},
		weight,
		{Name: "by pressure on ends and shoulders" + at, Symbol: "eP", Equation: "-U*L/(E*As)", Value: causes[1].Value, Source: source,
			Inputs: []working.Input{in("U", working.Of(s.Push)), L, E, As}},
		{Name: "pressure at its middle" + at, Symbol: "pm", Equation: "ρ*g*zm", Value: pm.Value, Source: "hydrostatics",
			Inputs: []working.Input{in("ρ", working.Of(s.fluid)), in("zm", working.Of(s.middle))}},
		{Name: "by ballooning" + at, Symbol: "eB", Equation: "2*ν*pm*L/E", Value: causes[2].Value, Source: source,
			Inputs: []working.Input{in("ν", working.Number(p.Material.Poisson)), pm, L, E}},
		{Name: "by temperature" + at, Symbol: "eT", Equation: "α*L*dT", Value: causes[3].Value, Source: source,
			Inputs: []working.Input{in("α", working.Of(p.Material.Expansion)), L, in("dT", working.Of(s.section.Warming))}},
		{Name: "by the pull on the lower end" + at, Symbol: "eF", Equation: "F*L/(E*As)", Value: causes[4].Value, Source: "Hooke",
			Inputs: []working.Input{in("F", working.Of(s.pull)), L, E, As}},
		{Name: "stretch" + at, Symbol: fmt.Sprintf("e%d", number), Equation: "eW + eP + eB + eT + eF", Value: inches(s.Total()), Source: "sum", Inputs: causes},
	}
}
