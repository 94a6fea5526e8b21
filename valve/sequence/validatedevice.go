package sequence

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence/internal/well"
)

func (v *validation) devices() {
	names(v, "devices", v.plan.Devices, deviceName)
	for i, d := range v.plan.Devices {
		path := fmt.Sprintf("devices[%d]", i)
		if strings.Contains(d.Name, ": ") {
			v.fault(path+".name", "%q holds a colon with a space, which parts device from action", d.Name)
		}
		v.depth(path+".depth", d.MD)
		v.faultIf(path+`.depth_error`, d.Error.Validate())
		v.depth(path+`.depth_error`, d.MD+d.Error.Least)
		v.depth(path+`.depth_error`, d.MD+d.Error.Greatest)
		if d.Kind != nil { // else it has been put in place of it
			v.fault(path+".kind", "wants just one of sleeve, isolation valve and safety valve, and no actions beside it")
			continue
		}
		if len(d.Actions) == 0 {
			v.fault(path+".actions", "is empty; a device does at least one thing")
		}
		names(v, path+".actions", d.Actions, actionName)
		for k, a := range d.Actions {
			v.action(fmt.Sprintf("%s.actions[%d]", path, k), d, a)
		}
	}
}

func (v *validation) action(path string, d Device, a Action) {
	switch {
	case a.Axial:
		if a.Inside != "" || a.Outside != "" || a.Chamber != nil {
			v.fault(path, "is axial: inside, outside and chamber have no place in it")
		}
		switch {
		case a.feels() != well.OfJoint:
			v.pulled(path, d, a)
		case !(a.Seal > 0):
			v.fault(path+".seal", "is missing: the diameter at which the joint seals, such as 4.9 in; its pins feel the effective force and the pressure inside less that outside on that area")
		}
		if v.plan.String == nil {
			v.fault(path+".axial", "needs the plan's string")
		} else if s := v.plan.own(d.On).String; s != nil && (d.MD < s.HangerMD || d.MD > s.HeldMD) {
			v.fault(path+".axial", "the device stands at %v; tension is known from the hanger at %v to where the string is held at %v", d.MD, s.HangerMD, s.HeldMD)
		}
	case a.Seal != 0:
		v.fault(path+".seal", "belongs to an axial action")
	case a.feels() != well.OfJoint:
		v.fault(path+".axial", "is missing: what unseats and what latches is felt in the string")
	}
	v.conditions(path, d, &a)
	for _, l := range []struct {
		field string
		ports []string
	}{{"opens", a.Opens}, {"closes", a.Closes}} {
		for k, name := range l.ports {
			known(v, fmt.Sprintf("%s.%s[%d]", path, l.field, k), "port", name, v.plan.Ports, portName)
		}
	}
	for k, name := range a.Arms {
		at := fmt.Sprintf("%s.arms[%d]", path, k)
		known(v, at, "action", name, d.Actions, actionName)
		if name == a.Name {
			v.fault(at, "%q arms itself and would happen again at once, without end; another action has to arm it", name)
		}
	}
	for k, name := range a.Disarms {
		at := fmt.Sprintf("%s.disarms[%d]", path, k)
		known(v, at, "action", name, d.Actions, actionName)
		if slices.Contains(a.Arms, name) {
			v.fault(at, "%q is armed by it, too", name)
		}
	}
	v.delay(path, &a)
	for _, name := range sortedKeys(a.Strokes) {
		x := a.Strokes[name]
		v.compartment(path+".strokes."+name, name)
		v.pressed(path+".strokes."+name, name, x)
	}
	if (a.Holds || a.Releases) && v.plan.String == nil {
		v.fault(path, "holds or releases the string, but the plan has no string")
	} else if a.Holds {
		v.holds(path+".holds", d)
	}
	if a.Bites != "" {
		known(v, path+`.bites_from`, "action", a.Bites, d.Actions, actionName)
		if !a.Holds || a.Bites == a.Name {
			v.fault(path+`.bites_from`, "belongs to an action that holds, and names another one of its device")
		}
	}
}

