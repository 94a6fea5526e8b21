package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// candidate is an action that may be next, at a place of the leg.
type candidate struct {
	action int
	line   affine.Line
	p      Progress
	at     affine.Form
	slope  float64 // of what it feels, in its own direction: above zero
	level  affine.Form
	short  affine.Form // by how much it is passed at the end of the leg
	fires  bool        // else its row comes on, and may fire on the same leg
	slow   bool        // its time has come
}

// advance goes along the leg to whatever may be next, and in one world to the end.
func (r *run) advance(w *World, now affine.Form, lines []affine.Line, depth int) error {
	all, split := r.candidates(w, now, lines)
	if split >= 0 {
		return r.split(w, split, now, nil, lines, depth)
	}
	none := w.Region
	for n := range all {
		c := &all[n]
		// Where it comes in time.
		reach := Reach / c.slope
		short := r.length.Minus(c.at).Shift(reach)
		if c.line.D > 0 {
			short = c.short.Shift(Reach) // which is known, whatever the way
		}
		region := w.Region.With(short)
		for m := range all {
			if region == nil {
				break
			}
			if m != n {
				region = region.With(all[m].at.Minus(c.at))
			}
		}
		if none != nil {
			none = none.With(short.Times(-1))
		}
		part := w.within(region)
		if part == nil {
			continue
		}
		alive, came, err := r.stretch(part, now, c.at, lines, c.action)
		if err != nil {
			return err
		} else if !alive {
			continue
		}
		if r.intended(w, c.action) && c.fires && !c.slow && !r.silent {
			r.Observer.Reached(part, r.place, c.action, c.p, r.length.Plus(r.ahead).Minus(c.at).Times(c.slope))
		}
		if !c.fires {
			q, _ := met(w.State.Actions[c.action].Row, c.p)
			part.Rows[c.action] = []Progress{q}
			r.note(part, c.action, q, c.line.At(c.at), c.at)
			if err := r.take(part, c.at, r.atOnce(part, append(came, c.action), all, lines, c.at), nil, depth+1); err != nil {
				return err
			}
			continue
		}
		if err := r.fire(part, c.action, c.at, came, all, lines, depth); err != nil {
			return err
		}
	}
	part := w
	if none != w.Region { // else this is the last use of it
		if part = w.within(none); part == nil {
			return nil
		}
	}
	for n := range all {
		c := &all[n]
		if r.intended(w, c.action) && c.fires && !c.slow && !r.silent {
			r.Observer.Reached(part, r.place, c.action, c.p, r.length.Plus(r.ahead).Minus(c.at).Times(c.slope))
		}
	}
	alive, came, err := r.stretch(part, now, r.length, lines, -1)
	if err != nil || !alive {
		return err
	}
	if len(came) > 0 {
		return r.take(part, r.length, came, nil, depth+1)
	}
	r.out = append(r.out, part)
	return nil
}

// candidates are the acting actions that may be met on the rest of the leg. Where
// one of them has more than one alternative, they have to be told apart first.
func (r *run) candidates(w *World, now affine.Form, lines []affine.Line) (all []candidate, split int) {
	for n, i := range r.cluster.actions {
		if w.due != nil && w.due[i].due && w.State.Armed[i] {
			all = append(all, candidate{action: i, line: affine.Line{F: lines[n].F, S: lines[n].S}, at: w.due[i].at, slope: 1, fires: true, slow: true})
			continue
		}
		if !w.State.Waits(i) || r.silentAction(i) {
			continue
		}
		row, line := w.State.Actions[i].Row, lines[n]
		for _, p := range w.Rows[i] {
			c, ok := r.candidate(row, p, line, now)
			if !ok {
				continue
			}
			if c.short, ok = r.passed(w, i, p, line); !ok {
				continue
			}
			if len(w.Rows[i]) > 1 {
				return nil, i
			}
			c.action = i
			all = append(all, c)
		}
	}
	return all, -1
}

// passed is by how much a level is passed at the end of the leg if nothing happens
// on it: where pressures that move together go uncertain ways, it is known all the
// same. False where it certainly isn't met.
func (r *run) passed(w *World, i int, p Progress, line affine.Line) (affine.Form, bool) {
	a := &w.State.Actions[i]
	level, falling := waits(a.Row, p)
	end := line.At(r.length)
	if line.D > 0 && r.loose && !a.Axial {
		s := w.State.Clone()
		r.ends(s)
		if s.Solve(r.length) == nil {
			if felt, err := s.Differential(a); err == nil {
				end = felt.At(r.length)
			}
		}
	}
	by := along(falling, end.Minus(level))
	return by, by.Greatest() >= -Reach
}

func (r *run) candidate(row []well.Trigger, p Progress, line affine.Line, now affine.Form) (candidate, bool) {
	level, falling := waits(row, p)
	slope := line.S
	if falling {
		slope = -slope
	}
	if slope <= 0 || line.D >= slope {
		if slope+line.D <= 0 || along(falling, line.At(r.length).Minus(level)).Greatest() < -Reach {
			return candidate{}, false
		}
		slope = max(slope, 1e-3*line.D) // it may be met, nobody knows where
		line.S = slope
		if falling {
			line.S = -slope
		}
	}
	c := candidate{p: p, line: line, level: level, slope: slope, fires: last(row, p)}
	short := along(falling, line.At(r.length).Minus(level)) // by how much it is passed in the end
	if short.Greatest() < -Reach {
		return candidate{}, false
	}
	if line.D > 0.9*slope {
		c.at = r.length.Times(0.5).Widen(r.length.Radius() + abs(r.length.C)) // anywhere
	} else {
		c.at = line.Cross(level)
	}
	if c.fires {
		return c, true
	}
	// Its row comes on: that is a matter of its own, unless the next of its levels
	// may be met on the same leg.
	q, _ := met(row, p)
	next, fall := waits(row, q)
	if along(fall, level.Minus(next)).Greatest() >= -Reach || fall == falling && along(fall, line.At(r.length).Minus(next)).Greatest() >= -Reach {
		return c, true
	}
	return c, false
}

