package sequence

import (
	"fmt"
	"slices"

	"completion.example/internal/clock"
)

func (v *validation) steps() {
	if len(v.plan.Steps) == 0 {
		v.fault("steps", "is empty; a programme has at least one")
	}
	names(v, "steps", v.plan.Steps, func(s Step) string { return s.Name })
	for i, s := range v.plan.Steps {
		v.step(v.plan.stepPath(i), s)
	}
}

func (v *validation) step(path string, s Step) {
	if _, ok := v.plan.Well.Temperatures[s.Temperature]; s.Temperature != "" && !ok {
		v.fault(path+".temperature", "no temperature %q in well.temperatures", s.Temperature)
	}
	for k, w := range s.Displace {
		at := fmt.Sprintf("%s.displace[%d]", path, k)
		known(v, at+".fluid", "fluid", w.Fluid, v.plan.Fluids, fluidName)
		if v.compartment(at+".compartment", w.Compartment) {
			v.within(at+".from", w.FromMD, w.Compartment)
			v.within(at+".to", w.ToMD, w.Compartment)
		}
		if !(w.FromMD < w.ToMD) {
			v.fault(at+".to", "is %v; must be below from at %v", w.ToMD, w.FromMD)
		}
	}
	v.pumps(path, s)
	for k, name := range s.Shut {
		v.surface(fmt.Sprintf("%s.shut[%d]", path, k), name)
	}
	for k, ramp := range s.Ramps {
		at := fmt.Sprintf("%s.ramps[%d]", path, k)
		if len(ramp) == 0 {
			v.fault(at, "is empty; it names surface pressures by compartment")
		}
		for _, name := range sortedKeys(ramp) {
			p := ramp[name]
			v.surface(at+"."+name, name)
			if !finite(float64(p)) {
				v.fault(at+"."+name, "is %v; must be finite", p)
			} else if p < 0 {
				v.fault(at+"."+name, "is %v; a surface pressure can't be below 0 psi", p)
			} else if p > mostPressure {
				v.fault(at+"."+name, "is %v; no more than %v can be meant", p, mostPressure)
			}
		}
	}
	v.rise(path+".rise", s.Rise)
	v.span(path+".takes", s.Takes)
	v.acts(path, s)
	for n, h := range s.Hold {
		v.span(fmt.Sprintf("%s.hold[%d]", path, n), h)
	}
	if len(s.Hold) > len(s.Ramps) {
		v.fault(path+".hold", "has %d times for %d ramps", len(s.Hold), len(s.Ramps))
	}
	v.slow(path, s)
	for _, name := range sortedKeys(s.PressureChange) {
		d := s.PressureChange[name]
		v.compartment(path+".pressure_change."+name, name)
		v.chamber(path+".pressure_change."+name, d)
	}
	for _, name := range sortedKeys(s.VolumeChange) {
		x := s.VolumeChange[name]
		at := path + ".volume_change." + name
		v.compartment(at, name)
		v.pressed(at, name, x)
		if _, twice := s.PressureChange[name]; twice {
			v.fault(at, "%q stands in pressure_change, too; one of them will do", name)
		}
	}
	if len(s.Pull) > 0 && v.plan.String == nil {
		v.fault(path+".pull", "needs the plan's string")
	}
	for k, f := range s.Pull {
		v.force(fmt.Sprintf("%s.pull[%d]", path, k), f)
	}
	for k, name := range s.Expect {
		v.actionExists(fmt.Sprintf("%s.expect[%d]", path, k), name)
	}
	for k, f := range s.Allow {
		if f != FlowIn && f != FlowOut && f != Circulation {
			v.fault(fmt.Sprintf("%s.allow[%d]", path, k), "is %q; there are %q, %q and %q", f, FlowIn, FlowOut, Circulation)
		}
	}
	v.goals(path, s)
	if s.Produce != nil {
		v.produce(path+".produce", *s.Produce)
	}
}

// surface checks that a compartment reaches the surface.
func (v *validation) surface(path, name string) {
	if !v.compartment(path, name) {
		return
	}
	k := slices.IndexFunc(v.plan.Compartments, func(c Compartment) bool { return c.Name == name })
	if !v.plan.Compartments[k].Surface {
		v.fault(path, "compartment %q doesn't reach the surface; pressure can't be applied to it", name)
	}
}

