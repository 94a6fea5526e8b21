package judge

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// tests holds the tests of a step against where it stands still.
func (j *Judge) tests(w *walk.World, p walk.Place, number int) error {
	s, g := w.State, &j.Limits.Steps[p.Step]
	for i := range g.Tests {
		t := &g.Tests[i]
		if !t.Furthest && t.Standstill != number || t.Furthest && number == 0 && g.Last > 0 {
			continue
		}
		in, err := s.At(t.Inside, t.AtIn)
		if err != nil {
			return err
		}
		out, err := s.At(t.Outside, t.AtOut)
		if err != nil {
			return err
		}
		d := in.Minus(out).F
		if t.Warms != nil && number == t.Standstill {
			if err := j.held(w, p, i, d); err != nil {
				return err
			}
		}
		if !t.Furthest {
			j.Note(w, p, TestLow, i, d.Shift(-t.Least), 0)
			j.Note(w, p, TestHigh, i, d.Times(-1).Shift(t.Greatest), 0)
			continue
		}
		// It must never be gone beyond; whether it is reached is known in the end.
		if t.Negative() {
			j.Note(w, p, TestLow, i, d.Shift(-t.Least), 0)
			d = d.Times(-1).Shift(t.Greatest)
		} else {
			j.Note(w, p, TestHigh, i, d.Times(-1).Shift(t.Greatest), 0)
			d = d.Shift(-t.Least)
		}
		w.Seen = append(w.Seen, walk.Seen{Index: i, F: d, State: s, Place: p})
		if number == g.Last {
			j.furthest(w, i, t)
		}
	}
	return nil
}

// Negative tells whether a test wants the pressure outside to be the higher one.
func (t *Test) Negative() bool { return t.Least+t.Greatest < 0 }

// furthest keeps by how much a test's differential is reached at the best of the
// places that were seen: it is short where all of them are.
func (j *Judge) furthest(w *walk.World, index int, t *Test) {
	kind := TestLow
	if t.Negative() {
		kind = TestHigh
	}
	best := -1
	var most float64
	for n, x := range w.Seen {
		if x.Index != index {
			continue
		}
		if least, _ := w.Region.Least(x.F); best < 0 || least > most {
			best, most = n, least
		}
	}
	region := w.Region
	if most < -walk.Reach {
		for n, x := range w.Seen {
			if region != nil && x.Index == index && n != best {
				region = region.With(x.F.Times(-1))
			}
		}
	}
	seen := &w.Seen[best]
	by := seen.F
	if region == nil { // where one is short another isn't
		region, by = w.Region, affine.Const(0)
	}
	at := *w
	at.State, at.Region = seen.State, region
	j.Note(&at, seen.Place, kind, index, by, 0)
}

// held holds what warming alone makes of a differential against what it may lose, where
// the step stands still with it: both sides are shut in.
func (j *Judge) held(w *walk.World, p walk.Place, index int, d affine.Form) error {
	t := &j.Limits.Steps[p.Step].Tests[index]
	in, err := w.State.Held(t.Inside, t.Warms)
	if err != nil {
		return err
	}
	out, err := w.State.Held(t.Outside, t.Warms)
	if err != nil {
		return err
	}
	left := in.Minus(out).PlusTimes(d, t.Decline)
	if t.Negative() {
		left = left.Times(-1)
	}
	j.Note(w, p, Held, index, left, 0)
	return nil
}
