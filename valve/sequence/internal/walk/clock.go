package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// The time that a step takes, for what is slow.

const takeBack = "let a ramp bring it there, hold it after that, and take it back in the same step"

// begins is the time from the end of the step before to what a step does first: what it
// says that it takes otherwise.
func (k *Walker) begins(worlds []*World, drives []drive) ([]*World, error) {
	if !k.slow() {
		return worlds, nil
	}
	if k.place.Step == 0 {
		stated := func(w *World, i int) bool { return w.level != nil && w.level[i] }
		if err := k.unhurriedBut(stated, worlds, "as the programme begins", "begin where it isn't there, or with what has brought it there, or state for how long (\"stood\" in begin.progress)"); err != nil {
			return nil, err
		}
		if k.step.Takes <= 0 {
			some := worlds[:0:0]
			for _, w := range worlds {
				if slices.Contains(w.level, true) {
					some = append(some, w)
				}
			}
			return worlds, k.unhurriedBut(func(w *World, i int) bool { return !stated(w, i) }, some, "as the programme begins", `write in its first step how long it takes before anything is done in it ("takes": "5 min")`)
		}
		if !slices.ContainsFunc(worlds, func(w *World) bool { return slices.Contains(w.level, true) }) {
			return worlds, nil
		}
	}
	if k.step.Takes <= 0 { // the step before has seen to it that nothing slow is at its level
		return worlds, nil
	}
	t := standing{hold: k.step.Takes}
	if k.step.Temperature >= 0 { // it may be what is waited for
		t = standing{perhaps: k.step.Takes}
	}
	return k.standAll(worlds, k.before(drives, t))
}

// goesOn makes sure, as a step ends, that it is known how long what is slow stays at its
// level before the next does anything.
func (k *Walker) goesOn(worlds []*World) error {
	switch {
	case k.step.Last:
		return k.unhurried(worlds, "as the programme ends", takeBack)
	case k.step.Timed:
		return nil
	}
	return k.unhurried(worlds, "as the step ends", `write in the next step how long that takes before anything is done in it ("takes": "5 min"), or `+takeBack)
}

// standAll lets time pass in all worlds.
func (k *Walker) standAll(worlds []*World, times func(w *World) standing) ([]*World, error) {
	all, err := each(worlds, func(w *World) ([]*World, error) { return k.stand(w, times(w)) })
	return merge(all), err
}

// before is the time that passes before what comes next.
func (k *Walker) before(next []drive, t standing) func(w *World) standing {
	return func(w *World) standing {
		t.after = k.coming(w, next)
		return t
	}
}

// coming is how long what comes next takes.
func (k *Walker) coming(w *World, next []drive) float64 {
	for _, d := range next {
		if d.takes != nil {
			return d.takes(w).most
		}
		if d.untimed != "" {
			return 0 // no slow action is at its level there
		}
	}
	return 0
}

// timed does a drive of a step, and lets the time pass that it takes and after which it
// stands still.
func (k *Walker) timed(w *World, d *drive, next []drive) ([]*World, error) {
	if !k.slow() {
		return d.run(w)
	}
	if d.untimed != "" {
		if err := k.unhurried([]*World{w}, d.untimed, takeBack+", before that"); err != nil {
			return nil, err
		}
		out, err := d.run(w)
		if err != nil {
			return nil, err
		}
		return out, k.unhurried(out, d.untimed, takeBack+", before that")
	}
	worlds := []*World{w}
	if d.first > 0 {
		var err error
		if worlds, err = k.stand(w, standing{hold: d.first}); err != nil {
			return nil, err
		}
	}
	return each(worlds, func(x *World) ([]*World, error) {
		t := standing{hold: d.hold, perhaps: d.perhaps}
		if d.takes != nil {
			t.before = d.takes(x)
		}
		out, err := d.run(x)
		if err != nil {
			return nil, err
		}
		return k.standAll(out, k.before(next, t))
	})
}

// took is how long a ramp takes from where a world stands: as long as what goes furthest.
func (k *Walker) took(w *World, moves []Move) span {
	var t span
	if k.step.Rise <= 0 {
		return t
	}
	for _, m := range moves {
		d := m.To.Minus(w.State.Gauge(m.Compartment).F)
		t.least = max(t.least, (abs(d.C)-d.Radius())/k.step.Rise)
		t.most = max(t.most, (abs(d.C)+d.Radius())/k.step.Rise)
	}
	return t
}

// held gives the places where a step stands still the time that it holds there.
func (k *Walker) held(all []drive) {
	for i := range all {
		d := &all[i]
		if n := d.number; n >= 0 && n < len(k.step.Ramps) && n < len(k.step.Holds) {
			d.hold += k.step.Holds[n]
		}
		if d.stand >= 0 {
			d.hold += k.step.Tested[d.stand]
			d.perhaps += k.step.TestedAnywhere
		}
	}
	if k.step.Temperature >= 0 {
		all[0].perhaps += max(k.step.Takes, 0)
	}
}

// StoodAt is for how long a slow action has been at its level; false: it isn't there, or
// doesn't wait.
func (w *World) StoodAt(i int) (affine.Form, bool) {
	if w.level == nil || !w.level[i] || !w.State.Armed[i] {
		return affine.Form{}, false
	}
	return w.Stood[i], true
}
