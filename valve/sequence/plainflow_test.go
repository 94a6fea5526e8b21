package sequence_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// The plain walker's zones that flow: a string of one density with a loss that grows with
// the square of the rate (other outflows are in plainoutflow_test.go), zones by an index and,
// under a bubble point, Vogel's curve, or gas. What flows is found by halving; the pressure on
// the way is straight between where zones come in.

type plainZone struct {
	form  int
	depth float64 // where it comes into the string
	choke int     // the port that it flows through; -1: none
}

type plainKnot struct{ depth, pressure float64 }

// plainRiser is what flows up: how pressure runs from a compartment's top down while its
// zones flow, and the share of it that has come.
type plainRiser struct {
	of    map[int]bool
	knots []plainKnot
	below float64         // gradient under all zones
	still map[int]float64 // by compartment behind a choke: the gradient of the zone's own fluid
	jumps map[int]float64 // by port that is a choke: what it takes
	share float64
	exact func(depth float64) float64 // where it isn't straight
}

// at is the pressure on the way at a depth.
func (r *plainRiser) at(depth float64) float64 {
	last := r.knots[len(r.knots)-1]
	if r.exact != nil && depth < last.depth {
		return r.exact(depth)
	}
	if depth >= last.depth {
		return last.pressure + r.below*(depth-last.depth)
	}
	n := 1
	for r.knots[n].depth < depth {
		n++
	}
	a, b := r.knots[n-1], r.knots[n]
	return a.pressure + (b.pressure-a.pressure)*(depth-a.depth)/(b.depth-a.depth)
}

// short is by how much less than the column at rest stands from a compartment's top to a
// depth.
func (s *plainState) short(i int, depth float64) float64 {
	r := s.riser
	if r == nil {
		return 0
	}
	if g, ok := r.still[i]; ok {
		return r.share * (s.head(i, depth) - g*(depth-s.well.comps[i].top))
	}
	if !r.of[i] {
		return 0
	}
	return r.share * (s.head(i, depth) - (r.at(depth) - r.at(s.well.comps[i].top)))
}

// jump is how much more stands behind a port that is a choke than before it.
func (s *plainState) jump(port, behind int) float64 {
	if s.riser == nil {
		return 0
	}
	if _, ok := s.riser.still[behind]; !ok {
		return -s.riser.share * s.riser.jumps[port]
	}
	return s.riser.share * s.riser.jumps[port]
}

// flowing are the zones that open ports join to a compartment, topmost first, and the
// compartments on the way up from their chokes; still are those behind them, with the gradient of the
// zone's own fluid.
func (w *plainWalk) flowing(root int, p *sequence.Produce) (zones []plainZone, on map[int]bool, still map[int]float64) {
	on, still = map[int]bool{}, map[int]float64{}
	for k, f := range w.forms {
		if f.face < 0 || w.plan.Formations[k].Inflow == nil {
			continue
		}
		way, err := w.wayTo(root, f.face)
		if err != nil {
			continue
		}
		z := plainZone{k, f.depth, -1}
		at := root
		on[at] = true
		for _, n := range way {
			at = w.ports[n].a + w.ports[n].b - at
			if _, ok := p.Chokes[w.ports[n].name]; ok {
				z.depth, z.choke = w.ports[n].depth, n
			}
			if z.choke >= 0 {
				still[at] = w.weighs(k)
			} else {
				on[at] = true
			}
		}
		zones = append(zones, z)
	}
	slices.SortFunc(zones, func(a, b plainZone) int { return cmp.Compare(a.depth, b.depth) })
	return zones, on, still
}

// gives is a zone's rate, in bbl/d, at a pressure in front of it.
func (w *plainWalk) gives(k int, p float64) float64 {
	in, pr := w.plan.Formations[k].Inflow, w.forms[k].pressure
	if in.OpenFlow != 0 {
		return w.givesGas(k, p)
	}
	j := in.Index.In(unit.BarrelPerDayPSI)
	pb := min(in.Bubble.In(psi), pr)
	if p >= pb || pb <= 0 {
		return j * (pr - p)
	}
	y := p / pb
	if y < 0 {
		return j*(pr-pb) + j*pb/1.8*(1-0.2*y)
	}
	return j*(pr-pb) + j*pb/1.8*(1-0.2*y-0.8*y*y)
}

// through is a zone's rate at a pressure in the string, and what its choke takes: found by
// halving the pressure behind it.
func (w *plainWalk) through(p *sequence.Produce, z plainZone, at float64) (rate, takes float64) {
	gives := func(behind float64) float64 {
		return w.gives(z.form, behind+w.weighs(z.form)*(w.forms[z.form].depth-z.depth))
	}
	if z.choke < 0 {
		return gives(at), 0
	}
	const water = 999.1026 // kg/m³ at 15 °C, the standard's
	cv := p.Chokes[w.ports[z.choke].name].In(unit.Cv)
	heavy := w.weighs(z.form) / psiPerFootPpg * float64(ppg) / water
	low, high := at-20000, at+20000
	for range 60 {
		middle := (low + high) / 2
		q := gives(middle) * 42 / 1440 // US gal/min
		drop := heavy * (q / cv) * math.Abs(q/cv)
		if middle-at < drop {
			low = middle
		} else {
			high = middle
		}
	}
	return gives(high), high - at
}

