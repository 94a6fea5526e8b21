package sequence_test

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// ratings puts limits of 1 psi on some walls; what a walk passes them by says
// how high they may be.
func (m *plainMaker) ratings() {
	p := m.plan
	for k := range m.random.IntN(4) {
		in := p.Compartments[m.random.IntN(len(p.Compartments))]
		out := p.Compartments[m.random.IntN(len(p.Compartments))]
		r := sequence.Rating{Name: fmt.Sprintf("wall %d", k), Inside: in.Name, Outside: out.Name}
		top, bottom := max(in.TopMD, out.TopMD).In(foot), min(in.BottomMD, out.BottomMD).In(foot)
		if in.Name == out.Name || top >= bottom || m.chance(0.2) {
			r.Outside, r.Background = "", m.fluid()
			top, bottom = in.TopMD.In(foot), in.BottomMD.In(foot)
		}
		a, b := math.Round(m.between(top, bottom)), math.Round(m.between(top, bottom))
		r.FromMD, r.ToMD = feet(min(a, b)), feet(max(a, b))
		if m.chance(0.6) {
			r.Burst = exactly(1)
		} else {
			r.Collapse = exactly(1)
		}
		p.Ratings = append(p.Ratings, r)
	}
}

// barriers makes barriers of every kind before the formations.
func (m *plainMaker) barriers() {
	p := m.plan
	for _, f := range p.Formations {
		if m.chance(0.4) {
			continue
		}
		for range 1 + m.random.IntN(3) {
			b := sequence.Barrier{Name: fmt.Sprintf("barrier %d", len(p.Barriers)), Formation: f.Name}
			switch m.random.IntN(4) {
			case 0:
				if len(p.Ports) > 0 {
					b.Port = p.Ports[m.random.IntN(len(p.Ports))].Name
				}
			case 1:
				d := p.Devices[m.random.IntN(len(p.Devices))]
				b.Action = d.Name + ": " + d.Actions[0].Name
				if len(d.Actions) > 1 {
					b.Until = d.Name + ": " + d.Actions[1].Name
				}
			case 2:
				for _, c := range p.Compartments {
					if c.TopMD <= f.MD && f.MD <= c.BottomMD && c.Formation != f.Name {
						b.Column = c.Name
					}
				}
			}
			if m.chance(0.3) {
				d := p.Devices[m.random.IntN(len(p.Devices))]
				b.Until = d.Name + ": " + d.Actions[m.random.IntN(len(d.Actions))].Name
			}
			p.Barriers = append(p.Barriers, b)
		}
	}
}

// tests asks for differentials and balances that a walk then fills in.
func (m *plainMaker) tests() {
	p := m.plan
	for k := range p.Steps {
		s := &p.Steps[k]
		if len(p.Barriers) > 0 && m.chance(0.25) {
			d := p.Devices[m.random.IntN(len(p.Devices))]
			if a := d.Actions[0]; a.Outside != "" {
				t := sequence.Test{Barrier: p.Barriers[0].Name, Side: "below", Inside: a.Inside, Outside: a.Outside, MD: d.MD,
					Differential: unit.Exactly(pounds(1))}
				if m.chance(0.5) {
					t.Moment = []sequence.Moment{sequence.AtStart, sequence.AtEnd}[m.random.IntN(2)]
				}
				s.Tests = append(s.Tests, t)
			}
		}
		if len(p.Formations) > 0 && m.chance(0.2) {
			f := p.Formations[m.random.IntN(len(p.Formations))]
			for _, c := range p.Compartments {
				if c.TopMD <= f.MD && f.MD <= c.BottomMD && c.Formation != f.Name {
					s.Balance = append(s.Balance, sequence.Balance{Compartment: c.Name, Formation: f.Name})
					break
				}
			}
		}
	}
}

// about is a band around what a walk finds; now and then it is beside it.
func (m *plainMaker) about(x float64) unit.Band[pressure] {
	half := max(15, math.Abs(x)) * (0.001 + m.width*m.between(0.1, 3))
	if m.chance(0.05) {
		x += 1.5 * half
	}
	return unit.Band[pressure]{Least: pounds(x - half), Nominal: pounds(x), Greatest: pounds(x + half)}
}

// widen puts bands on the sharp plan. Some plans are widened until a few draws
// fail, and a little back: these lie at the edge.
func (m *plainMaker) widen() *sequence.Plan {
	seed := m.random.Uint64()
	factor := 1.0
	if m.chance(0.45) && plainWalkOf(m.plan, 2, nil).ok() {
		least, most := 1e-3, 40.0
		for range 6 {
			middle := math.Sqrt(least * most)
			if m.survives(m.widened(seed, middle), 10) {
				least = middle
			} else {
				most = middle
			}
		}
		factor = least * m.between(0.8, 1.5)
	}
	p := m.widened(seed, factor)
	if touched := m.touch(p); m.chance(0.15) && sound(touched) {
		return touched
	}
	return p
}

func (m *plainMaker) survives(p *sequence.Plan, draws int) bool {
	for k := range draws {
		if !plainWalkOf(drawValues(p, m.random, k*2), 2, nil).ok() {
			return false
		}
	}
	return true
}
