package hydrostatics

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// Cushion is a well left with a light fluid, a gas or nothing above a heavier
// fluid, so that it stands at a wanted pressure at the formation.
type Cushion struct {
	Formation    Formation           `json:"formation"`
	Underbalance unit.Pressure       `json:"underbalance"` // wanted: formation minus well; negative for overbalance
	Surface      unit.Pressure       `json:"surface"`      // at TVD 0; for Length only
	Light        Fluid               `json:"light"`        // from TVD 0 down; nil for an empty hole
	Heavy        Fluid               `json:"heavy"`        // from there to the formation
	Temperature  *TemperatureProfile `json:"temperature"`
}

// CushionAnswer is a cushion that does what was wanted.
type CushionAnswer struct {
	LevelTVD  unit.Length   `json:"level_tvd"` // TVD to which the light fluid, or the empty hole, reaches: the fluid level
	Surface   unit.Pressure `json:"surface"`   // at TVD 0
	Interface unit.Pressure `json:"interface"` // where light meets heavy
	Well      unit.Pressure `json:"well"`      // at the formation
}

// Length returns how far down the light fluid must reach. With nothing above
// the heavy fluid it is the fluid level.
//
// It solves
//
//	ps + ∫ρl·g·dz (0 to L) + ∫ρh·g·dz (L to h) = pf − Δp
//
// for L; with constant densities L = (ps + ρh·g·h − pf + Δp)/[(ρh − ρl)·g].
// Where no length from nothing to the whole depth does it, the error is
// ErrNoBalance and says what the ends would give.
//
// Source: balance at the formation.
func (c Cushion) Length() (CushionAnswer, error) {
	if err := fault.Join(scope, c.check(), fault.Finite("Surface", c.Surface)); err != nil {
		return CushionAnswer{}, err
	}
	h := float64(c.Formation.TVD)
	want := float64(c.well())
	var failed error
	miss := func(l float64) float64 {
		p, err := c.down(l)
		if err != nil {
			failed = err
			return math.NaN()
		}
		return p - want
	}
	none, all := miss(0), miss(h)
	if failed != nil {
		return CushionAnswer{}, failed
	}
	// Rounding must not refuse what is just met at an end.
	slack := 1e-12 * (math.Abs(want) + math.Abs(none) + math.Abs(all))
	if math.Abs(none) > slack && math.Abs(all) > slack && (none > 0) == (all > 0) {
		return CushionAnswer{}, fmt.Errorf("hydrostatics: %s is wanted at the formation; without the light fluid it is %s, with it all the way down %s: %w",
			unit.Pressure(want).Rounded(6), unit.Pressure(want+none).Rounded(6), unit.Pressure(want+all).Rounded(6), ErrNoBalance)
	}
	l := 0.0
	switch {
	case math.Abs(none) <= slack:
	case math.Abs(all) <= slack:
		l = h
	default:
		var err error
		if l, err = root.Find(miss, 0, h, 0); err != nil {
			return CushionAnswer{}, errors.Join(failed, err)
		}
	}
	return c.answer(l, float64(c.Surface))
}

// Pressure returns the surface pressure on a light fluid or gas that reaches
// to a given depth, from the formation up:
//
//	ps = pf − Δp − ∫ρh·g·dz (L to h) − ∫ρl·g·dz (0 to L)
//
// Surface is not read. A pressure below zero would be a vacuum: ErrNoBalance,
// the light fluid has to reach deeper.
func (c Cushion) Pressure(length unit.Length) (CushionAnswer, error) {
	if err := fault.Join(scope, c.check(), fault.Between("length", length, 0, c.Formation.TVD)); err != nil {
		return CushionAnswer{}, err
	}
	l := float64(length)
	p, err := c.march(c.Heavy, float64(c.well()), float64(c.Formation.TVD), l)
	if err == nil && c.Light != nil {
		if p < 0 {
			return CushionAnswer{}, c.vacuum(length, p)
		}
		p, err = c.march(c.Light, p, l, 0)
	}
	if err != nil {
		return CushionAnswer{}, err
	}
	if p < 0 {
		return CushionAnswer{}, c.vacuum(0, p)
	}
	return c.answer(l, p)
}

func (c Cushion) vacuum(at unit.Length, p float64) error {
	return fmt.Errorf("hydrostatics: at TVD %s the pressure would have to be %s, below zero: %w", at.Rounded(6), unit.Pressure(p).Rounded(6), ErrNoBalance)
}

func (c Cushion) well() unit.Pressure { return c.Formation.Pressure - c.Underbalance }

func (c Cushion) check() error {
	f := fault.In(scope)
	f.Add(fault.Finite("Formation.Pressure", c.Formation.Pressure), fault.Above("Formation.TVD", c.Formation.TVD, 0),
		fault.Finite("Underbalance", c.Underbalance))
	column := Column{temperature: c.Temperature}
	f.Add(column.checkFluid("Heavy", c.Heavy))
	if c.Light != nil {
		f.Add(column.checkFluid("Light", c.Light))
	}
	return f.Err()
}

func (c Cushion) march(f Fluid, p, from, to float64) (float64, error) {
	layers := [1]Layer{{f, unit.Length(math.Min(from, to)), unit.Length(math.Max(from, to))}}
	m := marcher{temperature: c.Temperature}
	return m.carry(layers[:], p, from, to)
}

// down is the pressure at the formation with the light fluid down to l.
func (c Cushion) down(l float64) (float64, error) {
	p := float64(c.Surface)
	var err error
	if c.Light != nil {
		if p, err = c.march(c.Light, p, 0, l); err != nil {
			return 0, err
		}
	}
	return c.march(c.Heavy, p, l, float64(c.Formation.TVD))
}

func (c Cushion) answer(l, surface float64) (CushionAnswer, error) {
	c.Surface = unit.Pressure(surface)
	a := CushionAnswer{LevelTVD: unit.Length(l), Surface: c.Surface, Interface: c.Surface}
	if c.Light != nil {
		p, err := c.march(c.Light, surface, 0, l)
		if err != nil {
			return CushionAnswer{}, err
		}
		a.Interface = unit.Pressure(p)
	}
	well, err := c.down(l)
	a.Well = unit.Pressure(well)
	return a, err
}
