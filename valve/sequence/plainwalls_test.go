package sequence_test

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// Steel of the trade: E in psi, Poisson's ratio, and expansion by degF.
const (
	plainYoung   = 30e6
	plainPoisson = 0.3
	plainSteel   = 6.9e-6
)

// walls keeps the bores of a compartment whose walls are known.
func (k *plainComp) walls(c sequence.Compartment) {
	if len(c.Bores) == 0 || c.Bores[0].OuterWall == 0 {
		return
	}
	k.bores = c.Bores
	area := 0.0 // m²·ft, as the capacity of others
	top := k.top
	for _, b := range c.Bores {
		o, i := float64(b.Outer), float64(b.Inner)
		area += math.Pi / 4 * (o*o - i*i) * (b.To.In(foot) - top)
		top = b.To.In(foot)
	}
	k.volume = area
}

// plainLength is a length of a compartment with one fluid and one bore.
type plainLength struct {
	inches, area, give, swell float64 // in, in², 1/psi, 1/degF
	top, bottom               float64
}

// lengths are those of a compartment; false: of one its stiffness isn't known.
//
// Lamé's cylinder in plane strain, of radii a and b, for a pressure p inside or outside:
//
//	u(a)/a = (1+ν)/E·[(1-2ν)a² + b²]/(b²-a²)·p       u(b)/b = -(1+ν)/E·[a² + (1-2ν)b²]/(b²-a²)·p
//
// and heat with the length held: u/r = (1+ν)αΔT.
func (s *plainState) lengths(i int) ([]plainLength, bool) {
	k := &s.well.comps[i]
	if k.bores == nil {
		return nil, false
	}
	var all []plainLength
	for _, l := range s.layers[i] {
		var fluid sequence.Fluid
		for _, f := range s.well.plan.Fluids {
			if f.Name == l.name {
				fluid = f
			}
		}
		c := fluid.Compression.In(unit.PerPSI)
		if c == 0 {
			return nil, false
		}
		top := k.top
		for _, b := range k.bores {
			from, to := max(top, l.top), min(b.To.In(foot), l.bottom)
			top = b.To.In(foot)
			if to <= from {
				continue
			}
			o, in := b.Outer.In(unit.Inch)/2, b.Inner.In(unit.Inch)/2
			oo, ii := o+b.OuterWall.In(unit.Inch), in-b.InnerWall.In(unit.Inch)
			lame := (1 + plainPoisson) / plainYoung
			grow := 2 * o * o * lame * ((1-2*plainPoisson)*o*o + oo*oo) / (oo*oo - o*o)
			if in > 0 {
				grow += 2 * in * in * lame * (ii*ii + (1-2*plainPoisson)*in*in) / (in*in - ii*ii)
			}
			area := o*o - in*in
			all = append(all, plainLength{(to - from) * 12, math.Pi * area, c + grow/area,
				fluid.Expansion.In(unit.PerFahrenheit) - 2*(1+plainPoisson)*plainSteel, from, to})
		}
	}
	return all, true
}

func (s *plainState) give(i int) (float64, bool) {
	all, ok := s.lengths(i)
	sum := 0.0
	for _, x := range all {
		sum += x.inches * x.area * x.give
	}
	return sum, ok
}

// weights are what the members of a body count in it.
func (k *plainSolver) weights(s *plainState) []float64 {
	var give, volume []float64
	stiff := true
	for _, m := range k.members {
		g, ok := s.give(m)
		stiff = stiff && ok
		give, volume = append(give, g), append(volume, k.well.comps[m].volume)
	}
	if stiff {
		return give
	}
	return volume
}

// trappedAt is what a body that nothing fixes gives; an error where it isn't known.
func (w *plainWalk) trappedAt(i int) (give float64, fixed bool, err error) {
	if w.solver.fixed(w.s, i) {
		return 0, true, nil
	}
	for _, m := range w.solver.members {
		g, ok := w.s.give(m)
		if !ok {
			return 0, false, fmt.Errorf("the stiffness of %q isn't known", w.comps[m].name)
		}
		give += g
	}
	return give, false, nil
}

