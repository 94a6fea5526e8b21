package record

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"gonum.org/v1/gonum/mat"
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

// bend is where a record changes its slope.
type bend struct {
	row    int
	f      float64 // F ratio of two slopes against one
	unsure int     // rows either way that do as well
}

// bends looks for the row of a leg after which the volume no longer follows the
// programme's slope: before it net = a + b·closed, after it net = a' + b'·pressure +
// c'·time, least squares over all rows of the leg. Source: Quandt 1958; F as in Chow
// 1960. Both from memory.
func bends(net, closed, p, t []float64, first, last int) (bend, bool) {
	n := len(net)
	if n < 9 {
		return bend{}, false
	}
	whole := regression(net, closed)
	best, square := -1, math.Inf(1)
	stride := max((last-first)/150, 1)
	var all []float64
	var at []int
	for k := max(first, 3); k <= min(last, n-4); k += stride {
		s := regression(net[:k], closed[:k]) + regression(net[k:], p[k:], t[k:])
		all, at = append(all, s), append(at, k)
		if s < square {
			best, square = k, s
		}
	}
	if best < 0 || n <= 6 {
		return bend{}, false
	}
	floor := 1e-12 * whole / float64(n)
	b := bend{row: best, f: (whole - square) / 3 / max(square/float64(n-5), floor)}
	// Rows that fit as well but for chance: a likelihood ratio of 95 %, 3.84.
	limit := square * (1 + 3.84/float64(n-5))
	for i, s := range all {
		if s <= limit {
			b.unsure = max(b.unsure, at[i]-best, best-at[i])
		}
	}
	b.unsure = max(b.unsure, stride)
	return b, b.f > 25
}

// regression is the sum of squares that is left of y on a constant and columns.
func regression(y []float64, x ...[]float64) float64 {
	n := len(y)
	cols := [][]float64{}
	for _, c := range x {
		if v, ok := normal(c); ok {
			cols = append(cols, v)
		}
	}
	mean := 0.
	for _, v := range y {
		mean += v / float64(n)
	}
	k := len(cols)
	sum := 0.
	if k == 0 || n <= k+1 {
		for _, v := range y {
			sum += (v - mean) * (v - mean)
		}
		return sum
	}
	a, b := mat.NewSymDense(k, nil), mat.NewVecDense(k, nil)
	for i := range k {
		for j := i; j < k; j++ {
			s := 0.
			for r := range n {
				s += cols[i][r] * cols[j][r]
			}
			if i == j {
				s *= 1 + 1e-9
			}
			a.SetSym(i, j, s)
		}
		s := 0.
		for r := range n {
			s += cols[i][r] * (y[r] - mean)
		}
		b.SetVec(i, s)
	}
	var chol mat.Cholesky
	var w mat.VecDense
	if !chol.Factorize(a) || chol.SolveVecTo(&w, b) != nil {
		w.Reset()
		w.ReuseAsVec(k)
	}
	for r := range n {
		d := y[r] - mean
		for i := range k {
			d -= w.AtVec(i) * cols[i][r]
		}
		sum += d * d
	}
	return sum
}

// normal is a column less its mean and of length one; false: it never changes.
func normal(x []float64) ([]float64, bool) {
	mean := 0.
	for _, v := range x {
		mean += v / float64(len(x))
	}
	sum := 0.
	all := make([]float64, len(x))
	for i, v := range x {
		all[i] = v - mean
		sum += all[i] * all[i]
	}
	if sum <= 1e-18*mean*mean*float64(len(x)) || sum == 0 {
		return nil, false
	}
	for i := range all {
		all[i] /= math.Sqrt(sum)
	}
	return all, true
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