func (v *validation) goals(path string, s Step) {
	for k, b := range s.Balance {
		at := fmt.Sprintf("%s.balance[%d]", path, k)
		v.moment(at+".at", b.Moment, s)
		v.faultIf(at+".overbalance", b.Overbalance.Validate())
		known(v, at+".formation", "formation", b.Formation, v.plan.Formations, formationName)
		if v.compartment(at+".compartment", b.Compartment) {
			for _, f := range v.plan.Formations {
				if f.Name == b.Formation {
					v.within(at+".compartment", f.MD, b.Compartment)
				}
			}
		}
	}
	for k, t := range s.Tests {
		at := fmt.Sprintf("%s.tests[%d]", path, k)
		v.moment(at+".at", t.Moment, s)
		v.faultIf(at+".differential", t.Differential.Validate())
		if d, err := clock.Parse(t.Hold); t.Hold != "" && (err != nil || d <= 0) {
			v.fault(at+".hold", "is %q; write a time such as 15 min or 1 h 30 min", t.Hold)
		}
		if !(t.Decline >= 0 && t.Decline < 1) {
			v.fault(at+".decline", "is %v; as a share it must be from 0 to below 1", t.Decline)
		}
		for _, name := range sortedKeys(t.Warms) {
			b := t.Warms[name]
			at := at + ".warms." + name
			v.faultIf(at, b.Validate())
			if !(b.Least >= -mostWarming && b.Greatest <= mostWarming) {
				v.fault(at, "is %v; must be from %v to %v", b, -mostWarming, mostWarming)
			}
			v.compartment(at, name)
			v.pressed(at, name, 0)
			if t.Hold == "" {
				v.fault(at, "stands without hold: how long the test is held")
			}
			if t.Moment != AtStart && t.Moment != AtEnd {
				v.fault(at, "stands without at: %q or %q, where in the step it is held", AtStart, AtEnd)
			}
		}
		if t.Side != "below" && t.Side != "above" {
			v.fault(at+".side", "is %q; must be below or above", t.Side)
		}
		known(v, at+".barrier", "barrier", t.Barrier, v.plan.Barriers, func(b Barrier) string { return b.Name })
		for field, name := range map[string]string{"inside": t.Inside, "outside": t.Outside} {
			if v.compartment(at+"."+field, name) {
				v.within(at+".depth", t.MD, name)
			}
		}
	}
}

func (v *validation) moment(path string, m Moment, s Step) {
	switch m {
	case "", AtStart, AtEnd:
	case AtPeak:
		if len(s.Ramps) == 0 {
			v.fault(path, "is %q, but the step has no ramps", m)
		}
	default:
		v.fault(path, "is %q; there are %q, %q and %q", m, AtStart, AtPeak, AtEnd)
	}
}

func (v *validation) produce(path string, p Produce) {
	v.surface(path+".compartment", p.Compartment)
	v.notNegative(path+".surface", p.Surface, float64(p.Surface))
	v.notNegative(path+".loss", p.Loss, float64(p.Loss))
	if p.lifted() {
		v.lifted(path, &p)
	} else {
		v.density(path+".density", p.Density)
	}
	if len(p.Outflow) > 0 {
		v.faultIf(path+".outflow", p.table().Validate())
		if p.Loss != 0 || p.Rate != 0 {
			v.fault(path+".outflow", "stands beside loss or rate; the loss is in it")
		}
	}
	if p.Loss > 0 {
		v.positive(path+".rate", p.Rate, float64(p.Rate))
	}
	gas, liquid := 0, 0
	for _, f := range v.plan.Formations {
		switch {
		case f.Inflow.gas():
			gas++
		case f.Inflow != nil:
			liquid++
		}
	}
	switch {
	case gas > 0 && liquid > 0:
		v.fault(path, "the plan has gas zones and others with an inflow; how they flow together isn't modelled: leave the inflow of those out that don't flow, and write that of a gas zone which does as an index about its flowing pressure, with the rate and density that its gas has there, in place of open_flow")
	case gas > 0 && len(p.Outflow) == 0:
		v.fault(path+".outflow", "is missing: for gas zones it must be told by a table, in rates at standard conditions")
	case gas > 0 && len(p.Chokes) > 0:
		v.fault(path+".chokes", "are for liquids here; of gas zones put what they take into the outflow")
	}
	for _, name := range sortedKeys(p.Chokes) {
		c := p.Chokes[name]
		known(v, path+".chokes."+name, "port", name, v.plan.Ports, portName)
		v.positive(path+".chokes."+name, c, float64(c))
	}
	for _, name := range sortedKeys(p.Want) {
		r := p.Want[name]
		known(v, path+".want."+name, "formation", name, v.plan.Formations, formationName)
		if !(r.Least <= r.Greatest) {
			v.fault(path+".want."+name, "runs from %v to %v; least must not be above greatest", r.Least, r.Greatest)
		}
	}
}

// lifted checks a step whose outflow is worked out from its bores.
func (v *validation) lifted(path string, p *Produce) {
	if !finite(float64(p.Viscosity)) {
		v.fault(path+".viscosity", "is %v; must be finite", p.Viscosity)
	}
	if p.Density != 0 || p.Loss != 0 || p.Rate != 0 || len(p.Outflow) > 0 {
		v.fault(path+".viscosity", "stands beside density, loss, rate or outflow; those follow from it")
	}
	if c := v.plan.compartment(p.Compartment); c != nil && len(c.Bores) == 0 {
		v.fault(path+".viscosity", "wants the bores of %q, for their friction", p.Compartment)
	}
	for i, f := range v.plan.Formations {
		if f.Inflow != nil && !(f.Inflow.Density > 0) {
			v.fault(fmt.Sprintf("formations[%d].inflow.density", i), "is missing: what flows has a weight in the string")
		}
	}
}
