package record

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// Moved is a device whose move shows in the record.
type Moved struct {
	Step      string        `json:"step"`
	Action    string        `json:"action"`
	Surface   unit.Pressure `json:"surface"` // of the leading compartment, where the slope of volume against pressure changed
	Of        string        `json:"of"`      // that compartment
	Expected  unit.Pressure `json:"expected"`
	Unsure    unit.Pressure `json:"unsure"`    // either way
	Threshold unit.Pressure `json:"threshold"` // that its last trigger then has
	Least     unit.Pressure `json:"least"`     // of its band
	Greatest  unit.Pressure `json:"greatest"`
	Inside    bool          `json:"inside"` // the band

	device, act, link int
	step, ramp        int
}

// locate finds in a step the first device of each leg whose move can be seen in a
// volume, and where it did.
func (f *frame) locate(seen *sequence.Seen, p *sequence.Plan) []Moved {
	if f.mode != whole || f.pull {
		return nil
	}
	var all []Moved
	for k, l := range f.legs {
		if k+1 >= len(seen.Legs) {
			break
		}
		x := &seen.Legs[k+1]
		for s := 1; s < len(x.Stretches); s++ {
			if m, ok := f.bentAt(seen, x, l, s, p); ok {
				all = append(all, m)
				break
			}
		}
	}
	return all
}

func (f *frame) bentAt(seen *sequence.Seen, x *sequence.Leg, l leg, s int, p *sequence.Plan) (Moved, bool) {
	action := x.Stretches[s].After
	m := Moved{Action: action, Step: p.Steps[f.step].Name, step: f.step}
	a := m.find(p)
	if a == nil || a.Axial {
		return m, false
	}
	band := threshold(&a.Triggers[m.link])
	m.Least, m.Greatest = band.Least, band.Greatest
	lead := l.lead()
	m.Of = f.driven[lead]
	m.Expected = unit.Pressure(shown(x.Stretches[s].At, m.Of))
	spots := f.spots(seen)
	for _, name := range surfaces(p) {
		before, _ := takeOf(&x.Stretches[s-1], name)
		after, ok := takeOf(&x.Stretches[s], name)
		c := f.course(seen, spots, name)
		if !ok || c == nil || !visible(before, after, c) {
			continue
		}
		if _, flows := driving(before); flows {
			continue
		}
		// Rows of the leg, on the course that it would have had.
		begin, end := l.begin, min(max(l.end+1, l.begin+9), l.next)
		if end-begin < 9 {
			return m, false
		}
		pr := f.pressureOf(seen, spots, name)
		lp := f.y[lead]
		slope := float64(before.PerPSI) / float64(unit.PSI)
		closed := make([]float64, end-begin)
		for i := range closed {
			closed[i] = slope * pr[begin+i]
		}
		slack := max(float64(m.Greatest-m.Least), 0.08*math.Abs(float64(band.Nominal)), float64(60*unit.PSI))
		first, last := end, begin
		for i := begin; i < end; i++ {
			if math.Abs(lp[i]-float64(m.Expected)) <= slack {
				first, last = min(first, i), max(last, i)
			}
		}
		b, sees := bends(c.net[begin:end], closed, lp[begin:end], f.time[begin:end], first-begin, last-begin)
		if !sees {
			continue
		}
		i := begin + b.row
		m.Surface = unit.Pressure((lp[i] + lp[max(i-1, begin)]) / 2)
		lo, hi := max(i-b.unsure, begin), min(i+b.unsure, end-1)
		m.Unsure = unit.Pressure(max(math.Abs(lp[hi]-lp[lo])/2, f.noiseOf(m.Of)))
		return m, true
	}
	return m, false
}

func (f *frame) noiseOf(name string) float64 {
	if c := f.column(pressure, name); c >= 0 {
		return max(2*f.noise[c], f.columns[c].within/2)
	}
	return 0
}

// visible tells whether a move changes what a compartment takes by enough to be seen.
func visible(before, after sequence.Take, c *course) bool {
	if m, ok := driving(after); ok && m.Drive > 100*unit.PSI {
		return true
	}
	if math.Abs(float64(after.AtOnce)) > 3*(c.within+c.noise) {
		return true
	}
	return math.Abs(float64(after.PerPSI-before.PerPSI)) > 0.08*math.Abs(float64(before.PerPSI))
}

// find the action of a move in a plan; nil: there is none.
func (m *Moved) find(p *sequence.Plan) *sequence.Action {
	for d := range p.Devices {
		for a := range p.Devices[d].Actions {
			x := &p.Devices[d].Actions[a]
			if p.Devices[d].Name+": "+x.Name == m.Action && len(x.Triggers) > 0 {
				m.device, m.act, m.link = d, a, len(x.Triggers)-1
				return x
			}
		}
	}
	return nil
}

// threshold is a trigger's band.
func threshold(t *sequence.Trigger) unit.Band[unit.Pressure] {
	if t.Pins == nil {
		return t.Threshold
	}
	f := unit.Within(unit.Force(float64(t.Pins.Strength)*float64(t.Pins.Count)), t.Pins.Tolerance)
	area := t.Pins.Area
	return unit.Band[unit.Pressure]{Least: f.Least.Over(area), Nominal: f.Nominal.Over(area), Greatest: f.Greatest.Over(area)}
}

// set gives the plan's trigger another band.
func (m *Moved) set(p *sequence.Plan, b unit.Band[unit.Pressure]) {
	a := m.find(p)
	if a == nil {
		return
	}
	t := &a.Triggers[m.link]
	t.Pins, t.Threshold = nil, b
}

// narrowed is what is known of the threshold of a device that moved once, for a plan
// that goes on.
func (m *Moved) narrowed() unit.Band[unit.Pressure] {
	return unit.Band[unit.Pressure]{Least: m.Threshold - m.Unsure, Nominal: m.Threshold, Greatest: m.Threshold + m.Unsure}
}

// tune finds the threshold with which the programme's walk has the move where the
// record has it. walk gives the surface pressure of the move for a threshold.
func (m *Moved) tune(nominal unit.Pressure, walk func(unit.Pressure) (unit.Pressure, bool)) bool {
	t, at := nominal, m.Expected
	for range 4 {
		step := m.Surface - at
		if math.Abs(float64(step)) < float64(0.5*unit.PSI) {
			break
		}
		next := t + step
		p, ok := walk(next)
		if !ok {
			return false
		}
		t, at = next, p
	}
	m.Threshold = t
	m.Inside = t >= m.Least-m.Unsure && t <= m.Greatest+m.Unsure
	return math.Abs(float64(m.Surface-at)) < float64(5*unit.PSI)
}

// moveOf finds where an action happened in what a step shows.
func moveOf(seen *sequence.Seen, action, of string) (unit.Pressure, bool) {
	i := slices.IndexFunc(seen.Events, func(e sequence.Event) bool { return e.Action == action && e.Partial == "" })
	if i < 0 {
		return 0, false
	}
	p := shown(seen.Events[i].Surface, of)
	return unit.Pressure(p), !math.IsNaN(p)
}
