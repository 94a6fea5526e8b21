package stringload

import (
	"errors"
	"sync"

	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// act is what was done to the string.
type act int

const (
	landed act = iota
	held
	letGo
	parted
	joined // with what a joint had left
	marked // nothing was done: slips may bite from here on; place is the action
	turned // nothing was done: from here on the hook goes the other way; place is a way
)

// standing is how the string stands: what was done to it, in which conditions, and
// how it stood before. It never changes, but for what it has computed.
type standing struct {
	before  *standing
	act     act
	of      int // string that it was done to
	place   int // or joint
	p       *profile
	pull    *reading // weight indicator then; nil: at the hanger
	step    int      // in which it was done
	symbols map[int]bool

	mutex sync.Mutex
	known map[int]movement.Nested // by corner; see corner
}

// Same tells whether the string stands the same way.
func (s *standing) Same(other well.StringState) bool {
	o, ok := other.(*standing)
	for ok && s != o {
		if s == nil || o == nil || s.act != o.act || s.of != o.of || s.place != o.place || !s.pull.same(o.pull) || !s.p.same(o.p) {
			return false
		}
		s, o = s.before, o.before
	}
	return ok
}

// corner is a choice of the inputs: in the middle of all (0), one at an end (±(k+1)),
// or any.
type corner struct {
	key int
	any bool
	e   []float64
}

func (r *Room) middle() corner { return corner{e: make([]float64, len(r.Network.Symbols))} }

// end is that with one input at an end, in the same memory.
func (c corner) end(symbol int, side float64) corner {
	c.e[symbol] = side
	c.key = symbol + 1
	if side < 0 {
		c.key = -c.key
	}
	return c
}

// standingAt is how the string stands at a choice of the inputs.
func (r *Room) standingAt(s *standing, c corner) (movement.Nested, error) {
	key := c.key
	if !c.any {
		if k := abs(key) - 1; k >= 0 && !s.symbols[k] {
			key = 0 // it doesn't feel that one
		}
		s.mutex.Lock()
		known, ok := s.known[key]
		s.mutex.Unlock()
		if ok {
			return known, nil
		}
	} else if known, ok := r.Memory.stood(s, c.e); ok {
		return known, nil
	}
	m, err := r.redo(s, c)
	if err == nil && c.any {
		r.Memory.stands(s, c.e, m)
	}
	if err == nil && !c.any {
		s.mutex.Lock()
		if s.known == nil {
			s.known = map[int]movement.Nested{}
		}
		s.known[key] = m
		s.mutex.Unlock()
	}
	return m, err
}

func (r *Room) redo(s *standing, c corner) (movement.Nested, error) {
	var before movement.Nested
	if s.before != nil {
		var err error
		if before, err = r.standingAt(s.before, c); err != nil {
			return before, err
		}
	}
	switch s.act {
	case marked, turned:
		return before, nil
	case letGo, parted, joined:
		up := r.one(s.of).Up
		do := up.LetGo
		if s.act == parted {
			do = up.Part
		} else if s.act == joined {
			do = up.Join
		}
		return changed(before, s.of, s.place, do)
	case landed:
		return r.lands(before, s.of, r.conditions(s.p, c.e, nil))
	case held:
	}
	conditions := r.conditions(s.p, c.e, nil)
	if err := r.onHook(&conditions, before, s.before, s.pull, c); err != nil {
		return before, err
	}
	next, err := r.takesHold(before, s.of, s.place, conditions)
	if errors.Is(err, movement.ErrLost) {
		return before, nil // it takes hold of what has been left behind
	}
	return next, err
}

func abs(i int) int { return max(i, -i) }

// next is the string after something was done to it.
func (r *Room) next(w *walk.World, a act, of, place int, x affine.Form, pull *affine.Line) error {
	p, err := r.profileOf(w.State, x)
	if err != nil {
		return err
	}
	return r.nextIn(w, a, of, place, p, x, pull)
}

// bitten is the profile in which slips bite: between that when they might first
// and that when they are set.
func (r *Room) bitten(w *walk.World, a *well.Action, p *profile) *profile {
	s, _ := w.State.String.(*standing)
	for ; s != nil; s = s.before {
		if s.act != marked || s.place != a.Bites || !s.p.like(p) {
			continue
		}
		q := *p
		q.from, q.bite = s.p, a.Bite
		return &q
	}
	return p
}

func (r *Room) nextIn(w *walk.World, a act, of, place int, p *profile, x affine.Form, pull *affine.Line) error {
	s := &standing{act: a, of: of, place: place, p: p, symbols: map[int]bool{}, step: -1}
	if w.Trail != nil {
		s.step = w.Trail.Step
	}
	if pull != nil {
		s.pull = at(pull, x, w.On)
		r.hookSymbols(s.symbols, s.pull)
	}
	p.symbols(s.symbols)
	r.heats(s.symbols, p.temperature)
	if before, ok := w.State.String.(*standing); ok && (a != landed || r.Pair != nil && of == Main) {
		s.before = before
		for k := range before.symbols {
			s.symbols[k] = true
		}
	}
	if _, err := r.standingAt(s, r.middle()); err != nil {
		return err
	}
	w.State.String = s
	return nil
}

// Land remembers the string as it stands; where it is the outer one that lands, and at
// the beginning, both.
func (r *Room) Land(w *walk.World) error {
	of := w.On
	if r.Outer != nil && w.State.String == nil {
		of = Outer
	}
	if w.State.String != nil && (r.holdsOn(w, Main) || of == Outer && r.holdsOn(w, Outer)) {
		return errHeld
	}
	return r.next(w, landed, of, 0, affine.Form{}, nil)
}

// Move lets an action hold or release the string.
func (r *Room) Move(w *walk.World, action int, x affine.Form, pulling *affine.Line) error {
	a := &r.Network.Actions[action]
	both, err := r.standingAt(w.State.String.(*standing), r.middle())
	if err != nil {
		return err
	}
	of := r.which(action)
	own, now := r.one(of), standingOf(both, of)
	if a.Holds {
		place := own.Places[action]
		if now.Holds(place) {
			return nil
		}
		p, err := r.profileOf(w.State, x)
		if err != nil {
			return err
		}
		if a.Bites >= 0 {
			p = r.bitten(w, a, p)
		}
		return r.nextIn(w, held, of, place, p, x, pulling)
	}
	if a.Marks {
		if err := r.next(w, marked, of, action, x, pulling); err != nil || !a.Axial && !a.Releases {
			return err
		}
	}
	if a.Axial && a.Feels == well.OnRest {
		joint := own.Pulled[a.Joint]
		if _, err := own.Up.Join(now, joint); err != nil {
			return nil // there is nothing to latch on to
		}
		return r.next(w, joined, of, joint, x, pulling)
	}
	if a.Axial && a.Feels == well.OfJoint {
		if now.Parted(a.Joint) {
			return nil
		}
		return r.next(w, parted, of, a.Joint, x, pulling)
	}
	only, some := own.Frees[action]
	for place := range own.holds() {
		if now.Holds(place) && (!some || place == only) {
			if err := r.next(w, letGo, of, place, x, pulling); err != nil {
				return err
			}
		}
	}
	return nil
}

func (r *Room) holds() int {
	most := 0
	for _, p := range r.Places {
		most = max(most, p+1)
	}
	return most
}

// Holds tells whether anything holds the string.
func (r *Room) Holds(w *walk.World) bool { return r.holdsOn(w, Main) }

func (r *Room) holdsOn(w *walk.World, of int) bool {
	now, err := r.standingAt(w.State.String.(*standing), r.middle())
	for place := range r.one(of).holds() {
		if err == nil && standingOf(now, of).Holds(place) {
			return true
		}
	}
	return false
}
