package sequence_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
)

type pressure = unit.Pressure

func cmpFloat(a, b float64) int { return cmp.Compare(a, b) }

// gap is how far an action feels beyond the level that it waits for; negative
// before it.
func (w *plainWalk) gap(i int) float64 {
	if !w.s.armed[i] || w.actions[i].delay > 0 && !w.ripe[i] {
		return -1e9
	}
	return w.beyond(i)
}

// beyond is by how much an action's felt pressure is beyond what it waits for.
func (w *plainWalk) beyond(i int) float64 {
	t := w.actions[i].row[w.s.links[i]]
	level, falling := t.level, t.falling
	if w.s.waiting[i] {
		level, falling = t.rearm, !t.falling
	}
	if falling {
		return level - w.felts[i]
	}
	return w.felts[i] - level
}

func (w *plainWalk) due(i int) bool { return w.s.armed[i] && w.gap(i) >= -plainTolerance }

func (w *plainWalk) anyDue() bool {
	for i := range w.actions {
		if w.due(i) {
			return true
		}
	}
	return false
}

// nearMisses notes what is a hair from being due.
func (w *plainWalk) nearMisses() {
	for i := range w.actions {
		if w.s.armed[i] && (w.hair(w.gap(i)) || w.actions[i].axial && math.Abs(w.gap(i)) < plainPull && math.Abs(w.gap(i)) > 10*plainTolerance) {
			w.r.close = true
		}
	}
}

// settle lets everything happen that is due where the well stands.
func (w *plainWalk) settle() error {
	for range 100 + 20*len(w.actions) {
		w.nearMisses()
		due := w.waits[:0]
		for i := range w.actions {
			if w.due(i) {
				due = append(due, i)
			}
		}
		if len(due) == 0 {
			return nil
		}
		w.waits = due
		i := w.choose(due)
		if !w.comeOn(i) {
			continue
		}
		w.commit(w.base)
		if err := w.look(w.base); err != nil {
			return err
		}
		w.judge()
		w.commit(w.base)
	}
	return fmt.Errorf("devices keep moving each other")
}

// choose picks which of those that are due comes on first. It matters only
// where one of them would fire.
func (w *plainWalk) choose(due []int) int {
	if len(due) == 1 || !slices.ContainsFunc(due, w.wouldFire) {
		return due[0]
	}
	pick := 0
	if n := len(w.r.choices); n < len(w.script) {
		pick = min(w.script[n], len(due)-1)
	}
	w.r.choices = append(w.r.choices, len(due))
	return due[pick]
}

// wouldFire tells whether the rest of an action's row is met by what it feels
// now.
func (w *plainWalk) wouldFire(i int) bool {
	links, counted, waiting := w.s.links[i], w.s.counted[i], w.s.waiting[i]
	defer func() { w.s.links[i], w.s.counted[i], w.s.waiting[i] = links, counted, waiting }()
	for w.s.links[i] < len(w.actions[i].row) {
		if !w.due(i) {
			return false
		}
		w.link(i)
	}
	return true
}

// link brings a row on by one re-arming, count or link.
func (w *plainWalk) link(i int) {
	s := w.s
	if s.waiting[i] {
		s.waiting[i] = false
		return
	}
	s.counted[i]++
	if s.counted[i] < w.actions[i].row[s.links[i]].count {
		s.waiting[i] = true
		return
	}
	s.links[i]++
	s.counted[i] = 0
}

// comeOn brings a row on and tells whether its action fired.
func (w *plainWalk) comeOn(i int) bool {
	rearmed := w.s.waiting[i]
	w.link(i)
	a := &w.actions[i]
	fired := w.s.links[i] == len(a.row)
	if !rearmed {
		w.r.events = append(w.r.events, plainEvent{w.step, w.leg, a.name, fired, w.s.links[i], w.s.counted[i], w.felts[i], w.shown()})
	}
	if !fired {
		return false
	}
	if a.all {
		for k := a.group; k < a.group+a.conditions; k++ {
			if k != i && w.s.armed[k] { // it stays met; the others are waited for
				w.s.armed[i] = false
				w.r.events[len(w.r.events)-1].fired = false
				return false
			}
		}
	}
	w.fired = append(w.fired, a.name)
	w.effects(i)
	return true
}

// effects are what an action does once it happens.
func (w *plainWalk) effects(i int) {
	a := &w.actions[i]
	w.s.happened[a.group] = true
	delete(w.stuck, a.group)
	w.armAll(a.group, false)
	for _, k := range a.disarms {
		w.armAll(k, false)
	}
	w.stroke(a)
	w.moves(a)
	for _, p := range a.opens {
		if x := w.ports[p]; !w.s.open[p] && !w.solver.fixed(w.s, x.a) && !w.solver.fixed(w.s, x.b) {
			w.r.met = true
		}
		if !w.s.open[p] {
			w.turned++
		}
		w.s.open[p] = true
	}
	for _, p := range a.closes {
		if w.s.open[p] {
			w.turned++
		}
		w.s.open[p] = false
	}
	for _, k := range a.arms {
		w.armAll(k, true)
	}
}

// armAll arms or disarms all conditions of an action.
func (w *plainWalk) armAll(first int, armed bool) {
	for k := first; k < first+w.actions[first].conditions; k++ {
		w.s.armed[k] = armed && !w.stuck[first]
		if armed {
			w.s.links[k], w.s.counted[k], w.s.waiting[k] = 0, 0, false
		}
	}
}
