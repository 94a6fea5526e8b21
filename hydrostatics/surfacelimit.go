package hydrostatics

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
)

// AllowableSurfacePressure returns the greatest surface pressure that a
// formation bears under a column of constant density:
//
//	pmax = (Gf − ρ·g)·h
//
// Gf is the fracture gradient counted from surface, ρ the column's density, h
// the true vertical depth of the formation, as a rule the casing shoe. A
// negative result says that the column alone breaks it down.
//
// Range: any numbers; nothing is checked.
//
// Source: Lapeyrouse 2nd ed., ch. 4, in SI.
func AllowableSurfacePressure(fracture unit.Gradient, rho unit.Density, tvd unit.Length) unit.Pressure {
	return unit.Pressure(float64(fracture-Gradient(rho)) * float64(tvd))
}

// AllowableDensity returns the greatest density of a column that a formation
// bears under a surface pressure, the inverse of AllowableSurfacePressure:
//
//	ρmax = (Gf·h − p)/(g·h)
//
// Gf is the fracture gradient counted from surface, p the surface pressure, h
// the true vertical depth of the formation, not zero. With no surface pressure
// it is the fracture gradient as a mud weight.
//
// Source: Bourgoyne et al., Applied Drilling Engineering, 1986, ch. 4, in SI.
func AllowableDensity(fracture unit.Gradient, surface unit.Pressure, tvd unit.Length) unit.Density {
	return EquivalentDensity(PressureOf(fracture, tvd)-surface, tvd)
}

// WeakPoint is an item that limits the pressure inside the well at its depth:
// casing, tubing, a connection, a plug, a packer, a formation.
type WeakPoint struct {
	Name    string        `json:"name"`
	TVD     unit.Length   `json:"tvd"`
	Rating  unit.Pressure `json:"rating"`  // inside minus outside
	Share   float64       `json:"share"`   // of the rating that may be used, such as 0.8; more than 0, at most 1
	Outside unit.Pressure `json:"outside"` // at that depth; zero for a formation
}

// FracturePoint returns a formation as a weak point: its rating is the
// fracture pressure at its depth.
func FracturePoint(name string, fracture unit.Gradient, tvd unit.Length) WeakPoint {
	return WeakPoint{Name: name, TVD: tvd, Rating: PressureOf(fracture, tvd), Share: 1}
}

// Allowed returns the greatest pressure inside at the point's depth:
//
//	p = po + s·R
//
// Range: any numbers; the share is not checked here.
//
// Source: definition of the share.
func (w WeakPoint) Allowed() unit.Pressure {
	return w.Outside + unit.Pressure(w.Share*float64(w.Rating))
}

// PointLimit is a weak point with what it allows.
type PointLimit struct {
	WeakPoint
	Inside      unit.Pressure `json:"inside"`      // greatest, at its depth
	Hydrostatic unit.Pressure `json:"hydrostatic"` // of the column from surface to there
	Surface     unit.Pressure `json:"surface"`     // greatest, at the top of the column
}

// SurfaceLimit is the greatest surface pressure of a well.
type SurfaceLimit struct {
	Pressure unit.Pressure `json:"pressure"` // negative: the column alone is too heavy
	Weakest  int           `json:"weakest"`  // index of the governing point
	Points   []PointLimit  `json:"points"`
}

// MaximumSurfacePressure returns the greatest pressure at the top of a column
// that none of the points forbids: from each point's limit up through the
// column, and the least of all.
//
//	pmax,i = poi + si·Ri − Δp(0 to hi)
//
// Only the column's layers count, not its reference pressure. Where the column
// is compressible its own weight is taken at the pressure of the limit.
//
// Errors: no points, faults of them, ErrOutsideColumn; those of Column.Carry.
//
// Source: Lapeyrouse 2nd ed., ch. 4 for the formation; the same balance for
// the rest.
func MaximumSurfacePressure(column *Column, points []WeakPoint) (SurfaceLimit, error) {
	if len(points) == 0 {
		return SurfaceLimit{}, fault.NewIn(scope, "points", "is empty; must be one weak point or more: nothing limits the surface pressure")
	}
	f := fault.In(scope)
	for i, w := range points {
		f.AtIndex("points", i, fault.Join("", column.holds("TVD", w.TVD), fault.Above("Rating", w.Rating, 0),
			fault.Finite("Outside", w.Outside), fault.AboveTo("Share", w.Share, 0, 1)))
	}
	if err := f.Err(); err != nil {
		return SurfaceLimit{}, err
	}
	limit := SurfaceLimit{Pressure: unit.Pressure(math.Inf(1))}
	for i, w := range points {
		surface, err := column.Carry(w.Allowed(), w.TVD, column.Top())
		if err != nil {
			return SurfaceLimit{}, fault.At(fault.Index("points", i), err)
		}
		limit.Points = append(limit.Points, PointLimit{w, w.Allowed(), w.Allowed() - surface, surface})
		if surface < limit.Pressure {
			limit.Pressure, limit.Weakest = surface, i
		}
	}
	return limit, nil
}

// Steps shows the working for the governing point.
func (l SurfaceLimit) Steps() []working.Step {
	if l.Weakest < 0 || l.Weakest >= len(l.Points) {
		return nil
	}
	w := l.Points[l.Weakest]
	const source = "Lapeyrouse 2nd ed., ch. 4, in SI"
	return []working.Step{
		{Name: "greatest pressure inside at " + w.Name, Symbol: "pin", Equation: "po+s*R", Source: source,
			Inputs: []working.Input{{Symbol: "po", Value: working.Of(w.Outside)}, {Symbol: "s", Value: working.Number(w.Share)}, {Symbol: "R", Value: working.Of(w.Rating)}},
			Value:  working.Of(w.Inside)},
		{Name: "maximum allowable surface pressure", Symbol: "pmax", Equation: "pin-dp", Source: source,
			Inputs: []working.Input{{Symbol: "pin", Value: working.Of(w.Inside)}, {Symbol: "dp", Value: working.Of(w.Hydrostatic)}},
			Value:  working.Of(l.Pressure)},
	}
}
