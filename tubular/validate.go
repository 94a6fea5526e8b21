package tubular

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// Validate reports everything that is wrong with p: sizes that can't be, a
// weight below zero, and the faults of its material. Strengths may be zero
// here; what needs them says so.
func (p Pipe) Validate() error {
	var faults []error
	fault := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("tubular: Pipe."+format, args...))
	}
	switch {
	case !finite(p.OD) || p.OD <= 0:
		fault("OD = %v: want above 0", p.OD)
	case !finite(p.ID) || p.ID <= 0 || p.ID >= p.OD:
		fault("ID = %v: want above 0 and below the OD of %v", p.ID, p.OD)
	}
	if !finite(p.Weight) || p.Weight < 0 {
		fault("Weight = %v: want above 0, or 0 for the plain-end weight", p.Weight)
	}
	return errors.Join(append(faults, p.Material.Validate())...)
}

// Validate reports everything that is wrong with m. Strengths may be zero.
func (m Material) Validate() error {
	var faults []error
	fault := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("tubular: Material."+format, args...))
	}
	if !finite(m.Young) || m.Young <= 0 {
		fault("Young = %v: want above 0", m.Young)
	}
	if !(m.Poisson >= 0 && m.Poisson < 0.5) {
		fault("Poisson = %v: want from 0 to below 0.5", m.Poisson)
	}
	if !finite(m.Expansion) {
		fault("Expansion = %v: want a finite number", m.Expansion)
	}
	if !finite(m.Density) || m.Density <= 0 {
		fault("Density = %v: want above 0", m.Density)
	}
	if !finite(m.Yield) || m.Yield < 0 {
		fault("Yield = %v: want 0 or more", m.Yield)
	}
	if !finite(m.Tensile) || m.Tensile < 0 || m.Tensile != 0 && m.Tensile < m.Yield {
		fault("Tensile = %v: want at least the yield strength of %v, or 0 for not known", m.Tensile, m.Yield)
	}
	return errors.Join(faults...)
}

// allFinite reports the numbers of p that aren't.
func (p Pipe) allFinite() error {
	m := p.Material
	return errors.Join(finiteInput("Pipe.OD", p.OD), finiteInput("Pipe.ID", p.ID), finiteInput("Pipe.Weight", p.Weight),
		finiteInput("Material.Young", m.Young), finiteInput("Material.Poisson", m.Poisson), finiteInput("Material.Expansion", m.Expansion),
		finiteInput("Material.Density", m.Density), finiteInput("Material.Yield", m.Yield), finiteInput("Material.Tensile", m.Tensile))
}

// strength reports a yield strength that is missing where a rating needs one.
func (m Material) strength() error {
	if m.Yield == 0 {
		return fmt.Errorf("tubular: Material.Yield = %v: want above 0 for a rating", m.Yield)
	}
	return nil
}

// finiteResult reports a result that overflowed: inputs far from any pipe.
func finiteResult[Q unit.Scalar](name string, q Q) error {
	if finite(q) {
		return nil
	}
	return fmt.Errorf("tubular: %s = %v: the inputs are too large or too small for a pipe", name, q)
}

func finite[Q ~float64](q Q) bool {
	return !math.IsNaN(float64(q)) && !math.IsInf(float64(q), 0)
}
