package hydrostatics

import "completion.example/hydrostatics/unit"

// Fluid is all that a column asks of what it is filled with.
//
// Density takes gauge pressure. It returns an error where the state lies
// outside the fluid's range.
type Fluid interface {
	Density(p unit.Pressure, t unit.Temperature) (unit.Density, error)
}
