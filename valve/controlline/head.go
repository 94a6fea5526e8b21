package controlline

import (
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Head returns the pressure that the column in the line adds at the device.
//
//	Δp = −ln(1 − c·ρ0·g·h)/c        and ρ0·g·h where c is zero
//
//	ρ0  density at the panel
//	c   compressibility of the liquid
//	h   true vertical depth
//
// It follows from dp/dz = ρ·g with ρ = ρ0·exp(c·Δp). In 3,000 m of control
// fluid with a bulk modulus of 1.8 GPa it is 0.7 % more than ρ0·g·h.
//
// It is an error if line or liquid is out of range.
//
// Source: hydrostatics of a liquid of constant compressibility.
func (l Line) Head(q LineFluid) (unit.Pressure, error) {
	if err := fault.Join(scope, l.Validate(), fault.At("Liquid", q.Validate())); err != nil {
		return 0, err
	}
	p := float64(hydrostatics.Pressure(q.Density, l.TVD))
	c := float64(q.Compressibility)
	switch {
	case c*p < 1e-12:
		return unit.Pressure(p), nil
	case c*p >= 0.5:
		return 0, fault.NewIn(scope, "Liquid.Compressibility", "is %v under a column of %v; must be below 0.5 when multiplied with it",
			q.Compressibility, unit.Pressure(p))
	}
	return unit.Pressure(-math.Log1p(-c*p) / c), nil
}

// PanelFor returns the pressure at the panel that gives a pressure at the device
// with nothing moving in the line; negative where the column alone gives more.
//
//	ps = pd − Δp
//
// Errors as for Head, and for a pressure that isn't zero or more, and finite.
//
// Source: see Line.Head.
func (l Line) PanelFor(q LineFluid, atDevice unit.Pressure) (unit.Pressure, error) {
	head, err := l.Head(q)
	if err := fault.Join(scope, fault.AtLeast("atDevice", atDevice, 0), err); err != nil {
		return 0, err
	}
	return atDevice - head, nil
}
