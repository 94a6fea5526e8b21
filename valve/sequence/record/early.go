package record

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// premature looks, where nothing else explains a record, for a device that moved
// although its nominal threshold wasn't reached, in its band or before it: in the step
// that the way without a fault fails in, at the place where a volume leaves its course,
// for each device in turn.
func (d *diagnoser) premature(alive, dead []*node) ([]*node, error) {
	base := d.base(alive, dead)
	if base == nil {
		return nil, nil
	}
	i := base.worstIn
	f := d.frames[i]
	given, follower := d.plan, d.follower
	var found []*node
	for _, m := range f.leaves(base, d.plan, i) {
		for _, name := range d.unmoved(base.seen[i]) {
			x := m
			x.Action = name
			plan, ok := d.bringForward(&x, i)
			if !ok {
				continue
			}
			d.plan = plan
			if err := d.follow(); err != nil {
				return nil, err
			}
			out, _, err := d.look(1)
			if err != nil {
				return nil, err
			}
			d.tried += len(out)
			for _, n := range out {
				if n.share <= fits {
					n.faults = append([]lapse{{step: i, early: &x}}, n.faults...)
					found = append(found, n)
				}
			}
			d.plan, d.follower = given, follower
		}
		if len(found) > 0 {
			break
		}
	}
	return found, nil
}

// leaves are the places in a step at which a volume leaves its course; last of all the
// ends of its legs, where too few rows of a leg are left to show a slope.
func (f *frame) leaves(base *node, p *sequence.Plan, i int) []Moved {
	seen, o := base.seen[i], base.outcomes[i]
	if o == nil || f.mode != whole || f.pull {
		return nil
	}
	var all, ends []Moved
	spots := f.spots(seen)
	for _, name := range surfaces(p) {
		x := o.courses[name]
		if x == nil || o.fits[name].misfit <= fits {
			continue
		}
		for k, l := range f.legs {
			end := min(max(l.end+1, l.begin+9), l.next)
			if k+1 >= len(seen.Legs) || end-l.begin < 9 {
				continue
			}
			lead := l.lead()
			if !slices.ContainsFunc(ends, func(m Moved) bool { return m.ramp == k+1 }) {
				ends = append(ends, f.endOf(l, k, p, i))
			}
			t, _ := takeOf(&seen.Legs[k+1].Stretches[0], name)
			pr := f.pressureOf(seen, spots, name)
			closed := make([]float64, end-l.begin)
			for r := range closed {
				closed[r] = float64(t.PerPSI) / float64(unit.PSI) * pr[l.begin+r]
			}
			b, sees := bends(x.net[l.begin:end], closed, f.y[lead][l.begin:end], f.time[l.begin:end], 0, end-l.begin-1)
			if !sees {
				continue
			}
			r := l.begin + b.row
			lo, hi := max(r-b.unsure, l.begin), min(r+b.unsure, end-1)
			all = append(all, Moved{Step: p.Steps[i].Name, step: i, ramp: k + 1, Of: f.driven[lead],
				Surface: unit.Pressure((f.y[lead][r] + f.y[lead][max(r-1, l.begin)]) / 2),
				Unsure:  unit.Pressure(max(math.Abs(f.y[lead][hi]-f.y[lead][lo])/2, f.noiseOf(f.driven[lead])))})
		}
	}
	return append(all, ends...)
}

// endOf is the place between the last row on the way of a leg and what it was brought to.
func (f *frame) endOf(l leg, k int, p *sequence.Plan, i int) Moved {
	lead := l.lead()
	last, to := f.y[lead][max(l.end-1, l.begin)], l.to[lead]
	return Moved{Step: p.Steps[i].Name, step: i, ramp: k + 1, Of: f.driven[lead],
		Surface: unit.Pressure((last + to) / 2),
		Unsure:  unit.Pressure(max(math.Abs(to-last)/2, f.noiseOf(f.driven[lead])))}
}

// unmoved are the devices' moves of ports that haven't come in a step.
func (d *diagnoser) unmoved(seen *sequence.Seen) []string {
	var all []string
	for _, dev := range d.given.Devices {
		for _, a := range dev.Actions {
			name := dev.Name + ": " + a.Name
			n := len(a.Triggers)
			if len(a.Opens)+len(a.Closes) == 0 || a.Axial || n == 0 || a.Triggers[n-1].Direction == falling || a.Triggers[n-1].Count > 1 {
				continue
			}
			if !slices.ContainsFunc(seen.Events, func(e sequence.Event) bool { return e.Action == name && e.Partial == "" }) {
				all = append(all, name)
			}
		}
	}
	return all
}

// bringForward finds the threshold with which a device moves where the record has it:
// the lower the threshold, the earlier it does.
func (d *diagnoser) bringForward(m *Moved, i int) (*sequence.Plan, bool) {
	a := m.find(d.plan)
	if a == nil {
		return nil, false
	}
	band := threshold(&a.Triggers[m.link])
	real := threshold(&m.find(d.given).Triggers[m.link])
	m.Least, m.Greatest = real.Least, real.Greatest
	low, high := unit.Pressure(0), band.Nominal
	for range 22 {
		t := low + (high-low)/2
		q := d.plan.Clone()
		m.set(q, unit.Exactly(t))
		when, at, err := d.when(q, m.Action, m.Of, i)
		switch {
		case err != nil:
			return nil, false
		case when < 0 || when == 0 && at.ramp < m.ramp || when == 0 && at.ramp == m.ramp && at.p < m.Surface == at.up:
			low = t // too early
		default:
			high = t
		}
		if when == 0 && at.ramp == m.ramp && math.Abs(float64(at.p-m.Surface)) < float64(2*unit.PSI) {
			m.Threshold = t
			m.Expected = at.p
			return q, t > 0
		}
	}
	return nil, false
}

// instant is where in a step something happened.
type instant struct {
	ramp int
	p    unit.Pressure
	up   bool
}

// when tells when an action happens first: before step i (-1), in it (0), or not by
// its end (1).
func (d *diagnoser) when(q *sequence.Plan, action, of string, i int) (int, instant, error) {
	f, err := sequence.Follow(q)
	if err != nil {
		return 0, instant{}, err
	}
	var at *sequence.Situation
	for k := 0; k <= i; k++ {
		seen, next, err := f.Step(d.ctx, at, k, nil)
		if err != nil {
			return 0, instant{}, err
		}
		at = next
		for _, e := range seen.Events {
			if e.Action != action || e.Partial != "" {
				continue
			}
			if k < i {
				return -1, instant{}, nil
			}
			x := instant{ramp: e.Ramp, p: unit.Pressure(shown(e.Surface, of))}
			if e.Ramp >= 1 && e.Ramp < len(seen.Legs) {
				l := &seen.Legs[e.Ramp]
				x.up = shown(l.To, of) > shown(l.From, of)
			}
			return 0, x, nil
		}
	}
	return 1, instant{}, nil
}
