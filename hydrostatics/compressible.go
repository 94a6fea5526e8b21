package hydrostatics

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Uniform is what a Fluid offers as well if its density may be the same at
// every pressure and temperature: a column then takes the exact closed form
// and needs no temperature.
type Uniform interface {
	// UniformDensity returns that density; ok is false where it varies after all.
	UniformDensity() (rho unit.Density, ok bool)
}

// uniform returns the constant density of a fluid that has one.
func uniform(f Fluid) (unit.Density, bool) {
	if u, ok := f.(Uniform); ok {
		return u.UniformDensity()
	}
	return 0, false
}

// Incompressible is a fluid of constant density: the mud weight on the sheet.
// Zero stands for an empty hole. Where a fluid's compressibility is asked for
// as well, fluid.Constant is its like.
type Incompressible unit.Density

// Density returns the constant.
func (f Incompressible) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	if err := f.Validate(); err != nil {
		return 0, err
	}
	return unit.Density(f), nil
}

// UniformDensity returns the constant.
func (f Incompressible) UniformDensity() (unit.Density, bool) { return unit.Density(f), true }

// Validate reports a density that is not zero or more.
func (f Incompressible) Validate() error {
	return fault.Join(scope, fault.AtLeast("Density", unit.Density(f), 0))
}

// SlightlyCompressible is a liquid known by its density at one state, with
// constant compressibility and thermal expansivity:
//
//	ρ = ρ0·exp[c·(p − p0) − α·(T − T0)]
//
// ρ0 in kg/m³ at p0 (Pa, gauge) and T0 (K), c in 1/Pa, α (volumetric) in 1/K.
// Columns of it have a closed form. It serves brines and oils over ranges where
// c and α hold, and is the yardstick for the numerical columns.
//
// Source: the definitions of c = (1/ρ)·∂ρ/∂p and α = −(1/ρ)·∂ρ/∂T.
type SlightlyCompressible struct {
	Reference       unit.Density         `json:"reference"`
	Pressure        unit.Pressure        `json:"pressure"`
	Temperature     unit.Temperature     `json:"temperature"`
	Compressibility unit.Compressibility `json:"compressibility"`
	Expansivity     unit.Expansivity     `json:"expansivity"`
}

// Density returns the density at a state.
//
//	ρ = ρ0·exp(c·(p − p0) − α·(T − T0))
//
// Source: constant compressibility and expansivity, integrated.
func (f SlightlyCompressible) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	rho := f.at(float64(p), t)
	if !(rho > 0 && rho <= math.MaxFloat64) {
		return 0, fault.Join(scope, f.Validate(), fault.New("", "no density at %v and %v", p, t))
	}
	return unit.Density(rho), nil
}

// at is the density as a plain number.
func (f *SlightlyCompressible) at(p float64, t unit.Temperature) float64 {
	x := float64(f.Compressibility)*(p-float64(f.Pressure)) - float64(f.Expansivity)*float64(t.Sub(f.Temperature))
	return float64(f.Reference) * exp(x)
}

// UniformDensity returns the density if neither pressure nor temperature
// changes it.
func (f SlightlyCompressible) UniformDensity() (unit.Density, bool) {
	return f.Reference, f.Compressibility == 0 && f.Expansivity == 0
}

// Validate reports everything that is wrong with f.
func (f SlightlyCompressible) Validate() error {
	faults := fault.In(scope)
	faults.Add(fault.Above("Reference", f.Reference, 0), fault.Finite("Pressure", f.Pressure),
		fault.AtLeast("Compressibility", f.Compressibility, 0), fault.Finite("Expansivity", f.Expansivity))
	if f.Expansivity != 0 {
		faults.Add(fault.AboveZero("Temperature", f.Temperature))
	}
	return faults.Err()
}