// given is what the zones give together at a pressure at the topmost of them.
func (w *plainWalk) given(p *sequence.Produce, zones []plainZone, at float64) float64 {
	sum := 0.0
	for _, z := range zones {
		q, _ := w.through(p, z, at+p.Density.In(ppg)*psiPerFootPpg*(z.depth-zones[0].depth))
		sum += q
	}
	return sum
}

// flow finds the pressure at the topmost zone; false: nothing flows.
func (w *plainWalk) flow(p *sequence.Produce, zones []plainZone) (knots []plainKnot, rates, takes []float64, ok bool) {
	gradient := p.Density.In(ppg) * psiPerFootPpg
	first := zones[0].depth
	lift := p.Surface.In(psi) + gradient*first
	total := func(at float64) float64 { return w.given(p, zones, at) }
	excess := func(at float64) float64 {
		x := total(at) / p.Rate.In(unit.BarrelPerDay)
		return at - lift - p.Loss.In(psi)*x*x
	}
	if total(lift) <= 0 {
		return nil, nil, nil, false
	}
	low, high := lift, lift
	for total(high) > 0 {
		high += 1000
	}
	for range 60 {
		if middle := (low + high) / 2; total(middle) > 0 && excess(middle) < 0 {
			low = middle
		} else {
			high = middle
		}
	}
	knots = []plainKnot{{0, p.Surface.In(psi)}}
	for _, z := range zones {
		at := high + gradient*(z.depth-first)
		knots = append(knots, plainKnot{z.depth, at})
		q, drop := w.through(p, z, at)
		rates, takes = append(rates, q), append(takes, drop)
	}
	return knots, rates, takes, true
}

// produces lets the zones of a step flow and shuts them in again.
func (w *plainWalk) produces(step *sequence.Step) error {
	p := step.Produce
	root := w.comp(p.Compartment)
	if slices.Contains(w.s.fallen, true) {
		return fmt.Errorf("a column has fallen while zones are to flow")
	}
	zones, on, still := w.flowing(root, p)
	if len(zones) == 0 {
		w.fail(sequence.RateOff, p.Compartment, -1)
		return nil
	}
	for k, z := range zones {
		if z.choke >= 0 && slices.ContainsFunc(zones[:k], func(y plainZone) bool { return y.choke == z.choke }) {
			return fmt.Errorf("two zones flow through one choke")
		}
	}
	var knots []plainKnot
	var rates, takes []float64
	var exact func(float64) float64
	var ok bool
	below := p.Density.In(ppg) * psiPerFootPpg
	switch {
	case p.Viscosity > 0:
		knots, rates, takes, exact, ok = w.bySections(p, zones)
		below = w.weighs(zones[len(zones)-1].form)
	case len(p.Outflow) > 0:
		var err error
		if knots, rates, takes, ok, err = w.byTable(p, zones); err != nil {
			return err
		}
	default:
		knots, rates, takes, ok = w.flow(p, zones)
	}
	if !ok {
		w.fail(sequence.RateOff, p.Compartment, -1)
		return nil
	}
	if err := w.unhurried(); err != nil {
		return err
	}
	s := w.s
	if !s.surface[root] {
		s.surface[root], s.applied[root] = true, s.top[root]
	}
	stood, wellhead := s.applied[root], p.Surface.In(psi)
	s.riser = &plainRiser{of: on, knots: knots, exact: exact, below: below, still: still, jumps: map[int]float64{}}
	for k, z := range zones {
		if z.choke >= 0 {
			s.riser.jumps[z.choke] = takes[k]
		}
	}
	set := func(x float64) { s.riser.share, s.applied[root] = x, stood*(1-x)+wellhead*x }
	if err := w.run(set, nil); err != nil {
		return err
	}
	if now, _, _ := w.flowing(root, p); !slices.Equal(now, zones) {
		return fmt.Errorf("what flows changes while it flows")
	}
	if err := w.unhurried(); err != nil {
		return err
	}
	w.r.flows[w.step] = w.allFelt()
	at := map[[2]string]float64{}
	for _, d := range w.plan.Devices {
		for i, c := range w.comps {
			if depth := d.MD.In(foot); c.top <= depth && depth <= c.bottom {
				at[[2]string{d.Name, c.name}] = s.at(i, depth)
			}
		}
	}
	w.r.flowing[w.step] = at
	for k, z := range zones {
		name := w.forms[z.form].name
		if want, ok := p.Want[name]; ok {
			for _, x := range [2]unit.FlowRate{want.Least, want.Greatest} {
				if p.Loss == 0 && math.Abs(x.In(unit.BarrelPerDay)-rates[k]) < 1e-6*math.Abs(rates[k]) {
					w.r.close = true // both ways are found by turns
				}
			}
			w.fail(sequence.RateOff, name, rates[k]-want.Least.In(unit.BarrelPerDay))
			w.fail(sequence.RateOff, name, want.Greatest.In(unit.BarrelPerDay)-rates[k])
		} else {
			w.fail(sequence.RateOff, name, rates[k])
		}
		w.r.rates[w.step] = append(w.r.rates[w.step], plainRate{name, rates[k]})
	}
	if err := w.run(func(x float64) { set(1 - x) }, nil); err != nil {
		return err
	}
	s.riser = nil
	w.begin(func(float64) {})
	if err := w.look(0); err != nil {
		return err
	}
	w.judge()
	return w.unhurried()
}

