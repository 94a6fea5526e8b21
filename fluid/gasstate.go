package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// GasState is natural gas at one place of a well, with what its density comes
// from.
type GasState struct {
	Pressure    unit.Pressure    `json:"pressure"` // gauge
	Temperature unit.Temperature `json:"temperature"`
	Critical    PseudoCritical   `json:"critical"`
	MolarMass   float64          `json:"molar_mass"` // kg/mol
	Ppr         float64          `json:"ppr"`        // pseudo-reduced
	Tpr         float64          `json:"tpr"`
	Z           float64          `json:"z"`
	Density     unit.Density     `json:"density"`
}

// State returns Z and density with their working. Errors: those of Density.
func (g Gas) State(p unit.Pressure, t unit.Temperature) (GasState, error) {
	pc, err := g.PseudoCritical()
	if err != nil {
		return GasState{}, err
	}
	return gasState(g, pc, p, t)
}

// State returns Z and density with their working. Errors: those of Density.
func (m GasMixture) State(p unit.Pressure, t unit.Temperature) (GasState, error) {
	pc, err := m.PseudoCritical()
	if err != nil {
		return GasState{}, err
	}
	return gasState(m, pc, p, t)
}

func gasState(g interface {
	MolarMass() float64
	ZFactor(unit.Pressure, unit.Temperature) (float64, error)
	Density(unit.Pressure, unit.Temperature) (unit.Density, error)
}, pc PseudoCritical, p unit.Pressure, t unit.Temperature) (GasState, error) {
	z, err := g.ZFactor(p, t)
	if err != nil {
		return GasState{}, err
	}
	rho, err := g.Density(p, t)
	return GasState{
		Pressure: p, Temperature: t, Critical: pc, MolarMass: g.MolarMass(),
		Ppr: absolute(p) / float64(pc.Pressure), Tpr: t.Kelvin() / pc.Temperature.Kelvin(),
		Z: z, Density: rho,
	}, err
}

// ReducedDensity returns 0.27·ppr/(Z·Tpr), the unknown of ZFactor's equation.
//
// Range: Z and Tpr above zero, as every state has that a Gas gives; infinite at
// zero.
//
// Source: ZFactor.
func (s GasState) ReducedDensity() float64 { return zCritical * s.Ppr / (s.Z * s.Tpr) }

// Steps shows the working; that of Z puts its root back into the equation.
func (s GasState) Steps() []working.Step {
	p, pa := working.Input{Symbol: "p", Value: working.Of(s.Pressure)}, working.Input{Symbol: "pa", Value: working.Of(unit.Atmosphere)}
	t := working.Input{Symbol: "T", Value: working.Temperature(s.Temperature)}
	z := working.Input{Symbol: "Z", Value: working.Number(s.Z)}
	tpr := working.Input{Symbol: "Tpr", Value: working.Number(s.Tpr)}
	i := newIsotherm(s.Tpr)
	const dak = "Dranchuk and Abou-Kassem 1975"
	return []working.Step{
		{Name: "pseudo-reduced pressure", Symbol: "ppr", Equation: "(p+pa)/pc",
			Inputs: []working.Input{p, pa, {Symbol: "pc", Value: working.Of(s.Critical.Pressure)}}, Value: working.Number(s.Ppr), Source: "corresponding states"},
		{Name: "pseudo-reduced temperature", Symbol: "Tpr", Equation: "T/Tc",
			Inputs: []working.Input{t, {Symbol: "Tc", Value: working.Temperature(s.Critical.Temperature)}}, Value: working.Number(s.Tpr), Source: "corresponding states"},
		{Name: "reduced density, the root of Z", Symbol: "ρr", Equation: "0.27*ppr/(Z*Tpr)",
			Inputs: []working.Input{{Symbol: "ppr", Value: working.Number(s.Ppr)}, z, tpr}, Value: working.Number(s.ReducedDensity()), Source: dak},
		{Name: "deviation factor", Symbol: "Z", Equation: "1+C1*ρr+C2*ρr*ρr-C3*pow(ρr,5)+A10*(1+A11*ρr*ρr)*ρr*ρr/pow(Tpr,3)*exp(-A11*ρr*ρr)",
			Inputs: []working.Input{{Symbol: "ρr", Value: working.Number(s.ReducedDensity())}, {Symbol: "C1", Value: working.Number(i.c1)},
				{Symbol: "C2", Value: working.Number(i.c2)}, {Symbol: "C3", Value: working.Number(i.c3)}, {Symbol: "A10", Value: working.Number(dak10)},
				{Symbol: "A11", Value: working.Number(dak11)}, tpr}, Value: working.Number(s.Z), Source: dak},
		{Name: "density", Symbol: "ρ", Equation: "(p+pa)*M/(Z*R*T)",
			Inputs: []working.Input{p, pa, {Symbol: "M", Value: working.Number(s.MolarMass)}, z, {Symbol: "R", Value: working.Number(gasConstant)}, t},
			Value:  working.Of(s.Density), Source: "real-gas law"},
	}
}
