package sequence_test

import (
	"fmt"
	"slices"
	"strings"

	"completion.example/valve/sequence"
)

// fail notes a margin that is negative; a limit that is only reached is kept.
func (w *plainWalk) fail(kind sequence.Kind, name string, margin float64) {
	w.failIn(w.step, kind, name, margin)
}

func (w *plainWalk) failIn(step int, kind sequence.Kind, name string, margin float64) {
	if w.hair(margin) {
		w.r.close = true
	}
	if margin >= -plainTolerance {
		return
	}
	at := w.plan.Steps[step].Name
	for i := range w.r.failures {
		if f := &w.r.failures[i]; f.Kind == kind && f.Name == name && f.Step == at {
			f.By = max(f.By, -margin)
			return
		}
	}
	w.r.failures = append(w.r.failures, plainFailure{kind, at, name, -margin})
}

// atmosphere is the standard one in psi: 101,325 Pa over 6,894.757 Pa.
const atmosphere = 101325 / 6894.757293168361

// flowTolerance is the difference that counts as no flow, in psi.
const plainFlow = 0.5

// judge holds every limit that counts at every moment against how things stand.
func (w *plainWalk) judge() {
	for i := range w.ratings {
		w.judgeRating(&w.ratings[i])
	}
	for i, c := range w.comps {
		if w.s.fallen[i] {
			continue // air
		}
		w.fail(plainVacuum, c.name, w.s.top[i]+atmosphere)
	}
	for f := range w.forms {
		w.judgeFormation(f)
	}
	w.judgeBarriers()
	if w.str != nil {
		w.str.judge()
	}
	if w.outer != nil {
		w.outer.judge()
	}
}

func (w *plainWalk) judgeRating(r *plainRating) {
	depths := append(r.depths[:0], r.from, r.to)
	for _, i := range []int{r.inside, r.outside} {
		if i < 0 {
			continue
		}
		for _, l := range w.s.layers[i] {
			if r.from < l.bottom && l.bottom < r.to {
				depths = append(depths, l.bottom)
			}
		}
	}
	for _, f := range w.forms { // where what flows up turns
		if w.s.riser != nil && r.from < f.depth && f.depth < r.to {
			depths = append(depths, f.depth)
		}
	}
	if w.s.riser != nil {
		for _, c := range w.plan.Compartments {
			for _, b := range c.Bores {
				if d := b.To.In(foot); r.from < d && d < r.to {
					depths = append(depths, d)
				}
			}
		}
	}
	for _, i := range []int{r.inside, r.outside} {
		if i >= 0 && w.s.fallen[i] {
			if d := w.s.levelOf(i); r.from < d && d < r.to {
				depths = append(depths, d)
			}
		}
	}
	for _, d := range depths {
		out := r.background * d
		if r.outside >= 0 {
			out = w.s.at(r.outside, d)
		}
		x := w.s.at(r.inside, d) - out
		if r.burst > 0 {
			w.fail(sequence.RatingCross, r.name, r.burst-x)
		}
		if r.collapse > 0 {
			w.fail(sequence.RatingCross, r.name, r.collapse+x)
		}
	}
	r.depths = depths
}

// judgeFormation looks at fracture and flow.
func (w *plainWalk) judgeFormation(k int) {
	f := &w.forms[k]
	if f.face < 0 {
		return
	}
	p := w.s.at(f.face, f.depth)
	if f.fracture > 0 {
		w.fail(sequence.Fracture, f.name, f.fracture-p)
	}
	body := w.solver.bodyOf[f.face]
	for i, on := range w.s.surface {
		if !on || w.solver.bodyOf[i] != body {
			continue
		}
		step := &w.plan.Steps[w.step]
		if step.Produce != nil {
			w.s.flowed[k] = true
			continue
		}
		if !slices.Contains(step.Allow, sequence.FlowIn) {
			w.fail(sequence.FlowOff, f.name+" inflow", plainFlow-(f.pressure-p))
		} else if f.pressure-p > plainFlow {
			w.s.flowed[k] = true
		}
		if !slices.Contains(step.Allow, sequence.FlowOut) {
			w.fail(sequence.FlowOff, f.name+" loss", plainFlow-(p-f.pressure))
		}
	}
}

