package walk

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// due is an action that feels a level that it waits for where a world stands.
type due struct {
	action int
	by     affine.Form // by how much it is passed
	fires  bool        // else its row comes on,
	would  bool        // and it may fire at once: the rest of its row may be met where the world stands
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
				err = r.fire(part, d.action, now, pending, nil, lines, depth)
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
		if n < 0 || !w.State.Waits(i) {
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
			all = append(all, due{i, by, acting && last(row, p), acting && mayFire(row, p, felt)})
			break
		}
	}
	return all, -1
}

// mayFire tells whether all that is left of a row may be met by what is felt.
func mayFire(row []well.Trigger, p Progress, felt affine.Form) bool {
	for fired := false; !fired; p, fired = met(row, p) {
		level, falling := waits(row, p)
		if along(falling, felt.Minus(level)).Greatest() < -Reach {
			return false
		}
	}
	return true
}

// disturbed tells whether anything that fires, or may at once, may change what an action
// feels.
func (r *run) disturbed(w *World, i int, all []due) bool {
	for _, d := range all {
		if d.would && d.action != i && affects(w.State, d.action, i) {
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
					if o.Senses(m) {
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
		part := w.within(w.In(p))
		if part == nil {
			continue
		}
		p.Rows, p.Wide = nil, false
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
			base := w.In(p)
			if base == nil {
				continue
			}
			p.Rows, p.Wide = nil, false
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
