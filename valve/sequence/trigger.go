package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// Verdict is what a step does to an action.
type Verdict string

// Verdicts over all worlds.
const (
	MustFire    Verdict = "must"      // in every world
	MayFire     Verdict = "may"       // in some
	CannotFire  Verdict = "cannot"    // in none
	NotArmed    Verdict = "not armed" // it isn't waiting for anything
	ComesOnOnly Verdict = "comes on"  // its row comes on in some world, without firing
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
	// Threshold is the trigger that it waited for when the step began.
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
	t := TriggerResult{Action: a.name, Intended: intended, Axial: a.axial, Verdict: NotArmed}
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
		if intended {
			link = len(a.row) - 1
		}
		trigger := a.row[link]
		t.Threshold, t.Direction = trigger.Threshold, trigger.Direction
		t.Margin, t.Reach = c.margin(i, trigger, intended)
		r.Triggers = append(r.Triggers, t)
	}
}

// margin is the least over all worlds: to the near end of the band for what
// must not happen, beyond the far end for what must.
func (c *checker) margin(i int, t valve.Trigger, intended bool) (least, felt unit.Pressure) {
	first := true
	for _, w := range c.alive() {
		x := w.trace.extremes[i]
		if !x.seen || (intended && w.trace.stands == nil) {
			continue
		}
		extreme := t.Extreme(x.least, x.greatest)
		if intended {
			extreme = w.reach(i, t, extreme)
		}
		m := t.MarginOf(extreme)
		d := -m.Near
		if intended {
			d = m.Far
		}
		if first || d < least {
			least, felt, first = d, extreme, false
		}
	}
	return least, felt
}

// reach is how far the differential of an action would go in a step had it not
// fired. While it waits it never goes beyond its own threshold, and what opens
// a port takes its own differential away; so it is looked at where the step
// stands still, with the ports that the action moved put back.
func (w *walked) reach(i int, t valve.Trigger, felt unit.Pressure) unit.Pressure {
	a := &w.state.actions[i]
	if a.axial {
		// A pull that went on after the action happened would have been felt
		// in full.
		for _, e := range w.trace.events {
			if e.action == i && e.complete && e.pull > 0 {
				felt = t.Extreme(felt, e.differential+unit.Pressure(w.pulledTo()-e.pull))
			}
		}
		return felt
	}
	for _, k := range w.trace.stands[min(1, len(w.trace.stands)-1):] {
		s := k.state.clone()
		for _, p := range a.opens {
			s.open[p] = w.before.open[p]
		}
		for _, p := range a.closes {
			s.open[p] = w.before.open[p]
		}
		if s.solve() != nil {
			return felt
		}
		in, err := s.at(a.inside, a.tvd)
		if err != nil {
			return felt
		}
		out := a.chamber
		if a.outside >= 0 {
			if out, err = s.at(a.outside, a.tvd); err != nil {
				return felt
			}
		}
		felt = t.Extreme(felt, in-out)
	}
	return felt
}
