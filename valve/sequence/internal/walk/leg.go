package walk

import (
	"errors"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// leg walks a world to the end of a leg, cluster by cluster. fresh says that
// something has changed at once, so that everything may be due.
func (k *Walker) leg(w *World, length affine.Form, fresh bool) ([]*World, error) {
	k.legs++
	if err := w.State.Solve(affine.Form{}); err != nil {
		return nil, err
	}
	if err := k.balanced(w); err != nil {
		return nil, err
	}
	var more []int
	mixed := map[int]bool{}
	together := false
	for tries := 0; ; tries++ {
		all := k.clusters(w, more, mixed)
		may, err := k.mayHappen(w, length, fresh)
		if err != nil {
			return nil, err
		}
		var out []*World
		if len(all) > 1 && may {
			out, err = k.tried(w, all, length, fresh)
		} else {
			out, err = k.all(w, all, length, fresh)
		}
		var c conflict
		if errors.As(err, &c) {
			more = append(more, c.a, c.b)
			// Of one cluster alone, nothing else reaches into it, and what it has shown is
			// true. Two surfaces that it joins drive it no more.
			if news := noteMixed(mixed, c.mixed); len(all) == 1 && !news || tries > len(w.State.Compartments)+len(w.State.Actions) {
				return nil, ErrUnsettled
			}
			continue
		}
		if errors.As(err, new(well.Ringed)) && len(all) > 1 && !together { // a device of another part may have shut the way before
			together = true
			more = append(more, k.together(w)...)
			continue
		}
		if err != nil {
			return nil, err
		}
		for _, x := range out {
			x.State.EndLeg(length)
			if err := x.State.Solve(affine.Form{}); err != nil {
				return nil, err
			}
		}
		return out, nil
	}
}

// balanced makes sure that no fluid goes round by itself in a world that has done what was
// intended: where something else has happened, that is a failure already.
func (k *Walker) balanced(w *World) error {
	if k.PastUnintended {
		return nil
	}
	return w.State.Rings()
}

// tried walks several clusters. What a part of the well shows is only true if no other
// part reaches into it: where one does, the observer forgets it. And where a world was
// left because of what has gone wrong in it, what would have followed is looked at
// first, as it may say that it doesn't go wrong.
func (k *Walker) tried(w *World, all []*cluster, length affine.Form, fresh bool) ([]*World, error) {
	live, dry, stuck := slices.Clone(w.Live), slices.Clone(w.Dry), k.stuck
	k.left = false
	k.Observer.Try()
	out, err := k.all(w, all, length, fresh)
	sure := err == nil && !k.left
	k.Observer.Tried(sure)
	if sure {
		return out, nil
	}
	copy(w.Live, live)
	copy(w.Dry, dry)
	k.stuck = stuck
	if err != nil {
		return nil, err
	}
	silent, past := k.silent, k.PastUnintended
	k.silent, k.PastUnintended = true, true
	_, err = k.all(w, all, length, fresh)
	k.silent, k.PastUnintended = silent, past
	if err != nil {
		return nil, err
	}
	out, err = k.all(w, all, length, fresh)
	if c := (conflict{}); errors.As(err, &c) {
		return nil, ErrUnsettled
	}
	return out, err
}

// noteMixed notes surfaces that fix one body; false: they are known.
func noteMixed(mixed map[int]bool, surfaces []int) bool {
	news := false
	for _, m := range surfaces {
		news = news || !mixed[m]
		mixed[m] = true
	}
	return news
}

// mayHappen tells whether anything may act on a leg: else no part of the well can
// reach into another.
func (k *Walker) mayHappen(w *World, length affine.Form, fresh bool) (bool, error) {
	if fresh {
		return true, nil
	}
	r := &run{Walker: k, length: length}
	s := w.State
	for i := range s.Actions {
		if w.due != nil && w.due[i].due {
			return true, nil
		}
		if !s.Waits(i) || r.silentAction(i) {
			continue
		}
		a := &s.Actions[i]
		if a.Axial {
			return true, nil
		}
		line, err := s.Differential(a)
		if err != nil {
			return false, err
		}
		for _, p := range w.Rows[i] {
			if _, ok := r.candidate(a.Row, p, line, affine.Form{}); ok {
				return true, nil
			}
		}
	}
	return false, nil
}

func (k *Walker) all(w *World, clusters []*cluster, length affine.Form, fresh bool) ([]*World, error) {
	worlds := []*World{w}
	own := false // they are nobody else's, and may be changed
	for _, c := range clusters {
		r := &run{Walker: k, cluster: c, length: length}
		var next []*World
		moved := false
		for _, x := range worlds {
			var pending []int
			if fresh {
				pending = c.actions
			}
			still, lines, err := r.still(x, pending)
			if err != nil {
				return nil, err
			}
			if still { // nothing moves here: what a clone is for doesn't happen
				next = append(next, x)
				continue
			}
			moved = true
			if !own {
				x = x.Clone()
			}
			out, err := r.through(x, pending, lines)
			if err != nil {
				return nil, err
			}
			next = append(next, out...)
		}
		own = own || moved // the first that moves is alone
		worlds = next
	}
	return worlds, nil
}
