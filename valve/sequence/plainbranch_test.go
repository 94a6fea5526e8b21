package sequence_test

import (
	"fmt"
	"slices"

	"completion.example/valve/sequence"
)

// plainWay is where a step of the list of all steps leads.
type plainWay struct {
	next, fail int
	not        []string
}

// plainFlat puts the steps of branches behind the steps that they are of.
func plainFlat(p *sequence.Plan) (*sequence.Plan, []plainWay) {
	c := *p
	c.Steps = nil
	var ways []plainWay
	for _, s := range p.Steps {
		at := len(c.Steps)
		c.Steps = append(c.Steps, s)
		ways = append(ways, plainWay{next: at + 1, fail: -1})
		if s.Otherwise == nil {
			continue
		}
		c.Steps[at].Otherwise = nil
		for range s.Otherwise.Steps {
			ways = append(ways, plainWay{next: len(ways) + 1, fail: -1})
		}
		c.Steps = append(c.Steps, s.Otherwise.Steps...)
		not := s.Otherwise.Not
		if len(not) == 0 {
			not = slices.Compact(slices.Sorted(slices.Values(s.Expect)))
		}
		ways[at] = plainWay{next: len(c.Steps), fail: at + 1, not: not}
	}
	for _, s := range p.Steps {
		if o := s.Otherwise; o != nil && o.Then != "" {
			at := slices.IndexFunc(c.Steps, func(x sequence.Step) bool { return x.Name == o.Steps[len(o.Steps)-1].Name })
			ways[at].next = slices.IndexFunc(c.Steps, func(x sequence.Step) bool { return x.Name == o.Then })
			if o.Then == "end" {
				ways[at].next = len(c.Steps)
			}
		}
	}
	return &c, ways
}

// stickAt chooses which devices of a step are stuck, and frees what it expects.
func (w *plainWalk) stickAt(k int, not []string) (stuck []string) {
	for _, name := range w.plan.Steps[k].Expect {
		if i := w.action(name); w.stuck[i] {
			delete(w.stuck, i)
			for n := range w.actions[i].conditions {
				w.s.armed[i+n] = true
			}
		}
	}
	if len(not) == 0 {
		return nil
	}
	cases := 1 + len(not)
	if len(not) > 1 {
		cases++
	}
	switch c := w.pick(cases); {
	case c == 0:
		return nil
	case c <= len(not):
		stuck = not[c-1 : c]
	default:
		stuck = not
	}
	for _, name := range stuck {
		i := w.action(name)
		w.stuck[i] = true
		for n := range w.actions[i].conditions {
			w.s.armed[i+n] = false
		}
	}
	return stuck
}

// branches puts a branch into some steps that expect something: the mechanical way
// round, if there is one, and a pressure or two.
func (m *plainMaker) branches(r *plainResult) {
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		s.Expect = nil
		for _, e := range r.events {
			if e.step == k && e.fired {
				s.Expect = append(s.Expect, e.action)
			}
		}
	}
	made := 0
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		if len(s.Expect) == 0 || made == 2 || !m.chance(0.7) {
			continue
		}
		made++
		not := s.Expect[m.random.IntN(len(s.Expect))]
		o := &sequence.Otherwise{Not: []string{not}}
		b := sequence.Step{Name: fmt.Sprintf("branch %d", k), Allow: []sequence.Flow{sequence.FlowIn, sequence.FlowOut}}
		if m.chance(0.6) {
			for _, d := range m.plan.Devices {
				for _, a := range d.Actions {
					if way, ok := m.wayTo("tubing", a.Inside); d.Name+": "+a.Name == not && ok {
						b.Do = []sequence.Act{{Shift: not, In: "tubing", Through: way}}
					}
				}
			}
		}
		if m.chance(0.4) {
			b.Ramps = []map[string]pressure{{"tubing": m.goal()}}
		}
		o.Steps = []sequence.Step{b}
		switch {
		case m.chance(0.3):
			o.Then = "end"
		case m.chance(0.3) && k+2 < len(m.plan.Steps):
			o.Then = m.plan.Steps[k+2].Name
		}
		s.Otherwise = o
	}
}

// branchGoals widens what the nominal way alone has set: the branch is judged, too.
func (m *plainMaker) branchGoals() {
	if !m.chance(0.8) {
		return
	}
	p := m.plan
	for k := range p.Steps {
		if o := p.Steps[k].Otherwise; o != nil {
			script := make([]int, 0, 4)
			for range 2 {
				script = append(script, 1)
				r := plainWalkOf(p, 4, script)
				for i := range o.Steps {
					for _, e := range r.events {
						if flat, _ := plainFlat(p); flat.Steps[e.step].Name == o.Steps[i].Name && e.fired && !slices.Contains(o.Steps[i].Expect, e.action) {
							o.Steps[i].Expect = append(o.Steps[i].Expect, e.action)
						}
					}
				}
			}
		}
	}
}