// pulled checks an action that unseats what holds the string, or latches to what a
// joint has left.
func (v *validation) pulled(path string, d Device, a Action) {
	way, found := valve.Falling, false
	if a.Unseats {
		way = valve.Rising
		for _, p := range v.plan.places(d.On) {
			found = found || p.Depth == d.MD
		}
	}
	for i := range d.Actions {
		b := &d.Actions[i]
		found = found || b.Name == a.LatchesTo && b.parts() && b.Releases
	}
	if !found || a.Seal != 0 || a.Unseats == (a.LatchesTo != "") {
		v.fault(path, "has to unseat what holds the string at %v, or latch to a joint that another action of %q parts, and without a seal", d.MD, d.Name)
	}
	for _, t := range a.Triggers {
		if t.Direction != way || (t.Tension.Greatest < 0) != (a.LatchesTo != "") {
			v.fault(path+".triggers", "must be rising where it unseats, and falling and of negative tension where it latches, such as -10000 lbf")
		}
	}
}

func (v *validation) trigger(path string, axial bool, t Trigger) {
	given := 0
	if t.Threshold != (unit.Band[unit.Pressure]{}) {
		given++
	}
	if t.Tension != (unit.Band[unit.Force]{}) {
		given++
	}
	if t.Pins != nil {
		given++
		v.pins(path+".pins", axial, *t.Pins)
	}
	if given > 1 {
		v.fault(path, "has more than one of threshold, tension and pins")
	}
	if axial && t.Threshold != (unit.Band[unit.Pressure]{}) {
		v.fault(path+".threshold", "is a pressure; an axial action wants tension or pins")
	}
	if axial && given == 0 {
		v.fault(path, "wants tension or pins")
	}
	if !axial && t.Tension != (unit.Band[unit.Force]{}) {
		v.fault(path+".tension", "belongs to an axial action")
	}
	v.faultIf(path+".rearm", t.Rearm.Validate())
	if given > 1 {
		return
	}
	v.faultIf(path, t.check(axial))
}

func (v *validation) pins(path string, axial bool, p Pins) {
	if _, err := p.force(); err != nil {
		v.faultIf(path, err)
	}
	if !axial {
		v.positive(path+".area", p.Area, float64(p.Area))
	} else if p.Area != 0 {
		v.fault(path+".area", "has no place in an axial action")
	}
}

// force is the band of force at which the pins part.
func (p Pins) force() (unit.Band[unit.Force], error) {
	return valve.Pins{Count: p.Count, Strength: p.Strength, Tolerance: p.Tolerance}.Force()
}

// check holds a trigger's own numbers against package valve's rules: a tension in
// N takes the place of a pressure in Pa.
func (t Trigger) check(axial bool) error {
	r := valve.Trigger{Threshold: t.Threshold, Direction: t.Direction, Count: t.Count, Rearm: t.Rearm}
	if axial {
		f := t.Tension
		if t.Pins != nil {
			f, _ = t.Pins.force() // checked with the plan
		}
		r.Threshold = unit.Band[unit.Pressure]{Least: unit.Pressure(f.Least), Nominal: unit.Pressure(f.Nominal), Greatest: unit.Pressure(f.Greatest)}
	} else if t.Pins != nil {
		f, _ := t.Pins.force()
		per := 1 / float64(t.Pins.Area)
		r.Threshold = unit.Band[unit.Pressure]{Least: unit.Pressure(float64(f.Least) * per), Nominal: unit.Pressure(float64(f.Nominal) * per), Greatest: unit.Pressure(float64(f.Greatest) * per)}
	}
	return r.Validate()
}

// actionExists checks a name such as "packer: sets".
func (v *validation) actionExists(path, full string) {
	device, action, _ := strings.Cut(full, ": ")
	var all []string
	for _, d := range v.plan.Devices {
		for _, a := range d.Actions {
			if d.Name == device && a.Name == action {
				return
			}
			all = append(all, d.Name+": "+a.Name)
		}
	}
	v.fault(path, "no action %q; there are %q", full, all)
}

