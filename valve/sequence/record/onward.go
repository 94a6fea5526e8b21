package record

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// onward is the plan from here: what was done as it was done, what is left as planned,
// with the branches that are still to come.
func (d *diagnoser) onward(best *node) (*sequence.Plan, error) {
	q := asRun(d.given, d.frames)
	ahead, err := d.whole.Clone().After(d.last, d.unseenIn(best, d.last))
	if err != nil {
		return nil, err
	}
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
			for k := range ahead {
				expectNot(&ahead[k], f.early.Action)
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
			case a.Axial && t.Direction == falling:
				t.Pins, t.Tension = nil, unit.Exactly(-5_000_000*unit.PoundForce)
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
	q.Steps = slices.DeleteFunc(q.Steps, func(sequence.Step) bool { n++; return d.left[n] || n > d.last })
	q.Steps = append(q.Steps, ahead...)
	return q, nil
}

// unseenIn tells whether a step was left without what it expects.
func (d *diagnoser) unseenIn(best *node, step int) bool {
	return slices.ContainsFunc(best.faults, func(f lapse) bool {
		return f.step == step && f.early == nil && f.action != "" && slices.Contains(d.given.Steps[step].Expect, f.action)
	})
}

// armed tells whether another action of the device arms this one.
func (m *Moved) armed(p *sequence.Plan) bool {
	dev := &p.Devices[m.device]
	return slices.ContainsFunc(dev.Actions, func(a sequence.Action) bool { return slices.Contains(a.Arms, dev.Actions[m.act].Name) })
}

// expectNot takes an action out of what a step expects, and out of what its branch is
// for.
func expectNot(s *sequence.Step, action string) {
	is := func(name string) bool { return name == action }
	s.Expect = slices.DeleteFunc(s.Expect, is)
	o := s.Otherwise
	if o == nil {
		return
	}
	some := len(o.Not) > 0
	o.Not = slices.DeleteFunc(o.Not, is)
	if len(s.Expect) == 0 || some && len(o.Not) == 0 {
		s.Otherwise = nil
	}
	for k := range o.Steps {
		expectNot(&o.Steps[k], action)
	}
}
