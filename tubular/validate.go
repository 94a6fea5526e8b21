package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Validate reports everything that is wrong with p: sizes that can't be, a
// weight below zero, and the faults of its material. Strengths may be zero
// here; what needs them says so.
func (p Pipe) Validate() error {
	f := fault.In("tubular")
	f.Add(fault.Above("OD", p.OD, 0))
	if !f.Any() && !(p.ID > 0 && p.ID < p.OD) {
		f.New("ID", "is %v; must be above 0 in and below the OD of %v", p.ID, p.OD)
	}
	f.Add(fault.AtLeast("Weight", p.Weight, 0), fault.At("Material", p.Material.Validate()))
	return f.Err()
}

// Validate reports everything that is wrong with m. Strengths may be zero.
func (m Material) Validate() error {
	f := fault.In("tubular")
	f.Add(fault.Above("Young", m.Young, 0))
	if !(m.Poisson >= 0 && m.Poisson < 0.5) {
		f.New("Poisson", "is %v; must be at least 0 and below 0.5", m.Poisson)
	}
	f.Add(fault.Finite("Expansion", m.Expansion), fault.Above("Density", m.Density, 0), fault.AtLeast("Yield", m.Yield, 0))
	if !finite(m.Tensile) || m.Tensile < 0 || m.Tensile != 0 && m.Tensile < m.Yield {
		f.New("Tensile", "is %v; must be at least the yield strength of %v, or 0 for not known", m.Tensile, m.Yield)
	}
	return f.Err()
}

// allFinite reports the numbers of p that aren't.
func (p Pipe) allFinite() error {
	m := p.Material
	return fault.Join("tubular", fault.Finite("OD", p.OD), fault.Finite("ID", p.ID), fault.Finite("Weight", p.Weight), fault.At("Material", fault.Join("tubular",
		fault.Finite("Young", m.Young), fault.Finite("Poisson", m.Poisson), fault.Finite("Expansion", m.Expansion),
		fault.Finite("Density", m.Density), fault.Finite("Yield", m.Yield), fault.Finite("Tensile", m.Tensile))))
}

// strength reports a yield strength that is missing where a rating needs one.
func (m Material) strength() error {
	if m.Yield == 0 {
		return fault.NewIn("tubular", "Yield", "is %v; must be above 0 psi for a rating", m.Yield)
	}
	return nil
}

// finiteResult reports a result that overflowed: inputs far from any pipe.
func finiteResult[Q unit.Scalar](name string, q Q) error {
	if finite(q) {
		return nil
	}
	return fault.NewIn("tubular", "", "%s is %v; must be finite: the inputs are too large or too small for a pipe", name, q)
}

func finite[Q ~float64](q Q) bool {
	return !math.IsNaN(float64(q)) && !math.IsInf(float64(q), 0)
}
