package sequence_test

import (
	"slices"

	"completion.example/valve/sequence"
)

// stand keeps how things are where the step stands still.
func (w *plainWalk) stand() {
	r := w.r
	for len(r.stands) <= w.step {
		step := w.plan.Steps[len(r.stands)]
		r.stands = append(r.stands, nil)
		r.tests = append(r.tests, make([][]float64, len(step.Tests)))
		r.held = append(r.held, make([]plainHeld, len(step.Tests)))
		r.balances = append(r.balances, make([][]float64, len(step.Balance)))
	}
	step := w.plan.Steps[w.step]
	top := slices.Clone(w.s.top)
	for i := range top {
		if w.s.fallen[i] {
			top[i] = 0
		}
	}
	r.stands[w.step] = append(r.stands[w.step], plainStand{top, slices.Clone(w.s.open), w.allFelt(), w.strung()})
	for k, t := range step.Tests {
		depth := t.MD.In(foot)
		if len(t.Warms) > 0 && (t.Moment == sequence.AtEnd || len(r.stands[w.step]) == 1) {
			r.held[w.step][k] = plainHeld{true, w.left(&t)}
		}
		r.tests[w.step][k] = append(r.tests[w.step][k], w.s.at(w.comp(t.Inside), depth)-w.s.at(w.comp(t.Outside), depth))
	}
	for k, b := range step.Balance {
		f := w.forms[w.form(b.Formation)]
		r.balances[w.step][k] = append(r.balances[w.step][k], w.s.at(w.comp(b.Compartment), f.depth)-f.pressure)
	}
}

// allFelt is what every action feels, armed or not.
func (w *plainWalk) allFelt() []float64 {
	felt := make([]float64, len(w.actions))
	for i := range felt {
		felt[i] = w.feels(i)
	}
	return felt
}

// feels is what an action feels: pressures, or the string.
func (w *plainWalk) feels(i int) float64 {
	if a := &w.actions[i]; !a.axial {
		return w.s.felt(a)
	}
	return w.stringOn(w.plan.Devices[w.actions[i].device].On).axial(i)
}
