package controlline

import (
	"errors"

	"completion.example/hydrostatics/unit"
)

// Ends says how a line is held lengthwise.
type Ends uint8

// Kinds of ends.
const (
	Clamped Ends = iota // to the tubing: it can't change its length
	Free                // it carries its own end load
)

// WallCompliance returns how much the bore grows with inside pressure, as a
// share of the volume held.
//
//	clamped   2·(1 + ν)·(b² + (1 − 2ν)·a²) / (E·(b² − a²))
//	free      (2·(1 + ν)·b² + 3·(1 − 2ν)·a²) / (E·(b² − a²))
//
//	a, b  nominal inside and outside radius
//	E, ν  Young's modulus and Poisson's ratio
//
// It is zero for a Young's modulus of zero, which stands for a wall that doesn't
// give. Source: Lamé's thick cylinder (Timoshenko, Strength of Materials, part
// II): twice the hoop strain at the bore plus the axial strain, axial strain
// zero when clamped.
func (l Line) WallCompliance(ends Ends) unit.Compressibility {
	if l.Young == 0 {
		return 0
	}
	E, nu := float64(l.Young), l.Poisson
	a, b := float64(l.ID())/2, float64(l.OD)/2
	axial := (1 - 2*nu) * 2 * (1 + nu) * a * a
	if ends == Free {
		axial = 3 * (1 - 2*nu) * a * a
	}
	return unit.Compressibility((2*(1+nu)*b*b + axial) / (E * (b*b - a*a)))
}

// Storage is what a line takes up when it is pressured, before anything moves.
type Storage struct {
	Line  unit.Volume // held at no pressure
	Fluid unit.Volume // taken up because the liquid is compressed
	Wall  unit.Volume // taken up because the bore grows
}

// Total is the volume to pump, and what comes back when the line is bled off.
func (s Storage) Total() unit.Volume { return s.Fluid + s.Wall }

// Storage returns the volume that a rise of pressure takes up in a clamped line.
//
//	ΔV = V·(c + cw)·Δp
//
//	V   volume of the line
//	c   compressibility of the liquid
//	cw  WallCompliance
//	Δp  rise of pressure all along the line
//
// The volume counts at the line's pressure; at the panel's tank it is about
// c·Δp larger, at 3,000 psi 1 %.
//
// It is an error if line, liquid or rise is out of range. Source: definition of
// compressibility.
func (l Line) Storage(q Liquid, rise unit.Pressure) (Storage, error) {
	var f faults
	f.under("line", l.Check())
	f.under("liquid", q.Check())
	finite(&f, "rise of pressure", rise)
	if err := errors.Join(f...); err != nil {
		return Storage{}, err
	}
	V, p := float64(l.Volume()), float64(rise)
	return Storage{
		Line:  unit.Volume(V),
		Fluid: unit.Volume(V * float64(q.Compressibility) * p),
		Wall:  unit.Volume(V * float64(l.WallCompliance(Clamped)) * p),
	}, nil
}

// Warming is a blocked line that warms.
type Warming struct {
	Rise unit.Pressure // of the pressure in the line
	Per  unit.Pressure // the same, per kelvin
	Free unit.Volume   // what would come out of the line if it were open
}

// Warming returns the rise of pressure in a line that is shut at both ends while
// its temperature rises; a fall is negative.
//
//	Δp = (αf − 3·αw)·ΔT / (c + cw)
//
//	αf  expansivity of the liquid, of volume
//	αw  expansivity of the wall, of length
//	c   compressibility of the liquid, cw WallCompliance
//
// Properties are constant over the rise; oil-based control fluids expand more
// when hot. A line full of liquid at high temperature and no gas is meant: where
// the answer is below minus the pressure held, the liquid boils or parts
// instead.
//
// It is an error if line or liquid is out of range, or if nothing gives: liquid
// and wall without compressibility.
//
// Source: trapped liquid, API Std 521 form with the thick wall in place of
// D/(E·t).
func (l Line) Warming(q Liquid, wall unit.Expansivity, rise unit.TemperatureDifference) (Warming, error) {
	var f faults
	f.under("line", l.Check())
	f.under("liquid", q.Check())
	if !(wall >= 0 && wall <= maxExpansivity) {
		f.add("expansivity of the wall is %v; it must be zero to %v", wall, maxExpansivity)
	}
	if !(rise >= -1000 && rise <= 1000) {
		f.add("rise of temperature is %v; it must be -1000 to 1000 K", rise)
	}
	soft := float64(q.Compressibility) + float64(l.WallCompliance(Clamped))
	if len(f) == 0 && !(soft > 0) {
		f.add("neither liquid nor wall gives: give a compressibility or a Young's modulus")
	}
	if err := errors.Join(f...); err != nil {
		return Warming{}, err
	}
	swell := float64(q.Expansivity) - 3*float64(wall)
	return Warming{
		Rise: unit.Pressure(swell * float64(rise) / soft),
		Per:  unit.Pressure(swell / soft),
		Free: unit.Volume(swell * float64(rise) * float64(l.Volume())),
	}, nil
}
