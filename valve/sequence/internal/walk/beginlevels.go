package walk

import (
	"maps"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// lowered parts a world by where its levels lie, now and as something was done to the
// string.
func (b *Begin) lowered(w *World) ([]*World, error) {
	worlds := []*World{w}
	now, err := tops(w.State, b.Fallen, b.Levels)
	if err != nil {
		return nil, err
	}
	for _, i := range slices.Sorted(maps.Keys(now)) {
		if worlds, err = each(worlds, func(x *World) ([]*World, error) { return parts(x, x.State, i, now[i]) }); err != nil {
			return nil, err
		}
	}
	for n := range b.String {
		m := &b.String[n]
		then := w.State.Clone()
		for i, layers := range m.Layers {
			then.SetLayers(i, layers)
		}
		past, err := tops(then, m.Fallen, m.Levels)
		if err != nil {
			return nil, err
		}
		for _, i := range slices.Sorted(maps.Keys(past)) {
			worlds, err = each(worlds, func(x *World) ([]*World, error) {
				out, err := parts(x, then, i, past[i])
				for _, y := range out { // it is about the past alone
					y.State = x.State.Clone()
				}
				return out, err
			})
			if err != nil {
				return nil, err
			}
		}
	}
	return worlds, nil
}

// tops are the pressures that the tops of columns that have fallen would have.
func tops(s *well.State, fallen, levels map[int]affine.Form) (map[int]affine.Form, error) {
	all := maps.Clone(fallen)
	for i, md := range levels {
		if s.GasOnTop(i) {
			continue
		}
		top, err := s.LevelTop(i, md)
		if err != nil {
			return nil, err
		}
		all[i] = top
	}
	return all, nil
}

// parts are those of a world in which a level lies between two of its depths each; a
// column whose top has at least nothing is full.
func parts(w *World, s *well.State, i int, top affine.Form) ([]*World, error) {
	var all []*World
	add := func(at int, f affine.Form, r *affine.Region) {
		if x := w.within(r); x != nil {
			x.State.SetLow(i, at)
			x.State.Applied[i] = affine.Flat(f)
			all = append(all, x)
		}
	}
	add(-1, affine.Form{}, w.Region.With(top))
	left := w.Region.With(top.Times(-1))
	if !(top.Least() < 0) {
		left = nil
	}
	for at := 0; left != nil; at++ {
		if err := s.Falls(i, at); err != nil {
			return nil, err
		}
		edge := s.Edge(i, at+1)
		add(at, top, left.With(top.Minus(edge)))
		if left = left.With(edge.Minus(top)); edge.Minus(top).Greatest() <= Reach {
			left = nil
		}
	}
	return all, nil
}

// lies is the part that a world is in of those.
func lies(w *World, s *well.State, i int, top affine.Form) (int, error) {
	if least, _ := w.Region.Least(top); least >= -Reach {
		return -1, nil
	}
	for at := 0; ; at++ {
		if err := s.Falls(i, at); err != nil {
			return -1, err
		}
		if least, _ := w.Region.Least(top.Minus(s.Edge(i, at+1))); least >= -Reach {
			return at, nil
		}
	}
}
