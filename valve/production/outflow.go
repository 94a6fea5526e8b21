package production

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Outflow is what stands above the topmost zone: FixedPressure, FixedRate,
// Tubing or OutflowTable.
type Outflow interface {
	// Validate reports what is wrong.
	Validate() error
	// prepare makes it ready for the solver.
	prepare() (outflow, error)
}

// FixedPressure holds the tubing at the topmost zone at a pressure, whichever
// way the well then flows.
type FixedPressure struct {
	Pressure unit.Pressure `json:"pressure"`
}

// FixedRate takes a rate from the well, or puts one in where it is negative.
// A rate of zero is the well shut in at surface, with whatever the zones give
// each other.
type FixedRate struct {
	Rate unit.FlowRate `json:"rate"`
}

// Tubing is a column of one density from the topmost zone to surface, with its
// friction and the pressure held at surface:
//
//	p = Surface + ρ·g·Height + loss(q)
//
// It takes production only: a well that can't lift its column has no flow.
type Tubing struct {
	Surface unit.Pressure `json:"surface"`
	Height  unit.Length   `json:"height"` // true vertical, topmost zone to surface
	Density unit.Density  `json:"density"`
	Loss    Loss          `json:"loss"`
}

// Validate reports a pressure that isn't finite or is below vacuum.
func (f FixedPressure) Validate() error {
	return fault.Join(scope, notVacuum("Pressure", f.Pressure))
}

// Validate reports a rate that isn't finite.
func (f FixedRate) Validate() error {
	return fault.Join(scope, fault.Finite("Rate", f.Rate))
}

// Validate reports what is out of range.
func (t Tubing) Validate() error {
	return fault.Join(scope, notVacuum("Surface", t.Surface), fault.At("Loss", t.Loss.Validate()),
		fault.AtLeast("Height", t.Height, 0), fault.AtLeast("Density", t.Density, 0))
}

// notVacuum wants a pressure that isn't below vacuum.
func notVacuum(path string, p unit.Pressure) error { return fault.AtLeast(path, p, -unit.Atmosphere) }

// outflow is an Outflow as the solver asks it.
type outflow struct {
	kind           kind
	pressure       float64 // at no flow
	linear, square float64 // loss per rate and rate squared
	rate           float64 // FixedRate's
	table          *table
}

type kind int

const (
	fixedPressure kind = iota
	fixedRate
	tubing
	tabled
)

// at is the pressure asked for at a rate, and its slope.
func (o *outflow) at(q float64) (p, slope float64) {
	switch o.kind {
	case tubing:
		a := q
		if q < 0 {
			a = -q
		}
		return o.pressure + (o.linear+o.square*a)*q, o.linear + 2*o.square*a
	case tabled:
		return o.table.at(q)
	case fixedPressure, fixedRate:
	}
	return o.pressure, 0
}

func (f FixedPressure) prepare() (outflow, error) {
	return outflow{kind: fixedPressure, pressure: float64(f.Pressure)}, nil
}

func (f FixedRate) prepare() (outflow, error) {
	return outflow{kind: fixedRate, rate: float64(f.Rate)}, nil
}

func (t Tubing) prepare() (outflow, error) {
	o := outflow{kind: tubing, pressure: float64(t.Surface + hydrostatics.Pressure(t.Density, t.Height))}
	o.linear, o.square = t.Loss.coefficients()
	return o, nil
}
