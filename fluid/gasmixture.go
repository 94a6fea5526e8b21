package fluid

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// GasMixture is gas known by its composition: mole fractions that add up to 1.
//
// Pseudo-critical properties are molar averages (Kay's rule) with the
// correction of WichertAziz; density, Z and viscosity then follow as for Gas.
// For pure nitrogen or methane use Nitrogen and Methane, which are a hundred
// times closer.
//
// Range and accuracy as for Gas: Z within about 2 % where carbon dioxide,
// hydrogen sulphide and propane are the smaller part. Fractions whose sum is
// off by more than 1e-4 are an error; smaller rounding is scaled away.
//
// Source: Kay, Ind. Eng. Chem. 28 (1936) 1014.
type GasMixture struct {
	Methane          float64 `json:"methane"`
	Ethane           float64 `json:"ethane"`
	Propane          float64 `json:"propane"`
	Nitrogen         float64 `json:"nitrogen"`
	CarbonDioxide    float64 `json:"carbon_dioxide"`
	HydrogenSulphide float64 `json:"hydrogen_sulphide"`
}

const (
	mixtureName    = "gas mixture"
	sumOfFractions = 1e-4 // how far from 1
)

type component struct {
	name     string
	fraction float64
	pure     pure
}

func (m GasMixture) components() [6]component {
	return [6]component{
		{"methane", m.Methane, pureMethane}, {"ethane", m.Ethane, pureEthane}, {"propane", m.Propane, purePropane},
		{"nitrogen", m.Nitrogen, pureNitrogen}, {"carbon dioxide", m.CarbonDioxide, pureCarbonDioxid},
		{"hydrogen sulphide", m.HydrogenSulphide, pureHydrogenSulf},
	}
}

// sum returns the sum of the fractions, or what is wrong with them.
func (m GasMixture) sum() (float64, error) {
	var faults []error
	sum := 0.0
	for _, c := range m.components() {
		if !within(c.fraction, 0, 1) {
			faults = append(faults, fraction(mixtureName, c.name, c.fraction, 1))
		}
		sum += c.fraction
	}
	if !(math.Abs(sum-1) <= sumOfFractions) {
		faults = append(faults, outside(mixtureName, "sum of the mole fractions", number(sum), number(1-sumOfFractions), number(1+sumOfFractions)))
	}
	return sum, fault.Join(scope, faults...)
}

// MolarMass returns the mass of one mole, kg/mol: Σ yi·Mi.
//
// Range: fractions from zero up, which aren't checked here; a sum that isn't 1
// is scaled away, and none at all gives NaN.
//
// Source: mixtures of moles.
func (m GasMixture) MolarMass() float64 {
	sum, mass := 0.0, 0.0
	for _, c := range m.components() {
		sum += c.fraction
		mass += c.fraction * c.pure.molarMass
	}
	return mass / sum
}

// Gravity returns the molar mass over that of air.
//
//	γ = M/Ma
//
// Range: as MolarMass.
//
// Source: definition.
func (m GasMixture) Gravity() float64 { return m.MolarMass() / airMolarMass }

// PseudoCritical returns Σ yi·pi and Σ yi·Ti, corrected by WichertAziz.
//
// Source: Kay's rule, then WichertAziz.
func (m GasMixture) PseudoCritical() (PseudoCritical, error) {
	sum, err := m.sum()
	if err != nil {
		return PseudoCritical{}, err
	}
	p, t := 0.0, 0.0
	for _, c := range m.components() {
		p += c.fraction / sum * c.pure.pressure
		t += c.fraction / sum * c.pure.temperature
	}
	return PseudoCritical{unit.Pressure(p), unit.Kelvin(t)}.WichertAziz(m.CarbonDioxide/sum, m.HydrogenSulphide/sum)
}

func (m GasMixture) real() (realGas, error) {
	pc, err := m.PseudoCritical()
	if err != nil {
		return realGas{}, err
	}
	return realGas{mixtureName, m.MolarMass(), float64(pc.Pressure), 1 / pc.Temperature.Kelvin()}, nil
}

// ZFactor returns the deviation factor; see the function ZFactor.
func (m GasMixture) ZFactor(p unit.Pressure, t unit.Temperature) (float64, error) {
	r, err := m.real()
	if err != nil {
		return 0, err
	}
	return r.zFactor(p, t)
}

// Density returns p·M/(Z·R·T).
func (m GasMixture) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	r, err := m.real()
	if err != nil {
		return 0, err
	}
	return r.density(p, t)
}

// Compressibility returns the isothermal compressibility 1/p − (∂Z/∂p)/Z.
func (m GasMixture) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	r, err := m.real()
	if err != nil {
		return 0, err
	}
	return r.compressibility(p, t)
}

// Expansivity returns 1/T + (∂Z/∂T)/Z at constant pressure.
func (m GasMixture) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	r, err := m.real()
	if err != nil {
		return 0, err
	}
	return r.expansivity(p, t)
}

// Viscosity returns the viscosity of natural gas by Lee, Gonzalez and Eakin;
// see Gas.
func (m GasMixture) Viscosity(p unit.Pressure, t unit.Temperature) (unit.Viscosity, error) {
	rho, err := m.Density(p, t)
	if err != nil {
		return 0, err
	}
	return gasViscosity(mixtureName, m.MolarMass(), rho, p, t)
}
