package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Rupture holds what the ductile rupture pressure of a pipe needs beyond its
// size and strength.
type Rupture struct {
	// Imperfection is the depth of the deepest crack-like imperfection that
	// inspection could have missed: 5 % or 12.5 % of the nominal wall for API's
	// inspection levels.
	Imperfection unit.Length `json:"imperfection"`
	// BurstFactor is ka of the standard: 1.0 for quenched and tempered or 13Cr
	// steel, 2.0 where nothing is known. Zero stands for 2.0.
	BurstFactor float64 `json:"burst_factor"`
	// Hardening is the exponent n of the stress-strain curve; zero stands for
	// HardeningExponent of the yield strength.
	Hardening float64 `json:"hardening"`
}

// HardeningExponent returns the strain hardening exponent that goes with a
// yield strength.
//
//	n = 0.1693 - 8.12e-7 Y   (Y in psi)
//
// Valid for API grades, 40,000 to 125,000 psi.
//
// Source: ISO/TR 10400:2007, clause 7; from memory.
func HardeningExponent(yield unit.Pressure) float64 {
	return 0.1693 - 8.12e-7*yield.In(unit.PSI)
}

// DuctileRupture returns the inside pressure at which the pipe body ruptures
// with capped ends, nothing outside: the end of the pipe, not a rating to work
// to.
//
//	P = 2 kdr U (0.875 t - ka a) / (D - (0.875 t - ka a))
//	kdr = (1/2)^(n+1) + (1/√3)^(n+1)
//
// U is the tensile strength and a the imperfection. It is an error when U is not
// given or nothing is left of the wall.
//
// Source: ISO/TR 10400:2007, 7.5 (Klever and Stewart 1998); from memory.
func (p Pipe) DuctileRupture(r Rupture) (unit.Pressure, error) {
	f := fault.In("tubular")
	f.Add(p.rateable(), fault.AtLeast("Rupture.Imperfection", r.Imperfection, 0),
		fault.Between("Rupture.BurstFactor", r.BurstFactor, 0, 2), fault.Between("Rupture.Hardening", r.Hardening, 0, 0.5))
	if p.Material.Tensile == 0 {
		f.New("Material.Tensile", "is %v; must be above 0 psi for rupture", p.Material.Tensile)
	}
	if err := f.Err(); err != nil {
		return 0, err
	}
	ka, n := r.BurstFactor, r.Hardening
	if ka == 0 {
		ka = 2
	}
	if n == 0 {
		n = math.Max(0, HardeningExponent(p.Material.Yield))
	}
	left := WallTolerance*float64(p.Wall()) - ka*float64(r.Imperfection)
	if left <= 0 {
		return 0, fault.NewIn("tubular", "Rupture.Imperfection", "is %v; must leave something of a wall of %v", r.Imperfection, p.Wall().Rounded(5))
	}
	kdr := math.Pow(0.5, n+1) + math.Pow(1/math.Sqrt(3), n+1)
	P := unit.Pressure(2 * kdr * float64(p.Material.Tensile) * left / (float64(p.OD) - left))
	return P, finiteResult("rupture pressure", P)
}
