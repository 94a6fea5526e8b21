package valve

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Columns are the pressures at a device before any surface pressure is applied.
type Columns struct {
	// Applied is the pressure at the device on the side that is pressured from
	// surface, with nothing applied at surface.
	Applied unit.Band[unit.Pressure] `json:"applied"`

	// Opposing is the pressure on the other side: a column, a formation, or a
	// sealed chamber.
	Opposing unit.Band[unit.Pressure] `json:"opposing"`
}

// Differential is applied minus opposing with nothing applied at surface.
//
//	d0 = pa − po
//
// The least takes the least of the one and the greatest of the other side, and
// the other way round. Source: definition.
//
// Range: bands in order, which Validate checks and this doesn't.
func (c Columns) Differential() unit.Band[unit.Pressure] {
	return unit.Band[unit.Pressure]{
		Least:    c.Applied.Least - c.Opposing.Greatest,
		Nominal:  c.Applied.Nominal - c.Opposing.Nominal,
		Greatest: c.Applied.Greatest - c.Opposing.Least,
	}
}

// Validate reports a band that isn't finite or is out of order.
func (c Columns) Validate() error {
	return fault.Join(scope, fault.At("Applied", c.Applied.Validate()), fault.At("Opposing", c.Opposing.Validate()))
}

// Demand is what one device asks of the surface pressure: to fire, or to hold.
//
// A device that surface pressure works against the other way round, such as one
// opened by annulus pressure while the tubing is pressured, has its columns
// exchanged and its trigger Reversed.
type Demand struct {
	Name    string  `json:"name"`
	Trigger Trigger `json:"trigger"`
	Columns Columns `json:"columns"`
	Fire    bool    `json:"fire"` // false: it must not fire
}

// Reversed is the same trigger on the differential counted the other way.
func (t Trigger) Reversed() Trigger {
	t.Threshold, t.Rearm = t.Threshold.Times(-1), t.Rearm.Times(-1)
	if t.Direction == Falling {
		t.Direction = Rising
	} else {
		t.Direction = Falling
	}
	return t
}

// Bound is the surface pressure at which a demand begins or ceases to be met.
type Bound struct {
	Name    string        `json:"name"`
	Surface unit.Pressure `json:"surface"`
	Upper   bool          `json:"upper"` // the surface pressure must be under it
	Open    bool          `json:"open"`  // the bound itself doesn't do: at it the device may move
}

// Bound returns the surface pressure that a demand sets as a limit.
//
//	must fire, rising     ps ≥ far − d0.Least
//	must fire, falling    ps ≤ far − d0.Greatest
//	must hold, rising     ps < near − d0.Greatest
//	must hold, falling    ps > near − d0.Least
//
//	ps        surface pressure on the applied side
//	d0        Columns.Differential
//	near, far the ends of the threshold, Trigger.Near and Trigger.Far
//
// Range: bands in order, which Validate of columns and trigger checks and this
// doesn't.
//
// Source: definition of the differential; friction is not in it, the pressure is
// held.
func (d Demand) Bound() Bound {
	d0 := d.Columns.Differential()
	rising := d.Trigger.Direction == Rising
	b := Bound{Name: d.Name, Upper: d.Fire != rising, Open: !d.Fire}
	level := d.Trigger.Near()
	if d.Fire {
		level = d.Trigger.Far()
	}
	if b.Upper {
		b.Surface = level - d0.Greatest
	} else {
		b.Surface = level - d0.Least
	}
	return b
}

// SurfaceWindow is the range of surface pressure that meets every demand.
type SurfaceWindow struct {
	Least    unit.Pressure `json:"least"`
	Greatest unit.Pressure `json:"greatest"`
	Floor    Bound         `json:"floor"` // what sets them
	Ceiling  Bound         `json:"ceiling"`
	Bounds   []Bound       `json:"bounds"` // of every demand, in the order given
}

// Width is what there is to work in.
//
//	greatest − least
//
// Range: any ends; they aren't checked.
//
// Source: definition.
func (w SurfaceWindow) Width() unit.Pressure { return w.Greatest - w.Least }

// ErrNoSurfacePressure says that no surface pressure satisfies all demands.
var ErrNoSurfacePressure = errors.New("valve: no surface pressure satisfies all")

// NoSurfacePressureError carries the numbers behind ErrNoSurfacePressure: the
// floor is not below the ceiling.
type NoSurfacePressureError struct {
	Floor, Ceiling Bound
	Bounds         []Bound
}

func (e *NoSurfacePressureError) Error() string {
	over, under := "at least", "at most"
	if e.Floor.Open {
		over = "more than"
	}
	if e.Ceiling.Open {
		under = "less than"
	}
	return fmt.Sprintf("%v: %s needs %s %s, %s needs %s %s; short by %s", ErrNoSurfacePressure,
		e.Floor.Name, over, e.Floor.Surface.Rounded(4), e.Ceiling.Name, under, e.Ceiling.Surface.Rounded(4),
		(e.Floor.Surface - e.Ceiling.Surface).Rounded(4))
}

// Is makes errors.Is(err, ErrNoSurfacePressure) true.
func (e *NoSurfacePressureError) Is(target error) bool { return target == ErrNoSurfacePressure }

// SurfaceRange is what can be applied at surface at all.
type SurfaceRange struct {
	Least    unit.Pressure `json:"least"`    // usually zero
	Greatest unit.Pressure `json:"greatest"` // the weakest of pump, lines and wellhead
}

// Window returns the surface pressures for which every demand is met, within a
// range; each demand's limit is its Bound. Where there are none the error is a
// *NoSurfacePressureError.
//
// Demands are taken one ramp at a time: a counted trigger is met once. It is an
// error if the range, a threshold or a column is not finite or is out of order.
func Window(surface SurfaceRange, demands []Demand) (SurfaceWindow, error) {
	f := fault.In(scope)
	if !(surface.Least <= surface.Greatest) || math.IsInf(float64(surface.Least), 0) || math.IsInf(float64(surface.Greatest), 0) {
		f.New("surface", "goes from %v to %v; must be finite and in order", surface.Least, surface.Greatest)
	}
	for i, d := range demands {
		f.AtIndex("demands", i, fault.Join("", fault.At("Trigger", d.Trigger.Validate()), fault.At("Columns", d.Columns.Validate())))
	}
	if err := f.Err(); err != nil {
		return SurfaceWindow{}, err
	}
	w := SurfaceWindow{
		Floor:   Bound{Name: "lowest surface pressure", Surface: surface.Least},
		Ceiling: Bound{Name: "highest surface pressure", Surface: surface.Greatest, Upper: true},
	}
	for _, d := range demands {
		b := d.Bound()
		w.Bounds = append(w.Bounds, b)
		tie := b.Open
		switch {
		case b.Upper && (b.Surface < w.Ceiling.Surface || b.Surface == w.Ceiling.Surface && tie):
			w.Ceiling = b
		case !b.Upper && (b.Surface > w.Floor.Surface || b.Surface == w.Floor.Surface && tie):
			w.Floor = b
		}
	}
	w.Least, w.Greatest = w.Floor.Surface, w.Ceiling.Surface
	if w.Least > w.Greatest || w.Least == w.Greatest && (w.Floor.Open || w.Ceiling.Open) {
		return SurfaceWindow{}, &NoSurfacePressureError{w.Floor, w.Ceiling, w.Bounds}
	}
	return w, nil
}
