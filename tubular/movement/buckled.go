package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// buckled returns the change of length by buckling with an axial force added
// at the lower end, and so everywhere: never positive.
func (l *Landed) buckled(c *Case, force float64) float64 {
	sum := 0.0
	for i := range l.elements {
		a, b, e := &c.Nodes[i], &c.Nodes[i+1], &l.elements[i]
		if a.Section != b.Section {
			continue
		}
		fa, fb := -float64(a.Effective)-force, -float64(b.Effective)-force
		if fa <= 0 && fb <= 0 {
			continue
		}
		bar := &l.bars[a.Section]
		ei := bar.e * bar.i
		pa, pb := l.onsets(c, i, fa, fb)
		sum -= bar.r * bar.r / (4 * ei) * equivalentLoad(fa, fb, pa, pb, e.length, l.ratio)
	}
	return sum
}

// onsets are the sinusoidal loads at the ends of element i under compressions
// fa and fb. Curvature is the element's, weight and inclination the node's.
func (l *Landed) onsets(c *Case, i int, fa, fb float64) (pa, pb float64) {
	a, b, e := &c.Nodes[i], &c.Nodes[i+1], &l.elements[i]
	bar := &l.bars[a.Section]
	ga, gb := float64(a.Weight)*l.points[i].sin, float64(b.Weight)*l.points[i+1].sin
	if ga == 0 && gb == 0 && e.build == 0 && e.turn == 0 {
		return 0, 0
	}
	if bar.r == 0 {
		return math.Inf(1), math.Inf(1) // no room to buckle
	}
	ei := bar.e * bar.i
	return onset(ei, bar.r, contact(ga, e.build, e.turn, fa)), onset(ei, bar.r, contact(gb, e.build, e.turn, fb))
}

// finish adds the packer's force to the nodes and fills in what follows.
func (l *Landed) finish(c *Case) {
	nodes := c.Nodes
	for i := range nodes {
		nodes[i].True += c.PackerForce
		nodes[i].Effective += c.PackerForce
	}
	c.BuckledLength, c.HelicalLength, c.Governing = 0, 0, Governing{}
	for i := range nodes {
		l.bend(c, i)
		l.use(c, i)
	}
	for i := range l.elements {
		l.measure(c, i)
	}
	last := len(nodes) - 1
	c.TrueForce, c.EffectiveForce, c.HangerLoad = nodes[last].True, nodes[last].Effective, nodes[0].True
	c.Neutral = neutralDepth(nodes)
}

// elementOf is the element that a node belongs to: the one above it, for the
// first node of a section the one below.
func (l *Landed) elementOf(c *Case, i int) *element {
	if i == 0 || c.Nodes[i-1].Section != c.Nodes[i].Section {
		return &l.elements[i]
	}
	return &l.elements[i-1]
}

// bend fills in a node's buckling, contact and bending.
func (l *Landed) bend(c *Case, i int) {
	n, bar, e := &c.Nodes[i], &l.bars[c.Nodes[i].Section], l.elementOf(c, i)
	x := lie(-float64(n.Effective), bar.e*bar.i, bar.r, float64(n.Weight)*l.points[i].sin, e, l.ratio)
	n.Onset, n.Mode, n.Contact = unit.Force(x.onset), x.mode, unit.WeightPerLength(x.contact)
	n.Curvature = unit.Curvature(e.curvature + x.curvature)
	n.Bending = unit.Pressure(bar.e * bar.od / 2 * float64(n.Curvature))
}

// measure adds the buckled lengths of element i.
func (l *Landed) measure(c *Case, i int) {
	a, b, e := &c.Nodes[i], &c.Nodes[i+1], &l.elements[i]
	if a.Section != b.Section || l.bars[a.Section].r == 0 {
		return
	}
	fa, fb := -float64(a.Effective), -float64(b.Effective)
	if fa <= 0 && fb <= 0 {
		return
	}
	pa, pb := l.onsets(c, i, fa, fb)
	c.BuckledLength += unit.Length(e.length * positiveShare(fa-pa, fb-pb))
	c.HelicalLength += unit.Length(e.length * positiveShare(fa-l.ratio*pa, fb-l.ratio*pb))
}

// positiveShare is the part of a length on which a linear function is positive.
func positiveShare(a, b float64) float64 {
	switch {
	case a > 0 && b > 0:
		return 1
	case a <= 0 && b <= 0:
		return 0
	case a > 0:
		return a / (a - b)
	}
	return b / (b - a)
}

// neutralDepth finds the lowest depth at which the effective force is zero.
func neutralDepth(nodes []Node) unit.Length {
	last := len(nodes) - 1
	if nodes[last].Effective >= 0 {
		return nodes[last].MD
	}
	for i := last - 1; i >= 0; i-- {
		a, b := &nodes[i], &nodes[i+1]
		if a.Effective >= 0 {
			return mix(b.MD, a.MD, float64(b.Effective/(b.Effective-a.Effective)))
		}
	}
	return nodes[0].MD
}
