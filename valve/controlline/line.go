package controlline

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// Line is a control line from the panel to a device.
type Line struct {
	OD, Wall unit.Length
	Length   unit.Length // measured, from the panel
	Depth    unit.Length // true vertical, of the device under the panel; at most Length

	Yield   unit.Pressure // of the line's metal; only the ratings need it
	Young   unit.Pressure // zero stands for a wall that doesn't give
	Poisson float64

	// WallTolerance is the share by which the wall may be thinner, such as 0.10.
	WallTolerance float64

	Roughness unit.Length // of the bore; zero is smooth
}

// Liquid is what fills a line.
type Liquid struct {
	Density         unit.Density // at no pressure
	Viscosity       unit.Viscosity
	Compressibility unit.Compressibility
	Expansivity     unit.Expansivity // of volume; only Warming needs it
}

// ID returns the nominal inside diameter.
//
//	d = D − 2t
func (l Line) ID() unit.Length { return l.OD - 2*l.Wall }

// Capacity returns the nominal bore area, which is the volume per length.
//
//	A = π/4·d²
//
// Source: geometry.
func (l Line) Capacity() unit.Area {
	d := float64(l.ID())
	return unit.Area(math.Pi / 4 * d * d)
}

// Volume returns what the line holds at no pressure, A·L.
func (l Line) Volume() unit.Volume { return unit.Volume(float64(l.Capacity()) * float64(l.Length)) }

// Limits of what is taken for a control line.
const (
	minOD              = 0.1 * unit.Millimetre
	maxOD              = 100 * unit.Millimetre
	mostSlender        = 1000 // OD over wall
	maxLength          = 20 * unit.Kilometre
	minModulus         = 0.01 * unit.Megapascal
	maxModulus         = 1000 * 1000 * unit.Megapascal
	maxDensity         = 3000 * unit.KilogramPerCubicMetre
	minViscosity       = 1e-9 * unit.PascalSecond
	maxViscosity       = 100 * unit.PascalSecond
	maxCompressibility = 0.01 * unit.PerMegapascal
	maxExpansivity     = 0.01 * unit.PerKelvin
)

// Check reports everything that is wrong with l. Young's modulus and yield
// strength may be zero here; what needs them says so.
func (l Line) Check() error {
	var f faults
	within(&f, "OD", l.OD, minOD, maxOD)
	within(&f, "wall", l.Wall, l.OD/mostSlender, l.OD/2)
	if !(l.ID() > 0) {
		f.add("wall is %v; with an OD of %v it must leave a bore", l.Wall, l.OD)
	}
	within(&f, "length", l.Length, 0, maxLength)
	if !(l.Depth >= 0 && l.Depth <= l.Length) {
		f.add("depth is %v; it must be zero to the length of %v", l.Depth, l.Length)
	}
	if l.Young != 0 {
		within(&f, "Young's modulus", l.Young, minModulus, maxModulus)
	}
	if l.Yield != 0 {
		within(&f, "yield strength", l.Yield, minModulus, maxModulus)
	}
	if !(l.Poisson >= 0 && l.Poisson <= 0.5) {
		f.add("Poisson's ratio is %v; it must be 0 to 0.5", l.Poisson)
	}
	if !(l.WallTolerance >= 0 && l.WallTolerance < 0.5) {
		f.add("wall tolerance is %v; it must be 0 or more and less than 0.5", l.WallTolerance)
	}
	if !(l.Roughness >= 0 && (l.Roughness < l.ID()/2 || l.ID() <= 0)) {
		f.add("roughness is %v; it must be zero or more and less than the bore's radius", l.Roughness)
	}
	return errors.Join(f...)
}

// Check reports everything that is wrong with a liquid.
func (q Liquid) Check() error {
	var f faults
	within(&f, "density", q.Density, 0, maxDensity)
	within(&f, "viscosity", q.Viscosity, minViscosity, maxViscosity)
	if !(q.Compressibility >= 0 && q.Compressibility <= maxCompressibility) {
		f.add("compressibility is %v; it must be zero to %v", q.Compressibility, maxCompressibility)
	}
	if !(q.Expansivity >= 0 && q.Expansivity <= maxExpansivity) {
		f.add("expansivity is %v; it must be zero to %v", q.Expansivity, maxExpansivity)
	}
	return errors.Join(f...)
}

type faults []error

func (f *faults) add(format string, args ...any) {
	*f = append(*f, fmt.Errorf("controlline: "+format, args...))
}

// within wants v above low and at most high.
func within[Q unit.Scalar](f *faults, name string, v, low, high Q) {
	if !(v > low && v <= high) {
		f.add("%s is %v; it must be above %v and at most %v", name, v, low, high)
	}
}

// finite wants v finite and not negative.
func finite[Q unit.Scalar](f *faults, name string, v Q) {
	if !(v >= 0) || math.IsInf(float64(v), 0) {
		f.add("%s is %v; it must be zero or more, and finite", name, v)
	}
}

// under adds what another check found, under a name.
func (f *faults) under(name string, err error) {
	if err != nil {
		*f = append(*f, fmt.Errorf("%s: %w", name, err))
	}
}
