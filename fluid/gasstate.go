package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// GasState is natural gas at one place of a well, with what its density comes
// from.
type GasState struct {
	Pressure    unit.Pressure // gauge
	Temperature unit.Temperature
	Critical    PseudoCritical
	MolarMass   float64 // kg/mol
	Ppr, Tpr    float64 // pseudo-reduced
	Z           float64
	Density     unit.Density
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

// Steps shows the working; Z itself is the root of an equation, see ZFactor.
func (s GasState) Steps() []working.Step {
	p, pa := working.Input{Symbol: "p", Value: working.Of(s.Pressure)}, working.Input{Symbol: "pa", Value: working.Of(unit.Atmosphere)}
	t := working.Input{Symbol: "T", Value: working.Temperature(s.Temperature)}
	z := working.Input{Symbol: "Z", Value: working.Number(s.Z)}
	return []working.Step{
		{Name: "pseudo-reduced pressure", Symbol: "ppr", Equation: "(p+pa)/pc",
			Inputs: []working.Input{p, pa, {Symbol: "pc", Value: working.Of(s.Critical.Pressure)}}, Value: working.Number(s.Ppr), Source: "corresponding states"},
		{Name: "pseudo-reduced temperature", Symbol: "Tpr", Equation: "T/Tc",
			Inputs: []working.Input{t, {Symbol: "Tc", Value: working.Temperature(s.Critical.Temperature)}}, Value: working.Number(s.Tpr), Source: "corresponding states"},
		{Name: "deviation factor", Symbol: "Z", Equation: "Z", Inputs: []working.Input{z}, Value: working.Number(s.Z), Source: "Dranchuk and Abou-Kassem 1975"},
		{Name: "density", Symbol: "ρ", Equation: "(p+pa)*M/(Z*R*T)",
			Inputs: []working.Input{p, pa, {Symbol: "M", Value: working.Number(s.MolarMass)}, z, {Symbol: "R", Value: working.Number(gasConstant)}, t},
			Value:  working.Of(s.Density), Source: "real-gas law"},
	}
}
