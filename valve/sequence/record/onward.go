package record

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// onward is the plan from here: what was done as it was done, what is left as planned.
func (d *diagnoser) onward(best *node) *sequence.Plan {
	q := asRun(d.given, d.frames)
	for _, m := range d.moved {
		m.set(q, m.narrowed())
	}
	for _, f := range best.faults {
		if f.early != nil {
			f.early.set(q, f.early.narrowed())
			q.Steps[f.step].Expect = append(q.Steps[f.step].Expect, f.early.Action)
			for k := f.step + 1; k < len(q.Steps); k++ {
				expectNot(&q.Steps[k], f.early.Action)
			}
			continue
		}
		m := Moved{Action: f.action}
		a := m.find(q)
		if f.action == "" || a == nil {
			continue
		}
		expectNot(&q.Steps[f.step], f.action)
		if !m.armed(q) {
			a.Disarmed = true
			continue
		}
		never := 50_000 * unit.PSI
		for k := range a.Triggers {
			t := &a.Triggers[k]
			switch {
			case a.Axial:
				t.Pins, t.Tension = nil, unit.Exactly(5_000_000*unit.PoundForce)
			case t.Direction == falling:
				t.Pins, t.Threshold = nil, unit.Exactly(-never)
			default:
				t.Pins, t.Threshold = nil, unit.Exactly(never)
			}
		}
	}
	n := -1
	q.Steps = slices.DeleteFunc(q.Steps, func(sequence.Step) bool { n++; return d.left[n] })
	return q
}

// armed tells whether another action of the device arms this one.
func (m *Moved) armed(p *sequence.Plan) bool {
	dev := &p.Devices[m.device]
	return slices.ContainsFunc(dev.Actions, func(a sequence.Action) bool { return slices.Contains(a.Arms, dev.Actions[m.act].Name) })
}

// expectNot takes an action out of what a step expects.
func expectNot(s *sequence.Step, action string) {
	s.Expect = slices.DeleteFunc(s.Expect, func(name string) bool { return name == action })
}
