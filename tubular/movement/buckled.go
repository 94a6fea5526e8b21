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

// bend fills in a node's buckling, contact and bending. A node belongs to the
// element above it, the first to the one below.
func (l *Landed) bend(c *Case, i int) {
	n, bar := &c.Nodes[i], &l.bars[c.Nodes[i].Section]
	k := i - 1
	if i == 0 || c.Nodes[k].Section != n.Section {
		k = i
	}
	e := &l.elements[k]
	f, ei := -float64(n.Effective), bar.e*bar.i
	wc := contact(float64(n.Weight)*l.points[i].sin, e.build, e.turn, f)
	fp := 0.0
	if bar.r > 0 {
		fp = onset(ei, bar.r, wc)
		n.Mode = mode(f, fp, l.ratio)
	}
	n.Onset = unit.Force(fp)
	n.Contact, n.Curvature = unit.WeightPerLength(wc), unit.Curvature(e.curvature)
	switch n.Mode {
	case Helical:
		n.Contact = unit.WeightPerLength(max(wc, bar.r*f*f/(4*ei)))
		n.Curvature += unit.Curvature(bar.r * f / (2 * ei))
	case Sinusoidal:
		n.Curvature += unit.Curvature(bar.r * sinusoidalTurning * sinusoidalTurning / (2 * ei) * shape(f, fp))
	}
	n.Bending = unit.Pressure(bar.e * bar.od / 2 * float64(n.Curvature))
}

// measure adds the buckled lengths of element i.
func (l *Landed) measure(c *Case, i int) {
	a, b, e := &c.Nodes[i], &c.Nodes[i+1], &l.elements[i]
	if a.Section != b.Section || l.bars[a.Section].r == 0 {
		return
	}
	fa, fb := -float64(a.Effective), -float64(b.Effective)
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
