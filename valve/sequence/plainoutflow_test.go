package sequence_test

import (
	"fmt"
	"math"
	"slices"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// The plain walker's other outflows: a table, along a curve of its own making, and section
// by section, walked from the deepest zone up for a pressure there that is found by halving.
// Friction at a single rate it takes from package flow, as the programme does.

// weighs is what flows out of a zone, in psi/ft: oil and water by the water cut, and gas
// that takes room and weighs nothing.
func (w *plainWell) weighs(form int) float64 {
	in := w.plan.Formations[form].Inflow
	oil, water := in.Density.In(ppg), in.WaterDensity.In(ppg)
	if water == 0 {
		return oil * (1 - in.GasCut) * psiPerFootPpg
	}
	return (oil*(1-in.WaterCut) + water*in.WaterCut) * (1 - in.GasCut) * psiPerFootPpg
}

// givesGas is the back-pressure equation: in absolute pressures, no more than in vacuum.
func (w *plainWalk) givesGas(k int, p float64) float64 {
	in := w.plan.Formations[k].Inflow
	abs := func(p float64) float64 { return max(p+atmosphere, 0) }
	r, x := abs(w.forms[k].pressure), abs(p)
	share := (r*r - x*x) / (r*r - atmosphere*atmosphere)
	return math.Copysign(in.OpenFlow.In(unit.BarrelPerDay)*math.Pow(math.Abs(share), in.Exponent), share)
}

// curve is a table between whose points runs a cubic by Fritsch and Butland, 1984: its
// slope at a point is the weighted harmonic mean of those of the chords beside it, none
// where these differ in sign; at an end that of the parabola through three points, as far as
// it keeps the sign of the chord. It begins at the least pressure.
type curve struct{ x, y, slope []float64 }

func curveOf(table []sequence.OutflowAt) *curve {
	c := &curve{}
	first := 0
	for k, r := range table {
		if r.Pressure <= table[first].Pressure && (r.Pressure < table[first].Pressure || k == 0) {
			first = k
		}
	}
	for _, r := range table[first:] {
		c.x, c.y = append(c.x, r.Rate.In(unit.BarrelPerDay)), append(c.y, r.Pressure.In(psi))
	}
	chord := func(k int) (h, s float64) {
		h = c.x[k+1] - c.x[k]
		return h, (c.y[k+1] - c.y[k]) / h
	}
	n := len(c.x)
	c.slope = make([]float64, n)
	if n == 2 {
		_, s := chord(0)
		c.slope[0], c.slope[1] = s, s
		return c
	}
	for k := 1; k < n-1; k++ {
		h1, s1 := chord(k - 1)
		h2, s2 := chord(k)
		if s1*s2 > 0 {
			a := (1 + h2/(h1+h2)) / 3
			c.slope[k] = s1 * s2 / (a*s2 + (1-a)*s1)
		}
	}
	end := func(near, far int) float64 {
		h1, s1 := chord(near)
		h2, s2 := chord(far)
		s := ((2*h1+h2)*s1 - h1*s2) / (h1 + h2)
		switch {
		case s*s1 <= 0:
			return 0
		case s1*s2 <= 0 && math.Abs(s) > 3*math.Abs(s1):
			return 3 * s1
		}
		return s
	}
	c.slope[0], c.slope[n-1] = end(0, 1), end(n-2, n-3)
	return c
}

// at is the pressure at a rate, straight on beyond both ends.
func (c *curve) at(q float64) float64 {
	n := len(c.x)
	switch {
	case q <= c.x[0]:
		return c.y[0] + c.slope[0]*(q-c.x[0])
	case q >= c.x[n-1]:
		return c.y[n-1] + c.slope[n-1]*(q-c.x[n-1])
	}
	k := 0
	for c.x[k+1] < q {
		k++
	}
	h := c.x[k+1] - c.x[k]
	t := (q - c.x[k]) / h
	return c.y[k]*(1+2*t)*(1-t)*(1-t) + h*c.slope[k]*t*(1-t)*(1-t) + c.y[k+1]*t*t*(3-2*t) - h*c.slope[k+1]*t*t*(1-t)
}

// byTable finds the pressure at the topmost zone with which the zones give what the table
// takes to surface.
func (w *plainWalk) byTable(p *sequence.Produce, zones []plainZone) (knots []plainKnot, rates, takes []float64, ok bool, err error) {
	c := curveOf(p.Outflow)
	gradient, first := p.Density.In(ppg)*psiPerFootPpg, zones[0].depth
	total := func(at float64) float64 { return w.given(p, zones, at) }
	low, high := -20000.0, 40000.0
	for range 80 {
		if middle := (low + high) / 2; middle < c.at(total(middle)) {
			low = middle
		} else {
			high = middle
		}
	}
	q := total(high)
	if last := c.x[len(c.x)-1]; q > last {
		return nil, nil, nil, false, fmt.Errorf("%v bbl/d are beyond the table's %v", q, last)
	}
	if q < c.x[0] {
		return nil, nil, nil, false, nil
	}
	if math.Abs(q-c.x[0]) < 1e-6*c.x[0] || math.Abs(high+atmosphere) < 1 {
		w.r.close = true
	}
	knots = []plainKnot{{0, p.Surface.In(psi)}}
	for _, z := range zones {
		at := high + gradient*(z.depth-first)
		knots = append(knots, plainKnot{z.depth, at})
		q, drop := w.through(p, z, at)
		rates, takes = append(rates, q), append(takes, drop)
	}
	return knots, rates, takes, true, nil
}

// plainSection is the string above a zone up to the next, or to surface.
type plainSection struct {
	top, bottom, pressure float64 // at its bottom
	gradient, rate        float64 // psi/ft, bbl/d
}

// lostIn is what friction takes between two depths of the string at a rate, bore by bore.
func (w *plainWalk) lostIn(root int, viscosity unit.Viscosity, gradient, rate, from, to float64) float64 {
	bores := w.plan.Compartments[root].Bores
	sum := 0.0
	for k, b := range bores {
		top, bottom := from, to
		if k > 0 {
			top = max(from, bores[k-1].To.In(foot))
		}
		if k < len(bores)-1 {
			bottom = min(to, b.To.In(foot))
		}
		if top >= bottom || rate == 0 {
			continue
		}
		r, err := flow.Stream{Conduit: flow.Conduit{Outer: b.Outer, Inner: b.Inner}, Rheology: flow.Newtonian(viscosity),
			Density: unit.Density(gradient/psiPerFootPpg) * ppg, Rate: unit.FlowRate(math.Abs(rate)) * unit.BarrelPerDay}.Friction()
		if err != nil {
			return math.NaN()
		}
		sum += float64(r.Gradient) * float64(foot) / float64(psi) * (bottom - top)
	}
	return math.Copysign(sum, rate)
}

// climb walks from a pressure at the deepest zone up to surface.
func (w *plainWalk) climb(p *sequence.Produce, zones []plainZone, deepest float64) (all []plainSection, rates, takes []float64, top float64) {
	root := w.comp(p.Compartment)
	rates, takes = make([]float64, len(zones)), make([]float64, len(zones))
	at, rate, weight, given := deepest, 0.0, 0.0, 0.0
	for k := len(zones) - 1; k >= 0; k-- {
		rates[k], takes[k] = w.through(p, zones[k], at)
		rate += rates[k]
		given += max(rates[k], 0)
		weight += max(rates[k], 0) * w.weighs(zones[k].form)
		s := plainSection{top: w.comps[root].top, bottom: zones[k].depth, pressure: at, gradient: w.weighs(zones[k].form), rate: rate}
		if k > 0 {
			s.top = zones[k-1].depth
		}
		if given > 0 {
			s.gradient = weight / given
		}
		all = append(all, s)
		at -= s.gradient*(s.bottom-s.top) + w.lostIn(root, p.Viscosity, s.gradient, s.rate, s.top, s.bottom)
	}
	return all, rates, takes, at
}

// bySections finds the pressure at the deepest zone from which what flows comes up with the
// wellhead's pressure.
func (w *plainWalk) bySections(p *sequence.Produce, zones []plainZone) (knots []plainKnot, rates, takes []float64, exact func(float64) float64, ok bool) {
	total := func(x float64) float64 {
		_, q, _, _ := w.climb(p, zones, x)
		sum := 0.0
		for _, q := range q {
			sum += q
		}
		return sum
	}
	low, high := -20000.0, 40000.0
	for range 80 { // where nothing comes up
		if middle := (low + high) / 2; total(middle) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	wellhead := p.Surface.In(psi)
	if _, _, _, top := w.climb(p, zones, low); !(top > wellhead) {
		return nil, nil, nil, nil, false
	}
	low, high = low-20000, low
	for range 80 {
		middle := (low + high) / 2
		if _, _, _, top := w.climb(p, zones, middle); top < wellhead {
			low = middle
		} else {
			high = middle
		}
	}
	sections, rates, takes, _ := w.climb(p, zones, high)
	root := w.comp(p.Compartment)
	knots = []plainKnot{{w.comps[root].top, wellhead}}
	for _, s := range slices.Backward(sections) {
		knots = append(knots, plainKnot{s.bottom, s.pressure})
	}
	exact = func(depth float64) float64 {
		for _, s := range sections {
			if depth >= s.top {
				return s.pressure - s.gradient*(s.bottom-depth) - w.lostIn(root, p.Viscosity, s.gradient, s.rate, depth, s.bottom)
			}
		}
		return wellhead
	}
	return knots, rates, takes, exact, true
}

// outflowSteps lets sands yield what has water and gas in it, or nothing but gas, and lets
// steps that produce have outflow by a table or section by section.
func (m *plainMaker) outflowSteps() {
	m.flowSteps()
	p := m.plan
	gas := m.chance(0.2)
	for k := range p.Formations {
		in := p.Formations[k].Inflow
		if gas {
			*in = sequence.Inflow{OpenFlow: unit.FlowRate(m.between(1000, 20000)) * unit.BarrelPerDay, Exponent: m.between(0.5, 1), Density: unit.Density(m.between(0.5, 2)) * ppg}
			continue
		}
		if m.chance(0.5) {
			in.WaterCut = m.between(0.05, 0.9)
			if m.chance(0.6) {
				in.WaterDensity = unit.Density(m.between(8.3, 9.5)) * ppg
			}
		}
		if m.chance(0.5) {
			in.GasCut = m.between(0.05, 0.7)
		}
	}
	c := &p.Compartments[0]
	between := unit.Length(math.Round(m.between(0.2, 0.8)*c.BottomMD.In(foot))) * foot
	c.Bores = []sequence.Bore{{To: between, Outer: unit.Length(m.between(1.5, 4)) * unit.Inch}, {To: c.BottomMD, Outer: unit.Length(m.between(1.5, 4)) * unit.Inch}}
	c.Capacity = 0
	for k := range p.Steps {
		x := p.Steps[k].Produce
		if x == nil {
			continue
		}
		kind := m.random.IntN(3)
		switch {
		case kind == 0 || gas:
			x.Loss, x.Rate, x.Outflow = 0, 0, m.outflowTable(x)
			if gas {
				x.Chokes = nil
			}
		case kind == 1:
			x.Density, x.Loss, x.Rate, x.Viscosity = 0, 0, 0, unit.Viscosity(m.between(0.3, 20))*unit.Centipoise
		}
	}
}

// outflowTable is a table whose pressures the sands may meet.
func (m *plainMaker) outflowTable(x *sequence.Produce) []sequence.OutflowAt {
	pore := math.Inf(1)
	for _, f := range m.plan.Formations {
		pore = min(pore, plainPore(f))
	}
	rate, pressure := m.between(0, 200), pore*m.between(0.4, 0.9)
	var all []sequence.OutflowAt
	for range 2 + m.random.IntN(4) {
		all = append(all, sequence.OutflowAt{Rate: unit.FlowRate(rate) * unit.BarrelPerDay, Pressure: pounds(pressure)})
		rate += m.between(300, 15000)
		if len(all) < 2 && m.chance(0.4) {
			pressure -= m.between(10, 200) // lifted better by more
		} else {
			pressure += m.between(20, 900)
		}
	}
	if n := len(all); all[n-1].Pressure <= all[n-2].Pressure {
		all[n-1].Pressure = all[n-2].Pressure + 100*psi
	}
	return all
}
