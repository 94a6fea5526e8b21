package flow

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps shows the working. There is none at rest.
func (f Friction) Steps() []working.Step {
	if f.Regime == FlowStatic {
		return nil
	}
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	V, ρ := in("V", working.Of(f.Velocity)), in("ρ", working.Of(f.Density))
	τ := in("τ", working.In(f.LaminarStress, unit.Pascal, "Pa"))
	re := in("Re", working.Number(f.Reynolds))
	steps := []working.Step{
		{Name: "effective diameter", Symbol: "De", Equation: "8*V/γ", Inputs: []working.Input{V, in("γ", working.Of(f.LaminarRate))},
			Value: working.In(f.EffectiveDiameter, unit.Inch, "in"), Source: "Reed and Pilehvari, SPE 25456 (1993)"},
		{Name: "generalised Reynolds number", Symbol: "Re", Equation: "8*ρ*V*V/τ", Inputs: []working.Input{ρ, V, τ},
			Value: working.Number(f.Reynolds), Source: "Metzner and Reed (1955); API RP 13D (2006), 7"},
	}
	n := in("n", working.Number(f.Index))
	least, held, relative := held(f.Index, f.Reynolds, float64(f.Roughness/f.EffectiveDiameter))
	switch {
	case f.Regime == FlowLaminar || float64(f.Factor) == 16/f.Reynolds:
		steps = append(steps, working.Step{Name: "laminar friction factor", Symbol: "f", Equation: "16/Re", Inputs: []working.Input{re},
			Value: working.Number(float64(f.Factor)), Source: "exact laminar flow"})
	case f.Regime == FlowTurbulent:
		steps = append(steps, working.Step{Name: "turbulent friction factor, solved by trial", Symbol: "f",
			Equation: "pow(-4*log10(e/3.7 + pow(1.255, pow(n, -1.2))/pow(Re*pow(f, 1-n/2), pow(n, -0.75))), -2)",
			Inputs:   []working.Input{in("e", working.Number(relative)), in("n", working.Number(least)), in("Re", working.Number(held)), in("f", working.Number(float64(f.Factor)))},
			Value:    working.Number(float64(f.Factor)), Source: "Colebrook (1939) for n = 1; Dodge and Metzner (1959), Reed and Pilehvari (1993)"})
	case f.Regime == FlowTransitional:
		steps = append(steps, working.Step{Name: "friction factor between the regimes", Symbol: "f",
			Equation: "exp(ln(16/(3470-1370*n)) + ln(F*(3470-1370*n)/16)*ln(Re/(3470-1370*n))/ln((4270-1370*n)/(3470-1370*n)))",
			Inputs:   []working.Input{n, re, in("F", working.Number(max(16/TurbulentReynolds(f.Index), float64(Turbulent(least, TurbulentReynolds(f.Index), relative)))))},
			Value:    working.Number(float64(f.Factor)), Source: "interpolated between the laminar limit and the turbulent one"})
	}
	return append(steps, working.Step{Name: "friction gradient", Symbol: "dp/dL", Equation: "2*f*ρ*V*V/D",
		Inputs: []working.Input{in("f", working.Number(float64(f.Factor))), ρ, V, in("D", working.In(f.HydraulicDiameter, unit.Inch, "in"))},
		Value:  working.Of(f.Gradient), Source: "Fanning's equation"})
}