func (v *validation) ratings() {
	names(v, "ratings", v.plan.Ratings, func(r Rating) string { return r.Name })
	for i, r := range v.plan.Ratings {
		path := fmt.Sprintf("ratings[%d]", i)
		v.depth(path+".from", r.FromMD)
		v.depth(path+".to", r.ToMD)
		if !(r.FromMD <= r.ToMD) {
			v.fault(path+".to", "is %v; must not be above from at %v", r.ToMD, r.FromMD)
		}
		if v.compartment(path+".inside", r.Inside) {
			v.within(path+".from", r.FromMD, r.Inside)
			v.within(path+".to", r.ToMD, r.Inside)
		}
		if (r.Outside == "") == (r.Background == "") {
			v.fault(path, "wants either an outside compartment or a background fluid")
		} else if r.Outside != "" && v.compartment(path+".outside", r.Outside) {
			v.within(path+".from", r.FromMD, r.Outside)
			v.within(path+".to", r.ToMD, r.Outside)
		} else if r.Background != "" {
			known(v, path+".background", "fluid", r.Background, v.plan.Fluids, fluidName)
			v.noGas(path+".background", r.Background, "behind a pipe, from surface down, stands a liquid: make a compartment of gas")
		}
		v.faultIf(path+".burst", r.Burst.Validate())
		v.strength(path+".burst", r.Burst.Least)
		v.strength(path+".burst", r.Burst.Greatest)
		v.faultIf(path+".collapse", r.Collapse.Validate())
		v.strength(path+".collapse", r.Collapse.Least)
		v.strength(path+".collapse", r.Collapse.Greatest)
		switch given := r.Burst.Greatest != 0 || r.Collapse.Greatest != 0; {
		case r.Pipe != nil && given:
			v.fault(path, "wants either a pipe or burst and collapse")
		case r.Pipe != nil:
			_, err := r.Pipe.find(v.pipes)
			v.faultIf(path+".pipe", err)
		case !given:
			v.fault(path, "wants a pipe, burst, collapse or both")
		}
		v.factor(path+".factor", r.Factor)
	}
}

// factor checks a design factor; zero stands for one.
func (v *validation) factor(path string, f float64) {
	if f != 0 && !(f >= 1 && f <= 10) {
		v.fault(path, "is %v; a design factor is from 1 to 10", f)
	}
}

func (v *validation) barriers() {
	names(v, "barriers", v.plan.Barriers, func(b Barrier) string { return b.Name })
	for i, b := range v.plan.Barriers {
		path := fmt.Sprintf("barriers[%d]", i)
		known(v, path+".formation", "formation", b.Formation, v.plan.Formations, formationName)
		given := 0
		if b.Port != "" {
			given++
			known(v, path+".port", "port", b.Port, v.plan.Ports, portName)
		}
		if b.Action != "" {
			given++
			v.actionExists(path+".action", b.Action)
		}
		if b.Column != "" {
			given++
			if v.compartment(path+".column", b.Column) {
				k := slices.IndexFunc(v.plan.Formations, func(f Formation) bool { return f.Name == b.Formation })
				if k >= 0 {
					v.within(path+".column", v.plan.Formations[k].MD, b.Column)
				}
			}
		}
		if given > 1 {
			v.fault(path, "has more than one of port, action and column")
		}
		if b.Until != "" {
			v.actionExists(path+".until", b.Until)
		}
	}
}

func (v *validation) rules() {
	r := v.plan.Rules
	if r.Barriers < 0 || r.Barriers > len(v.plan.Barriers) {
		v.fault("rules.barriers", "is %d; must be from 0 to the %d barriers of the plan", r.Barriers, len(v.plan.Barriers))
	}
	v.faultIf("rules.gauge", r.Gauge.Validate())
	v.rise("rules.rise", r.Rise)
	v.chamber("rules.gauge", r.Gauge.Least)
	v.chamber("rules.gauge", r.Gauge.Greatest)
	v.factor("rules.burst", r.Burst)
	v.factor("rules.collapse", r.Collapse)
	v.factor("rules.axial", r.Axial)
	v.factor("rules.triaxial", r.Triaxial)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
