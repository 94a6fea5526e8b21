package sequence

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
)

// Finding is one way in which a plan fails.
type Finding struct {
	Kind    Kind   `json:"kind"`
	Step    string `json:"step"`
	Device  string `json:"device"`  // or formation, rating, string
	Says    string `json:"says"`    // what happens
	Numbers string `json:"numbers"` // that show it
	World   string `json:"world"`   // what is assumed of the thresholds
	Cure    string `json:"cure"`
	Until   string `json:"until,omitempty"`   // the last of the steps through which it stays so
	Follows string `json:"follows,omitempty"` // the finding's step that it follows from: mend that first
}

// Kind sorts findings.
type Kind string

// The kinds of finding.
const (
	Unintended  Kind = "unintended event"
	Missing     Kind = "intended event missing"
	RatingCross Kind = "rating passed"
	StringLoad  Kind = "string overloaded"
	HoldingOff  Kind = "packer overloaded"
	PullOff     Kind = "pull off plan"
	SealTravel  Kind = "seals leave their bore"
	BalanceOff  Kind = "balance off plan"
	TestOff     Kind = "test off plan"
	FlowOff     Kind = "flow off plan"
	Fracture    Kind = "fracture pressure passed"
	BarrierLack Kind = "barriers lacking"
	RateOff     Kind = "rate off plan"
)

// find keeps a finding. What stays as it is from step to step is one finding;
// what the nominal world meets after it has left the plan follows from that.
func (c *checker) find(f Finding) {
	c.failed = true
	key := string(f.Kind) + f.Device
	if last, ok := c.lasting[key]; ok && last.step >= c.index-1 && lasts(f.Kind) {
		c.programme.Findings[last.finding].Until = f.Step
		c.lasting[key] = lasting{last.finding, c.index}
		return
	}
	f.Follows = cmp.Or(c.follows, c.within)
	c.lasting[key] = lasting{len(c.programme.Findings), c.index}
	c.programme.Findings = append(c.programme.Findings, f)
}

// lasting is a finding that may go on in the next step.
type lasting struct{ finding, step int }

// lasts tells whether a kind of finding is a state that goes on, and not
// something that a step does.
func lasts(k Kind) bool { return k == SealTravel || k == FlowOff || k == BarrierLack }

// digits of a number in a sentence.
const digits = 5

func psi(p unit.Pressure) string { return p.Rounded(digits) }

// felt writes what a trigger feels: a differential, or a tension.
func felt(axial bool, d unit.Pressure) string {
	if axial {
		return unit.Force(d).Rounded(digits)
	}
	return psi(d)
}

// said tells whether a step has such a finding already.
func (c *checker) said(kind Kind, step *Step, device string) bool {
	for _, f := range c.programme.Findings {
		if f.Kind == kind && f.Step == step.Name && f.Device == device {
			return true
		}
	}
	return false
}

// atSurface writes the surface pressures of a moment, those that are zero left
// out.
func (c *checker) atSurface(readings []Reading) string {
	var parts []string
	for _, r := range readings {
		if r.Pressure != 0 {
			parts = append(parts, fmt.Sprintf("%s on %q", psi(r.Pressure), r.Compartment))
		}
	}
	return cmp.Or(strings.Join(parts, ", "), "no pressure")
}

// events holds what happened in every world against what was intended.
func (c *checker) events(step *Step, r *StepResult) {
	for i := range c.actions {
		name := c.actions[i].name
		intended := slices.Contains(step.Expect, name)
		var did, didNot []*walked
		for _, w := range c.alive() {
			if slices.Contains(w.done(), name) {
				did = append(did, w)
			} else {
				didNot = append(didNot, w)
			}
		}
		c.triggerResult(r, i, intended, did, didNot)
		if c.reported[c.actions[i].name] {
			continue
		}
		if !intended && len(did) > 0 {
			c.unintended(step, i, did)
		}
		if intended && len(didNot) > 0 {
			c.missing(step, i, did, didNot)
		}
	}
	// What the rest of the step shows of a world that has left the plan follows
	// from that, and so does what the same action does later.
	for _, w := range c.alive() {
		if len(c.strayed(step, w)) > 0 {
			c.within = step.Name
		}
	}
	for _, f := range c.programme.Findings {
		if f.Step == step.Name && (f.Kind == Unintended || f.Kind == Missing) {
			c.reported[f.Device] = true
		}
	}
}

// witness is the world that shows a finding best: the nominal one if it can.
func witness(ws []*walked) *walked { return ws[0] }

func (c *checker) unintended(step *Step, i int, did []*walked) {
	w := witness(did)
	a := &c.actions[i]
	f := Finding{Kind: Unintended, Step: step.Name, Device: a.name, World: w.words}
	for _, e := range w.trace.events {
		if e.action != i || !e.complete {
			continue
		}
		f.Numbers = fmt.Sprintf("it feels %s at %.0f ft with %s at surface; its threshold is %s",
			felt(a.axial, e.differential), a.md.In(unit.Foot), c.atSurface(c.readings(w.state, e.surface)), c.threshold(i))
		if e.pull > 0 {
			f.Numbers += fmt.Sprintf("; weight indicator %s", e.pull.Rounded(digits))
		}
	}
	if len(did) == len(c.alive()) {
		f.Says = "happens, and is not intended in this step"
	} else {
		f.Says = "can happen, and is not intended in this step"
	}
	c.find(f)
}

func (c *checker) missing(step *Step, i int, did, didNot []*walked) {
	w := witness(didNot)
	a := &c.actions[i]
	f := Finding{Kind: Missing, Step: step.Name, Device: a.name, World: w.words}
	x := w.trace.extremes[i]
	switch {
	case !x.seen:
		f.Numbers = "it is not armed: it has happened before, or what arms it has not"
		f.Cure = "take it out of what this step expects, or let first happen what arms it"
	default:
		f.Numbers = fmt.Sprintf("it feels from %s to %s at %.0f ft; its threshold is %s",
			felt(a.axial, x.least), felt(a.axial, x.greatest), a.md.In(unit.Foot), c.threshold(i))
	}
	if len(did) == 0 {
		f.Says = "does not happen, and is intended in this step"
	} else {
		f.Says = "may not happen, and is intended in this step"
	}
	c.find(f)
}

// threshold writes the bands of an action's row.
func (c *checker) threshold(i int) string {
	a := &c.actions[i]
	var parts []string
	for _, t := range a.row {
		s := band(a.axial, t.Threshold)
		if t.Count > 1 {
			s += fmt.Sprintf(" %s, %d times", t.Direction, t.Count)
		} else {
			s += " " + t.Direction.String()
		}
		parts = append(parts, s)
	}
	return strings.Join(parts, ", then ")
}

func band(axial bool, b unit.Band[unit.Pressure]) string {
	if b.Exact() {
		return felt(axial, b.Nominal)
	}
	return felt(axial, b.Least) + " to " + felt(axial, b.Greatest)
}
