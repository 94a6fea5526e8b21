package flow

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps shows the working of a surge that Solve returned: the effective velocity
// of each section, and the pressures at the pipe's end.
func (t Trip) Steps(r Surge) []working.Step {
	if len(r.Sections) != len(t.Annulus) || t.Open && len(t.Bores) != len(t.Annulus) {
		return nil
	}
	peak := t.Peak
	if peak == 0 {
		peak = PeakSpeed
	}
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	speed := func(v unit.Velocity) working.Value { return working.In(v, unit.FootPerMinute, "ft/min") }
	inch := func(l unit.Length) working.Value { return working.In(l, unit.Inch, "in") }
	var steps []working.Step
	for i, s := range r.Sections {
		c := t.Annulus[i].Conduit
		step := working.Step{Name: "effective velocity, " + s.Name, Symbol: "V", Equation: "k*Vp*(kc+d*d/(D*D-d*d))", Source: "Burkhardt (1961); Moore (1974)",
			Inputs: []working.Input{in("k", working.Number(peak)), in("Vp", speed(t.Speed)), in("kc", working.Number(s.Cling)), in("d", inch(c.Inner)), in("D", inch(c.Outer))},
			Value:  speed(s.Velocity)}
		if t.Open {
			step.Equation = "k*Vp*(kc+(d*d-b*b)/(D*D-d*d+b*b))"
			step.Inputs = append(step.Inputs, in("b", inch(t.Bores[i])))
		}
		steps = append(steps, step)
		for _, f := range s.Friction.Steps() {
			f.Name += ", past the moving pipe, " + s.Name
			steps = append(steps, f)
		}
	}
	ps, dp := in("ps", working.Of(r.Static)), in("dp", working.Of(r.Loss))
	return append(steps,
		working.Step{Name: "pressure at the end of the pipe, running in", Symbol: "pr", Equation: "ps+dp", Inputs: []working.Input{ps, dp}, Value: working.Of(r.Running), Source: "balance of pressures"},
		working.Step{Name: "pressure at the end of the pipe, pulling", Symbol: "pp", Equation: "ps-dp", Inputs: []working.Input{ps, dp}, Value: working.Of(r.Pulling), Source: "balance of pressures"})
}
