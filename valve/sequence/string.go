package sequence

import (
	"errors"
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

// find returns the pipe of the catalogue, or the user's own.
func (p Pipe) find(all catalogue.Catalogue) (tubular.Pipe, error) {
	if p.Bore != 0 || p.Yield != 0 {
		if p.Grade != "" && p.Yield != 0 {
			return tubular.Pipe{}, errors.New("has a grade and a yield strength; one of them will do")
		}
		r := tubular.Pipe{OD: p.Size, ID: p.Bore, Weight: p.Weight, Material: tubular.Steel()}
		r.Material.Yield = p.Yield
		if p.Grade != "" {
			g, err := catalogue.FindGrade(p.Grade)
			if err != nil {
				return r, err
			}
			r.Material.Yield, r.Material.Tensile = g.Yield, g.Tensile
		} else if !(p.Yield > 0) {
			return r, fmt.Errorf("yield is %v; a pipe wants a grade or a yield strength", p.Yield)
		}
		return r, r.Validate()
	}
	entry, err1 := all.Find(p.Size, p.Weight)
	grade, err2 := catalogue.FindGrade(p.Grade)
	if err := errors.Join(err1, err2); err != nil {
		return tubular.Pipe{}, err
	}
	return entry.Pipe(grade), nil
}

func (v *validation) string() {
	for _, x := range v.plan.strings() {
		v.oneString(x.path, x.String)
	}
	v.twoStrings()
}

func (v *validation) oneString(at string, s *String) {
	v.compartment(at+".inside", s.Inside)
	v.compartment(at+".below", s.Below)
	v.depth(at+".hanger", s.HangerMD)
	if _, ok := v.plan.Well.Temperatures[Undisturbed]; !ok {
		v.fault("well.temperatures", "has no %q, which the string's length needs", Undisturbed)
	}
	if len(s.Sections) == 0 {
		v.fault(at+".sections", "is empty")
		return
	}
	top := s.HangerMD
	for i, x := range s.Sections {
		path := fmt.Sprintf("%s.sections[%d]", at, i)
		pipe, err := x.Pipe.find(v.pipes)
		v.faultIf(path+".pipe", err)
		v.depth(path+".bottom", x.BottomMD)
		if !(x.BottomMD > top) {
			v.fault(path+".bottom", "is %v; must be below %v", x.BottomMD, top)
		}
		if err == nil && !(x.Hole > pipe.OD) {
			v.fault(path+".hole", "is %v; must be wider than the pipe's %v", x.Hole, pipe.OD)
		}
		v.forceOrNone(path+".joint", x.Joint)
		if err == nil {
			v.section(path, x, pipe)
		}
		top = x.BottomMD
	}
	v.within(at+".sections: lower end", top, s.Inside)
	v.within(at+".sections: lower end", top, s.Below)
	if !(s.HeldMD > s.HangerMD && s.HeldMD <= top) {
		v.fault(at+".held_at", "is %v; must be from the hanger at %v to the lower end at %v", s.HeldMD, s.HangerMD, top)
	}
	v.seals(at, s)
	if s.Top != "" && s.Top != TopOpen && s.Top != TopClosed {
		v.fault(at+".top", "is %q; there are %q and %q", s.Top, TopOpen, TopClosed)
	}
	v.force(at+".lock_down", s.LockDown)
	if s.HangerSeal != 0 {
		if pipe, err := s.Sections[0].Pipe.find(v.pipes); err == nil && !(s.HangerSeal >= pipe.OD) {
			v.fault(at+".hanger_seal", "is %v; must be at least the pipe's %v, or left out", s.HangerSeal, pipe.OD)
		}
	}
	v.derating(at+".derating", s.Derating)
	v.forceOrNone(at+".rig", s.Rig)
	v.forceOrNone(at+".hanger_rating", s.HangerRating)
	v.force(at+".block", s.Block)
	v.faultIf(at+".drag", s.Drag.Validate())
	v.notNegative(at+".drag", s.Drag.Least, float64(s.Drag.Least))
	v.force(at+".drag", s.Drag.Greatest)
	v.friction(at, s, top)
	v.tools(at, s)
	v.around(at, s, top)
	v.stringTemperatures(at, s)
}

// seals checks the seals of the string: those listed, or the ones at the lower
// end.
func (v *validation) seals(at string, s *String) {
	last := s.Sections[len(s.Sections)-1]
	if len(s.Seals) == 0 {
		v.positive(at+".seal_bore", s.Bore, float64(s.Bore))
		v.positive(at+".up", s.Up, float64(s.Up))
		v.notNegative(at+".down", s.Down, float64(s.Down))
		if s.Bore > last.Hole {
			v.fault(at+".seal_bore", "is %v; must be no wider than the hole of %v around the lower end", s.Bore, last.Hole)
		}
		return
	}
	if s.Bore != 0 || s.Up != 0 || s.Down != 0 {
		v.fault(at+".seals", "stand beside \"seal_bore\", \"up\" or \"down\"; those are of the one seal at the lower end: put it into the list")
	}
	for i, x := range s.Seals {
		path := fmt.Sprintf("%s.seals[%d]", at, i)
		v.positive(path+".bore", x.Bore, float64(x.Bore))
		v.positive(path+".up", x.Up, float64(x.Up))
		v.notNegative(path+".down", x.Down, float64(x.Down))
		v.faultIf(path+".friction", x.Friction.Validate())
		v.notNegative(path+".friction", x.Friction.Least, float64(x.Friction.Least))
		v.force(path+".friction", x.Friction.Greatest)
		if !(x.MD > s.HangerMD && x.MD <= last.BottomMD) {
			v.fault(path+".depth", "is %v; must be from the hanger at %v to the lower end at %v", x.MD, s.HangerMD, last.BottomMD)
		}
	}
}

// around checks that the compartments around the string follow each other from
// the hanger to the lower end.
func (v *validation) around(at string, s *String, end unit.Length) {
	down := s.HangerMD
	for i, name := range s.Around {
		path := fmt.Sprintf("%s.around[%d]", at, i)
		if !v.compartment(path, name) {
			return
		}
		k := slices.IndexFunc(v.plan.Compartments, func(c Compartment) bool { return c.Name == name })
		c := v.plan.Compartments[k]
		if c.TopMD > down {
			v.fault(path, "begins at %v; the one before it ends at %v", c.TopMD, down)
		}
		down = c.BottomMD
	}
	if down < end {
		v.fault(at+".around", "ends at %v; the string goes down to %v", down, end)
	}
}
