package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// drain opens a compartment to the air and lets its column fall to where the formation
// that it is joined to carries it. Between two of the compartment's depths everything
// is straight in the top pressure that the fluid would make; where the level may come
// to lie on either side of one, the world is parted.
func (k *Walker) drain(w *World, i int) ([]*World, error) {
	worlds := []*World{w}
	if w.State.Low(i) < 0 {
		var err error
		if worlds, err = k.ramp(w, []Move{{i, affine.Form{}}}); err != nil {
			return nil, err
		}
	}
	all, err := each(worlds, func(x *World) ([]*World, error) { return k.fall(x, i) })
	return merge(all), err
}

func (k *Walker) fall(w *World, i int) ([]*World, error) {
	top, ok, err := w.State.Carried(i)
	if err != nil {
		return nil, err
	}
	if !ok {
		return nil, well.Fallen{Compartment: w.State.Compartments[i].Name, Why: "no formation is joined to it, so that nothing lets it fall; open the way first, or take the drain out"}
	}
	falls := w.State.Applied[i].F.Minus(top)
	var all []*World
	if x := w.within(w.Region.With(falls.Times(-1))); x != nil {
		all = append(all, x) // it is carried as it is
	}
	falling := []*World{}
	if x := w.within(w.Region.With(falls)); x != nil && falls.Greatest() > Reach {
		falling = append(falling, x)
	}
	for at := max(w.State.Low(i), 0); len(falling) > 0; at++ {
		if err := w.State.Falls(i, at); err != nil {
			return nil, err
		}
		edge := w.State.Edge(i, at+1)
		var on []*World
		for _, x := range falling {
			// Its level comes to lie here, or goes by.
			here, err := k.level(x, i, at, top, x.Region.With(top.Minus(edge)))
			if err != nil {
				return nil, err
			}
			by, err := k.level(x, i, at, edge, x.Region.With(edge.Minus(top)))
			if err != nil {
				return nil, err
			}
			all, on = append(all, here...), append(on, by...)
		}
		falling = merge(on)
	}
	return all, nil
}

// level takes the top pressure of a compartment, as its fluid would make it, to another,
// in a part of a world, while its level goes between two of its depths.
func (k *Walker) level(w *World, i, at int, to affine.Form, part *affine.Region) ([]*World, error) {
	w = w.within(part)
	if w == nil {
		return nil, nil
	}
	w.State.SetLow(i, at)
	out, err := k.ramp(w, []Move{{i, to}})
	if err != nil {
		return nil, err
	}
	for _, x := range out {
		if k.moved(w, x) {
			return nil, well.Fallen{Compartment: w.State.Compartments[i].Name,
				Why: "something opens or shuts while it moves, which isn't modelled; let it be in a step before"}
		}
	}
	return out, nil
}

// moved tells whether anything has opened or shut on the way from one world to another.
// What isn't intended is a fault of its own, after which a walk that goes on is for the
// reader.
func (k *Walker) moved(from, to *World) bool {
	open := from.State.Open
	if !k.PastUnintended && !slices.Equal(open, to.State.Open) {
		return true
	}
	for t := to.Trail; t != nil && t != from.Trail; t = t.Before {
		if !t.Complete || t.Action < 0 {
			continue
		}
		a := &to.State.Actions[t.Action]
		if k.PastUnintended && !slices.Contains(k.step.Expect[a.Device], a.Of) {
			continue
		}
		if slices.ContainsFunc(a.Opens, func(p int) bool { return !open[p] }) || slices.ContainsFunc(a.Closes, func(p int) bool { return open[p] }) {
			return true
		}
	}
	return false
}

// fill brings the level of a compartment back to its top.
func (k *Walker) fill(w *World, i int) ([]*World, error) {
	worlds := []*World{w}
	for at := w.State.Low(i); at >= 0; at-- {
		edge := w.State.Edge(i, at)
		var next []*World
		for _, x := range worlds {
			out, err := k.level(x, i, at, edge, x.Region)
			if err != nil {
				return nil, err
			}
			for _, y := range out {
				y.State.SetLow(i, at-1)
			}
			next = append(next, out...)
		}
		worlds = merge(next)
	}
	return worlds, nil
}

// raise is a ramp before which columns that have fallen are filled: no pressure can be
// applied on them before. One that stays at nothing stays as it is.
func (k *Walker) raise(w *World, moves []Move) ([]*World, error) {
	var kept []Move
	var fallen []int
	for _, m := range moves {
		if w.State.Low(m.Compartment) >= 0 {
			if m.To.Same(affine.Form{}, equal) {
				continue
			}
			fallen = append(fallen, m.Compartment)
		}
		kept = append(kept, m)
	}
	worlds, err := k.filled(w, fallen)
	if err != nil {
		return nil, err
	}
	return each(worlds, func(x *World) ([]*World, error) { return k.ramp(x, kept) })
}

// filled brings the columns of some compartments back to their tops that have fallen.
func (k *Walker) filled(w *World, compartments []int) ([]*World, error) {
	worlds := []*World{w}
	for _, c := range compartments {
		if w.State.Low(c) < 0 {
			continue
		}
		next, err := each(worlds, func(x *World) ([]*World, error) { return k.fill(x, c) })
		if err != nil {
			return nil, err
		}
		worlds = merge(next)
	}
	return worlds, nil
}
