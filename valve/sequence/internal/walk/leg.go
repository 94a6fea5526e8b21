package walk

import (
	"errors"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// leg walks a world to the end of a leg, cluster by cluster. fresh says that
// something has changed at once, so that everything may be due.
func (k *Walker) leg(w *World, length affine.Form, fresh bool) ([]*World, error) {
	if err := w.State.Solve(affine.Form{}); err != nil {
		return nil, err
	}
	var more []int
	mixed := map[int]bool{}
	for tries := 0; ; tries++ {
		all := k.clusters(w, more, mixed)
		// Tried without an observer first: what a part of the well shows is only
		// true if no other part reaches into it.
		may, err := k.mayHappen(w, length, fresh)
		if err != nil {
			return nil, err
		}
		if len(all) > 1 && may {
			// Nothing is left out in it: what goes wrong here may not happen once what
			// goes on there is seen.
			silent, astray := k.silent, k.Astray
			k.silent, k.Astray = true, true
			_, err := k.all(w, all, length, fresh)
			k.silent, k.Astray = silent, astray
			var c conflict
			if errors.As(err, &c) {
				more = append(more, c.a, c.b)
				for _, m := range c.mixed {
					mixed[m] = true
				}
				if tries > len(w.State.Compartments)+len(w.State.Actions) {
					return nil, ErrUnsettled
				}
				continue
			}
			if err != nil {
				return nil, err
			}
		}
		out, err := k.all(w, all, length, fresh)
		var c conflict
		if errors.As(err, &c) {
			// One cluster alone isn't tried first: nothing else reaches into it, and what
			// it has shown is true. Two surfaces that it joins drive it no more.
			if len(all) > 1 || !loosen(mixed, c.mixed) {
				return nil, ErrUnsettled
			}
			more = append(more, c.a, c.b)
			continue
		}
		if err != nil {
			return nil, err
		}
		for _, x := range out {
			x.State.Stand(length)
			if err := x.State.Solve(affine.Form{}); err != nil {
				return nil, err
			}
		}
		return out, nil
	}
}

// loosen notes surfaces that fix one body; false: they are known.
func loosen(mixed map[int]bool, surfaces []int) bool {
	news := false
	for _, m := range surfaces {
		news = news || !mixed[m]
		mixed[m] = true
	}
	return news
}

// mayHappen tells whether anything may act on a leg: else no part of the well can
// reach into another.
func (k *Walker) mayHappen(w *World, length affine.Form, fresh bool) (bool, error) {
	if fresh {
		return true, nil
	}
	r := &run{Walker: k, length: length}
	s := w.State
	for i := range s.Actions {
		if !s.Armed[i] || r.silentAction(i) {
			continue
		}
		a := &s.Actions[i]
		if a.Axial {
			return true, nil
		}
		line, err := s.Felt(a)
		if err != nil {
			return false, err
		}
		for _, p := range w.Rows[i] {
			if _, ok := r.candidate(a.Row, p, line, affine.Form{}); ok {
				return true, nil
			}
		}
	}
	return false, nil
}

func (k *Walker) all(w *World, clusters []*cluster, length affine.Form, fresh bool) ([]*World, error) {
	worlds := []*World{w}
	for _, c := range clusters {
		r := &run{Walker: k, cluster: c, length: length}
		var next []*World
		for _, x := range worlds {
			var pending []int
			if fresh {
				pending = c.actions
			}
			still, err := r.still(x, pending)
			if err != nil {
				return nil, err
			}
			if still { // nothing moves here: what a clone is for doesn't happen
				next = append(next, x)
				continue
			}
			out, err := r.through(x.Clone(), pending)
			if err != nil {
				return nil, err
			}
			next = append(next, out...)
		}
		worlds = next
	}
	return worlds, nil
}

// still shows a world at the end of the leg if nothing that the cluster's actions
// feel changes on it.
func (r *run) still(w *World, pending []int) (bool, error) {
	if len(pending) > 0 {
		return false, nil
	}
	lines, err := r.felt(w)
	if err != nil {
		return false, err
	}
	for _, l := range lines {
		if l.S != 0 || l.D != 0 {
			return false, nil
		}
	}
	if r.silent {
		return true, nil
	}
	_, _, err = r.stretch(w, affine.Form{}, r.length, lines, -1)
	return true, err
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
	seen    []*World // as it stood after what has acted before at the same place
}

// deepest is how many things may act one after the other on one leg.
const deepest = 400

// through takes a world to the end of the leg: stage by stage, so that worlds that
// stand alike at one place after as many events are made one.
func (r *run) through(w *World, pending []int) ([]*World, error) {
	r.out, r.next, r.seen = nil, nil, nil
	if err := r.take(w, affine.Form{}, pending, nil, 0); err != nil {
		return nil, err
	}
	for depth := 1; len(r.next) > 0; depth++ {
		stages := mergeStages(r.next)
		r.next = nil
		for _, s := range stages {
			if depth > deepest || r.again(&s) {
				if !r.silent {
					r.stuck = r.unsettled(s.world)
					p := r.place
					p.X, p.Action = s.now, -1
					r.Observer.Stuck(s.world, p)
				}
				continue
			}
			r.seen = s.seen
			if err := r.take(s.world, s.now, s.pending, nil, depth); err != nil {
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

// felt are the lines of what the actions of the cluster feel; those that aren't
// armed have none.
func (r *run) felt(w *World) ([]affine.Line, error) {
	s := w.State
	lines := make([]affine.Line, len(r.cluster.actions))
	for n, i := range r.cluster.actions {
		if !s.Armed[i] {
			continue
		}
		a := &s.Actions[i]
		var err error
		if a.Axial {
			lines[n], err = r.String.Axial(w, i, r.length, r.pulling)
		} else {
			lines[n], err = s.Felt(a)
		}
		if err != nil {
			return nil, err
		}
	}
	return lines, nil
}

// take takes a world from a place of the leg to its end. pending are the actions
// that may be due where it stands: those that feel something else than before.
func (r *run) take(w *World, now affine.Form, pending []int, lines []affine.Line, depth int) error {
	if err := r.spend(); err != nil {
		return err
	}
	var err error
	if lines == nil {
		if lines, err = r.felt(w); err != nil {
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

// due is an action that feels a level that it waits for where a world stands.
type due struct {
	action int
	by     affine.Form // by how much it is passed
	fires  bool        // else its row comes on
}

// settle lets happen what is due. It tells whether it has taken the world on.
func (r *run) settle(w *World, now affine.Form, pending []int, lines []affine.Line, depth int) (bool, error) {
	all, split := r.dues(w, now, pending, lines)
	switch {
	case split >= 0:
		return true, r.split(w, split, now, pending, lines, depth)
	case len(all) == 0:
		return false, nil
	}
	// A row that comes on may as well do so first, unless what fires may take away
	// what it feels.
	for _, d := range all {
		if !d.fires && !r.disturbed(w, d.action, all) {
			return true, r.comeOn(w, d.action, now, pending, lines, lines[r.index(d.action)].At(now), depth)
		}
	}
	rest := w.Region
	for _, d := range all {
		if part := w.within(w.Region.With(d.by.Shift(Reach))); part != nil {
			var err error
			if d.fires {
				err = r.fire(part, d.action, now, pending, lines, depth)
			} else {
				err = r.comeOn(part, d.action, now, pending, lines, lines[r.index(d.action)].At(now), depth)
			}
			if err != nil {
				return true, err
			}
		}
		if rest != nil {
			rest = rest.With(d.by.Shift(Reach).Times(-1))
		}
		if len(all) == 1 || d.fires && d.by.Least() >= -Reach && r.alone(w, d.action) && !r.disturbed(w, d.action, all) {
			break
		}
	}
	for _, d := range all {
		if d.by.Least() >= -Reach {
			return true, nil // it certainly happens
		}
	}
	if part := w.within(rest); part != nil {
		// None of these: they don't come due again where the world stands.
		return true, r.advance(part, now, lines, depth)
	}
	return true, nil
}

// dues are what is due, or may be. split is an action whose alternatives have to be
// told apart first, or -1.
func (r *run) dues(w *World, now affine.Form, pending []int, lines []affine.Line) (all []due, split int) {
	for _, i := range pending {
		n := r.index(i)
		if n < 0 || !w.State.Armed[i] {
			continue
		}
		row := w.State.Actions[i].Row
		felt := lines[n].At(now)
		acting := !r.silentAction(i)
		for _, p := range w.Rows[i] {
			if p.Done {
				continue
			}
			level, falling := waits(row, p)
			by := along(falling, felt.Minus(level))
			if by.Greatest() < -Reach {
				continue
			}
			if acting && len(w.Rows[i]) > 1 {
				return nil, i
			}
			all = append(all, due{i, by, acting && last(row, p)})
			break
		}
	}
	return all, -1
}

// disturbed tells whether anything that fires may change what an action feels.
func (r *run) disturbed(w *World, i int, all []due) bool {
	for _, d := range all {
		if d.fires && d.action != i && affects(w.State, d.action, i) {
			return true
		}
	}
	return false
}

// affects tells whether an action moves a port of a body that another one feels.
func affects(s *well.State, action, other int) bool {
	a, o := &s.Actions[action], &s.Actions[other]
	if o.Axial || a.Holds || a.Releases || a.Device == o.Device {
		return true
	}
	for _, ports := range [2][]int{a.Opens, a.Closes} {
		for _, p := range ports {
			for _, end := range [2]int{s.Ports[p].A, s.Ports[p].B} {
				for _, m := range s.Body(end) {
					if m == o.Inside || m == o.Outside {
						return true
					}
				}
			}
		}
	}
	return false
}

// alone tells whether an action moves no port: then it may as well be first.
func (r *run) alone(w *World, i int) bool {
	a := &w.State.Actions[i]
	return len(a.Opens)+len(a.Closes) == 0 && !a.Holds && !a.Releases
}

// split parts a world by the alternatives of an action's progress.
func (r *run) split(w *World, i int, now affine.Form, pending []int, lines []affine.Line, depth int) error {
	for _, p := range w.Rows[i] {
		part := w.within(w.Region.And(p.Rows))
		if part == nil {
			continue
		}
		p.Rows = nil
		part.Rows[i] = []Progress{p}
		if err := r.take(part, now, pending, lines, depth+1); err != nil {
			return err
		}
	}
	return nil
}

// comeOn lets a row come on by what it feels where the world stands.
func (r *run) comeOn(w *World, i int, now affine.Form, pending []int, lines []affine.Line, felt affine.Form, depth int) error {
	acting := !r.silentAction(i)
	if acting {
		// Each alternative is a world: it may act next.
		row := w.State.Actions[i].Row
		for _, p := range w.Rows[i] {
			level, falling := waits(row, p)
			by := along(falling, felt.Minus(level))
			base := w.Region.And(p.Rows)
			if base == nil {
				continue
			}
			p.Rows = nil
			if part := w.within(base.With(by.Shift(Reach))); part != nil && !last(row, p) {
				q, _ := met(row, p)
				part.Rows[i] = []Progress{q}
				r.note(part, i, q, felt, now)
				if err := r.take(part, now, pending, lines, depth+1); err != nil {
					return err
				}
				base = base.With(by.Shift(Reach).Times(-1))
			} else if part != nil {
				// The last trigger is due, too.
				part.Rows[i] = []Progress{p}
				if err := r.take(part, now, pending, lines, depth+1); err != nil {
					return err
				}
				base = base.With(by.Shift(Reach).Times(-1))
			}
			if part := w.within(base); part != nil {
				part.Rows[i] = []Progress{p}
				var rest []int
				for _, j := range pending {
					if j != i {
						rest = append(rest, j)
					}
				}
				if err := r.take(part, now, rest, lines, depth+1); err != nil {
					return err
				}
			}
		}
		return nil
	}
	n := r.index(i)
	w.Rows[i] = r.local(w, i, lines[n], now, now, true, false, false)
	if !w.only(i) {
		return nil
	}
	var rest []int
	for _, j := range pending {
		if j != i {
			rest = append(rest, j)
		}
	}
	return r.take(w, now, rest, lines, depth+1)
}

// unsettled names what moved last.
func (r *run) unsettled(w *World) error {
	var names []string
	for t, n := w.Trail, 0; t != nil && n < 4; t, n = t.Before, n+1 {
		names = append(names, w.State.Actions[t.Action].Name)
	}
	return unsettledError{names}
}

type unsettledError struct{ names []string }

func (e unsettledError) Error() string {
	return ErrUnsettled.Error() + ": " + quoted(e.names)
}
func (e unsettledError) Unwrap() error { return ErrUnsettled }

func quoted(names []string) string {
	text := ""
	seen := map[string]bool{}
	for _, n := range names {
		if seen[n] {
			continue
		}
		seen[n] = true
		if text != "" {
			text += ", "
		}
		text += "\"" + n + "\""
	}
	return text
}
