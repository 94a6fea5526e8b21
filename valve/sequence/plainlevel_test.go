package sequence_test

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// A column that has fallen has at its top what its fluid would make of it up to there:
// less than nothing. Whatever comes out below nothing is air.

// levelOf is where its fluid ends, in ft.
func (s *plainState) levelOf(i int) float64 {
	l := s.layers[i][0]
	return l.top - s.top[i]/l.gradient
}

// airGetsIn makes it a fault if a port is open above a level.
func (k *plainSolver) airGetsIn(s *plainState, i int) error {
	if !s.fallen[i] {
		return nil
	}
	for p, x := range k.well.ports {
		if s.open[p] && (x.a == i || x.b == i) && s.top[i]+s.head(i, x.depth) < -plainExact {
			return fmt.Errorf("air gets in at %q", x.name)
		}
	}
	return nil
}

// drain bleeds a compartment to nothing and lets its column fall.
func (w *plainWalk) drain(name string) error {
	i := w.comp(name)
	if !w.s.fallen[i] {
		if err := w.run(w.ramp(map[string]pressure{name: 0}), nil); err != nil {
			return err
		}
	}
	to, err := w.solver.carried(w.s, i)
	if err != nil {
		return err
	}
	if to >= w.s.applied[i] {
		return nil
	}
	w.s.fallen[i] = true
	return w.levelTo(i, to)
}

// carried is the pressure at the top of a compartment with which a formation carries
// its column.
func (k *plainSolver) carried(s *plainState, i int) (float64, error) {
	clear(k.seen)
	if err := k.body(s, i); err != nil {
		return 0, err
	}
	face := -1
	for _, m := range k.members {
		if m != i && s.surface[m] {
			return 0, fmt.Errorf("two surfaces")
		}
		if k.well.comps[m].formation >= 0 {
			if face >= 0 {
				return 0, fmt.Errorf("two formations")
			}
			face = m
		}
	}
	if face < 0 {
		return 0, fmt.Errorf("no formation is joined to %q", k.well.comps[i].name)
	}
	for _, m := range k.members {
		for _, l := range s.layers[m] {
			if l.name != s.layers[i][0].name {
				return 0, fmt.Errorf("more than one fluid")
			}
		}
	}
	f := k.well.forms[k.well.comps[face].formation]
	return f.pressure - s.head(face, f.depth) - k.offset[face], nil
}

// levelTo moves the level of a compartment, from depth to depth.
func (w *plainWalk) levelTo(i int, to float64) error {
	from := w.s.applied[i]
	var kinks []float64
	for _, d := range w.depths {
		if f := (-w.s.head(i, d) - from) / (to - from); f > 0 && f < 1 {
			kinks = append(kinks, f)
		}
	}
	slices.Sort(kinks)
	turned := w.turned
	err := w.run(func(x float64) { w.s.applied[i] = from*(1-x) + to*x }, kinks)
	if err == nil && w.turned != turned {
		err = fmt.Errorf("something opens or shuts while a level moves")
	}
	if bottom := w.comps[i].bottom; err == nil && w.s.levelOf(i) > bottom+1e-9 {
		err = fmt.Errorf("it falls out of its lower end")
	}
	return err
}

// fill brings a level back to the top.
func (w *plainWalk) fill(name string) error {
	i := w.comp(name)
	if !w.s.fallen[i] {
		return nil
	}
	err := w.levelTo(i, 0)
	w.s.fallen[i] = false
	return err
}

// filled fills columns before pressure is applied on them; those that stay at nothing
// stay as they are.
func (w *plainWalk) filled(ramp map[string]pressure) (map[string]pressure, error) {
	left := map[string]pressure{}
	for _, name := range sortedNames(ramp) {
		if w.s.fallen[w.comp(name)] {
			if ramp[name] == 0 {
				continue
			}
			if err := w.fill(name); err != nil {
				return nil, err
			}
		}
		left[name] = ramp[name]
	}
	return left, nil
}

func sortedNames(m map[string]pressure) []string {
	var all []string
	for name := range m {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}

// oneFluid puts one fluid into a well whose formations carry less of it, mostly, with
// more of its ways open.
func (m *plainMaker) oneFluid() {
	p := m.plan
	for i := range p.Compartments {
		c := &p.Compartments[i]
		if m.chance(0.95) {
			c.Fluid, c.Layers = p.Fluids[0].Name, nil
		}
	}
	for i := range p.Formations {
		f := &p.Formations[i]
		setPore(f, m.round(max(100, plainPore(*f)*m.between(0.5, 1))))
	}
	for i := range p.Ports {
		p.Ports[i].Open = p.Ports[i].Open || m.chance(0.5)
	}
}

// drains lets columns fall and fills them again.
func (m *plainMaker) drains() {
	low := map[string]bool{}
	if b := m.plan.Begin; b != nil {
		for name := range b.Levels {
			low[name] = true
		}
	}
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		for _, name := range []string{"tubing", "annulus"} {
			switch {
			case !low[name] && m.chance(0.5):
				s.Do = append(s.Do, sequence.Act{Drain: name})
				low[name] = true
			case low[name] && m.chance(0.3):
				s.Do = append(s.Do, sequence.Act{Fill: name})
				low[name] = false
			case low[name] && m.chance(0.2):
				s.Do = append(s.Do, sequence.Act{Drain: name}) // further, where something has opened
			}
			if low[name] {
				s.Displace = nil
				s.Shut = slices.DeleteFunc(slices.Clone(s.Shut), func(x string) bool { return x == name })
			}
			for _, r := range s.Ramps {
				switch {
				case low[name] && m.chance(0.6):
					delete(r, name)
				case r[name] > unit.Pressure(0):
					low[name] = false
				}
			}
		}
		s.Ramps = slices.DeleteFunc(s.Ramps, func(r map[string]pressure) bool { return len(r) == 0 })
	}
}

// beginsLow begins with levels that have fallen.
func (m *plainMaker) beginsLow() {
	m.begins()
	b := m.plan.Begin
	b.Levels = map[string]*sequence.StatedDepth{}
	for _, c := range m.plan.Compartments[:2] {
		if slices.Contains(b.ShutIn, c.Name) || !m.chance(0.6) {
			continue
		}
		delete(b.Applied, c.Name)
		b.Layers[c.Name] = []sequence.Layer{{Fluid: m.plan.Fluids[0].Name, ToMD: c.BottomMD}}
		share := m.between(0.02, 0.5)
		if m.chance(0.5) {
			b.Levels[c.Name] = &sequence.StatedDepth{Depth: unit.Exactly(c.BottomMD * unit.Length(share))}
			if m.chance(0.5) {
				b.Levels[c.Name].Depth = unit.Band[unit.Length]{Least: c.BottomMD * unit.Length(share*0.9), Nominal: c.BottomMD * unit.Length(share), Greatest: c.BottomMD * unit.Length(share*1.1)}
			}
		} else {
			b.Levels[c.Name] = &sequence.StatedDepth{Lacks: &sequence.Stated{Pressure: exactly(m.round(share * 8 * psiPerFootPpg * c.BottomMD.In(foot)))}}
		}
	}
	m.drains()
}

// shown is what gauges at surface show where a compartment is open.
func (w *plainWalk) shown() []float64 {
	all := slices.Clone(w.s.applied)
	for i := range all {
		if w.s.fallen[i] {
			all[i] = 0
		}
	}
	return all
}
