package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// Condition is one of several that an action waits for: a row of triggers on what it
// feels by itself. Once it is met it stays met, as a pin that has sheared does, until
// the action is armed anew. Pressures that must act together are areas of one piston.
type Condition struct {
	Inside   string         `json:"inside,omitzero"`
	Outside  string         `json:"outside,omitzero"`
	Chamber  *unit.Pressure `json:"chamber,omitzero"`
	Areas    *Areas         `json:"areas,omitzero"`
	Triggers []Trigger      `json:"triggers,omitempty"`
}

// Areas are pressures that act on the areas of one piston, with a spring and the
// friction of its seals:
//
//	rising   Σ p·A ≥ S + F
//	falling  Σ p·A ≤ S − F
//
//	p  pressure at the device's depth
//	A  area on which it pushes, negative where it pushes back
//	S  force of the spring, F friction of the seals
//
// What it feels is told as the pressure on the first area that does the same: the
// sums over that area. A trigger of areas has no threshold of its own; one that is
// counted comes back by the friction both ways.
//
// Source: balance of forces on the piston.
type Areas struct {
	On       []Pressed             `json:"on,omitempty"`
	Spring   unit.Band[unit.Force] `json:"spring,omitzero"`
	Friction unit.Band[unit.Force] `json:"friction,omitzero"`
}

// Pressed is an area with the pressure on it.
type Pressed struct {
	Compartment string    `json:"compartment,omitzero"`
	Area        unit.Area `json:"area,omitzero"` // negative: it pushes the other way
}

// conditions are what an action waits for: itself, or those that it lists.
func (a *Action) conditions() []Condition {
	switch {
	case len(a.All) > 0:
		return a.All
	case len(a.Any) > 0:
		return a.Any
	}
	return []Condition{{a.Inside, a.Outside, a.Chamber, a.Areas, a.Triggers}}
}

// listed tells where the conditions stand: in which list, or in the action itself.
func (a *Action) listed(path string, n int) string {
	switch {
	case len(a.All) > 0:
		return fmt.Sprintf("%s.all[%d]", path, n)
	case len(a.Any) > 0:
		return fmt.Sprintf("%s.any[%d]", path, n)
	}
	return path
}

// condition gives the n-th condition of an action, for what changes it.
func (a *Action) triggers(n int) []Trigger {
	switch {
	case len(a.All) > 0:
		return a.All[n].Triggers
	case len(a.Any) > 0:
		return a.Any[n].Triggers
	}
	return a.Triggers
}

func (v *validation) conditions(path string, d Device, a *Action) {
	own := a.Inside != "" || a.Outside != "" || a.Chamber != nil || a.Areas != nil || len(a.Triggers) > 0
	switch {
	case len(a.All) > 0 && len(a.Any) > 0:
		v.fault(path, "has both all and any; just one of them says what it waits for")
	case (len(a.All) > 0 || len(a.Any) > 0) && (own || a.Axial):
		v.fault(path, "lists conditions: inside, outside, chamber, areas, axial and triggers have no place beside them")
	}
	for n, c := range a.conditions() {
		v.condition(a.listed(path, n), d, a, c)
	}
}

func (v *validation) condition(path string, d Device, a *Action, c Condition) {
	switch {
	case a.Axial:
		if c.Areas != nil {
			v.fault(path+".areas", "have no place in an axial action")
		}
	case c.Areas != nil:
		if c.Inside != "" || c.Outside != "" || c.Chamber != nil {
			v.fault(path, "has areas: inside, outside and chamber have no place beside them")
		}
		v.areas(path+".areas", d, *c.Areas)
	default:
		if v.compartment(path+".inside", c.Inside) {
			v.within(fmt.Sprintf("%s: device depth", path), d.MD, c.Inside)
		}
		if c.Chamber != nil {
			v.chamber(path+".chamber", *c.Chamber)
		}
		if (c.Outside == "") == (c.Chamber == nil) {
			v.fault(path, "wants either an outside compartment or a chamber")
		} else if c.Outside != "" && v.compartment(path+".outside", c.Outside) {
			v.within(fmt.Sprintf("%s: device depth", path), d.MD, c.Outside)
		}
	}
	if len(c.Triggers) == 0 {
		v.fault(path+".triggers", "is empty; an action wants at least one")
	}
	for k, t := range c.Triggers {
		at := fmt.Sprintf("%s.triggers[%d]", path, k)
		if c.Areas == nil {
			v.trigger(at, a.Axial, t)
		} else if t.Pins != nil || t.Threshold != (unit.Band[unit.Pressure]{}) || t.Tension != (unit.Band[unit.Force]{}) || t.Rearm != (unit.Band[unit.Pressure]{}) {
			v.fault(at, "belongs to areas: spring and friction make its threshold; direction and count alone have a place in it")
		} else if t.Count < 0 || t.Count > valve.MaxCount {
			v.fault(at+".count", "is %d; must be from 0 to %d", t.Count, valve.MaxCount)
		} else if t.Count > 1 && !(c.Areas.Friction.Least > 0) {
			v.fault(at+".count", "is %d, but the friction may be nothing: then it comes back where it went, and nobody knows how often it counts", t.Count)
		}
	}
}

func (v *validation) areas(path string, d Device, x Areas) {
	if len(x.On) == 0 {
		v.fault(path+".on", "is empty; it lists compartments with the areas on which they push")
	}
	seen := map[string]bool{}
	for k, p := range x.On {
		at := fmt.Sprintf("%s.on[%d]", path, k)
		if v.compartment(at+".compartment", p.Compartment) {
			v.within(fmt.Sprintf("%s: device depth", at), d.MD, p.Compartment)
		}
		if seen[p.Compartment] {
			v.fault(at+".compartment", "%q stands twice; add its areas up", p.Compartment)
		}
		seen[p.Compartment] = true
		switch {
		case k == 0:
			v.positive(at+".area", p.Area, float64(p.Area))
		case p.Area == 0 || !finite(float64(p.Area)):
			v.fault(at+".area", "is %v; must be above zero, or below where it pushes back", p.Area)
		case len(x.On) > 0 && x.On[0].Area > 0 && (p.Area > 1e4*x.On[0].Area || p.Area < -1e4*x.On[0].Area):
			v.fault(at+".area", "is %v; must not be more than ten thousand times the first area", p.Area)
		}
	}
	v.faultIf(path+".spring", x.Spring.Validate())
	v.force(path+".spring", x.Spring.Least)
	v.force(path+".spring", x.Spring.Greatest)
	v.faultIf(path+".friction", x.Friction.Validate())
	v.force(path+".friction", x.Friction.Greatest)
	v.notNegative(path+".friction", x.Friction.Least, float64(x.Friction.Least))
}
