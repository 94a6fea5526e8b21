package valve

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

const (
	sourceControl  = "balance of forces on the piston, as in API RP 14B"
	sourceFailSafe = "API RP 14B / ISO 10417, from memory"
	sourceLeak     = "API RP 14B (2005), errata 2010, E.1.7"
)

// Steps shows how the panel pressures come about, at their greatest for opening
// and their least for closing.
func (c ControlPressures) Steps() []working.Step {
	ph := working.Input{Symbol: "ph", Value: working.Of(c.Head)}
	return []working.Step{
		{Name: "head of the control line", Symbol: "ph", Equation: "ρ*g*D", Source: "hydrostatics", Value: ph.Value,
			Inputs: []working.Input{{Symbol: "ρ", Value: working.Of(c.state.Density)}, {Symbol: "D", Value: working.Of(c.state.TVD)}}},
		{Name: "panel pressure that opens it for certain", Symbol: "ps", Equation: "po + pb - ph", Source: sourceControl, Value: working.Of(c.Open.Greatest),
			Inputs: []working.Input{{Symbol: "po", Value: working.Of(c.valve.Opens.Greatest)}, {Symbol: "pb", Value: working.Of(c.state.Backing.Greatest)}, ph}},
		{Name: "panel pressure that closes it for certain", Symbol: "pc", Equation: "pcl + pb - ph", Source: sourceControl, Value: working.Of(c.Closed.Least),
			Inputs: []working.Input{{Symbol: "pcl", Value: working.Of(c.valve.Closes.Least)}, {Symbol: "pb", Value: working.Of(c.state.Backing.Least)}, ph}},
	}
}

// Steps shows how the margins come about.
func (k KeepOpen) Steps() []working.Step {
	p := working.Input{Symbol: "p", Value: working.Of(k.panel)}
	ph := working.Input{Symbol: "ph", Value: working.Of(k.head)}
	po := working.Input{Symbol: "po", Value: working.Of(k.valve.Opens.Greatest)}
	pb := working.Input{Symbol: "pb", Value: working.Of(k.state.Backing.Greatest)}
	return []working.Step{
		{Name: "least differential that holds it", Symbol: "d", Equation: "p + ph - pb", Source: sourceControl, Value: working.Of(k.Differential),
			Inputs: []working.Input{p, ph, pb}},
		{Name: "margin to leaving the open position", Symbol: "mo", Equation: "p + ph - pb - po", Source: sourceControl, Value: working.Of(k.FullyOpen),
			Inputs: []working.Input{p, ph, pb, po}},
		{Name: "greatest backing that leaves it open", Symbol: "pbm", Equation: "p + ph - po", Source: sourceControl, Value: working.Of(k.Backing),
			Inputs: []working.Input{p, ph, po}},
	}
}

// Steps shows the depth of every case that has a limit.
func (f FailSafe) Steps() []working.Step {
	var steps []working.Step
	for _, d := range f.Cases {
		if d.Anywhere {
			continue
		}
		steps = append(steps, working.Step{Name: "fail-safe depth, " + d.Case.Name, Symbol: "D", Equation: "(pc - m + pbs)/(g*(ρc - ρb))",
			Source: sourceFailSafe, Value: working.Of(d.TVD), Inputs: []working.Input{
				{Symbol: "pc", Value: working.Of(f.closes)}, {Symbol: "m", Value: working.Of(f.margin)},
				{Symbol: "pbs", Value: working.Of(d.Case.BackingSurface)},
				{Symbol: "ρc", Value: working.Of(d.Case.Control)}, {Symbol: "ρb", Value: working.Of(d.Case.BackingDensity)},
			}})
	}
	return steps
}

// Steps shows how the leak rate comes about.
func (r LeakRate) Steps() []working.Step {
	g := r.test
	absolute := func(p unit.Pressure) working.Value { return working.Of(p + unit.Atmosphere) }
	rise := working.Input{Symbol: "dpz", Value: working.Of(r.Rise)}
	return []working.Step{
		{Name: "rise of p/Z, absolute", Symbol: "dpz", Equation: "p2/Z2 - p1/Z1", Source: sourceLeak, Value: rise.Value,
			Inputs: []working.Input{{Symbol: "p2", Value: absolute(g.End)}, {Symbol: "Z2", Value: working.Number(g.EndFactor)},
				{Symbol: "p1", Value: absolute(g.Start)}, {Symbol: "Z1", Value: working.Number(g.StartFactor)}}},
		{Name: "leak rate at standard state", Symbol: "q", Equation: "Tsc/psc*V/(T*t)*dpz", Source: sourceLeak,
			Value: working.In(r.Rate, unit.CubicFootPerMinute, "ft3/min"),
			Inputs: []working.Input{{Symbol: "Tsc", Value: absoluteTemperature(g.Standard.Temperature)}, {Symbol: "psc", Value: working.Of(g.Standard.Pressure)},
				{Symbol: "V", Value: working.In(g.Volume, unit.CubicFoot, "ft3")}, {Symbol: "T", Value: absoluteTemperature(g.Temperature)},
				{Symbol: "t", Value: working.Duration(g.Duration)}, rise}},
	}
}

// absoluteTemperature is shown in degrees Rankine, as a person puts it into the
// formula.
func absoluteTemperature(t unit.Temperature) working.Value {
	return working.In(unit.TemperatureDifference(t.Kelvin()), unit.FahrenheitDifference, "degR")
}
