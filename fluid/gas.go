package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Gas is natural gas known by its gravity and its contents of nitrogen, carbon
// dioxide and hydrogen sulphide.
//
//	ρ = p·M/(Z·R·T),  M = gravity × 28.9625 g/mol
//
// Z is ZFactor at pseudo-reduced conditions; see PseudoCritical. A wet gas
// counts with the gravity of the whole well stream.
//
// Range: gravity 0.57 to 1.68 of the hydrocarbons in it; nitrogen to 0.25,
// carbon dioxide to 0.544, hydrogen sulphide to 0.738, together less than 0.8;
// reduced temperature 1.05 to 3 and reduced pressure to 30: for a 0.65 gravity
// gas −75 to 640 °F and 20,000 psi. Expect 1 to 2 % in Z, more where reduced
// temperature is under 1.2.
//
// Errors: *RangeError. The zero value is an error.
type Gas struct {
	Gravity          float64 `json:"gravity"`           // to air, of the whole gas
	Nitrogen         float64 `json:"nitrogen"`          // mole fraction
	CarbonDioxide    float64 `json:"carbon_dioxide"`    // mole fraction
	HydrogenSulphide float64 `json:"hydrogen_sulphide"` // mole fraction
}

const (
	gasName          = "natural gas"
	gravityLeast     = 0.57
	gravityGreatest  = 1.68
	mostNitrogen     = 0.25
	mostContaminants = 0.8
)

// MolarMass returns the mass of one mole, kg/mol: gravity × that of air.
//
// Range: any gravity; it isn't checked here.
//
// Source: definition of the gravity of a gas.
func (g Gas) MolarMass() float64 { return g.Gravity * airMolarMass }

// PseudoCritical returns the pseudo-critical pressure and temperature:
//
//	γh = (γ − Σ yi·Mi/Ma)/(1 − Σ yi)           gravity of the hydrocarbons
//	p  = (1 − Σ yi)·(756.8 − 131.0·γh − 3.6·γh²) + Σ yi·pi    psia
//	T  = (1 − Σ yi)·(169.2 + 349.5·γh − 74.0·γh²) + Σ yi·Ti   °R
//
// with the sum over nitrogen, carbon dioxide and hydrogen sulphide, and then
// the correction of WichertAziz.
//
// Source: Sutton, SPE-14265 (1985).
func (g Gas) PseudoCritical() (PseudoCritical, error) {
	dry := 1 - g.Nitrogen - g.CarbonDioxide - g.HydrogenSulphide
	heavy := (g.Gravity - (g.Nitrogen*pureNitrogen.molarMass+g.CarbonDioxide*pureCarbonDioxid.molarMass+
		g.HydrogenSulphide*pureHydrogenSulf.molarMass)/airMolarMass) / dry
	if !within(g.Nitrogen, 0, mostNitrogen) || !within(dry, 1-mostContaminants, 1) || !within(heavy, gravityLeast, gravityGreatest) {
		return PseudoCritical{}, fault.Join(scope,
			fraction(gasName, "Nitrogen", g.Nitrogen, mostNitrogen),
			fraction(gasName, "nitrogen, carbon dioxide and hydrogen sulphide together", 1-dry, mostContaminants),
			g.gravityFault(heavy))
	}
	pc := PseudoCritical{
		Pressure: unit.Pressure(dry*(756.8-(131.0+3.6*heavy)*heavy))*unit.PSI +
			unit.Pressure(g.Nitrogen*pureNitrogen.pressure+g.CarbonDioxide*pureCarbonDioxid.pressure+g.HydrogenSulphide*pureHydrogenSulf.pressure),
		Temperature: unit.Kelvin(dry*unit.Rankine(169.2+(349.5-74.0*heavy)*heavy).Kelvin() +
			g.Nitrogen*pureNitrogen.temperature + g.CarbonDioxide*pureCarbonDioxid.temperature + g.HydrogenSulphide*pureHydrogenSulf.temperature),
	}
	return pc.WichertAziz(g.CarbonDioxide, g.HydrogenSulphide)
}

func (g Gas) gravityFault(heavy float64) error {
	if within(heavy, gravityLeast, gravityGreatest) {
		return nil
	}
	return outside(gasName, "gravity of the hydrocarbons in it", number(heavy), number(gravityLeast), number(gravityGreatest))
}

func (g Gas) real() (realGas, error) {
	pc, err := g.PseudoCritical()
	if err != nil {
		return realGas{}, err
	}
	return realGas{gasName, g.MolarMass(), float64(pc.Pressure), 1 / pc.Temperature.Kelvin()}, nil
}

// ZFactor returns the deviation factor; see the function ZFactor.
func (g Gas) ZFactor(p unit.Pressure, t unit.Temperature) (float64, error) {
	r, err := g.real()
	if err != nil {
		return 0, err
	}
	return r.zFactor(p, t)
}

// Density returns p·M/(Z·R·T).
func (g Gas) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	r, err := g.real()
	if err != nil {
		return 0, err
	}
	return r.density(p, t)
}

// Compressibility returns the isothermal compressibility 1/p − (∂Z/∂p)/Z, from
// the equation's own slope.
func (g Gas) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	r, err := g.real()
	if err != nil {
		return 0, err
	}
	return r.compressibility(p, t)
}

// Expansivity returns 1/T + (∂Z/∂T)/Z at constant pressure, from the equation's
// own slope.
func (g Gas) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	r, err := g.real()
	if err != nil {
		return 0, err
	}
	return r.expansivity(p, t)
}

// Viscosity returns GasViscosity at the gas's own density.
func (g Gas) Viscosity(p unit.Pressure, t unit.Temperature) (unit.Viscosity, error) {
	rho, err := g.Density(p, t)
	if err != nil {
		return 0, err
	}
	return gasViscosity(gasName, g.MolarMass(), rho, p, t)
}
