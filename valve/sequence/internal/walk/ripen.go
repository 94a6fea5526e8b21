package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// While something is pumped at a rate, time goes on in proportion to the way along a leg, so
// that the place at which a slow action has been at its level for its delay is known: where it
// was there as the leg began, by how much its time was short; where it comes there on the leg,
// its delay after that. Where something that happens on the leg moves what it feels, it may be
// anywhere from there on.

// ripening is where on a leg a slow action moves.
type ripening struct {
	due bool
	at  affine.Form
}

// ripening parts a world by whether and where slow actions move on a leg of some length that
// takes some seconds, as far as what is felt is known as it begins.
func (k *Walker) ripening(w *World, length, seconds float64) ([]*World, error) {
	w.due = nil
	if seconds <= 0 || !k.slow() {
		return []*World{w}, nil
	}
	if err := w.State.Solve(affine.Form{}); err != nil {
		return nil, err
	}
	w.due = make([]ripening, len(w.State.Actions))
	worlds := []*World{w}
	for i := range k.Network.Actions {
		if !k.Network.Actions[i].Slow {
			continue
		}
		var err error
		if worlds, err = each(worlds, func(x *World) ([]*World, error) { return k.ripensOn(x, i, length, seconds) }); err != nil {
			return nil, err
		}
	}
	return worlds, nil
}

// ripensOn is ripening of one action.
func (k *Walker) ripensOn(w *World, i int, length, seconds float64) ([]*World, error) {
	s := w.State
	if !s.Armed[i] {
		return []*World{w}, nil
	}
	a := &s.Actions[i]
	line, err := s.Differential(a)
	if err != nil {
		return nil, err
	}
	falling := a.Row[0].Falling
	beyond := func(at affine.Form) affine.Form { return along(falling, line.At(at).Minus(a.Row[0].Level)) }
	pace := length / seconds
	var at affine.Form // where it moves if it stays at its level
	switch slope := along(falling, affine.Const(line.S)).C; {
	case w.level == nil || line.D > 0:
		w.loosen(i, length, seconds)
		return []*World{w}, nil
	case w.level[i]:
		if at = a.Delay.Minus(w.Stood[i]).Times(pace); abs(at.C) < past*pace {
			at.C = 0
		}
	case slope > 0:
		at = line.Cross(a.Row[0].Level).Plus(a.Delay.Times(pace))
	default:
		return []*World{w}, nil
	}
	if at.Least() > length {
		return []*World{w}, nil
	}
	var all []*World
	add := func(due bool, rows ...affine.Form) {
		region := w.Region
		for _, row := range rows {
			if region = region.With(row); region == nil {
				return
			}
		}
		x := w.within(region)
		x.due[i] = ripening{due, at}
		all = append(all, x)
	}
	add(false, at.Shift(-length)) // it is late
	if left := beyond(at).Times(-1); left.Greatest() > Reach {
		add(false, at.Times(-1).Shift(length), left.Shift(-Reach)) // it has left its level before
	}
	add(true, at.Times(-1).Shift(length), beyond(at).Shift(Reach))
	return all, nil
}

// loosen says that a slow action may move anywhere on a leg, if it may have stood at its level
// for long enough at its end.
func (w *World) loosen(i int, length, seconds float64) {
	stood := seconds
	if w.Stood != nil {
		stood += w.Stood[i].Greatest()
	}
	w.due[i] = ripening{}
	if w.State.Actions[i].Delay.Least() <= stood+past {
		w.due[i] = ripening{true, affine.Const(length / 2).Widen(length / 2)}
	}
}

// disturbs loosens what slow actions wait for on a leg where what they feel has just moved.
func (k *Walker) disturbs(w *World, i int) {
	if w.due != nil && k.Network.Actions[i].Slow {
		w.due = slices.Clone(w.due)
		w.loosen(i, pumpLength, k.seconds)
	}
}

// ripens tells whether any action of some moves on a leg because its time has come.
func (w *World) ripens(actions []int) bool {
	for _, i := range actions {
		if w.due != nil && w.due[i].due && w.State.Armed[i] {
			return true
		}
	}
	return false
}

// stays keeps which slow actions are known to have been at their level since the well last
// stood, once something has happened at a place of a leg: those that feel what they felt, or
// that were beyond it and still are.
func (r *run) stays(w *World, level []bool, before, after []affine.Line, x affine.Form) {
	if level == nil {
		return
	}
	w.level = slices.Clone(level)
	for n, i := range r.cluster.actions {
		a := &w.State.Actions[i]
		if !a.Slow || !level[i] {
			continue
		}
		beyond := func(l affine.Line) bool {
			return along(a.Row[0].Falling, l.At(x).Minus(a.Row[0].Level)).Least() >= -Reach
		}
		w.level[i] = w.State.Armed[i] && (after[n].Same(before[n], equal) || beyond(before[n]) && beyond(after[n]))
	}
}