// stretch takes a world from one place to another between which no acting action
// is met: rows come on, and the ends are shown. first is the action that is met at
// its end. It tells whether anything of the world is left, and which rows of acting
// actions have come on: what they wait for next may be due at once.
func (r *run) stretch(w *World, from, to affine.Form, lines []affine.Line, first int) (alive bool, came []int, err error) {
	still := from.Same(to, equal)
	for n, i := range r.cluster.actions {
		if !w.State.Waits(i) {
			continue
		}
		if !r.silent {
			a, b := lines[n].At(from), lines[n].At(to)
			for _, p := range w.Rows[i] {
				r.Observer.Sensed(w, r.place, i, p, a, b)
			}
		}
		if (lines[n].S != 0 || lines[n].D != 0) && i != first && !still {
			before := w.Rows[i]
			w.Rows[i] = r.local(w, i, lines[n], from, to, false, first >= 0 && affects(w.State, first, i), first < 0)
			if !r.silentAction(i) && r.dueNext(w, i, before, lines[n].At(to)) {
				came = append(came, i)
			}
			if !w.only(i) {
				return false, nil, nil // in all of this world it has happened, and wasn't to
			}
		}
	}
	if !still {
		if err := r.halfway(w, from, to); err != nil {
			return false, nil, err
		}
	}
	if r.loose && first < 0 {
		return true, came, nil
	}
	return true, came, r.moment(w, to, first, false)
}

// dueNext tells whether a row that has come on waits for something that it feels
// already.
func (r *run) dueNext(w *World, i int, before []Progress, felt affine.Form) bool {
	row := w.State.Actions[i].Row
	for _, p := range w.Rows[i] {
		if p.Done || slices.ContainsFunc(before, p.is) {
			continue
		}
		level, falling := waits(row, p)
		if along(falling, felt.Minus(level)).Greatest() >= -Reach {
			return true
		}
	}
	return false
}

// local are the alternatives of an action's progress after a stretch on which it
// doesn't act. due says that it may be due where the stretch begins; tied that
// something else happens at its end that may take away what it feels: what it meets
// just there may come after that; ends that it goes to the end of the leg.
func (r *run) local(w *World, i int, line affine.Line, from, to affine.Form, due, tied, ends bool) []Progress {
	row := w.State.Actions[i].Row
	silent := r.silentAction(i)
	var done []Progress
	type place struct {
		p   Progress
		at  affine.Form
		due bool
	}
	work := []place{}
	for _, p := range w.Rows[i] {
		work = append(work, place{p, from, due})
	}
	for len(work) > 0 {
		x := work[len(work)-1]
		work = work[:len(work)-1]
		if x.p.Done || !silent && last(row, x.p) {
			done = join(w.Region, done, x.p)
			continue
		}
		level, falling := waits(row, x.p)
		come := func(by, at affine.Form, tied bool) bool {
			// by is how far the level is passed: the parts in which it is met and in
			// which it isn't.
			if by.Greatest() < -Reach {
				return false
			}
			q, fired := met(row, x.p)
			certain, last := by.Least() >= -Reach, -Reach
			if tied {
				certain, last = by.Least() > Reach, Reach
			}
			if by.Least() < -Reach {
				q.Rows = withRow(x.p.Rows, by.Shift(Reach))
			}
			felt := line.At(at)
			if fired {
				q.Links, q.Done = len(row)-1, true
				r.fireSilent(w, i, q, at, felt)
			} else {
				r.note(w, i, q, felt, at)
			}
			if !fired || r.intended(w, i) || r.PastUnintended {
				work = append(work, place{q, at, true})
			} else {
				r.left = true
			}
			if certain {
				return true
			}
			x.p.Rows = withRow(x.p.Rows, by.Shift(-last).Times(-1))
			return false
		}
		if x.due && come(along(falling, line.At(x.at).Minus(level)), x.at, false) {
			continue
		}
		if slope := along(falling, affine.Const(line.S)).C; slope+line.D > 0 {
			at := to // nobody knows where
			if slope > line.D {
				at = line.Cross(level)
			}
			if beyond := along(falling, line.At(r.length).Minus(level)).PlusTimes(r.ahead, slope); !x.p.Out && beyond.Greatest() >= -Reach && !r.silent && r.intended(w, i) {
				r.Observer.Reached(w, r.place, i, x.p, beyond)
			}
			by := along(falling, line.At(to).Minus(level))
			if line.D > 0 && ends {
				by, _ = r.passed(w, i, x.p, line)
			}
			if come(by, at, tied) {
				continue
			}
		}
		done = join(w.Region, done, x.p)
	}
	return done
}

func withRow(rows []affine.Form, row affine.Form) []affine.Form {
	if row.Least() >= 0 {
		return rows
	}
	return append(rows[:len(rows):len(rows)], row)
}
