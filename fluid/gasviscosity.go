package fluid

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Range of gasViscosity.
const (
	viscosityPGreatest = 8000 * unit.PSI
	viscosityTLeast    = 100 // °F
	viscosityTGreatest = 340 // °F
)

// gasViscosity returns the viscosity of natural gas of molar mass M at density
// ρ:
//
//	μ = 1e-4·K·exp(X·ρ^Y) cP
//	K = (9.4 + 0.02·M)·T^1.5/(209 + 19·M + T)
//	X = 3.5 + 986/T + 0.01·M
//	Y = 2.4 − 0.2·X
//
//	M  molar mass, g/mol
//	T  temperature, °R
//	ρ  density, g/cm³
//
// Range: 100 to 340 °F, up to 8,000 psia; measured from 100 psia, below which it
// passes to its thin-gas limit. Standard deviation 2.7 %, worst 9 %; sour gas is
// worse.
//
// Source: Lee, Gonzalez and Eakin, J. Pet. Tech. 18(8), 1966, SPE-1340.
func gasViscosity(of string, molarMass float64, rho unit.Density, p unit.Pressure, t unit.Temperature) (unit.Viscosity, error) {
	least, greatest := unit.Fahrenheit(viscosityTLeast), unit.Fahrenheit(viscosityTGreatest)
	var faults []error
	if !within(t.Kelvin(), least.Kelvin(), greatest.Kelvin()) {
		faults = append(faults, outside(of+" viscosity", "temperature", t, least, greatest))
	}
	if P := p + unit.Atmosphere; !within(float64(P), 0, float64(viscosityPGreatest)) {
		faults = append(faults, outside(of+" viscosity", "pressure", p, -unit.Atmosphere, viscosityPGreatest-unit.Atmosphere))
	}
	if faults != nil {
		return 0, fault.Join(scope, faults...)
	}
	M, T := molarMass*1000, t.Rankine()
	K := (9.4 + 0.02*M) * T * math.Sqrt(T) / (209 + 19*M + T)
	X := 3.5 + 986/T + 0.01*M
	Y := 2.4 - 0.2*X
	return unit.Viscosity(1e-4*K*math.Exp(X*math.Pow(rho.In(unit.GramPerCubicCentimetre), Y))) * unit.Centipoise, nil
}
