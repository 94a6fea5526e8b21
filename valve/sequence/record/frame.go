package record

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// frame is the record of a step on the way that the programme's walk took: which row
// belongs to which leg, and how far along it it is.
type frame struct {
	*part
	driven  []string
	planned []map[string]unit.Pressure // ramps
	y       [][]float64                // pressures of driven, by row, gaps closed
	legs    []leg
	rest    int
	pull    bool    // the step is a pull; its one leg is the weight indicator's
	peak    float64 // of the weight indicator
	peakRow int
	mode    mode
}

// mode is how much of a step can be held against its record.
type mode string

const (
	whole   mode = ""
	swapped mode = "only the volumes: a fluid is swapped, and friction isn't known"
	byHand  mode = "all but what is done by hand, which is taken to have been done as planned"
	pumped  mode = "only volumes, and the pressure of the pump where the plan knows it: what stands at surface meanwhile isn't"
	asPlan  mode = "nothing: not every pressure that the step moves was recorded, and it is taken to have been done as planned"
	aside   mode = "nothing: it produces, or changes the temperature"
)

// framed segments the record of a step; warmed says that the step changes the well's
// temperature.
func framed(p *part, s *sequence.Step, warmed bool) *frame {
	f := &frame{part: p, rest: len(p.rows), planned: s.Ramps}
	for _, r := range s.Ramps {
		for name := range r {
			if !slices.Contains(f.driven, name) {
				f.driven = append(f.driven, name)
			}
		}
	}
	slices.Sort(f.driven)
	switch {
	case s.Produce != nil || len(s.PressureChange) > 0:
		f.mode = aside
		return f
	case len(s.Pump) > 0:
		f.mode = pumped
		return f
	case len(s.Displace) > 0:
		f.mode = swapped
		return f
	case len(s.Pull) > 0:
		f.pulled(s)
		return f
	}
	var off, still []float64
	for _, name := range f.driven {
		c := p.column(pressure, name)
		if c < 0 {
			f.mode = asPlan
			return f
		}
		f.y = append(f.y, p.filled[c])
		o := max(6*p.noise[c], p.tolerance(c), float64(5*unit.PSI))
		off, still = append(off, o), append(still, 1.5*o)
	}
	if len(f.driven) > 0 {
		f.legs, f.rest = segmented(f.y, off).legs(still)
		settle(f.legs, f.y, still)
	}
	if len(s.Do) > 0 {
		f.mode = byHand
	}
	if warmed { // which takes its time, and volumes with it
		f.mode = aside
	}
	return f
}

// pulled finds how far the weight indicator went up.
func (f *frame) pulled(s *sequence.Step) {
	c := f.column(weight, "")
	if c < 0 || len(s.Ramps) > 0 {
		f.mode = asPlan
		return
	}
	f.pull = true
	y := f.filled[c]
	off := []float64{max(6*f.noise[c], f.tolerance(c))}
	w := segmented([][]float64{y}, off)
	for k, v := range w.values {
		if v[0] > f.peak {
			f.peak, f.peakRow = v[0], w.knots[k]
		}
	}
}

// ramps are what was really applied, as a plan has it.
func (f *frame) ramps() []map[string]unit.Pressure {
	var all []map[string]unit.Pressure
	for k, l := range f.legs {
		m := map[string]unit.Pressure{}
		for c, name := range f.driven {
			m[name] = unit.Pressure(l.to[c])
			if l.to[c] < f.nothing(name) { // bled off, as far as the gauge tells
				m[name] = 0
			}
		}
		if k < len(f.planned) && len(f.legs) == len(f.planned) {
			f.together(m, f.planned[k])
		}
		all = append(all, m)
	}
	return all
}

// together makes equal what is meant to be equal and is, as far as the gauges tell.
func (f *frame) together(m, planned map[string]unit.Pressure) {
	for i, a := range f.driven {
		sum, of := m[a], []string{a}
		for _, b := range f.driven[i+1:] {
			d := m[a] - m[b]
			if planned[a] == planned[b] && max(d, -d) <= unit.Pressure(f.nothing(a)) {
				sum, of = sum+m[b], append(of, b)
			}
		}
		for _, name := range of[1:] {
			m[name] = sum / unit.Pressure(len(of))
		}
		m[a] = sum / unit.Pressure(len(of))
	}
}

// nothing is what a gauge may show where there is nothing.
func (f *frame) nothing(name string) float64 {
	c := f.column(pressure, name)
	if f.columns[c].known {
		return max(f.columns[c].within, 2*f.noise[c])
	}
	return max(float64(10*unit.PSI), 2*f.noise[c])
}

// asRun is the plan with what was really applied in the steps recorded.
func asRun(p *sequence.Plan, frames map[int]*frame) *sequence.Plan {
	q := p.Clone()
	for i, f := range frames {
		s := &q.Steps[i]
		switch {
		case f.pull:
			s.Pull = []unit.Force{unit.Force(f.peak)}
		case (f.mode == whole || f.mode == byHand || f.mode == aside && len(f.legs) > 0) && len(f.driven) > 0:
			s.Ramps = f.ramps()
		}
	}
	return q
}

// spot is where a row is: leg and stretch of what the programme's walk shows.
type spot struct {
	leg, stretch int
	share        float64 // along the leg
}

// spots place every row.
func (f *frame) spots(seen *sequence.Seen) []spot {
	all := make([]spot, len(f.rows))
	for i := 0; i < min(f.rest, len(all)); i++ {
		all[i] = spot{0, max(len(seen.Legs[0].Stretches)-1, 0), 1}
	}
	if f.pull {
		n := len(seen.Legs) - 1
		for i := range all {
			if i > f.peakRow {
				all[i] = spot{n, len(seen.Legs[n].Stretches) - 1, 1}
			} else {
				all[i] = spot{n, 0, 0}
			}
		}
		return all
	}
	for k, l := range f.legs {
		n := k + 1
		if n >= len(seen.Legs) {
			break
		}
		lead := l.lead()
		marks := f.marks(&seen.Legs[n], l, lead)
		far := 0.
		for i := l.begin; i < l.next && i < len(all); i++ {
			share := (f.y[lead][i] - l.from[lead]) / (l.to[lead] - l.from[lead])
			if far = max(far, share); i >= l.end {
				far = 1
			}
			far = min(far, 1)
			at := 0
			for at+1 < len(marks) && marks[at+1] <= far {
				at++
			}
			all[i] = spot{n, at, far}
		}
	}
	return all
}

// marks are how far along a leg its stretches begin.
func (f *frame) marks(x *sequence.Leg, l leg, lead int) []float64 {
	var all []float64
	for _, s := range x.Stretches {
		p := shown(s.At, f.driven[lead])
		share := (p - l.from[lead]) / (l.to[lead] - l.from[lead])
		if math.IsNaN(share) || len(all) == 0 {
			share = 0
		}
		all = append(all, share)
	}
	return all
}

// lead is the compartment that goes furthest.
func (l leg) lead() int {
	best := 0
	for c := range l.from {
		if math.Abs(l.to[c]-l.from[c]) > math.Abs(l.to[best]-l.from[best]) {
			best = c
		}
	}
	return best
}

// shown is the reading of a compartment at surface, NaN where there is none.
func shown(all []sequence.Reading, name string) float64 {
	for _, r := range all {
		if r.Compartment == name {
			return float64(r.Pressure)
		}
	}
	return math.NaN()
}