// heat gives the well another temperature.
func (w *plainWalk) heat(name string) error {
	old := w.s.warm
	if old == "" {
		old = sequence.Undisturbed
	}
	if name == old {
		return nil
	}
	w.s.warm = name
	at := func(name string, depth float64) float64 { // of two points
		t := w.plan.Well.Temperatures[name]
		a, b := t[0], t[1]
		f := (depth - a.TVD.In(foot)) / (b.TVD - a.TVD).In(foot)
		return a.Temperature.Fahrenheit()*(1-f) + b.Temperature.Fahrenheit()*f
	}
	done := map[int]bool{}
	for i := range w.comps {
		if done[i] || w.comps[i].bores == nil {
			continue
		}
		give, fixed, err := w.trappedAt(i)
		if err != nil {
			return err
		}
		members := append([]int{}, w.solver.members...)
		grown := 0.0
		for _, m := range members {
			done[m] = true
			all, _ := w.s.lengths(m)
			for _, x := range all {
				mid := (x.top + x.bottom) / 2 // the temperatures are straight
				grown += x.inches * x.area * x.swell * (at(name, mid) - at(old, mid))
			}
		}
		if fixed {
			continue
		}
		for _, m := range members {
			w.s.top[m] += grown / give
		}
	}
	return nil
}

// press presses a volume into a compartment over the leg to come.
func (w *plainWalk) press(name string, volume float64) error {
	i := w.comp(name)
	_, fixed, err := w.trappedAt(i)
	if err == nil && fixed {
		err = fmt.Errorf("%q can't be pressed into: something fixes its pressure", name)
	}
	w.rate[i] = volume
	return err
}

// stroke takes from compartments what an action does.
func (w *plainWalk) stroke(a *plainAction) {
	for i, v := range a.strokes {
		give, fixed, err := w.trappedAt(i)
		if err != nil {
			w.fault = err
		}
		if fixed || err != nil {
			continue
		}
		for _, m := range append([]int{}, w.solver.members...) {
			w.own[m] += v / give
			w.s.top[m] += v / give
		}
	}
}

// walls gives nearly all compartments walls, fluids what heat and pressure make of
// them, and the well temperatures.
func (m *plainMaker) walls() {
	p := m.plan
	for i := range p.Fluids {
		p.Fluids[i].Compression = unit.Compressibility(m.between(2e-6, 5e-6)) * unit.PerPSI
		p.Fluids[i].Expansion = unit.Expansivity(m.between(1e-4, 3e-4)) * unit.PerFahrenheit
	}
	none := m.chance(0.1)
	for i := range p.Compartments {
		if none && m.chance(0.3) {
			continue
		}
		c := &p.Compartments[i]
		inch := func(a, b float64) unit.Length { return unit.Length(m.between(a, b)) * unit.Inch }
		bore := func() sequence.Bore {
			b := sequence.Bore{To: c.BottomMD, Outer: inch(4, 10), OuterWall: inch(0.2, 0.6)}
			if m.chance(0.6) {
				b.Inner, b.InnerWall = inch(2, 3.8), inch(0.15, 0.4)
			}
			return b
		}
		c.Capacity, c.Bores = 0, []sequence.Bore{bore()}
		if m.chance(0.3) {
			c.Bores = append([]sequence.Bore{bore()}, c.Bores...)
			c.Bores[0].To = (c.TopMD + c.BottomMD) / 2
		}
	}
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{}
	for _, name := range []string{sequence.Undisturbed, "hot", "cold"} {
		more := map[string]float64{sequence.Undisturbed: 0, "hot": m.between(0, 30), "cold": -m.between(0, 20)}[name]
		at := func(depth, t float64) sequence.MarkedTVD {
			return sequence.MarkedTVD{TVD: feet(depth), Temperature: unit.Fahrenheit(t)}
		}
		p.Well.Temperatures[name] = []sequence.MarkedTVD{at(0, 60+more*m.between(0, 1.5)), at(15000, 250+more*m.between(0.5, 1))}
	}
}

