package sequence

import (
	"cmp"
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
)

// Parting is an axial action on a pull: the weight-indicator readings at which
// it happens over all worlds.
type Parting struct {
	Action   string     `json:"action"`
	Least    unit.Force `json:"least"`
	Nominal  unit.Force `json:"nominal"`
	Greatest unit.Force `json:"greatest"`
	Planned  unit.Force `json:"planned"` // the highest reading of the step
	OK       bool       `json:"ok"`      // it happens in every world
}

// partings tells for every axial action that a pull is meant to move what the
// weight indicator reads when it does. A world in which it doesn't would need
// as much more as is missing in the string.
func (c *checker) partings(step *Step, r *StepResult, findings []Finding) {
	if len(step.Pull) == 0 {
		return
	}
	for i := range c.actions {
		a := &c.actions[i]
		if !a.axial || !slices.Contains(step.Expect, a.name) {
			continue
		}
		known := false
		p := Parting{Action: a.name, OK: true, Planned: slices.Max(step.Pull)}
		for n, w := range c.alive() {
			reading, ok := w.reading(i)
			if !ok {
				p.OK = false
				if w.state.hold.held == nil {
					continue // no pull reaches it
				}
				level, _, waits := w.state.thresholds[i].Next(w.state.rows[i])
				if !waits || !w.trace.extremes[i].seen {
					continue
				}
				reading = p.Planned + unit.Force(level-w.trace.extremes[i].greatest)
			}
			if n == 0 {
				p.Nominal = reading
			}
			if !known || reading < p.Least {
				p.Least = reading
			}
			p.Greatest, known = max(p.Greatest, reading), true
		}
		if !known {
			for k := range findings {
				if f := &findings[k]; f.Device == a.name && f.Kind == Missing {
					f.Cure = cmp.Or(f.Cure, "nothing holds the string, so that no pull reaches it: set what holds it before this step")
				}
			}
			continue
		}
		r.Partings = append(r.Partings, p)
		for k := range findings {
			if f := &findings[k]; f.Device == a.name && f.Kind == Missing && f.Cure == "" {
				f.Cure = fmt.Sprintf("pull until the weight indicator shows %s; it parts from %s on", p.Greatest.Rounded(4), p.Least.Rounded(4))
			}
		}
	}
}

// freePull reports a pull that nothing holds: the weight indicator never shows
// it. A string that the step itself has freed is meant to come up.
func (c *checker) freePull(step *Step) {
	for _, w := range c.alive() {
		if w.before.hold.held != nil {
			continue
		}
		for _, k := range w.trace.stands {
			if k.load == nil || !k.load.free || w.state.hold.held != nil {
				continue
			}
			hook := k.load.top + c.plan.String.Block
			c.find(Finding{
				Kind: PullOff, Step: step.Name, Device: "string", World: w.words,
				Says:    fmt.Sprintf("nothing holds the string: it comes up (%s)", k.label),
				Numbers: fmt.Sprintf("the weight indicator shows no more than %s; planned %s", hook.Rounded(digits), k.pull.Rounded(digits)),
				Cure:    "set what holds the string before this step, or pull no more than its own weight and the drag",
			})
			return
		}
	}
}

// pulledTo is the highest weight-indicator reading of the step.
func (w *walked) pulledTo() unit.Force {
	var most unit.Force
	for _, k := range w.trace.stands {
		most = max(most, k.pull)
	}
	return most
}

// reading is the weight indicator's when an action happened.
func (w *walked) reading(action int) (unit.Force, bool) {
	for _, e := range w.trace.events {
		if e.action == action && e.complete {
			return e.pull, e.pull > 0
		}
	}
	return 0, false
}
