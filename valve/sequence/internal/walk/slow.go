package walk

import (
	"fmt"

	"completion.example/valve/sequence/internal/affine"
)

// A slow action moves once it has been at its level for its delay. Time passes where a
// step holds after a ramp, as long as it says, and on the ramps, as fast as pressures are
// changed. How much of a ramp's own time a device is at its level isn't followed: from
// nothing of it to all of it.

// hasty is the error of a slow device that stands at its level where nobody knows for
// how long.
type hasty struct{ Action string }

func (e hasty) Error() string {
	return fmt.Sprintf("%q may stand at its level, and moves with a delay: nobody knows whether it has stood there for long enough; let a ramp bring it there, hold it after that, and take it back in the same step", e.Action)
}

// rampAndHold does a ramp of the step and holds after it.
func (k *Walker) rampAndHold(w *World, n int) ([]*World, error) {
	worlds, err := k.raise(w, k.step.Ramps[n])
	if err != nil || !k.slow() {
		return worlds, err
	}
	took := k.took(w, n)
	var all []*World
	for _, x := range worlds {
		next := 0.0
		if n+1 < len(k.step.Ramps) {
			next = k.took(x, n+1)
		}
		hold := 0.0
		if n < len(k.step.Holds) {
			hold = k.step.Holds[n]
		}
		out, err := k.stand(x, hold, took, next)
		if err != nil {
			return nil, err
		}
		all = append(all, out...)
	}
	return merge(all), nil
}

func (k *Walker) slow() bool {
	for i := range k.Network.Actions {
		if k.Network.Actions[i].Slow {
			return true
		}
	}
	return false
}

// took is the longest that a ramp takes from where a world stands.
func (k *Walker) took(w *World, n int) float64 {
	far := 0.0
	for _, m := range k.step.Ramps[n] {
		d := m.To.Minus(w.State.Gauge(m.Compartment).F)
		far = max(far, abs(d.C)+d.Radius())
	}
	if k.step.Rise <= 0 {
		return 0
	}
	return far / k.step.Rise
}

// stand holds a world where it stands: slow actions that have been at their level for
// long enough move.
func (k *Walker) stand(w *World, hold, before, after float64) ([]*World, error) {
	worlds := []*World{w.Clone()}
	for i := range k.Network.Actions {
		a := &k.Network.Actions[i]
		if !a.Slow {
			continue
		}
		var all []*World
		for _, x := range worlds {
			out, err := k.ripens(x, i, hold, before, after)
			if err != nil {
				return nil, err
			}
			all = append(all, out...)
		}
		worlds = all
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
func (k *Walker) ripens(w *World, i int, hold, before, after float64) ([]*World, error) {
	by, ok, err := w.beyond(i)
	if err != nil {
		return nil, err
	}
	if w.Stood == nil {
		w.Stood = make([]affine.Form, len(w.State.Actions))
	}
	if !ok {
		w.Stood[i] = affine.Form{}
		return []*World{w}, nil
	}
	var all []*World
	if x := w.within(w.Region.With(by.Times(-1).Shift(-Reach))); x != nil && by.Least() < -Reach {
		x.Stood[i] = affine.Form{}
		all = append(all, x)
	}
	at := w.within(w.Region.With(by.Shift(Reach)))
	if at == nil {
		return all, nil
	}
	stood := at.Stood[i].Shift(hold).Plus(affine.Within(0, before))
	at.Stood[i] = stood
	left := k.Network.Actions[i].Delay.Minus(stood.Plus(affine.Within(0, after)))
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
// time isn't counted: anywhere but between the ramps of a step.
func (k *Walker) unhurried(worlds []*World) error {
	if !k.slow() || k.place.Drive >= 0 && k.place.Drive < len(k.step.Ramps)-1 {
		return nil
	}
	for _, w := range worlds {
		for i := range k.Network.Actions {
			if !k.Network.Actions[i].Slow {
				continue
			}
			by, ok, err := w.beyond(i)
			if err != nil {
				return err
			}
			by = by.Shift(Reach - equal) // a part that only touches the level isn't at it
			if ok && by.Greatest() >= 0 && w.Region.With(by) != nil {
				return hasty{k.Network.Actions[i].Name}
			}
			if ok && w.Stood != nil {
				w.Stood[i] = affine.Form{}
			}
		}
	}
	return nil
}

// sameTimes tells whether what is slow has stood for as long in two worlds.
func sameTimes(a, b []affine.Form) bool {
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
