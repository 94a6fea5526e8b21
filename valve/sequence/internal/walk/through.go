package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// still shows a world at the end of the leg if nothing that the cluster's actions
// feel changes on it.
// Else lines are what they feel.
func (r *run) still(w *World, pending []int) (still bool, lines []affine.Line, err error) {
	if len(pending) > 0 || w.ripens(r.cluster.actions) {
		return false, nil, nil
	}
	if lines, err = r.differentials(w); err != nil {
		return false, nil, err
	}
	for _, l := range lines {
		if l.S != 0 || l.D != 0 {
			return false, lines, nil
		}
	}
	if r.silent {
		return true, nil, nil
	}
	_, _, err = r.stretch(w, affine.Form{}, r.length, lines, -1)
	return true, nil, err
}

// run is a cluster on its way along a leg.
type run struct {
	*Walker
	cluster *cluster
	length  affine.Form
	out     []*World
	next    []stage
}

// stage is a world just after something has acted, at a place of the leg.
type stage struct {
	world   *World
	now     affine.Form
	pending []int
	lines   []affine.Line // what is felt there; nil: it is to be asked
	seen    []*World      // as it stood after what has acted before at the same place
}

// deepest is how many things may act one after the other on one leg.
const deepest = 400

// through takes a world to the end of the leg: stage by stage, so that worlds that
// stand alike at one place after as many events are made one.
func (r *run) through(w *World, pending []int, lines []affine.Line) ([]*World, error) {
	r.out, r.next, r.seen = nil, nil, nil
	if err := r.take(w, affine.Form{}, pending, lines, 0); err != nil {
		return nil, err
	}
	for depth := 1; len(r.next) > 0; depth++ {
		stages := mergeStages(r.next)
		r.next = nil
		for _, s := range stages {
			if depth > deepest || r.again(&s) {
				if r.silent {
					r.out = append(r.out, s.world) // another part of the well may reach into this one, and end it
				} else {
					r.left = true
					r.stuck = r.unsettled(s.world)
					p := r.place
					p.X, p.Action = s.now, -1
					r.Observer.Stuck(s.world, p)
				}
				continue
			}
			r.seen = s.seen
			if err := r.take(s.world, s.now, s.pending, s.lines, depth); err != nil {
				return nil, err
			}
		}
	}
	return merge(r.out), nil
}

// again tells whether a world stands as it stood before at the same place: then
// what moves it goes on without end.
func (r *run) again(s *stage) bool {
	for _, w := range s.seen[:len(s.seen)-1] { // the last is itself
		if standsAlike(w, s.world) {
			return true
		}
	}
	return false
}

// mergeStages makes stages one that stand alike at one place.
func mergeStages(all []stage) []stage {
	if len(all) < 2 {
		return all
	}
	var kept []stage
next:
	for _, s := range all {
		for i := range kept {
			k := &kept[i]
			if k.now.Same(s.now, equal) && slices.Equal(k.pending, s.pending) && len(k.seen) == len(s.seen) && k.world.signature() == s.world.signature() && alike(k.world, s.world) {
				k.world.join(s.world)
				continue next
			}
		}
		kept = append(kept, s)
	}
	return kept
}

// differentials are the lines of what the actions of the cluster feel; those that aren't
// armed have none.
func (r *run) differentials(w *World) ([]affine.Line, error) {
	s := w.State
	lines := make([]affine.Line, len(r.cluster.actions))
	var axial []int
	for n, i := range r.cluster.actions {
		switch a := &s.Actions[i]; {
		case !s.Armed[i]:
		case a.Axial:
			axial = append(axial, i)
		default:
			var err error
			if lines[n], err = s.Differential(a); err != nil {
				return nil, err
			}
		}
	}
	if len(axial) == 0 {
		return lines, nil
	}
	felt, err := r.String.Axial(w, axial, r.pulling)
	for n, i := range axial {
		if err == nil {
			lines[r.index(i)] = felt[n]
		}
	}
	return lines, err
}

// take takes a world from a place of the leg to its end. pending are the actions
// that may be due where it stands: those that feel something else than before.
func (r *run) take(w *World, now affine.Form, pending []int, lines []affine.Line, depth int) error {
	if err := r.spend(); err != nil {
		return err
	}
	var err error
	if lines == nil {
		if lines, err = r.differentials(w); err != nil {
			return err
		}
	}
	if len(pending) > 0 {
		if depth == 0 {
			if err := r.moment(w, now, -1, false); err != nil {
				return err
			}
		}
		settled, err := r.settle(w, now, pending, lines, depth)
		if settled || err != nil {
			return err
		}
	}
	return r.advance(w, now, lines, depth)
}

// index of an action in the cluster.
func (r *run) index(action int) int {
	for n, i := range r.cluster.actions {
		if i == action {
			return n
		}
	}
	return -1
}
