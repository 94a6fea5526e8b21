package sequence

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
)

// Window is the surface pressure between which a step does just what is
// intended, in every world, with all else as planned.
type Window struct {
	Compartment string        `json:"compartment"`
	Ramp        int           `json:"ramp"` // counted from 1
	Planned     unit.Pressure `json:"planned"`
	Least       unit.Pressure `json:"least"`
	Greatest    unit.Pressure `json:"greatest"`
	Below       string        `json:"below"` // what fails below Least; empty: nothing
	Above       string        `json:"above"` // what fails above Greatest; empty: nothing up to the end of the search
	Open        bool          `json:"open"`  // there is such a pressure
	Inside      bool          `json:"inside"`
}

// windowCap is where the search for the greatest pressure ends: more than a rig
// pumps.
const windowCap = 20000 * unit.PSI

// windowStep is how finely the window is found: less than a gauge shows.
const windowStep = 0.2 * unit.PSI

// trial is a step with another pressure in its peak ramp.
type trial struct {
	*checker
	step        *Step
	ramp        int
	compartment string
	start       unit.Pressure // on the compartment when the step begins
	down        bool          // the planned pressure is less than that
	falls       bool          // the pressure that is tried is
	worlds      []*walked
}

// extremes are the worlds in which all devices are early, or late. A window is
// looked for in the one that is likely to bound it, and held against all worlds
// once it is found.
func (t trial) extremes() (early, late []*walked) {
	early, late = t.worlds, t.worlds
	for _, w := range t.worlds {
		switch w.name {
		case "earliest":
			early = []*walked{w}
		case "latest":
			late = []*walked{w}
		}
	}
	return early, late
}

// window finds the window of a step's highest ramp, and writes it into the
// cures of the findings that it mends.
func (c *checker) window(step *Step, r *StepResult, findings []Finding) {
	t, ok := c.trial(step)
	if !ok {
		return
	}
	planned := step.Ramps[t.ramp][t.compartment]
	w := &Window{Compartment: t.compartment, Ramp: t.ramp + 1, Planned: planned}
	low, high := t.fails(planned)
	early, late := t.extremes()
	if t.down {
		early, late = late, early
	}
	atOnce(2, 0, func(i int) {
		if i == 0 {
			w.Greatest, w.Above = t.edgeIn(early, planned, high, tooHigh)
		} else {
			w.Least, w.Below = t.edgeIn(late, planned, low, tooLow)
		}
	})
	w.Open = w.Least <= w.Greatest
	w.Inside = low == "" && high == ""
	r.Window = w
	if w.Inside {
		return
	}
	for i := range findings {
		findings[i].Cure = cmp.Or(findings[i].Cure, w.cure())
	}
}

// cure says what surface pressure mends a step, or that none does.
func (w *Window) cure() string {
	switch {
	case w.Open && w.Above == "":
		return fmt.Sprintf("at least %s on %q", psi(w.Least), w.Compartment)
	case w.Open && w.Below == "":
		return fmt.Sprintf("no more than %s on %q", psi(w.Greatest), w.Compartment)
	case w.Open:
		return fmt.Sprintf("from %s to %s on %q", psi(w.Least), psi(w.Greatest), w.Compartment)
	}
	return fmt.Sprintf("no surface pressure on %q does it: %s; other fluids, other pins or another order of steps is wanted", w.Compartment, w.Clash())
}

// Clash says what keeps a window shut; empty where it is open.
func (w *Window) Clash() string {
	if w.Open {
		return ""
	}
	low := "below " + psi(w.Least) + " " + w.Below
	if w.Least >= windowCap {
		low = "up to " + psi(windowCap) + " " + w.Below
	}
	high := "above " + psi(w.Greatest) + " " + w.Above
	if w.Greatest <= 0 {
		high = "at any pressure " + w.Above
	}
	return low + ", " + high
}

// trial picks the ramp and compartment with the highest pressure; a step
// without pressure or intention has no window.
func (c *checker) trial(step *Step) (trial, bool) {
	t := trial{checker: c, step: step, ramp: -1}
	most := unit.Pressure(math.Inf(-1))
	for k, ramp := range step.Ramps {
		for _, name := range slices.Sorted(maps.Keys(ramp)) {
			if ramp[name] > most {
				most, t.ramp, t.compartment = ramp[name], k, name
			}
		}
	}
	if t.ramp < 0 {
		return t, false
	}
	i := c.byName.compartment[t.compartment]
	before := c.worlds[0].before
	t.start = before.top[i]
	t.down = most < t.start && before.surface[i]
	t.worlds = c.alive()
	return t, true
}

// at is the step with another pressure wherever the planned one stands.
func (t trial) at(p unit.Pressure) *Step {
	s := *t.step
	planned := s.Ramps[t.ramp][t.compartment]
	s.Ramps = slices.Clone(s.Ramps)
	for k := range s.Ramps {
		if q, ok := s.Ramps[k][t.compartment]; ok && q == planned {
			s.Ramps[k] = maps.Clone(s.Ramps[k])
			s.Ramps[k][t.compartment] = p
		}
	}
	return &s
}

// fails tells what goes wrong with a pressure: for want of more, and of less.
// A pressure that can't be walked at all counts as too high.
func (t trial) fails(p unit.Pressure) (low, high string) {
	step := t.at(p)
	t.falls = t.down && p < t.start
	for _, w := range t.worlds {
		s := w.before.clone()
		again := &walked{world: w.world, before: w.before, state: s}
		var err error
		if again.trace, err = walkStep(s, step, w.thorough); err != nil {
			return "", err.Error()
		}
		short, far := t.judge(step, again)
		low, high = cmp.Or(low, short), cmp.Or(high, far)
		if low != "" && high != "" {
			break
		}
	}
	return low, high
}

// edgeIn looks for an edge in a few worlds, and in all where those turn out not
// to bound it.
func (t trial) edgeIn(few []*walked, planned unit.Pressure, failure string, kind sense) (unit.Pressure, string) {
	some := t
	some.worlds = few
	if found := some.failure(planned, kind); (found == "") == (failure == "") {
		edge, why := some.edge(planned, found, kind)
		if t.failure(edge, kind) == some.failure(edge, kind) {
			return edge, why
		}
	}
	return t.edge(planned, failure, kind)
}

// sense is the way in which a pressure fails.
type sense int

const (
	tooLow sense = iota
	tooHigh
)

// edge finds where a kind of failure begins, and what it is. failure is what
// the planned pressure has of it.
func (t trial) edge(planned unit.Pressure, failure string, kind sense) (unit.Pressure, string) {
	good, bad := planned, windowCap
	if kind == tooLow {
		bad = 0
	}
	if failure != "" {
		good, bad = 0, planned
		if kind == tooLow {
			good = windowCap
		}
		if f := t.failure(good, kind); f != "" {
			return good, f
		}
	} else if failure = t.failure(bad, kind); failure == "" {
		return bad, ""
	}
	for math.Abs(float64(bad-good)) > float64(windowStep) {
		mid := (good + bad) / 2
		if f := t.failure(mid, kind); f != "" {
			bad, failure = mid, f
		} else {
			good = mid
		}
	}
	// Whole psi on the good side.
	whole := math.Floor(good.In(unit.PSI))
	if kind == tooLow {
		whole = math.Ceil(good.In(unit.PSI))
	}
	return unit.Pressure(whole) * unit.PSI, failure
}
