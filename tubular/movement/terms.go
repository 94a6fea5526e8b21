package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// Terms add up the wall force at the top of a string from that at the lower end of
// what the top carries: the uppermost place that holds, a parted joint, or the
// lower end. Tension positive; the sum is exact, term by term.
type Terms struct {
	From      unit.Length `json:"from"`      // measured depth of that end
	End       unit.Force  `json:"end"`       // wall force just above it
	Weight    unit.Force  `json:"weight"`    // in air, of the string above
	Shoulders unit.Force  `json:"shoulders"` // of the pressures on changes of section
	Rings     unit.Force  `json:"rings"`     // of the pressures on the rings of seals, and of places that don't hold
	Plugs     unit.Force  `json:"plugs"`     // of the pressures on closed plugs
	Hung      unit.Force  `json:"hung"`      // of what hangs on the string
	Flow      unit.Force  `json:"flow"`      // of fluid that flows
	Seals     unit.Force  `json:"seals"`     // friction of the seals
	Drag      unit.Force  `json:"drag"`      // of the hole
	Top       unit.Force  `json:"top"`       // their sum: HangerLoad
}

// Terms returns the terms of a loading's hanger load.
//
//	hanger load = end + Σ w·ΔTVD + Σ Δp·ΔA + friction
//
// Of a loading that this string didn't make, end and sum are NaN.
//
// Source: balance of forces.
func (m *MadeUp) Terms(l *Loading) Terms {
	if m.loaded(l) != nil {
		return Terms{End: unit.Force(math.NaN()), Top: unit.Force(math.NaN())}
	}
	from, to := m.reach(&l.segments[0])
	t := Terms{From: l.Nodes[to].MD, End: l.Nodes[to].True, Top: l.Nodes[0].True}
	c := &l.conditions
	mark := l.segments[0].lower - 1
	for i := to - 1; i >= from; i-- {
		a, b, e := &l.Nodes[i], &l.Nodes[i+1], &m.elements[i]
		bar := &m.bars[a.Section]
		t.Drag += m.dragged(l, c, i) - m.dragged(l, c, i+1)
		if mark >= 0 && m.marks[mark].element == i {
			m.addStep(&t, c, &m.marks[mark], a, b)
			mark--
			continue
		}
		if a.Section != b.Section {
			lower := &m.bars[b.Section]
			t.Shoulders += unit.Force(float64(a.Inside)*(bar.ai-lower.ai) - float64(a.Outside)*(bar.ao-lower.ao))
			continue
		}
		t.Weight += unit.Force(bar.ws * e.drop)
		t.Flow += unit.Force(m.lost(c.Friction, i)*bar.ai + m.lost(c.OutsideFriction, i)*bar.outerDrag)
	}
	return t
}

// addStep adds what steps at a mark that ends no segment.
func (m *MadeUp) addStep(t *Terms, c *Conditions, k *mark, a, b *Node) {
	ai, ao := m.bars[a.Section].ai, m.bars[a.Section].ao
	switch k.kind {
	case sealMark, holdMark:
		t.Rings -= unit.Force(float64(b.Outside)*(k.area-ao) - float64(a.Outside)*(k.area-ao))
		if k.kind == sealMark {
			t.Seals += m.sealFriction(c, k.index)
		}
	case plugMark:
		t.Plugs += unit.Force(float64(a.Inside-b.Inside) * ai)
	case hungMark:
		if len(c.Hung) > 0 {
			t.Hung += c.Hung[k.index]
		}
	case jointMark:
	}
}
