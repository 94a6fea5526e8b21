package confined

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

func in(symbol string, v working.Value) working.Input {
	return working.Input{Symbol: symbol, Value: v}
}

// Steps shows the working: the linear estimate, and how the pressure found
// shares the growth of the fluids out.
func (o Outcome) Steps() []working.Step {
	v, c, C := in("V", working.Of(o.Volume)), in("c", working.Of(o.Compressibility)), in("C", working.Of(o.WallCompliance))
	grown, wall, squeeze := in("dVf", working.Of(o.FluidExpansion)), in("dVw", working.Of(o.WallExpansion)), in("S", working.Of(o.Squeeze))
	rise := in("dp", working.Of(o.Rise))
	return []working.Step{
		{Name: "rise by the linear formula, a check", Symbol: "dp1", Equation: "(dVf - dVw + S)/(V*(c + C))",
			Inputs: []working.Input{grown, wall, squeeze, v, c, C}, Value: working.Of(o.Estimate), Source: "the form of API Std 521 for a trapped liquid"},
		{Name: "growth of the space by the rise found", Symbol: "dVb", Equation: "V*C*dp",
			Inputs: []working.Input{v, C, rise}, Value: working.Of(o.Ballooning), Source: "Lamé's thick wall"},
		{Name: "what the rise takes from the fluids", Symbol: "dVc", Equation: "dVf - dVw - dVb + S",
			Inputs: []working.Input{grown, wall, in("dVb", working.Of(o.Ballooning)), squeeze}, Value: working.Of(o.Compression), Source: "conservation of mass"},
		{Name: "pressure after", Symbol: "p", Equation: "p0 + dp",
			Inputs: []working.Input{in("p0", working.Of(o.Before)), rise}, Value: working.Of(o.After), Source: "conservation of mass, solved by trial"},
	}
}

// Steps shows the working of the decline.
func (j Judgement) Steps() []working.Step {
	start := in("p1", working.Of(j.Start))
	steps := []working.Step{
		{Name: "fall over the hold", Symbol: "dp", Equation: "p1 - p2", Inputs: []working.Input{start, in("p2", working.Of(j.End))},
			Value: working.Of(j.Fall), Source: "the record"},
		{Name: "fall allowed", Symbol: "dpa", Equation: "k*p1", Inputs: []working.Input{in("k", working.Number(j.MostDecline)), start},
			Value: working.Of(j.Allowed), Source: j.Source},
	}
	if j.Start > 0 {
		steps = append(steps, working.Step{Name: "decline", Symbol: "d", Equation: "dp/p1", Inputs: []working.Input{in("dp", working.Of(j.Fall)), start},
			Value: working.Number(j.Decline), Source: "the record"})
	}
	if j.Cooling != 0 {
		steps = append(steps, working.Step{Name: "fall less cooling", Symbol: "dpc", Equation: "dp - dpt",
			Inputs: []working.Input{in("dp", working.Of(j.Fall)), in("dpt", working.Of(j.Cooling))}, Value: working.Of(j.Corrected), Source: "the record, and the system's rise per degree"})
	}
	return steps
}

// Steps shows the working for a volume to pump by the linear formula.
func (s System) Steps(dp unit.Pressure) []working.Step {
	return []working.Step{{Name: "volume to pump", Symbol: "dV", Equation: "c*V*dp",
		Inputs: []working.Input{in("c", working.Of(s.Compressibility())), in("V", working.Of(s.Volume())), in("dp", working.Of(dp))},
		Value:  working.In(s.VolumeFor(dp), unit.Barrel, "bbl"), Source: "definition of the compressibility"}}
}
