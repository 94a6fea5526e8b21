package walk

import (
	"fmt"
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// A slow action moves once it has been at its level for its delay. Time passes where a
// step holds, as long as it says, and while something is done, as long as that takes. How
// much of the latter a device is at its level isn't followed where it begins or ends in
// between: from nothing of it to all of it; where it is there before and after, and
// nothing has happened on the way, all of it counts.

// hasty is the error of a slow device that stands at its level where nobody knows for
// how long.
type hasty struct{ Action, Where, Cure string }

func (e hasty) Error() string {
	return fmt.Sprintf("%q may stand at its level %s, and moves with a delay: nobody knows whether it has stood there for long enough; %s", e.Action, e.Where, e.Cure)
}

func (k *Walker) slow() bool {
	for i := range k.Network.Actions {
		if k.Network.Actions[i].Slow {
			return true
		}
	}
	return false
}

// standing is the time that passes where a world has come to stand: what it took to come
// there, how long it then stands, for certain and perhaps more, and what it takes to come
// on from there.
type standing struct {
	before        span
	hold, perhaps float64
	after         float64
}

// span is how long something takes, in s.
type span struct{ least, most float64 }

// stand holds a world where it stands: slow actions that have been at their level for
// long enough move.
func (k *Walker) stand(w *World, t standing) ([]*World, error) {
	worlds := []*World{w.Clone()}
	for i := range k.Network.Actions {
		a := &k.Network.Actions[i]
		if !a.Slow {
			continue
		}
		var err error
		if worlds, err = each(worlds, func(x *World) ([]*World, error) { return k.ripens(x, i, t) }); err != nil {
			return nil, err
		}
	}
	var all []*World
	for _, x := range worlds {
		if x.State.Ripe == nil {
			all = append(all, x)
			continue
		}
		out, err := k.leg(x, affine.Form{}, true)
		if err != nil {
			return nil, err
		}
		for _, y := range out {
			for i, ripe := range y.State.Ripe {
				if ripe {
					y.Stood[i] = affine.Form{}
				}
			}
			y.State.Ripe = nil
		}
		all = append(all, out...)
	}
	return all, nil
}

// past is what is less than any clock shows, in s: what is due just then is due.
const past = 1e-3

// ripens parts a world by whether a slow action is at its level, and for long enough.
func (k *Walker) ripens(w *World, i int, t standing) ([]*World, error) {
	by, ok, err := w.beyond(i)
	if err != nil {
		return nil, err
	}
	if w.Stood == nil {
		w.Stood = make([]affine.Form, len(w.State.Actions))
	}
	if w.level == nil {
		w.level = make([]bool, len(w.State.Actions))
	}
	if !ok {
		w.Stood[i], w.level[i] = affine.Form{}, false
		return []*World{w}, nil
	}
	var all []*World
	if x := w.within(w.Region.With(by.Times(-1).Shift(-Reach))); x != nil && by.Least() < -Reach {
		x.Stood[i], x.level[i] = affine.Form{}, false
		all = append(all, x)
	}
	at := w.within(w.Region.With(by.Shift(Reach)))
	if at == nil {
		return all, nil
	}
	if !at.level[i] { // nor is it known that it hasn't been away since
		t.before.least = 0
		at.Stood[i] = affine.Within(min(0, at.Stood[i].Least()), max(0, at.Stood[i].Greatest()))
	}
	stood := at.Stood[i].Shift(t.hold).Plus(affine.Within(t.before.least, t.before.most)).Plus(affine.Within(0, t.perhaps))
	at.Stood[i], at.level[i] = stood, true
	left := k.Network.Actions[i].Delay.Minus(stood.Plus(affine.Within(0, t.after)))
	if x := at.within(at.Region.With(left.Shift(-past))); x != nil {
		all = append(all, x)
	}
	if x := at.within(at.Region.With(left.Times(-1).Shift(past))); x != nil && left.Least() <= past {
		if x.State.Ripe == nil {
			x.State.Ripe = make([]bool, len(x.State.Actions))
		} else {
			x.State.Ripe = append([]bool(nil), x.State.Ripe...)
		}
		x.State.Ripe[i] = true
		all = append(all, x)
	}
	return all, nil
}

// beyond is by how much a slow action that is armed is beyond its level; false: it isn't
// armed.
func (w *World) beyond(i int) (affine.Form, bool, error) {
	s := w.State
	if !s.Armed[i] {
		return affine.Form{}, false, nil
	}
	a := &s.Actions[i]
	felt, err := s.Differential(a)
	return along(a.Row[0].Falling, felt.F.Minus(a.Row[0].Level)), true, err
}

// unhurried makes sure that no slow action that hasn't moved stands at its level where
// time isn't known; others haven't stood there at all.
func (k *Walker) unhurried(worlds []*World, where, cure string) error {
	return k.unhurriedBut(func(*World, int) bool { return false }, worlds, where, cure)
}

// unhurriedBut is unhurried of all but those of which time is known.
func (k *Walker) unhurriedBut(known func(w *World, i int) bool, worlds []*World, where, cure string) error {
	if !k.slow() {
		return nil
	}
	for _, w := range worlds {
		for i := range k.Network.Actions {
			if !k.Network.Actions[i].Slow || known(w, i) {
				continue
			}
			by, ok, err := w.beyond(i)
			if err != nil {
				return err
			}
			by = by.Shift(Reach - equal) // a part that only touches the level isn't at it
			if ok && by.Greatest() >= 0 && w.Region.With(by) != nil {
				return hasty{k.Network.Actions[i].Name, where, cure}
			}
			if w.Stood != nil {
				w.Stood[i] = affine.Form{}
			}
			if w.level != nil {
				w.level[i] = false
			}
		}
	}
	return nil
}

// sameTimes tells whether what is slow has stood for as long in two worlds.
func sameTimes(v, w *World) bool {
	if !slices.EqualFunc(v.due, w.due, func(a, b ripening) bool { return a.due == b.due && a.at.Same(b.at, equal) && a.at.R == b.at.R }) {
		return false
	}
	for i := range max(len(v.level), len(w.level)) {
		if (v.level != nil && v.level[i]) != (w.level != nil && w.level[i]) {
			return false
		}
	}
	a, b := v.Stood, w.Stood
	for i := range max(len(a), len(b)) {
		var x, y affine.Form
		if a != nil {
			x = a[i]
		}
		if b != nil {
			y = b[i]
		}
		if !x.Same(y, past) || x.R != y.R {
			return false
		}
	}
	return true
}
