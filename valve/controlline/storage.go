package controlline

import (
	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// WallCompliance returns how much the bore grows with inside pressure, as a
// share of the volume held: confined.Tube's BoreCompliance of a thick wall. A
// line clamped to the tubing has fixed ends, a free one with plugged ends closed
// ones.
//
// It is zero for a Young's modulus of zero, which stands for a wall that doesn't
// give.
func (l Line) WallCompliance(ends confined.Ends) unit.Compressibility {
	t := confined.Tube{OD: l.OD, ID: l.ID(), Young: l.Young, Poisson: l.Poisson, Rigid: l.Young == 0}
	return t.BoreCompliance(ends)
}

// Storage is what a line takes up when it is pressured, before anything moves.
type Storage struct {
	Line  unit.Volume `json:"line"`  // held at no pressure
	Fluid unit.Volume `json:"fluid"` // taken up because the liquid is compressed
	Wall  unit.Volume `json:"wall"`  // taken up because the bore grows

	line     Line
	rise     unit.Pressure
	c, walls unit.Compressibility
}

// Total is the volume to pump, and what comes back when the line is bled off.
//
//	V = fluid + wall
//
// Range: any volumes; they aren't checked.
//
// Source: definition.
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
func (l Line) Storage(q LineFluid, rise unit.Pressure) (Storage, error) {
	f := fault.In(scope)
	f.Add(l.Validate())
	f.At("Liquid", q.Validate())
	f.Add(fault.AtLeast("rise", rise, 0))
	if err := f.Err(); err != nil {
		return Storage{}, err
	}
	V, p, walls := float64(l.Volume()), float64(rise), l.WallCompliance(confined.EndsFixed)
	return Storage{
		line: l, rise: rise, c: q.Compressibility, walls: walls,
		Line:  unit.Volume(V),
		Fluid: unit.Volume(V * float64(q.Compressibility) * p),
		Wall:  unit.Volume(V * float64(walls) * p),
	}, nil
}

// Warming is a blocked line that warms.
type Warming struct {
	Rise unit.Pressure `json:"rise"` // of the pressure in the line
	Per  unit.Pressure `json:"per"`  // the same, per kelvin
	Free unit.Volume   `json:"free"` // what would come out of the line if it were open

	liquid   unit.Expansivity
	wall     unit.Expansivity
	warming  unit.TemperatureDifference
	c, walls unit.Compressibility
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
// The line and the tubing it is clamped to warm alike and may lengthen.
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
func (l Line) Warming(q LineFluid, wall unit.Expansivity, rise unit.TemperatureDifference) (Warming, error) {
	f := fault.In(scope)
	f.Add(l.Validate())
	f.At("Liquid", q.Validate())
	f.Add(fault.Between("wall", wall, 0, maxExpansivity), fault.Between("rise", rise, -1000, 1000))
	soft := float64(q.Compressibility) + float64(l.WallCompliance(confined.EndsFixed))
	if !f.Any() && !(soft > 0) {
		f.New("", "neither liquid nor wall gives; must have a compressibility or a Young's modulus")
	}
	if err := f.Err(); err != nil {
		return Warming{}, err
	}
	per := confined.PressurePerDegree(q.Expansivity, 3*wall, q.Compressibility, l.WallCompliance(confined.EndsFixed))
	return Warming{
		liquid: q.Expansivity, wall: wall, warming: rise, c: q.Compressibility, walls: l.WallCompliance(confined.EndsFixed),
		Rise: unit.Pressure(per * float64(rise)),
		Per:  unit.Pressure(per),
		Free: unit.Volume(per * float64(rise) * soft * float64(l.Volume())),
	}, nil
}
