package record

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// Diagnose holds a record against a plan. programme, where not nil, is what Check has
// found of it; its windows are then held against what was applied. The error says what
// keeps the plan from being walked along the record.
func Diagnose(ctx context.Context, p *sequence.Plan, programme *sequence.Programme, r *Record, opt Options) (*Diagnosis, error) {
	switch {
	case p == nil:
		return nil, errors.New("record: no plan")
	case r == nil || len(r.rows) == 0:
		return nil, errors.New("record: no record")
	}
	p, err := p.Derive()
	if err != nil {
		return nil, err
	}
	for _, i := range r.Steps() {
		if i >= len(p.Expanded().Steps) {
			return nil, errors.New("record: it was read with another plan")
		}
	}
	whole := p
	p, way, err := p.Taken(r.Steps())
	if err != nil {
		return nil, fmt.Errorf("record: %w", err)
	}
	if err := opt.validate(p); err != nil {
		return nil, err
	}
	r = r.corrected(opt.Gauges)
	d := &diagnoser{search: search{ctx: ctx, opt: &opt, frames: map[int]*frame{}, effects: effects(p), unseen: way.Unseen}, given: p, whole: whole, programme: programme, left: way.Left}
	for _, i := range r.Steps() {
		d.frames[i] = framed(r.part(i), &p.Steps[i], warmed(p, i))
		d.last = max(d.last, i)
	}
	d.plan = asRun(p, d.frames)
	if err := d.follow(); err != nil {
		return nil, err
	}
	return d.diagnose()
}

// warmed tells whether a step changes the well's temperature.
func warmed(p *sequence.Plan, i int) bool {
	before := sequence.Undisturbed
	for _, s := range p.Steps[:i] {
		if s.Temperature != "" {
			before = s.Temperature
		}
	}
	return p.Steps[i].Temperature != "" && p.Steps[i].Temperature != before
}

// corrected is the record with gauges put right.
func (r *Record) corrected(off map[string]unit.Pressure) *Record {
	if len(off) == 0 {
		return r
	}
	c := &Record{columns: r.columns}
	for _, x := range r.rows {
		x.cells = slices.Clone(x.cells)
		for i, k := range r.columns {
			if k.what == pressure {
				x.cells[i] -= float64(off[k.compartment])
			}
		}
		c.rows = append(c.rows, x)
	}
	return c
}

type diagnoser struct {
	search
	given     *sequence.Plan // along the way that was taken
	whole     *sequence.Plan // with its branches
	programme *sequence.Programme
	left      []bool // steps that don't lie on the way that was taken
	moved     []Moved
	meant     *node // the way with no fault
	tried     int
}

func (d *diagnoser) follow() error {
	var err error
	d.follower, err = sequence.Follow(d.plan)
	return err
}

// diagnose looks for devices whose move shows, then for the simplest ways in which
// the record may have come about, and once more for the moves along the simplest.
func (d *diagnoser) diagnose() (*Diagnosis, error) {
	if err := d.locate(nil); err != nil {
		return nil, err
	}
	alive, dead, err := d.deepen()
	if err != nil {
		return nil, err
	}
	if len(alive) > 0 && len(alive[0].faults) > 0 {
		if err := d.locate(alive[0].faults); err != nil {
			return nil, err
		}
		if alive, dead, err = d.deepen(); err != nil {
			return nil, err
		}
	}
	if len(alive) == 0 || alive[0].share > fits {
		more, err := d.premature(alive, dead)
		if err != nil {
			return nil, err
		}
		if len(more) > 0 {
			alive = append(more, alive...)
		}
	}
	return d.put(alive, dead)
}

// deepen looks for the ways with the fewest faults that aren't ruled out, and those
// with one more.
func (d *diagnoser) deepen() (alive, dead []*node, err error) {
	for depth := 1; depth <= 2; depth++ {
		if alive, dead, err = d.look(depth); err != nil {
			return nil, nil, err
		}
		d.tried = len(alive) + len(dead)
		if len(alive) > 0 && len(alive[0].faults) < depth {
			break
		}
	}
	return alive, dead, nil
}

