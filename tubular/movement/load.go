package movement

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Load computes the string as it stands in conditions.
func (m *MadeUp) Load(s Standing, c Conditions) (Loading, error) {
	var l Loading
	err := m.LoadInto(&l, s, c)
	return l, err
}

// LoadInto is Load into a loading that is used again: it then allocates nothing.
// After an error the loading holds nothing of use.
func (m *MadeUp) LoadInto(l *Loading, s Standing, c Conditions) error { return m.load(l, s, c, true) }

// load takes locators and latches into account or, at landing, which is where
// movements count from, doesn't.
func (m *MadeUp) load(l *Loading, s Standing, c Conditions, stops bool) error {
	if err := m.checkStanding(s); err != nil {
		return err
	}
	if l == nil {
		return errNoLoading
	}
	if (c.Temperature != nil) != s.thermal {
		return fault.NewIn(scope, "Temperature", "is given in one of the conditions only; must be in that of landing and these, or in none")
	}
	if err := m.checkConditions(&c); err != nil {
		return err
	}
	m.empty(l)
	l.Top, l.conditions = c.Top, c
	if err := m.ask(&c, l.Nodes); err != nil {
		return err
	}
	m.weighAll(&c, l.Nodes)
	if err := m.settle(l, s, &c, stops); err != nil {
		return err
	}
	if err := m.finishAll(l); err != nil {
		return err
	}
	if !allFinite(float64(l.HangerLoad), float64(l.TopMoved), float64(l.EndMoved)) {
		return ErrTooLarge
	}
	return nil
}

func resized[T any](s []T, n int) []T { return slices.Grow(s[:0], n)[:n] }

func (m *MadeUp) empty(l *Loading) {
	stops := resized(l.stops, len(m.seals))
	clear(stops)
	*l = Loading{
		stops: stops,
		Nodes: resized(l.Nodes, len(m.points)), spans: resized(l.spans, len(m.spans)), segments: l.segments[:0],
		Holds: resized(l.Holds, len(m.holds)), Joints: resized(l.Joints, len(m.joints)), Seals: resized(l.Seals, len(m.seals)), HungMoved: resized(l.HungMoved, m.hung),
	}
}

// segment cuts the string where it is held and where it has parted.
func (m *MadeUp) segment(l *Loading, s Standing) {
	l.segments, l.Lost = l.segments[:0], 0
	g := segment{upper: -1}
	for i := range m.marks {
		k := &m.marks[i]
		if !(k.kind == holdMark && s.Holds(k.index) || k.kind == jointMark && s.parted[k.index] || k.kind == sealMark && l.stops[k.index] != notStopped) {
			continue
		}
		g.lower, g.to = i, i+1
		l.segments = append(l.segments, g)
		g = segment{upper: i, from: i + 1}
	}
	g.lower, g.to = len(m.marks), len(m.spans)
	l.segments = append(l.segments, g)
	// Of what is below a parted joint only what is held is there.
	for i := range l.segments {
		g := &l.segments[i]
		g.lost = m.partedAt(g.upper) && !m.fixedAt(g.lower)
		if g.lost && l.Lost == 0 {
			l.Lost = unit.Length(m.marks[g.upper].md)
		}
		for k := g.from; k < g.to; k++ {
			l.spans[k] = spanLength{lost: g.lost}
		}
	}
}

// fixedAt tells whether a mark that ends a segment holds it.
func (m *MadeUp) fixedAt(mark int) bool {
	return mark >= 0 && mark < len(m.marks) && m.marks[mark].kind != jointMark
}

func (m *MadeUp) partedAt(mark int) bool {
	return mark >= 0 && mark < len(m.marks) && m.marks[mark].kind == jointMark
}

// reach is the elements of a segment, without the last.
func (m *MadeUp) reach(g *segment) (from, to int) { return m.spans[g.from].from, m.spans[g.to-1].to }

