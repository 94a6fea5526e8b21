package judge

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// Hand holds an act by hand against what it needs: that it can be done at all, and
// that no more stands across what it opens than it bears.
func (j *Judge) Hand(w *walk.World, p walk.Place, act int, why walk.Hindrance, _ int, across []affine.Form) {
	if why != walk.Free {
		m := j.keep(w, p, Key{p.Step, ByHand, act}, affine.Const(-1), -1, int(why))
		m.Depth = int(why)
		return
	}
	a := &j.Limits.Steps[p.Step].Acts[act]
	if !a.HasMost {
		return
	}
	for _, d := range across {
		j.Note(w, p, ByHand, act, d.Times(-1).Shift(a.Most), 0)
		j.Note(w, p, ByHand, act, d.Shift(a.Most), 0)
	}
}