// locate finds the devices whose moves show, and gives the plan the thresholds that
// they have then.
func (d *diagnoser) locate(faults []lapse) error {
	d.moved = nil
	d.plan = asRun(d.given, d.frames)
	if err := d.follow(); err != nil {
		return err
	}
	n := &node{faults: faults, outcomes: map[int]*outcome{}, seen: map[int]*sequence.Seen{}}
	for i := 0; i <= d.last; i++ {
		before := n
		next, err := d.walk(n, i)
		if err != nil {
			return err
		}
		if next == nil {
			return nil
		}
		if f := d.frames[i]; f != nil {
			if next, err = d.locateIn(f, before, next, i); err != nil {
				return err
			}
		}
		n = next
	}
	return nil
}

// locateIn tunes the thresholds of what shows in one step.
func (d *diagnoser) locateIn(f *frame, before, next *node, i int) (*node, error) {
	seen := next.seen[i]
	plan := d.plan
	if early := d.early(before, seen, i); early != nil {
		seen, plan = early.seen, early.plan
	}
	found := f.locate(seen, plan)
	if f.pull {
		found = nil
		if m, ok := f.parted(seen, d.plan); ok {
			return d.tunePull(m, before, i)
		}
	}
	tuned := false
	for _, m := range found {
		if slices.ContainsFunc(d.moved, func(o Moved) bool { return o.Action == m.Action }) {
			continue // pins shear once; what moves again has its threshold already
		}
		band := threshold(&m.find(plan).Triggers[m.link])
		ok := m.tune(band.Nominal, func(t unit.Pressure) (unit.Pressure, bool) {
			x, err := d.trial(&m, unit.Exactly(t), before.faults, i)
			if err != nil {
				return 0, false
			}
			return moveOf(x, m.Action, m.Of)
		})
		if !ok || !m.Inside {
			continue
		}
		m.set(d.plan, unit.Exactly(m.Threshold))
		real := threshold(&m.find(d.given).Triggers[m.link])
		m.Least, m.Greatest = real.Least, real.Greatest
		d.moved = append(d.moved, m)
		tuned = true
	}
	if !tuned {
		return next, nil
	}
	return d.again(before.faults, i)
}

// again walks the plan with its new thresholds from the beginning through step i.
func (d *diagnoser) again(faults []lapse, i int) (*node, error) {
	if err := d.follow(); err != nil {
		return nil, err
	}
	n := &node{faults: faults, outcomes: map[int]*outcome{}, seen: map[int]*sequence.Seen{}}
	for k := 0; k <= i; k++ {
		next, err := d.walk(n, k)
		if err != nil {
			return nil, err
		}
		if next == nil {
			return nil, errors.New("record: it can't be walked with the thresholds that it shows")
		}
		n = next
	}
	return n, nil
}

// trial walks a plan with another threshold through step i, and gives what that shows.
func (d *diagnoser) trial(m *Moved, b unit.Band[unit.Pressure], faults []lapse, i int) (*sequence.Seen, error) {
	q := d.plan.Clone()
	m.set(q, b)
	return d.through(q, faults, i)
}

func (d *diagnoser) through(q *sequence.Plan, faults []lapse, i int) (*sequence.Seen, error) {
	f, err := sequence.Follow(q)
	if err != nil {
		return nil, err
	}
	var at *sequence.Situation
	var seen *sequence.Seen
	n := &node{faults: faults}
	for k := 0; k <= i; k++ {
		if seen, at, err = f.Step(d.ctx, at, k, n.still(q, k)); err != nil {
			return nil, err
		}
	}
	return seen, nil
}

type variant struct {
	seen *sequence.Seen
	plan *sequence.Plan
}

// early is the step with what it expects and doesn't get moving at the early end of
// its band, if it then does: the pressure reached may lie inside the band.
func (d *diagnoser) early(before *node, seen *sequence.Seen, i int) *variant {
	q := d.plan.Clone()
	any := false
	for _, name := range d.plan.Steps[i].Expect {
		m := Moved{Action: name}
		a := m.find(q)
		if a == nil || a.Axial || slices.ContainsFunc(seen.Events, func(e sequence.Event) bool { return e.Action == name && e.Partial == "" }) {
			continue
		}
		b := threshold(&a.Triggers[m.link])
		end := b.Least
		if a.Triggers[m.link].Direction == falling {
			end = b.Greatest
		}
		m.set(q, unit.Exactly(end))
		any = true
	}
	if !any {
		return nil
	}
	x, err := d.through(q, before.faults, i)
	if err != nil {
		return nil
	}
	return &variant{x, q}
}
