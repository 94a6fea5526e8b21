package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// place finds how far every place of the string has moved since it landed.
func (m *MadeUp) place(l *Loading, s Standing, c *Conditions) {
	l.BuckledShortening, l.Movement = 0, Movement{}
	for i := range l.segments {
		g := &l.segments[i]
		total := 0.0
		for k := g.from; k < g.to; k++ {
			sp, x := &m.spans[k], &l.spans[k]
			if g.lost {
				continue
			}
			if x.buckled = g.tight; !g.fitted || g.to-g.from > 1 {
				x.buckled = m.buckled(l.Nodes, sp.from, sp.to, 0).shortening
			}
			x.length = x.rest + sp.compliance*g.force + x.buckled
			m.account(g, sp, x, &s.landed[k])
			x.causes.buckling = x.buckled
			total += x.length - s.landed[k].length
			l.BuckledShortening += unit.Length(x.buckled)
			l.Movement = l.Movement.plus(x.causes.minus(s.landed[k].causes))
		}
		at := 0.0
		switch {
		case i == 0 && c.Top != AtHanger && m.fixedAt(g.lower), m.partedAt(g.upper) && m.fixedAt(g.lower):
			at = m.heldAt(l, s, c, g.lower) - total
		case g.lost:
			at = math.NaN()
		case m.partedAt(g.upper): // only lost ones are not held
		default:
			at = m.heldAt(l, s, c, g.upper)
		}
		if i == 0 {
			l.TopMoved = unit.Length(at)
		}
		g.top = at
		for k := g.from; k < g.to; k++ {
			at += l.spans[k].length - s.landed[k].length
			if k == g.to-1 && m.fixedAt(g.lower) {
				at = m.heldAt(l, s, c, g.lower) // without the sum's rounding
			}
			if k < len(m.marks) {
				m.put(l, c, k, at)
			}
			if k == g.to-1 && !g.lost && (k == len(m.spans)-1 || m.partedAt(g.lower)) {
				l.EndMoved = unit.Length(at)
			}
		}
		g.bottom = at
	}
	l.Held = l.EndMoved - l.TopMoved - l.Movement.Total()
}

// account adds a span's changes since landing to its segment's.
func (m *MadeUp) account(g *segment, sp *span, x, landed *spanLength) {
	now, then := &x.causes, &landed.causes
	d := totals{piston: now.piston - then.piston, ballooning: now.ballooning - then.ballooning, thermal: now.thermal - then.thermal, friction: now.friction - then.friction}
	g.change.piston += d.piston
	g.change.ballooning += d.ballooning
	g.change.thermal += d.thermal
	g.change.friction += d.friction
	d.buckling = x.buckled - landed.buckled
	weighed := x.rest - landed.rest - d.piston - d.ballooning - d.thermal - d.friction
	x.change, x.weighed, x.held = d, weighed, sp.compliance*g.force
	g.squeezed += d.buckling
	g.weighed += weighed
	g.compliance += sp.compliance
}

// put says where the part at a mark stands.
func (m *MadeUp) put(l *Loading, c *Conditions, i int, at float64) {
	k := &m.marks[i]
	lost := at != at
	if lost {
		at = 0
	}
	switch k.kind {
	case holdMark:
		l.Holds[k.index] = HoldLoad{Moved: unit.Length(at), Lost: lost}
	case sealMark:
		s := &m.seals[k.index]
		travel := unit.Length(at)
		if c.Around != nil && !lost {
			travel -= c.Around(s.MD)
		}
		x := SealLoad{Travel: travel, Engaged: max(0, s.Up+travel), ToShoulder: s.Down - travel, Lost: lost}
		if s.Length > 0 {
			x.Engaged = min(x.Engaged, s.Length)
		}
		if lost {
			x = SealLoad{Lost: true}
		}
		l.Seals[k.index] = x
	case hungMark:
		l.HungMoved[k.index] = unit.Length(at)
	case jointMark, plugMark:
	}
}

// loadParts fills in the loads on hanger, hook, held places, joints and seals.
func (m *MadeUp) loadParts(l *Loading, c *Conditions) {
	top := &l.Nodes[0]
	l.HangerLoad = top.True
	if c.Top == AtHanger {
		l.Lift = -l.HangerLoad
		if m.hangerArea > 0 {
			l.Lift += unit.Force(float64(top.Outside) * (m.hangerArea - m.topAo))
		}
	} else {
		l.Cap = unit.Force(m.cap(l, c))
		l.Reading = l.HangerLoad - l.Cap + unit.Force(m.block)
	}
	for i := range m.marks {
		k := &m.marks[i]
		a, b := &l.Nodes[k.element], &l.Nodes[k.element+1]
		step := float64(a.Effective - b.Effective)
		aoA, aoB := m.bars[a.Section].ao, m.bars[b.Section].ao
		switch k.kind {
		case holdMark:
			h := &l.Holds[k.index]
			if h.Lost {
				continue
			}
			h.Held = m.isEnd(l, i)
			h.WallAbove, h.WallBelow, h.EffectiveAbove, h.EffectiveBelow = a.True, b.True, a.Effective, b.Effective
			h.Above, h.Below = a.Outside, b.Outside
			if h.Held {
				h.Load = unit.Force(step + k.area*float64(b.Outside-a.Outside))
				if d := m.holds[k.index].Casing; d > 0 {
					h.Casing = h.Load + unit.Force(float64(b.Outside-a.Outside)*(disc(d)-k.area))
				}
			}
		case jointMark:
			j := JointLoad{Wall: a.True, Effective: a.Effective, Inside: a.Inside, Outside: a.Outside, Parted: m.isEnd(l, i)}
			if !j.Parted {
				j.Balance = jointBalance(a.Effective, a.Inside, a.Outside, k.area)
			}
			if l.Free && l.segments[0].lower == i && !l.segments[1].lost {
				j.OnRest = c.Reading - l.Reading
			}
			if l.spans[i].lost {
				j = JointLoad{Lost: true}
			}
			l.Joints[k.index] = j
		case sealMark:
			s := &l.Seals[k.index]
			if s.Lost {
				continue
			}
			s.Above, s.Below = a.Outside, b.Outside
			s.Ring = unit.Force(float64(b.Outside)*(k.area-aoB) - float64(a.Outside)*(k.area-aoA))
			s.Stands, s.Pulls = l.stops[k.index] == byLocator, l.stops[k.index] == byLatch
			if s.Stands || s.Pulls {
				s.Load = unit.Force(step + k.area*float64(b.Outside-a.Outside))
			}
		case hungMark, plugMark:
		}
	}
	l.Neutral = m.neutral(l)
}

// isEnd tells whether a mark ends a segment: it holds, or it has parted.
func (m *MadeUp) isEnd(l *Loading, mark int) bool {
	for i := range l.segments {
		if l.segments[i].lower == mark {
			return true
		}
	}
	return false
}

// neutral is the neutral point of what hangs from the top down to the uppermost
// place that holds, or the end: the lowest depth below which it is compressed.
func (m *MadeUp) neutral(l *Loading) unit.Length {
	_, to := m.reach(&l.segments[0])
	for i := to; i >= 0; i-- {
		if l.Nodes[i].Effective < 0 {
			return neutralDepth(l.Nodes[:i+1])
		}
	}
	return l.Nodes[to].MD
}

// jointBalance is the load on a joint.
func jointBalance(effective unit.Force, inside, outside unit.Pressure, area float64) unit.Force {
	return effective + unit.Force(float64(inside-outside)*area)
}
