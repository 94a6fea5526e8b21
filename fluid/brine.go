package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Brine is a clear brine known by its density at 70 °F and atmospheric
// pressure, with mean coefficients of volume:
//
//	ρ(p, T) = ρ70 / ((1 + α·(T − 70 °F))·(1 − β·p))
//
//	ρ70  density at 70 °F and 0 gauge
//	α    volumetric thermal expansion, 1/°F
//	β    isothermal compressibility, 1/psi
//	p    gauge pressure
//
// It is the relative-volume form of API RP 13J's corrections in lb/gal per
// 100 °F and per 1,000 psi, whose coefficients are ρ70·α and ρ70·β; the two
// forms part by the product of small terms, less than 0.2 % at 12,000 psi and
// 250 °F. BrineByWeight finds published coefficients.
//
// Range: the coefficients were measured from 76 to 345 °F and up to 22,000 psi;
// from 32 °F up to there they are carried on unchanged, as is usual. Freezing
// and crystallisation are not looked at: see Crystallisation.
//
// Errors: *RangeError outside 32 to 345 °F or −1 atm to 22,000 psi, or where
// the density isn't positive, α lies outside 0 to 0.001 1/°F or β outside 0 to
// 1e-5 1/psi. The zero value is an error.
//
// Source: API RP 13J, Testing of Heavy Brines; Krook and Boyce, SPE-12490
// (1984).
type Brine struct {
	At70F       unit.Density         `json:"at70_f"`      // at 70 °F and atmospheric pressure
	Expansion   unit.Expansivity     `json:"expansion"`   // of volume
	Compression unit.Compressibility `json:"compression"` // isothermal
}

// Range of Brine and the temperature of its stated density.
var (
	brineBase        = unit.Fahrenheit(70)
	brineLeast       = unit.Fahrenheit(32)
	brineGreatest    = unit.Fahrenheit(345)
	brineExpansion   = 1e-3 * unit.PerFahrenheit
	brineCompression = 1e-5 * unit.PerPSI
)

const brinePressure = 22000 * unit.PSI

// Density returns the density at gauge pressure p and temperature t.
//
//	ρ = ρ70/((1 + α·(T − 70 °F))·(1 − β·p))
//
// Source: the linear coefficients of API RP 13J, as Brine says.
func (b Brine) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if !b.covers(p, t) {
		return 0, b.fault(p, t)
	}
	return b.At70F / unit.Density((1+float64(b.Expansion)*float64(t.Sub(brineBase)))*(1-float64(b.Compression)*float64(p))), nil
}

// Compressibility returns −(1/V)·(∂V/∂p) of the same formula: β/(1 − β·p).
func (b Brine) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	if !b.covers(p, t) {
		return 0, b.fault(p, t)
	}
	return b.Compression / unit.Compressibility(1-float64(b.Compression)*float64(p)), nil
}

// Expansivity returns (1/V)·(∂V/∂T) of the same formula: α/(1 + α·(T − 70 °F)).
func (b Brine) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	if !b.covers(p, t) {
		return 0, b.fault(p, t)
	}
	return b.Expansion / unit.Expansivity(1+float64(b.Expansion)*float64(t.Sub(brineBase))), nil
}

func (b Brine) covers(p unit.Pressure, t unit.Temperature) bool {
	return positive("", "", b.At70F, float64(b.At70F)) == nil &&
		within(float64(b.Expansion), 0, float64(brineExpansion)) &&
		within(float64(b.Compression), 0, float64(brineCompression)) &&
		within(float64(p), -float64(unit.Atmosphere), float64(brinePressure)) &&
		within(t.Kelvin(), brineLeast.Kelvin(), brineGreatest.Kelvin())
}

func (b Brine) fault(p unit.Pressure, t unit.Temperature) error {
	faults := []error{positive("brine", "At70F", b.At70F, float64(b.At70F))}
	if !within(float64(b.Expansion), 0, float64(brineExpansion)) {
		faults = append(faults, outside("brine", "Expansion", b.Expansion, unit.Expansivity(0), brineExpansion))
	}
	if !within(float64(b.Compression), 0, float64(brineCompression)) {
		faults = append(faults, outside("brine", "Compression", b.Compression, unit.Compressibility(0), brineCompression))
	}
	if !within(float64(p), -float64(unit.Atmosphere), float64(brinePressure)) {
		faults = append(faults, outside("brine", "pressure", p, -unit.Atmosphere, brinePressure))
	}
	if !within(t.Kelvin(), brineLeast.Kelvin(), brineGreatest.Kelvin()) {
		faults = append(faults, outside("brine", "temperature", t, brineLeast, brineGreatest))
	}
	return fault.Join(scope, faults...)
}
