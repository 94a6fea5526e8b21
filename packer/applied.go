package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Applied is a setting with a pressure on it.
type Applied struct {
	Surface      unit.Pressure            `json:"surface"`
	Differential unit.Band[unit.Pressure] `json:"differential"` // at the setting piston
	Stages       []StageState             `json:"stages"`
	State        Outcome                  `json:"state"` // of the whole: acted once the last stage has for certain

	Force unit.Band[unit.Force] `json:"force"` // on slips and element while the pressure is on
	Kept  unit.Band[unit.Force] `json:"kept"`  // after it is bled off; zero unless every stage has acted for certain

	Plug     unit.Pressure `json:"plug"`      // greatest
	PlugUsed float64       `json:"plug_used"` // share of the plug's rating; above 1 it may go; zero without one
}

// StageState is where a stage stands. Margin is the surface pressure past the
// greatest value if it has acted, and short of the least if it has not. Inside
// the band, where the state isn't known, it is negative: what is lacking to the
// nearer end.
type StageState struct {
	Name   string        `json:"name"`
	State  Outcome       `json:"state"`
	Margin unit.Pressure `json:"margin"`
}

// Apply returns what a surface pressure does.
//
//	Δp = p + pt - pr
//	F  = Δp A
//	F(kept) = F × share kept
//
// Symbols as for Pressures; A is the area of the piston. The surface pressure
// must be finite and not below zero. Source: balance of a piston.
//
// Errors: faults of s and of the surface pressure.
func (s Setting) Apply(surface unit.Pressure) (Applied, error) {
	f := fault.In(scope)
	f.Add(fault.AtLeast("surface pressure", surface, 0))
	f.Add(fault.Above("Piston", s.Piston, 0))
	p, err := s.Pressures()
	if err != nil {
		f.Add(err)
	}
	if err := f.Err(); err != nil {
		return Applied{}, err
	}
	a := Applied{
		Surface:      surface,
		Differential: s.Columns.Differential().Shift(surface),
		Plug:         surface + p.plug,
	}
	a.PlugUsed = s.Plug.used(a.Plug)
	for _, stage := range p.Stages {
		state := StageState{Name: stage.Name, State: stateOf(unit.Exactly(surface), stage.Surface)}
		short, past := stage.Surface.Least-surface, surface-stage.Surface.Greatest
		switch state.State {
		case Acted:
			state.Margin = past
		case NotActed:
			state.Margin = short
		case Unknown:
			state.Margin = max(short, past)
		}
		a.State = state.State
		a.Stages = append(a.Stages, state)
	}
	a.Force = onArea(a.Differential, s.Piston)
	if a.State == Acted {
		a.Kept = a.Force.Times(s.Kept)
	}
	return a, finiteResult("setting force", float64(a.Force.Least), float64(a.Force.Greatest), float64(a.Plug), a.PlugUsed)
}

func onArea(p unit.Band[unit.Pressure], a unit.Area) unit.Band[unit.Force] {
	return unit.Band[unit.Force]{Least: Push(p.Least, a), Nominal: Push(p.Nominal, a), Greatest: Push(p.Greatest, a)}
}

// ElementPressure returns the contact pressure that an axial force keeps in an
// element between mandrel and casing, which must stay above any differential
// that it is to hold.
//
//	p = F / (π/4 (D² - d²))
//
// F is the force kept, D the bore of the casing, d the diameter under the
// element. Rubber is taken as a fluid, without friction on the walls: an upper
// bound. Source: definition.
//
// Range: a bore wider than the mandrel, not checked: infinite or NaN without a
// ring between them.
func ElementPressure(kept unit.Force, casingBore, mandrel unit.Length) unit.Pressure {
	return unit.Pressure(float64(kept) / float64(tubular.AnnularCapacity(casingBore, mandrel)))
}
