package choke

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

const standard = "IEC 60534-2-1"

// Steps returns the working: the drop at which the liquid chokes, and the rate.
func (f LiquidFlow) Steps() []working.Step {
	steps := make([]working.Step, 0, 3)
	pv := working.Of(f.Liquid.VapourPressure)
	if f.Liquid.VapourPressure > 0 {
		steps = append(steps, working.Step{Name: "critical pressure ratio", Symbol: "FF", Equation: "0.96-0.28*sqrt(pv/pc)",
			Inputs: []working.Input{{Symbol: "pv", Value: pv}, {Symbol: "pc", Value: working.Of(f.Liquid.CriticalPressure)}},
			Value:  working.Number(f.CriticalRatio), Source: standard})
	}
	return append(steps,
		working.Step{Name: "drop at which it chokes, p1 absolute", Symbol: "dpc", Equation: "pow(FLP/FP,2)*(p1-FF*pv)",
			Inputs: []working.Input{{Symbol: "FLP", Value: working.Number(f.Recovery)}, {Symbol: "FP", Value: working.Number(f.PipingFactor)},
				{Symbol: "p1", Value: working.Of(f.Upstream + unit.Atmosphere)}, {Symbol: "FF", Value: working.Number(f.CriticalRatio)}, {Symbol: "pv", Value: pv}},
			Value: working.Of(f.ChokedDrop), Source: standard},
		working.Step{Name: "rate", Symbol: "q", Equation: "FP*FR*C*sqrt(dps/rho)",
			Inputs: []working.Input{{Symbol: "FP", Value: working.Number(f.PipingFactor)}, {Symbol: "FR", Value: working.Number(f.ReynoldsFactor)},
				{Symbol: "C", Value: working.Of(f.Coefficient)}, {Symbol: "dps", Value: working.Of(f.SizingDrop)}, {Symbol: "rho", Value: working.Of(f.Liquid.Density)}},
			Value: working.Of(f.Rate), Source: standard})
}

// Steps returns the working: the expansion factor where flow is turbulent, and
// the rate.
func (f GasFlow) Steps() []working.Step {
	steps := make([]working.Step, 0, 2)
	xs := working.Input{Symbol: "xs", Value: working.Number(f.SizingRatio)}
	if f.Reynolds == 0 || f.Reynolds >= turbulent {
		steps = append(steps, working.Step{Name: "expansion factor", Symbol: "Y", Equation: "1-xs/(3*xc)",
			Inputs: []working.Input{xs, {Symbol: "xc", Value: working.Number(f.ChokedRatio)}}, Value: working.Number(f.Expansion), Source: standard})
	}
	return append(steps, working.Step{Name: "mass rate, p1 absolute", Symbol: "W", Equation: "FP*FR*C*Y*sqrt(xs*p1*rho)",
		Inputs: []working.Input{{Symbol: "FP", Value: working.Number(f.PipingFactor)}, {Symbol: "FR", Value: working.Number(f.ReynoldsFactor)},
			{Symbol: "C", Value: working.Of(f.Coefficient)}, {Symbol: "Y", Value: working.Number(f.Expansion)}, xs,
			{Symbol: "p1", Value: working.Of(f.Upstream + unit.Atmosphere)}, {Symbol: "rho", Value: working.Of(f.Density)}},
		Value: working.Of(f.Mass), Source: standard})
}