// rest marches up from the lower end with nothing held: forces and lengths. The
// effective force steps at seals and held places by their area times the
// differential, and at nothing else; at the end of what a parted joint left it is
// what puts no load on the joint.
func (m *MadeUp) rest(l *Loading, s Standing, c *Conditions) {
	nodes := l.Nodes
	last := len(nodes) - 1
	bar := &m.bars[nodes[last].Section]
	nodes[last].True = unit.Force(float64(nodes[last].Inside)*bar.ai - float64(nodes[last].Outside)*bar.ao)
	nodes[last].Effective = 0
	m.spread(l, c)
	first := &l.segments[0]
	reach := len(m.elements)
	if first.lower < len(m.marks) {
		reach = m.marks[first.lower].element
	}
	weight, flow, flows := 0.0, 0.0, c.flows() // below, in this body
	sp := len(m.spans) - 1
	var sum spanLength // of this span
	for i := last - 1; i >= 0; i-- {
		a, b, e := &nodes[i], &nodes[i+1], &m.elements[i]
		bar := &m.bars[a.Section]
		if sp > 0 && m.marks[sp-1].element == i {
			k := &m.marks[sp-1]
			step := 0.0
			switch k.kind {
			case sealMark:
				step = -k.area * float64(b.Outside-a.Outside)
				if c.Sliding != NotSliding && (c.Top == AtHanger || i < reach) {
					step += float64(m.sealFriction(c, k.index))
				}
			case holdMark:
				step = -k.area * float64(b.Outside-a.Outside)
			case hungMark:
				if len(c.Hung) > 0 {
					step = float64(c.Hung[k.index])
					weight += step
				}
			case jointMark:
				if s.parted[k.index] {
					step = -k.area*float64(a.Inside-a.Outside) - float64(b.Effective)
					weight, flow = 0, 0
				}
			case plugMark:
			}
			a.Effective = b.Effective + unit.Force(step)
			a.True = unit.Force(float64(a.Effective) + float64(a.Inside)*bar.ai - float64(a.Outside)*bar.ao)
			l.spans[sp].rest, l.spans[sp].causes = sum.rest, sum.causes
			sum = spanLength{}
			sp--
			continue
		}
		if a.Section != b.Section {
			a.Effective = b.Effective
			a.True = unit.Force(float64(a.Effective) + float64(a.Inside)*bar.ai - float64(a.Outside)*bar.ao)
			continue
		}
		give := e.length * bar.perEA
		hangs, grown, drag := bar.ws*e.drop, 0.0, 0.0
		if flows {
			grown = m.lost(c.Friction, i)*bar.ai + m.lost(c.OutsideFriction, i)*bar.outerDrag
		}
		if c.Drag != 0 {
			drag = m.dragMid(l, c, i)
		}
		a.True = b.True + unit.Force(hangs+grown)
		a.Effective = bar.effective(a)
		balloon := -bar.nu * give * (bar.ai*float64(a.Inside+b.Inside) - bar.ao*float64(a.Outside+b.Outside))
		thermal := bar.alpha * e.length * (a.Temperature.Kelvin() + b.Temperature.Kelvin()) / 2
		sum.rest += give*(float64(a.True+b.True)/2+drag) + balloon + thermal
		sum.causes.piston += give * (float64(b.True) - weight - flow)
		sum.causes.friction += give * (flow + grown/2)
		sum.causes.ballooning += balloon
		sum.causes.thermal += thermal
		weight += hangs
		flow += grown
	}
	l.spans[sp].rest, l.spans[sp].causes = sum.rest, sum.causes
	m.addDrag(l, c)
}

// holdAll finds the force in every segment and adds it to its nodes.
func (m *MadeUp) holdAll(l *Loading, s Standing, c *Conditions) error {
	for i := range l.segments {
		g := &l.segments[i]
		from, to := m.reach(g)
		switch {
		case g.lost:
			for k := from; k <= to; k++ {
				l.Nodes[k].True, l.Nodes[k].Effective = 0, 0
			}
			continue
		case !m.fixedAt(g.lower):
			l.Free = i == 0 && c.Top != AtHanger || l.Free
		case i == 0 && c.Top != AtHanger:
			g.force = float64(c.Reading) - m.block + m.cap(l, c) - float64(l.Nodes[0].True)
		case m.partedAt(g.upper):
			k := &m.marks[g.upper]
			b := &l.Nodes[k.element+1]
			g.force = -k.area*float64(b.Inside-b.Outside) - float64(b.Effective)
		default:
			if err := m.fit(l, s, c, g); err != nil {
				return err
			}
		}
		for k := from; k <= to && g.force != 0; k++ {
			l.Nodes[k].True += unit.Force(g.force)
			l.Nodes[k].Effective += unit.Force(g.force)
		}
	}
	return nil
}

// cap is what the pressure inside at the top lifts on the hook.
func (m *MadeUp) cap(l *Loading, c *Conditions) float64 {
	if c.Top != OnHookClosed {
		return 0
	}
	return float64(l.Nodes[0].Inside) * m.topAi
}

// fit finds the force that keeps a segment between its two ends.
func (m *MadeUp) fit(l *Loading, s Standing, c *Conditions, g *segment) error {
	from, to := m.reach(g)
	compliance, long := 0.0, m.heldAt(l, s, c, g.upper)-m.heldAt(l, s, c, g.lower)
	for i := g.from; i < g.to; i++ {
		compliance += m.spans[i].compliance
		long += l.spans[i].rest - s.landed[i].length
	}
	nodes := l.Nodes
	at, squeezed := 0.0, m.buckled(nodes, from, to, 0)
	g.loose = squeezed.shortening
	change := func(f float64) (length, slope float64) {
		if f != at {
			at, squeezed = f, m.buckled(nodes, from, to, f)
		}
		return long + compliance*f + squeezed.shortening, compliance + squeezed.slope
	}
	force, _, err := hold(long+squeezed.shortening, change, 0, 0, compliance)
	if err != nil {
		return err
	}
	rest, _ := change(force)
	if force != 0 && math.Abs(rest) > 1e-9*m.bars[len(m.bars)-1].bottom {
		l.Snapping = true
	}
	g.force, g.fitted, g.tight = force, true, squeezed.shortening
	return nil
}

// heldAt is how far a held mark, or the hanger, has moved since landing.
func (m *MadeUp) heldAt(l *Loading, s Standing, c *Conditions, mark int) float64 {
	x, md := s.top, m.hanger
	if mark >= 0 {
		k := &m.marks[mark]
		md = unit.Length(k.md)
		if k.kind == sealMark {
			x = float64(m.seals[k.index].Down)
			if l.stops[k.index] == byLatch {
				x = -float64(m.seals[k.index].Up)
			}
		} else {
			x = s.held[k.index]
		}
	}
	if c.Around != nil {
		x += float64(c.Around(md))
	}
	return x
}
