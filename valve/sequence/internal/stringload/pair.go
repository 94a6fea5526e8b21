package stringload

import (
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
)

// Strings of a room, as a world and an action number them.
const (
	Main = iota
	Outer
)

// Second is what the indices of the outer string's limits and places are counted from.
const Second = 1000

// strings are the string, and that around it.
func (r *Room) strings() []*Room {
	if r.Outer == nil {
		return []*Room{r}
	}
	return []*Room{r, r.Outer}
}

// one is one of them.
func (r *Room) one(of int) *Room {
	if of == Outer && r.Outer != nil {
		return r.Outer
	}
	return r
}

// begins is where what is read off one of them begins.
func (r *Room) begins(of int) int {
	if r.one(of) == r {
		return 0
	}
	return r.size()
}

// which string an action is on.
func (r *Room) which(action int) int {
	if r.On[action] {
		return Outer
	}
	return Main
}

// own is the string's temperature where the well has one.
func (r *Room) own(temperature int) int {
	if temperature < len(r.Own) {
		return r.Own[temperature]
	}
	return temperature
}

// heats adds the symbols of the strings' temperatures.
func (r *Room) heats(set map[int]bool, temperature int) {
	for _, x := range r.strings() {
		for _, t := range r.Network.Heat[x.own(temperature)].T {
			set[t.Symbol] = true
		}
	}
}

// reading is what the weight indicator shows, and of which string.
type reading struct {
	affine.Form
	of int
}

func (a *reading) same(b *reading) bool {
	return (a == nil) == (b == nil) && (a == nil || a.of == b.of && a.Form.Same(b.Form, 1e-3))
}

func at(l *affine.Line, x affine.Form, of int) *reading {
	if l == nil {
		return nil
	}
	return &reading{l.At(x), of}
}

// part is the loading of one of the strings.
func part(l *movement.NestedLoading, of int) *movement.Loading {
	if of == Outer {
		return &l.Outer
	}
	return &l.Inner
}

// loaded loads the strings as they stand.
func (r *Room) loaded(l *movement.NestedLoading, now movement.Nested, c [2]movement.Conditions) error {
	if r.Pair == nil {
		return r.Up.LoadInto(&l.Inner, now.Inner, c[Main])
	}
	var err error
	*l, err = r.Pair.Load(now, c[Outer], c[Main])
	return err
}

// loader loads the strings with other conditions of one of them.
type loader func(c movement.Conditions) (*movement.Loading, error)

func (r *Room) loader(now movement.Nested, all [2]movement.Conditions, of int) loader {
	return func(c movement.Conditions) (*movement.Loading, error) {
		all[of] = c
		l := r.hooking()
		err := r.loaded(l, now, all)
		return part(l, of), err
	}
}

// lands lands the string, or both where the outer one lands.
func (r *Room) lands(before movement.Nested, of int, c [2]movement.Conditions) (movement.Nested, error) {
	var err error
	if r.Pair == nil {
		before.Inner, err = r.Up.Land(c[Main])
		return before, err
	}
	outer := before.Outer
	if of == Outer {
		if outer, err = r.Outer.Up.Land(c[Outer]); err != nil {
			return before, err
		}
	}
	return r.Pair.Land(outer, c[Outer], c[Main])
}

// takesHold lets a place of one of them hold.
func (r *Room) takesHold(before movement.Nested, of, place int, c [2]movement.Conditions) (movement.Nested, error) {
	var err error
	switch {
	case r.Pair == nil:
		before.Inner, err = r.Up.TakeHold(before.Inner, place, c[Main])
		return before, err
	case of == Outer:
		return r.Pair.TakeHoldOuter(before, place, c[Outer], c[Main])
	}
	return r.Pair.TakeHold(before, place, c[Outer], c[Main])
}

// changed is the strings with one of them changed.
func changed(n movement.Nested, of, place int, change func(movement.Standing, int) (movement.Standing, error)) (movement.Nested, error) {
	var err error
	if of == Outer {
		n.Outer, err = change(n.Outer, place)
	} else {
		n.Inner, err = change(n.Inner, place)
	}
	return n, err
}

// standing of one of them.
func standingOf(n movement.Nested, of int) movement.Standing {
	if of == Outer {
		return n.Outer
	}
	return n.Inner
}
