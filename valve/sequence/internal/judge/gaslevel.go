package judge

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// atLevel holds a rating where gas ends in one of its compartments: there a
// differential turns, wherever the level has gone.
func (j *Judge) atLevel(w *walk.World, p walk.Place, i, gassy int) error {
	s, r := w.State, &j.Limits.Ratings[i]
	above, below, ok := s.Bracket(r.Inside, gassy)
	if !ok || len(r.Depths) == 0 || below <= r.Depths[0][0] || above >= r.Depths[len(r.Depths)-1][0] {
		return nil
	}
	in, err := s.AtLevel(r.Inside, gassy, above, below)
	if err != nil {
		return err
	}
	x := in.At(p.X)
	if r.Outside >= 0 {
		a, b, ok := s.Bracket(r.Outside, gassy)
		if !ok {
			return nil
		}
		out, err := s.AtLevel(r.Outside, gassy, a, b)
		if err != nil {
			return err
		}
		x = in.Minus(out).At(p.X)
	} else {
		// The fluid behind the pipe is straight between two depths.
		first := r.Depths[0][0]
		if above < first || below-first >= len(r.Background) {
			return nil
		}
		share, err := s.ShareAt(r.Inside, gassy, above, below)
		if err != nil {
			return err
		}
		a, b := r.Background[above-first], r.Background[below-first]
		x = x.Minus(a).Minus(affine.Mul(b.Minus(a), share.At(p.X)))
	}
	if r.HasBurst {
		j.Note(w, p, Inside, i, r.Burst.Minus(x), above)
	}
	if r.HasCollapse {
		j.Note(w, p, Outside, i, r.Collapse.Plus(x), above)
	}
	return nil
}
