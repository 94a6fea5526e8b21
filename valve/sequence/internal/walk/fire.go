package walk

import (
	"errors"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// intended tells whether an action is the next that the step expects of its
// device.
func (k *Walker) intended(w *World, i int) bool {
	d := w.State.Actions[i].Device
	expected := k.step.Expect[d]
	return w.Came[d] < len(expected) && expected[w.Came[d]] == w.State.Actions[i].Of
}

// moment shows the observer a place.
func (r *run) moment(w *World, x affine.Form, action int, after bool) error {
	if r.silent {
		return nil
	}
	p := r.place
	p.X, p.Action, p.After, p.Limits, p.Pulling = x, action, after, r.cluster.limits, r.pulling
	return r.Observer.Moment(w, p)
}

// halfway shows the observer the string between two places, where it isn't straight.
// Of what is, nothing is least there.
func (r *run) halfway(w *World, from, to affine.Form) error {
	if r.silent || r.String == nil {
		return nil
	}
	at := slices.Index(r.cluster.limits, len(r.ties)-1) // New has it last
	if at < 0 {
		return nil
	}
	p := r.place
	p.X, p.Action, p.Limits, p.Pulling = from.Plus(to).Times(0.5), -1, r.cluster.limits[at:at+1], r.pulling
	p.Between = &[2]affine.Form{from, to}
	return r.Observer.Moment(w, p)
}

// fire lets an action do what it does at a place, and goes on. others are what else
// may come on the leg.
func (r *run) fire(w *World, i int, x affine.Form, pending []int, others []candidate, lines []affine.Line, depth int) error {
	s := w.State
	a := &s.Actions[i]
	felt := lines[r.index(i)].At(x)
	wanted := r.intended(w, i)
	e := r.event(w, i, felt, x)
	e.Complete, e.Links = true, len(a.Row)
	if waiting(s, i) {
		return r.latch(w, i, e, r.atOnce(w, pending, others, lines, x), depth)
	}
	for _, p := range a.Opens {
		port := &s.Ports[p]
		pa, err := s.At(port.A, port.AtA)
		if err != nil {
			return err
		}
		pb, err := s.At(port.B, port.AtB)
		if err != nil {
			return err
		}
		e.Across = append(e.Across, Across{p, pa.Minus(pb).At(x)})
	}
	w.Trail = &Trail{w.Trail, e}
	if !wanted {
		if !r.silent {
			p := r.place
			p.X, p.Action, p.Limits, p.Pulling = x, i, r.cluster.limits, r.pulling
			r.Observer.Unintended(w, i, p, felt)
		}
		if !r.PastUnintended {
			r.left = true
			return nil
		}
	} else {
		w.Came[a.Device]++
		if !r.silent {
			p := r.place
			p.X, p.Action, p.Limits, p.Pulling = x, i, r.cluster.limits, r.pulling
			r.Observer.Came(w, i, p)
		}
	}
	var before []bool
	if !wanted {
		before = slices.Clone(s.Open)
	}
	level := w.level
	if err := r.change(w, i, x, r.pulling); err != nil {
		return err
	}
	if err := r.cluster.beyond(s, i); err != nil {
		return err
	}
	var moved []int
	for _, ports := range [2][]int{a.Opens, a.Closes} {
		for _, p := range ports {
			moved = append(moved, s.Ports[p].A, s.Ports[p].B)
		}
	}
	for _, st := range a.Strokes {
		moved = append(moved, st.Compartment)
	}
	if len(moved) > 0 {
		err := s.SolveSome(x, moved)
		var low well.Fallen
		if errors.As(err, &low) && !wanted {
			// It is a fault already; the walk that goes on leaves its ports as they were.
			copy(s.Open, before)
			err = s.SolveSome(x, moved)
		}
		if err != nil {
			return err
		}
		if err := r.balanced(w); err != nil {
			return err
		}
	}
	next, err := r.differentials(w)
	if err != nil {
		return err
	}
	r.stays(w, level, lines, next, x)
	// What feels something else may be due; so may what waits for its turn.
	var again []int
	for n, j := range r.cluster.actions {
		if !s.Armed[j] {
			continue
		}
		if !next[n].Same(lines[n], equal) {
			r.disturbs(w, j)
		}
		if slices.Contains(a.Arms, j) || slices.Contains(pending, j) || !next[n].Same(lines[n], equal) {
			again = append(again, j)
		}
	}
	if err := r.moment(w, x, i, true); err != nil {
		return err
	}
	r.next = append(r.next, stage{w, x, r.atOnce(w, again, others, next, x), next, r.before(w, x, depth)})
	return nil
}

// atOnce are the actions that may be due at a place: those that something has just
// changed, and, where one of these is due, what comes at the same pressure: it may come
// before that as well as after. Where none is, it is the next to come anyway.
func (r *run) atOnce(w *World, changed []int, others []candidate, lines []affine.Line, x affine.Form) []int {
	if len(others) < 2 || !slices.ContainsFunc(changed, func(i int) bool { return r.mayBeDue(w, i, lines[r.index(i)].At(x)) }) {
		return changed
	}
	all := changed[:len(changed):len(changed)]
	for _, c := range others {
		later, near := c.at.Minus(x), Reach/c.slope
		if w.State.Waits(c.action) && !slices.Contains(all, c.action) && later.Least() <= near && (!r.Generic || later.Greatest() <= near) {
			all = append(all, c.action)
		}
	}
	return all
}

// mayBeDue tells whether an action may feel what it waits for.
func (r *run) mayBeDue(w *World, i int, felt affine.Form) bool {
	row := w.State.Actions[i].Row
	return w.State.Waits(i) && slices.ContainsFunc(w.Rows[i], func(p Progress) bool {
		if p.Done {
			return false
		}
		level, falling := waits(row, p)
		return along(falling, felt.Minus(level)).Greatest() >= -Reach
	})
}

// waiting tells whether an action that is one of several conditions waits for others
// of them.
func waiting(s *well.State, i int) bool {
	a := &s.Actions[i]
	return a.All && slices.ContainsFunc(a.With, func(j int) bool { return j != i && s.Armed[j] })
}

// latch keeps that a condition has been met, where others haven't.
func (r *run) latch(w *World, i int, e Event, pending []int, depth int) error {
	e.Complete = false
	w.Trail = &Trail{w.Trail, e}
	w.State.Armed[i] = false
	var again []int
	for _, j := range r.cluster.actions {
		if w.State.Armed[j] && slices.Contains(pending, j) {
			again = append(again, j)
		}
	}
	r.next = append(r.next, stage{w, e.Place, again, nil, r.before(w, e.Place, depth)})
	return nil
}

// before are the worlds as they stood where the walk stands, with this one.
func (r *run) before(w *World, x affine.Form, depth int) []*World {
	seen := r.seen
	if depth == 0 || len(seen) > 0 && !seen[0].at.Same(x, equal) {
		seen = nil
	}
	before := w.Clone()
	before.at = x
	return append(seen[:len(seen):len(seen)], before)
}

// change is what an action that happens changes: itself, what it arms, its ports and
// the string.
func (k *Walker) change(w *World, i int, x affine.Form, pulling *affine.Line) error {
	a := &w.State.Actions[i]
	if a.Holds || a.Releases || a.Marks && k.String != nil {
		w.remember(i, x, pulling)
		if err := k.String.Move(w, i, x, pulling); err != nil {
			return err
		}
	}
	for _, st := range a.Strokes {
		if err := w.State.Press(st.Compartment, st.Volume); err != nil {
			return err
		}
	}
	w.happens(i)
	if a.Slow && w.Stood != nil {
		w.Stood[i] = affine.Form{}
	}
	w.level = nil                                                               // how long what is slow was where it is, is to be seen anew
	w.Stuck = slices.DeleteFunc(w.Stuck, func(j int) bool { return j == a.Of }) // a tool has moved it
	w.hold()
	return nil
}

// happens is what an action changes that doesn't depend on when it happens: itself,
// its ports, and what it arms and disarms.
func (w *World) happens(i int) {
	s := w.State
	a := &s.Actions[i]
	w.Times[a.Of]++
	s.Happens(i, s.Open, s.Armed)
	for _, j := range a.Arms {
		w.Rows[j] = []Progress{{}}
	}
}

// event is what is kept of something that happens.
func (k *Walker) event(w *World, i int, felt, x affine.Form) Event {
	e := Event{Step: k.place.Step, Drive: k.place.Drive, Leg: k.legs, Action: i, Felt: felt, Place: x}
	e.Applied = make([]affine.Form, len(w.State.Applied))
	for c, l := range w.State.Applied {
		if w.State.Low(c) < 0 {
			e.Applied[c] = l.At(x)
		}
	}
	if k.pulling != nil {
		p := k.pulling.At(x)
		e.Pull = &p
	}
	return e
}

// note keeps a row that has come on, where there is only one way in which it can
// have.
func (r *run) note(w *World, i int, p Progress, felt, x affine.Form) {
	if p.Out || p.Links > 0 || p.Count > 0 {
		e := r.event(w, i, felt, x)
		e.Links, e.Count = p.Links, p.Count
		w.Trail = &Trail{w.Trail, e}
	}
}

// fireSilent notes that an action has happened which changes nothing but itself.
func (r *run) fireSilent(w *World, i int, p Progress, x, felt affine.Form) {
	e := r.event(w, i, felt, x)
	e.Complete, e.Links = true, len(w.State.Actions[i].Row)
	w.Trail = &Trail{w.Trail, e}
	if r.silent {
		return
	}
	if r.intended(w, i) {
		return
	}
	part := w.within(w.In(p))
	if part == nil {
		return
	}
	place := r.place
	place.X, place.Action, place.Limits = x, i, r.cluster.limits
	r.Observer.Unintended(part, i, place, felt)
}
