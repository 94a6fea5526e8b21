package packer

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve"
)

// Setting is a packer that is about to be set by pressure on the tubing.
//
// Stages act in their order: one can't act before the one above it in the list
// has. Columns are those that really stand there when the pressure is applied,
// which need not be the fluids of the plan.
type Setting struct {
	Stages []Stage `json:"stages"`

	// Columns are the pressures at the setting piston: applied is the tubing's,
	// opposing the annulus', with what is held on it at surface, or that of a
	// sealed chamber.
	Columns valve.Columns `json:"columns"`

	// Piston is the area that pushes slips and element.
	Piston unit.Area `json:"piston"`

	// Kept is the share of the setting force that the lock keeps in the element
	// when the pressure is bled off. It is the maker's to say.
	Kept float64 `json:"kept"`

	// Plug is what closes the tubing below.
	Plug Plug `json:"plug"`
}

// Plug is a plug, a ball on its seat or a closed valve.
type Plug struct {
	// Columns: applied is the tubing's pressure on top of it, opposing the
	// pressure under it.
	Columns valve.Columns `json:"columns"`
	Rating  unit.Pressure `json:"rating"` // differential that it holds from above; zero: not asked for
}

// used is the share of the rating that a differential takes; nothing without one.
func (p Plug) used(differential unit.Pressure) float64 {
	if p.Rating == 0 {
		return 0
	}
	return float64(differential / p.Rating)
}

// Pressures are what a setting needs at surface.
type Pressures struct {
	Stages []StagePressure `json:"stages"`

	// Start is where the first stage acts, Complete where the last one has.
	Start    unit.Band[unit.Pressure] `json:"start"`
	Complete unit.Band[unit.Pressure] `json:"complete"`

	// Plug is the differential on the plug at the greatest pressure that may be
	// needed, and PlugUsed its share of the rating, zero without one.
	Plug     unit.Pressure `json:"plug"`
	PlugUsed float64       `json:"plug_used"`

	plug unit.Pressure // of the columns alone, greatest
}

// StagePressure is one stage's share of them.
type StagePressure struct {
	Name         string                   `json:"name"`
	Differential unit.Band[unit.Pressure] `json:"differential"` // at the piston, of the stage by itself
	Alone        unit.Band[unit.Pressure] `json:"alone"`        // applied, of the stage by itself
	Surface      unit.Band[unit.Pressure] `json:"surface"`      // applied, earlier stages waited for

	// Unaided is set where the columns alone may bring the stage about.
	Unaided bool `json:"unaided"`
	// Distinct is set where the stage before is over for certain before this
	// one can begin, so that two signs are to be seen at surface.
	Distinct bool `json:"distinct"`

	standing unit.Band[unit.Pressure]
}

// Bite returns the pressures at which the slips bite when a pressure is applied:
// anywhere from that at which the first stage may act to that at which the last
// has for certain, and nominally where the last one does. They can't bite at more
// than is applied; ok is false where they may not bite at all.
func (p Pressures) Bite(applied unit.Pressure) (bite unit.Band[unit.Pressure], ok bool) {
	bite = unit.Band[unit.Pressure]{
		Least: max(0, p.Start.Least), Nominal: max(0, min(p.Complete.Nominal, applied)), Greatest: max(0, min(p.Complete.Greatest, applied)),
	}
	return bite, applied >= p.Complete.Nominal && applied >= p.Start.Least
}

// Validate reports everything that is wrong with s. A plug without a rating is one
// of which it isn't asked what it holds.
func (s Setting) Validate() error {
	return fault.Join(scope, s.checkPressures(), fault.Above("Piston", s.Piston, 0))
}

// checkPressures reports what is wrong with what the pressures need: all but the
// area of the piston.
func (s Setting) checkPressures() error {
	f := fault.In(scope)
	if len(s.Stages) == 0 {
		f.New("Stages", "is empty; must be at least one stage")
	}
	for i, stage := range s.Stages {
		field := fault.Index("Stages", i) + ".Acts"
		f.At(field, stage.Acts.Validate())
		if stage.Acts.Least <= 0 {
			f.New(field, "of %s begins at %v; must be above 0", stage.Name, stage.Acts.Least)
		}
	}
	f.At("Columns", s.Columns.Validate())
	f.Add(fault.Between("Kept", s.Kept, 0, 1))
	f.At("Plug.Columns", s.Plug.Columns.Validate())
	f.Add(fault.AtLeast("Plug.Rating", s.Plug.Rating, 0))
	return f.Err()
}