// judgeBarriers counts what stands before each formation.
func (w *plainWalk) judgeBarriers() {
	for k, f := range w.forms {
		if !f.listed || w.s.flowed[k] {
			continue
		}
		n := 0
		for _, b := range w.plan.Barriers {
			if b.Formation == f.name && w.stands(&b, &f) {
				n++
			}
		}
		w.fail(sequence.BarrierLack, f.name, float64(n-w.plan.Rules.Barriers))
	}
}

func (w *plainWalk) stands(b *sequence.Barrier, f *plainFormation) bool {
	if b.Until != "" && w.s.happened[w.action(b.Until)] {
		return false
	}
	switch {
	case b.Port != "":
		return !w.s.open[w.port(b.Port)]
	case b.Action != "":
		return w.s.happened[w.action(b.Action)]
	case b.Column != "":
		// What is missing before it counts as flow counts as nothing.
		over := w.s.at(w.comp(b.Column), f.depth) - f.pressure + plainFlow
		if w.hair(over) {
			w.r.close = true
		}
		return over >= -plainTolerance
	}
	return true
}

// judgeEvents holds what fired in a step against what was expected: device by
// device, in order, as often as it stands there.
func (w *plainWalk) judgeEvents() {
	step := &w.plan.Steps[w.step]
	for _, d := range w.plan.Devices {
		of := func(list []string) []string {
			var mine []string
			for _, name := range list {
				if strings.HasPrefix(name, d.Name+": ") {
					mine = append(mine, name)
				}
			}
			return mine
		}
		expected, fired := of(step.Expect), of(w.fired)
		for n, name := range expected {
			if slices.Contains(w.just, name) {
				expected = expected[:n] // what comes after it can't
				break
			}
		}
		if slices.Equal(expected, fired) {
			continue
		}
		orderOnly := true
		for _, a := range d.Actions {
			name := d.Name + ": " + a.Name
			switch more := times(fired, name) - times(expected, name); {
			case more > 0:
				w.fail(sequence.Unintended, name, -float64(more))
				orderOnly = false
			case more < 0:
				w.fail(sequence.Missing, name, float64(more))
				orderOnly = false
			}
		}
		if orderOnly {
			w.fail(sequence.Unintended, d.Name+" out of order", -1)
		}
	}
}

func times(list []string, name string) int {
	n := 0
	for _, x := range list {
		if x == name {
			n++
		}
	}
	return n
}

// judgeGoals holds tests and balances against their bands, each at its moment.
func (w *plainWalk) judgeGoals() {
	for k, step := range w.plan.Steps {
		if k >= len(w.r.stands) || len(w.r.stands[k]) == 0 {
			continue // another way was gone
		}
		for i, t := range step.Tests {
			low, high := t.Differential.Least.In(psi), t.Differential.Greatest.In(psi)
			w.failIn(k, sequence.TestOff, fmt.Sprintf("%s %d", t.Barrier, i), testMargin(t, w.r.tests[k][i], low, high))
		}
		for i, held := range w.r.held[k] {
			if held.test {
				w.failIn(k, sequence.TestOff, fmt.Sprintf("%s %d held", step.Tests[i].Barrier, i), held.left)
			}
		}
		for i, b := range step.Balance {
			all := w.r.balances[k][i]
			at := len(all) - 1
			switch b.Moment {
			case sequence.AtStart:
				at = 0
			case sequence.AtPeak:
				at = min(1, at)
			}
			d := all[at]
			w.failIn(k, sequence.BalanceOff, fmt.Sprintf("%s %d", b.Formation, i), min(d-b.Overbalance.Least.In(psi), b.Overbalance.Greatest.In(psi)-d))
		}
	}
}

// testMargin is how well a test goes: at its moment, which by default is where the differential goes furthest on the
// side of the band's middle.
func testMargin(t sequence.Test, all []float64, low, high float64) float64 {
	last := len(all) - 1
	switch {
	case t.Moment == sequence.AtStart || last == 0:
		return min(all[0]-low, high-all[0])
	case t.Moment == sequence.AtEnd:
		return min(all[last]-low, high-all[last])
	case low+high < 0:
		furthest := slices.Min(all[1:])
		return min(furthest-low, high-furthest)
	}
	furthest := slices.Max(all[1:])
	return min(furthest-low, high-furthest)
}