type plainRate struct {
	zone string
	rate float64 // bbl/d
}

// sands makes sands of some rooms that may be joined to the tubing, and opens ways.
func (m *plainMaker) sands() {
	for i := 2; i < len(m.group); i++ {
		c := &m.plan.Compartments[i]
		if m.group[i] != m.group[0] || c.Formation != "" || !m.chance(0.5) {
			continue
		}
		f := sequence.Formation{Name: fmt.Sprintf("further sand %d", i), MD: feet(math.Round(m.between(c.TopMD.In(foot), c.BottomMD.In(foot))))}
		setPore(&f, m.round(max(100, plainDensity(m.plan.Fluids[0])*psiPerFootPpg*f.MD.In(foot)+m.between(-900, 1200))))
		m.plan.Formations = append(m.plan.Formations, f)
		setTrapped(c, 0)
		c.Formation = f.Name
	}
	m.sand[m.group[0]] = true
	for i := range m.plan.Ports {
		p := &m.plan.Ports[i]
		p.Open = p.Open || m.chance(0.4)
	}
}

// flowSteps gives sands what they yield, and lets some steps produce through the tubing.
func (m *plainMaker) flowSteps() {
	p := m.plan
	joined := false
	for k := range p.Formations {
		f := &p.Formations[k]
		f.Inflow = &sequence.Inflow{Index: unit.ProductivityIndex(m.between(0.1, 8)) * unit.BarrelPerDayPSI, Density: unit.Density(m.between(6, 9)) * ppg}
		if m.chance(0.3) {
			f.Inflow.Bubble = pounds(plainPore(*f) * m.between(0.4, 0.95))
		}
		face := slices.IndexFunc(p.Compartments, func(c sequence.Compartment) bool { return c.Formation == f.Name })
		joined = joined || m.group[face] == m.group[0]
	}
	for k := range p.Steps {
		if joined && m.chance(0.5) {
			p.Steps[k].Produce = &sequence.Produce{Compartment: "tubing", Surface: pounds(m.round(m.between(50, 900))), Density: unit.Density(m.between(5, 8)) * ppg,
				Loss: pounds(m.between(20, 400)), Rate: unit.FlowRate(m.between(500, 5000)) * unit.BarrelPerDay}
			for _, port := range p.Ports {
				if slices.Contains(port.Joins, "tubing") && m.chance(0.4) {
					if p.Steps[k].Produce.Chokes == nil {
						p.Steps[k].Produce.Chokes = map[string]unit.FlowCoefficient{}
					}
					p.Steps[k].Produce.Chokes[port.Name] = unit.FlowCoefficient(m.between(3, 60)) * unit.Cv
				}
			}
		}
	}
}

// still tells whether nothing flows in any step.
func (r *plainResult) still() bool {
	return !slices.ContainsFunc(r.rates, func(all []plainRate) bool { return len(all) > 0 })
}

// flowGoals takes production out of steps in which nothing flows, mostly, and says what
// zones are to give.
func (m *plainMaker) flowGoals(r *plainResult) {
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		if s.Produce == nil {
			continue
		}
		if len(r.rates[k]) == 0 && m.chance(0.95) {
			s.Produce = nil
			continue
		}
		for _, x := range r.rates[k] {
			if m.chance(0.5) && x.rate > 0 {
				if s.Produce.Want == nil {
					s.Produce.Want = map[string]sequence.RateBetween{}
				}
				s.Produce.Want[x.zone] = sequence.RateBetween{Least: unit.FlowRate(x.rate*(1-3*math.Abs(m.room()))) * unit.BarrelPerDay,
					Greatest: unit.FlowRate(x.rate*(1+3*math.Abs(m.room()))) * unit.BarrelPerDay}
			}
		}
	}
}
