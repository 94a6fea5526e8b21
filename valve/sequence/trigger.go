package sequence

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// Verdict is what a step does to an action.
type Verdict string

// Verdicts over all worlds.
const (
	MustFire    Verdict = "must"     // in every world
	MayFire     Verdict = "may"      // in some
	CannotFire  Verdict = "cannot"   // in none
	ComesOnOnly Verdict = "comes on" // its row comes on in some world, without firing
)

// TriggerResult is an action in a step.
type TriggerResult struct {
	Action   string  `json:"action"`
	Intended bool    `json:"intended"`
	Verdict  Verdict `json:"verdict"`
	Axial    bool    `json:"axial"` // then all pressures here are forces in N
	// Felt is the range of the differential over all worlds while it waited.
	Least    unit.Pressure `json:"least"`
	Greatest unit.Pressure `json:"greatest"`
	// Threshold is the trigger that it waited for when the step began; of an
	// intended row the one that is met with least to spare.
	Threshold unit.Band[unit.Pressure] `json:"threshold"`
	Direction valve.Direction          `json:"direction"`
	// Reach is what an intended action would have felt at most, had it not
	// fired, in the world where that is least.
	Reach unit.Pressure `json:"reach"`
	// Margin is what is left to the near end of the band where nothing is
	// intended, and what there is beyond its far end where it is; negative is
	// bad.
	Margin unit.Pressure `json:"margin"`
}

// triggerResult gathers an action's margins over all worlds.
func (c *checker) triggerResult(r *StepResult, i int, intended bool, did, didNot []*walked) {
	a := &c.actions[i]
	t := TriggerResult{Action: a.name, Intended: intended, Axial: a.axial}
	seen := false
	link := len(a.row) - 1
	cameOn := false
	for _, w := range c.alive() {
		x := w.trace.extremes[i]
		if !x.seen {
			continue
		}
		if links, _ := x.waiting.Links(); links < len(a.row) {
			link = min(link, links)
		}
		if !seen {
			t.Least, t.Greatest, seen = x.least, x.greatest, true
		}
		t.Least, t.Greatest = min(t.Least, x.least), max(t.Greatest, x.greatest)
		for _, e := range w.trace.events {
			cameOn = cameOn || (e.action == i && !e.complete)
		}
	}
	if seen {
		switch {
		case len(didNot) == 0:
			t.Verdict = MustFire
		case len(did) > 0:
			t.Verdict = MayFire
		case cameOn:
			t.Verdict = ComesOnOnly
		default:
			t.Verdict = CannotFire
		}
		t.Threshold, t.Direction = a.row[link].Threshold, a.row[link].Direction
		if intended {
			c.beyond(i, &t)
		} else {
			t.Margin = c.left(i, a.row[link])
		}
		r.Triggers = append(r.Triggers, t)
	}
}

// left is the least, over all worlds, of what is left to the near end of a
// trigger's band.
func (c *checker) left(i int, t valve.Trigger) unit.Pressure {
	least := unit.Pressure(math.Inf(1))
	for _, w := range c.alive() {
		if x := w.trace.extremes[i]; x.seen {
			least = min(least, -t.MarginOf(t.Extreme(x.least, x.greatest)).Near)
		}
	}
	return least
}

// beyond finds which trigger of an intended row has least to spare beyond the
// far end of its band, over all worlds: the row is no surer than that one.
func (c *checker) beyond(i int, r *TriggerResult) {
	row, first := c.actions[i].row, true
	for _, w := range c.alive() {
		x := w.trace.extremes[i]
		if !x.seen || w.trace.stands == nil {
			continue
		}
		waiting, _ := x.waiting.Links()
		if waiting >= len(row) {
			waiting = 0 // it was armed anew in this step
		}
		for k := waiting; k < len(row); k++ {
			from, ok := w.met(i, k)
			if k > waiting && !ok {
				break
			}
			felt := w.reach(i, row[k], from, k == waiting)
			if m := row[k].MarginOf(felt).Far; first || m < r.Margin {
				r.Margin, r.Reach, r.Threshold, r.Direction = m, felt, row[k].Threshold, row[k].Direction
				first = false
			}
		}
	}
}

// met is the first place where a step stands still after the first k triggers
// of an action's row have fired.
func (w *walked) met(i, k int) (stand int, ok bool) {
	for _, e := range w.trace.events {
		if e.action == i && e.links >= k {
			return min(e.ramp+1, len(w.trace.stands)-1), true
		}
	}
	return 0, false
}

// reach is how far the differential of an action would go in a step had it not
// fired, from one standstill of the step on. While it waits it never goes beyond
// its own threshold, and what opens a port takes its own differential away; so
// it is looked at where the step stands still, with the ports that the action
// moved put back. Of a trigger that counts to n it is the n-th of these. felt
// says that what was felt on the way counts too: that the trigger waited from
// the beginning.
func (w *walked) reach(i int, t valve.Trigger, from int, felt bool) unit.Pressure {
	x := w.trace.extremes[i]
	extreme := t.Extreme(x.least, x.greatest)
	if w.state.actions[i].axial {
		// A pull that went on after the action happened would have been felt
		// in full.
		for _, e := range w.trace.events {
			if e.action == i && e.complete && e.pull > 0 {
				extreme = t.Extreme(extreme, e.differential+unit.Pressure(w.pulledTo()-e.pull))
			}
		}
		return extreme
	}
	if from == 0 {
		from = min(1, len(w.trace.stands)-1)
	}
	var all []unit.Pressure
	for _, k := range w.trace.stands[from:] {
		if d, ok := w.unmoved(i, k.state); ok {
			all = append(all, d)
		}
	}
	slices.Sort(all)
	if t.Direction == valve.Rising {
		slices.Reverse(all)
	}
	n := t.Count
	if counted, _ := x.waiting.Counted(); felt {
		n -= counted
	}
	if n > 1 && len(all) >= n {
		return all[n-1]
	}
	switch {
	case len(all) == 0:
		return extreme
	case felt:
		return t.Extreme(extreme, all[0])
	}
	return all[0]
}

// unmoved is the differential of an action with the ports that it moves as they
// were before the step.
func (w *walked) unmoved(i int, at *state) (unit.Pressure, bool) {
	a := &at.actions[i]
	s := at.clone()
	for _, p := range slices.Concat(a.opens, a.closes) {
		s.open[p] = w.before.open[p]
	}
	if s.solve() != nil {
		return 0, false
	}
	d, err := s.differential(a)
	return d, err == nil
}
