package hydrostatics

import "completion.example/hydrostatics/working"

// Steps shows the working of the end of the job: kill fluid down to the formation.
func (b Bullhead) Steps(end BullheadPoint) []working.Step {
	if len(b.Sections) == 0 {
		return nil
	}
	const source = "balance of pressures"
	pf := working.Input{Symbol: "pf", Value: working.Of(b.Formation.Pressure)}
	column := working.Input{Symbol: "hk", Value: working.Of(Pressure(b.Kill, b.Formation.TVD))}
	_, friction := b.above(b.Sections[len(b.Sections)-1].BottomMD)
	return []working.Step{
		{Name: "column of kill fluid to the formation", Symbol: "hk", Equation: "rk*g*h", Source: source, Value: column.Value,
			Inputs: []working.Input{{Symbol: "rk", Value: working.Of(b.Kill)}, {Symbol: "h", Value: working.Of(b.Formation.TVD)}}},
		{Name: "shut-in pressure at the end", Symbol: "ps", Equation: "pf-hk", Source: source, Inputs: []working.Input{pf, column}, Value: working.Of(end.Shut)},
		{Name: "pump pressure at the end", Symbol: "pp", Equation: "pf+i-hk+F", Source: source, Value: working.Of(end.Pump),
			Inputs: []working.Input{pf, {Symbol: "i", Value: working.Of(b.Injection)}, column, {Symbol: "F", Value: working.Of(friction)}}},
		{Name: "greatest pressure at the end, pump off", Symbol: "pm", Equation: "pfrac-hk", Source: source, Value: working.Of(end.Greatest),
			Inputs: []working.Input{{Symbol: "pfrac", Value: working.Of(b.Fracture)}, column}},
	}
}
