package flow

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps shows the working of the pump's output.
func (p Pump) Steps() []working.Step {
	inputs := []working.Input{
		{Symbol: "N", Value: working.Number(float64(p.Cylinders))}, {Symbol: "D", Value: working.In(p.Liner, unit.Inch, "in")},
		{Symbol: "S", Value: working.In(p.Stroke, unit.Inch, "in")}, {Symbol: "η", Value: working.Number(p.Efficiency)},
	}
	equation := "N*pi/4*D*D*S*η"
	if p.DoubleActing {
		equation = "N*pi/4*(2*D*D-d*d)*S*η"
		inputs = append(inputs, working.Input{Symbol: "d", Value: working.In(p.Rod, unit.Inch, "in")})
	}
	return []working.Step{{Name: "volume of a stroke", Symbol: "o", Equation: equation, Inputs: inputs, Value: working.Of(p.Output()), Source: "geometry"}}
}

// Steps shows the working: the volume of every section, the strokes of all that
// is pumped, and the pressures at the moment of the highest pump pressure, from
// what the columns and the friction make of it.
func (s Schedule) Steps() []working.Step {
	if s.run == nil {
		return nil
	}
	var steps []working.Step
	for _, x := range s.run.d.Well.Pipe {
		steps = append(steps, x.step(PipeSide))
	}
	for _, x := range s.run.d.Well.Annulus {
		steps = append(steps, x.step(AnnulusSide))
	}
	if o := s.run.d.Output; o > 0 {
		steps = append(steps, working.Step{Name: "strokes in all", Symbol: "n", Equation: "V/o",
			Inputs: []working.Input{{Symbol: "V", Value: working.Of(s.Pumped)}, {Symbol: "o", Value: working.Of(o)}},
			Value:  working.Number(s.Strokes), Source: "definition"})
	}
	p := s.GreatestPump
	steps = append(steps, working.Step{Name: "greatest pump pressure, at " + p.Volume.Rounded(4) + " pumped", Symbol: "p", Equation: "pst+dpf",
		Inputs: []working.Input{{Symbol: "pst", Value: working.Of(p.Static)}, {Symbol: "dpf", Value: working.Of(p.Friction)}},
		Value:  working.Of(p.PumpPressure), Source: "pump off, and all friction"})
	if depth := s.run.d.Well.depth(); depth > 0 {
		b := s.GreatestBottom
		steps = append(steps, working.Step{Name: "greatest equivalent density at the bottom", Symbol: "ECD", Equation: "P/(g*z)",
			Inputs: []working.Input{{Symbol: "P", Value: working.Of(b.Bottom)}, {Symbol: "z", Value: working.Of(depth)}},
			Value:  working.Of(b.Equivalent), Source: "definition"})
	}
	return steps
}

func (s ConduitSection) step(side Side) working.Step {
	step := working.Step{Name: "volume of the " + side.String() + " side, " + s.Name, Symbol: "V", Equation: "pi/4*D*D*L", Source: "geometry",
		Inputs: []working.Input{{Symbol: "D", Value: working.In(s.Conduit.Outer, unit.Inch, "in")}, {Symbol: "L", Value: working.Of(s.Length)}},
		Value:  working.Of(s.Conduit.Volume(s.Length))}
	if s.Conduit.Inner > 0 {
		step.Equation = "pi/4*(D*D-d*d)*L"
		step.Inputs = append(step.Inputs, working.Input{Symbol: "d", Value: working.In(s.Conduit.Inner, unit.Inch, "in")})
	}
	return step
}