// Pressures returns the surface pressures that start and complete the setting,
// at both ends of each stage's band.
//
//	p = Δp - (pt - pr)               and never less than the stage before
//	Δp(plug) = p + pt(plug) - pbelow
//
//	p   surface pressure
//	Δp  differential at which the stage acts
//	pt  pressure in the tubing at the piston with nothing applied
//	pr  pressure that the piston works against
//
// Where the columns are bands, the least takes the heaviest tubing against the
// lightest annulus. A surface pressure at or below zero is one that the columns
// exceed by themselves: the stage is then marked Unaided.
//
// The column in the tubing is taken as incompressible; PressuresIn isn't bound
// to that. Source: balance of a piston; hydrostatics.
//
// Errors: faults of s.
func (s Setting) Pressures() (Pressures, error) {
	if err := s.checkPressures(); err != nil {
		return Pressures{}, err
	}
	d0 := s.Columns.Differential()
	return s.pressures(func(acts unit.Band[unit.Pressure]) (unit.Band[unit.Pressure], error) {
		return unit.Band[unit.Pressure]{
			Least: acts.Least - d0.Greatest, Nominal: acts.Nominal - d0.Nominal, Greatest: acts.Greatest - d0.Least,
		}, nil
	})
}

// PressuresIn is Pressures with the column that stands in the tubing, whose
// density may depend on pressure: then less is needed at surface, by about 1 %
// at 3,000 m of water. It replaces the applied side of s.Columns; depth is the
// true vertical depth of the piston, and the surface the column's top.
//
//	p = pressure at the top of the column that has pr + Δp at the piston
//
// The plug's differential uses the surface pressure so found with the plug's own
// columns, which leaves out the compression between surface and plug.
//
// Errors: a column that is missing, faults of s; those of Column.Carry.
//
// Source: see Setting.Pressures; Column.Carry.
func (s Setting) PressuresIn(tubing *hydrostatics.Column, depth unit.Length) (Pressures, error) {
	if tubing == nil {
		return Pressures{}, fmt.Errorf("packer: tubing column is missing")
	}
	if err := s.checkPressures(); err != nil {
		return Pressures{}, err
	}
	po := s.Columns.Opposing
	return s.pressures(func(acts unit.Band[unit.Pressure]) (surface unit.Band[unit.Pressure], err error) {
		for _, end := range [...]struct {
			to *unit.Pressure
			p  unit.Pressure
		}{
			{&surface.Least, acts.Least + po.Least}, {&surface.Nominal, acts.Nominal + po.Nominal}, {&surface.Greatest, acts.Greatest + po.Greatest},
		} {
			if *end.to, err = tubing.Carry(end.p, depth, tubing.Top()); err != nil {
				return surface, fmt.Errorf("packer: tubing column: %w", err)
			}
		}
		return surface, nil
	})
}

func (s Setting) pressures(applied func(acts unit.Band[unit.Pressure]) (unit.Band[unit.Pressure], error)) (Pressures, error) {
	r := Pressures{plug: s.Plug.Columns.Differential().Greatest}
	for i, stage := range s.Stages {
		alone, err := applied(stage.Acts)
		if err != nil {
			return Pressures{}, err
		}
		p := StagePressure{
			Name: stage.Name, Differential: stage.Acts, Alone: alone, Surface: alone, Unaided: alone.Least <= 0, Distinct: true,
			standing: unit.Band[unit.Pressure]{
				Least: stage.Acts.Least - alone.Least, Nominal: stage.Acts.Nominal - alone.Nominal, Greatest: stage.Acts.Greatest - alone.Greatest,
			},
		}
		if i > 0 {
			before := r.Stages[i-1].Surface
			p.Distinct = alone.Least > before.Greatest
			p.Surface = unit.Band[unit.Pressure]{
				Least:    max(alone.Least, before.Least),
				Nominal:  max(alone.Nominal, before.Nominal),
				Greatest: max(alone.Greatest, before.Greatest),
			}
		}
		r.Stages = append(r.Stages, p)
	}
	r.Start = r.Stages[0].Surface
	r.Complete = r.Stages[len(r.Stages)-1].Surface
	r.Plug = r.Complete.Greatest + r.plug
	r.PlugUsed = s.Plug.used(r.Plug)
	return r, finiteResult("setting pressure", float64(r.Start.Least), float64(r.Complete.Greatest), float64(r.Plug), r.PlugUsed)
}
