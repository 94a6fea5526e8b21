package sequence

import (
	"fmt"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/well"
)

// mostWarming is more than anything warms while a test is held.
const mostWarming = 200 * unit.KelvinDifference

// uncertain lists by how much things warm while a test is held.
func (t *Test) uncertain(path string) []uncertain {
	var all []uncertain
	for _, name := range sortedKeys(t.Warms) {
		b := t.Warms[name]
		u := of(path+".warms."+name, "warming of "+name+" in the test of "+t.Barrier+" from "+t.Side, &b)
		u.set = func(x float64) { t.Warms[name] = unit.Exactly(unit.TemperatureDifference(x)) }
		all = append(all, u)
	}
	return all
}

// whileHeld is what warming makes of a test's differential, and the leak that would bring it
// to its floor in the time that it is held.
func (k *checker) whileHeld(s *well.State, x *judge.Test, t *Test, d unit.Pressure) (by unit.Pressure, leak unit.FlowRate) {
	in, e1 := s.Held(x.Inside, x.Warms)
	out, e2 := s.Held(x.Outside, x.Warms)
	if e1 == nil && e2 == nil {
		by = unit.Pressure(in.C - out.C)
	}
	side := x.Inside // that has more pressure
	if d < 0 {
		side, d = x.Outside, -d
	}
	hold := duration(t.Hold)
	if hold <= 0 || t.Decline <= 0 {
		return by, 0
	}
	var system confined.System
	for _, m := range s.Body(side) {
		parts := s.Parts(m)
		if parts == nil || s.Compartments[m].Formation >= 0 {
			return by, 0
		}
		system = append(system, parts...)
	}
	return by, system.LeakRate(d*unit.Pressure(t.Decline), hold)
}

func (k *checker) heldWords(f *Finding, m, shown *judge.Margin) {
	t := &k.plan.Steps[m.Step].Tests[m.Index]
	f.Kind, f.Device = TestOff, t.Barrier
	f.Says = fmt.Sprintf("what is held from %s cools or warms so that the test loses by that alone more than it may (%s)", t.Side, k.place(shown))
	f.Numbers = fmt.Sprintf("%s more is lost than the %.3g %% that may be in %s", psi(unit.Pressure(-shown.Least)), 100*t.Decline, t.Hold)
	f.Cure = "wait until the temperature is steady, hold for less long, or test with a greater differential"
}
