package sleeve

import (
	"math"
	"slices"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve"
	"completion.example/valve/controlline"
)

// Resistance returns the force that friction makes against moving the sleeve.
//
//	F = F0 + k·|Δp|
//
//	F0  Friction
//	k   PerDifferential
//	Δp  Across
//
// A band of Across on both sides of zero has zero as its least magnitude.
//
// Range: a sleeve that Validate takes, which isn't checked here.
//
// Source: Coulomb friction of seals, from a test of the sleeve or its maker.
func (v Sleeve) Resistance() unit.Band[unit.Force] {
	lo, hi := math.Abs(float64(v.Across.Least)), math.Abs(float64(v.Across.Greatest))
	if lo > hi {
		lo, hi = hi, lo
	}
	if v.Across.Least < 0 && v.Across.Greatest > 0 {
		lo = 0
	}
	k := float64(v.PerDifferential)
	return unit.Band[unit.Force]{
		Least:    v.Friction.Least + unit.Force(k*lo),
		Nominal:  v.Friction.Nominal + unit.Force(k*math.Abs(float64(v.Across.Nominal))),
		Greatest: v.Friction.Greatest + unit.Force(k*hi),
	}
}

// Shifting is the panel pressures that move one sleeve, with the other line
// vented. Least: below it nothing moves; Greatest: from it on the sleeve moves
// for certain. A pressure below zero means that the column alone moves it.
type Shifting struct {
	Head       unit.Pressure            `json:"head"` // of each line at the sleeve
	Resistance unit.Band[unit.Force]    `json:"resistance"`
	Open       unit.Band[unit.Pressure] `json:"open"`
	Close      unit.Band[unit.Pressure] `json:"close"`

	sleeve Sleeve
}

// Shifting returns the panel pressures that open and close a sleeve at its depth.
//
//	open    (F + (Ac − Ao)·h)/Ao
//	close   (F + (Ao − Ac)·h)/Ac
//
//	F       Resistance
//	Ao, Ac  piston areas on the side of the open and of the close line
//	h       head in each line, the same liquid in both
//
// With equal areas the columns cancel. Errors: the system's, or no such sleeve.
// Source: balance of forces on the piston.
func (s System) Shifting(sleeve int) (Shifting, error) {
	heads, err := s.prepare()
	if err == nil {
		err = fault.Join(scope, fault.Whole("sleeve", sleeve, 0, len(s.Sleeves)-1))
	}
	if err != nil {
		return Shifting{}, err
	}
	v := s.Sleeves[sleeve]
	f := v.Resistance()
	ao, ac, h := float64(v.OpenArea), float64(v.CloseArea), heads[sleeve]
	pressure := func(column, area float64) unit.Band[unit.Pressure] {
		on := func(f unit.Force) unit.Pressure { return unit.Pressure((float64(f) + column) / area) }
		return unit.Band[unit.Pressure]{Least: on(f.Least), Nominal: on(f.Nominal), Greatest: on(f.Greatest)}
	}
	return Shifting{
		Head:       unit.Pressure(h),
		sleeve:     v,
		Resistance: f,
		Open:       pressure((ac-ao)*h, ao),
		Close:      pressure((ao-ac)*h, ac),
	}, nil
}

// prepare checks the system and returns the head of the lines at each sleeve.
func (s System) prepare() ([]float64, error) {
	if err := s.Validate(); err != nil {
		return nil, err
	}
	heads := make([]float64, len(s.Sleeves))
	for i, l := range s.OpenLines {
		h, err := l.Head(s.Liquid)
		if err != nil {
			return nil, fault.Join(scope, fault.At(fault.Index("OpenLines", i), err))
		}
		heads[i] = float64(h)
	}
	return heads, nil
}

// softness is the volume that a line takes up per pressure.
func (s System) softness(l controlline.Line) float64 {
	return float64(l.Volume()) * (float64(s.Liquid.Compressibility) + float64(l.WallCompliance(confined.EndsFixed)))
}

// PanelWindow returns the panel pressures at which an action moves every sleeve
// that it should, for certain, and can't move any other. The least and greatest
// are those of the pump and of the lines' working pressure, and go in surface.
//
// Sleeves that are held have the same pressure on both lines. Where there is no
// such pressure the error is a *valve.NoSurfacePressureError that names the
// sleeves.
func (s System) PanelWindow(before []Position, a Action, surface valve.SurfaceRange) (valve.SurfaceWindow, error) {
	heads, err := s.prepare()
	if err := fault.Join(scope, err, fault.At("before", s.checkPositions(before))); err != nil {
		return valve.SurfaceWindow{}, err
	}
	if err := s.checkAction(before, a); err != nil {
		return valve.SurfaceWindow{}, err
	}
	return s.panelWindow(heads, before, a, surface)
}

func (s System) panelWindow(heads []float64, before []Position, a Action, surface valve.SurfaceRange) (valve.SurfaceWindow, error) {
	var demands []valve.Demand
	for i, v := range s.Sleeves {
		ao, ac := float64(v.OpenArea), float64(v.CloseArea)
		// Force on the piston is slope·P + column·area.
		opened, closed := 0.0, 0.0
		if a.pressures(i) {
			opened = ao
		}
		if a.Close {
			closed = ac
		}
		slope, f := opened-closed, v.Resistance()
		column := heads[i] * (ao - ac)
		moves, was := slices.Contains(a.Move, i), before[i]
		if slices.Contains(a.Hold, i) && was == Unknown {
			// It is opened before the close line comes on.
			demands = append(demands, demand(v.Name+" opening", f, column, ao, true))
			was = Open
		}
		switch { // where the slope is nought the panel pressure doesn't matter to it; Apply sees to the columns
		case slope > 0 && moves:
			demands = append(demands, demand(v.Name+" opening", f, column, slope, true))
		case slope < 0 && (was != Closed || moves):
			demands = append(demands, demand(v.Name+" closing", f, -column, -slope, moves))
		}
	}
	return valve.Window(surface, demands)
}

// demand is a sleeve in the terms of a window: the applied side's pressure is
// the panel's times slope, less the friction that opposes.
func demand(name string, f unit.Band[unit.Force], column, slope float64, fire bool) valve.Demand {
	t := unit.Band[unit.Pressure]{
		Least:    unit.Pressure(float64(f.Least) / slope),
		Nominal:  unit.Pressure(float64(f.Nominal) / slope),
		Greatest: unit.Pressure(float64(f.Greatest) / slope),
	}
	return valve.Demand{Name: name, Trigger: valve.Trigger{Threshold: t}, Fire: fire,
		Columns: valve.Columns{Applied: unit.Exactly(unit.Pressure(column / slope))}}
}