// warms changes temperatures and presses volumes in.
func (m *plainMaker) warms() {
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		if m.chance(0.5) {
			s.Temperature = []string{sequence.Undisturbed, "hot", "cold"}[m.random.IntN(3)]
		}
		for _, name := range sortedNames(s.PressureChange) {
			if i := m.index(name); m.plan.Compartments[i].Bores != nil && m.chance(0.6) {
				delete(s.PressureChange, name)
				if s.VolumeChange == nil {
					s.VolumeChange = map[string]unit.Volume{}
				}
				s.VolumeChange[name] = unit.Volume(m.between(-0.3, 1)) * unit.Barrel
			}
		}
	}
}

func (m *plainMaker) index(name string) int {
	return indexOf(m.plan.Compartments, name, func(c sequence.Compartment) string { return c.Name })
}

// strokes lets some actions press into rooms as they move.
func (m *plainMaker) strokes() {
	for d := range m.plan.Devices {
		for a := range m.plan.Devices[d].Actions {
			x := &m.plan.Devices[d].Actions[a]
			if !m.chance(0.3) {
				continue
			}
			c := &m.plan.Compartments[m.random.IntN(len(m.plan.Compartments))]
			if c.Bores != nil {
				x.Strokes = map[string]unit.Volume{c.Name: unit.Volume(m.between(-0.05, 0.15)) * unit.Barrel}
			}
		}
	}
}

// plainHeld is what a test that is held keeps of what it may lose.
type plainHeld struct {
	test bool
	left float64
}

// left is what warming leaves of what a test may lose.
func (w *plainWalk) left(t *sequence.Test) float64 {
	depth := t.MD.In(foot)
	in, out := w.comp(t.Inside), w.comp(t.Outside)
	d := w.s.at(in, depth) - w.s.at(out, depth)
	left := w.rises(in, t) - w.rises(out, t) + d*t.Decline
	if t.Differential.Least+t.Differential.Greatest < 0 {
		return -left
	}
	return left
}

// rises is by how much a body that is shut in rises as a part of it warms.
func (w *plainWalk) rises(i int, t *sequence.Test) float64 {
	clear(w.solver.seen)
	if err := w.solver.body(w.s, i); err != nil {
		w.fault = err
		return 0
	}
	give, grown, warm, formation, soft := 0.0, 0.0, false, false, false
	for _, m := range w.solver.members {
		formation = formation || w.comps[m].formation >= 0
		all, ok := w.s.lengths(m)
		soft = soft || !ok
		b, here := t.Warms[w.comps[m].name]
		warm = warm || here
		for _, x := range all {
			give += x.inches * x.area * x.give
			grown += x.inches * x.area * x.swell * float64(b.Nominal) * 1.8
		}
	}
	switch {
	case formation || !warm:
		return 0
	case soft:
		w.fault = fmt.Errorf("the stiffness of the body of %q isn't known", w.comps[i].name)
		return 0
	}
	return grown / give
}

// holds lets most tests be held, while a compartment of theirs warms or cools.
func (m *plainMaker) holds(*plainResult) {
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		for i := range s.Tests {
			t := &s.Tests[i]
			name := []string{t.Inside, t.Outside}[m.random.IntN(2)]
			if m.plan.Compartments[m.index(name)].Bores == nil || m.chance(0.3) {
				continue
			}
			t.Moment = []sequence.Moment{sequence.AtStart, sequence.AtEnd}[m.random.IntN(2)]
			t.Hold, t.Decline = "15m", m.between(0, 0.2)
			w := m.between(-3, 2)
			half := m.between(0, 0.5)
			t.Warms = map[string]unit.Band[unit.TemperatureDifference]{name: {Least: unit.TemperatureDifference(w - half), Nominal: unit.TemperatureDifference(w), Greatest: unit.TemperatureDifference(w + half)}}
		}
	}
}
