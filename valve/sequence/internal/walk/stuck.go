package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/well"
)

// fork puts worlds beside each other in which the devices of what a step expects move
// as they should, and in which one of them, or all, are stuck. What a step expects of a
// device that was stuck before moves again.
func (k *Walker) fork(worlds []*World) []*World {
	var all []*World
	for _, w := range worlds {
		all = append(all, k.freed(w))
	}
	n := len(all)
	for _, w := range all[:n] {
		for _, i := range k.step.Not {
			all = append(all, w.stuckAt(i))
		}
		if len(k.step.Not) > 1 {
			all = append(all, w.stuckAt(k.step.Not...))
		}
	}
	return all
}

func (w *World) stuckAt(actions ...int) *World {
	c := w.Clone()
	c.just = actions
	for _, i := range actions {
		if !slices.Contains(c.Stuck, i) {
			c.Stuck = append(c.Stuck, i)
		}
	}
	c.hold()
	return c
}

// hold keeps what is stuck from moving.
func (w *World) hold() {
	for _, i := range w.Stuck {
		for _, j := range members(w.State, i) {
			w.State.Armed[j] = false
		}
	}
}

func members(s *well.State, i int) []int {
	if all := s.Actions[i].With; all != nil {
		return all
	}
	return []int{i}
}

// freed is a world in which what the step expects isn't stuck any more.
func (k *Walker) freed(w *World) *World {
	if len(w.Stuck) == 0 {
		return w
	}
	w = w.Clone()
	before := len(w.Stuck)
	defer func() { w.freed = len(w.Stuck) < before }()
	w.Stuck = slices.DeleteFunc(w.Stuck, func(i int) bool {
		if !slices.Contains(k.step.Expect[w.State.Actions[i].Device], i) {
			return false
		}
		for _, j := range members(w.State, i) {
			w.State.Armed[j] = true
		}
		return true
	})
	return w
}

// JustStuck is the action that alone got stuck in the present step.
func (w *World) JustStuck() (action int, ok bool) {
	if len(w.just) == 0 {
		return -1, false
	}
	if len(w.just) > 1 {
		return -1 - len(w.just), true // more than one
	}
	return w.just[0], true
}

// missed parts the worlds in which something stuck was missed from those that did
// what was intended. Nothing is wrong with them.
func (k *Walker) missed(worlds []*World) (rest []*World) {
	k.Failed = nil
	for _, w := range worlds {
		if len(w.just) == 0 {
			rest = append(rest, w)
			continue
		}
		for d, expected := range k.step.Expect {
			// What else it expects, it must have seen.
			n := w.Came[d]
			for ; n < len(expected); n++ {
				if slices.Contains(w.just, expected[n]) {
					break
				}
				k.Observer.Missing(w, expected[n], k.place)
			}
		}
		w.just = nil
		for d := range w.Came {
			w.Came[d] = 0
		}
		k.Failed = append(k.Failed, w)
	}
	return rest
}
