package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// squeeze is what buckling does to the string's length under an axial force
// added all along.
type squeeze struct {
	shortening float64 // change of length: never positive
	slope      float64 // of it over the force; NaN where something buckles that has a critical load
}

// buckled is that of the elements from one to before another.
func (l *line) buckled(nodes []Node, from, to int, force float64) squeeze {
	var s squeeze
	upright := true
	fb := -float64(nodes[from].Effective) - force
	for i := from; i < to; i++ {
		e := &l.elements[i]
		fa := fb
		fb = -float64(nodes[i+1].Effective) - force
		if fa <= 0 && fb <= 0 || e.length == 0 {
			continue
		}
		bar := &l.bars[e.section]
		give := bar.r * bar.helix * e.length
		if e.upright {
			s.shortening -= give * positivePart(fa, fb)
			s.slope += give * positiveShare(fa, fb)
			continue
		}
		if bar.r == 0 {
			continue
		}
		upright = false
		pa, pb := l.onsets(nodes, i, fa, fb)
		s.shortening -= give * equivalentLoad(fa, fb, pa, pb, l.ratio)
	}
	if !upright {
		s.slope = math.NaN()
	}
	return s
}

// onsets are the sinusoidal loads at the ends of element i under compressions
// fa and fb. Curvature is the element's, weight and inclination the node's. There
// must be clearance.
func (l *line) onsets(nodes []Node, i int, fa, fb float64) (pa, pb float64) {
	e := &l.elements[i]
	hole := &l.bars[e.section].lateral
	return hole.onset(contact(l.across(nodes, i), e.build, e.turn, fa)), hole.onset(contact(l.across(nodes, i+1), e.build, e.turn, fb))
}

// across is the weight across the hole at node i.
func (l *line) across(nodes []Node, i int) float64 { return float64(nodes[i].Weight) * l.points[i].sin }

// finish adds the packer's force to the nodes and fills in what follows.
func (l *Landed) finish(c *Case) error {
	nodes := c.Nodes
	c.BuckledLength, c.HelicalLength, c.Governing = 0, 0, Governing{}
	sum := 0.0
	for i := range nodes {
		n, e := &nodes[i], l.elementOf(i)
		n.True += c.PackerForce
		n.Effective += c.PackerForce
		l.bend(n, e, l.across(nodes, i))
		l.use(c, n)
		if i > 0 && e == &l.elements[i-1] {
			b, h := l.measure(nodes, i-1)
			c.BuckledLength += b
			c.HelicalLength += h
		}
		sum += float64(n.True) + float64(n.Effective) + float64(n.Contact) + float64(n.Bending) + float64(n.Onset) +
			n.Usage.Burst + n.Usage.Collapse + n.Usage.Axial + n.Usage.Triaxial
	}
	last := len(nodes) - 1
	c.TrueForce, c.EffectiveForce, c.HangerLoad = nodes[last].True, nodes[last].Effective, nodes[0].True
	c.Neutral = neutralDepth(nodes)
	if !isFinite(sum) {
		return ErrTooLarge
	}
	return bounded(c.Movement, c.SlackOff, c.SealMovement, c.TrueForce, c.EffectiveForce)
}

// elementOf is the element that node i belongs to: the one above it, for the
// first node of a section the one below.
func (l *line) elementOf(i int) *element {
	if i == 0 || l.elements[i-1].length == 0 {
		return &l.elements[i]
	}
	return &l.elements[i-1]
}

// bend fills in a node's buckling, contact and bending under a weight g across
// the hole.
func (l *line) bend(n *Node, e *element, g float64) {
	bar := &l.bars[n.Section]
	var x lay
	bar.lie(&x, -float64(n.Effective), g, e, l.ratio)
	n.Onset, n.Mode, n.Contact = unit.Force(x.onset), x.mode, unit.WeightPerLength(x.contact)
	n.Curvature = unit.Curvature(e.curvature + x.curvature)
	n.Bending = unit.Pressure(bar.fibre * float64(n.Curvature))
}

// measure returns how much of element i, whose lower node is done, is buckled in
// any way and in a helix.
func (l *line) measure(nodes []Node, i int) (buckled, helical unit.Length) {
	e := &l.elements[i]
	fa, fb := -float64(nodes[i].Effective), -float64(nodes[i+1].Effective)
	if fa <= 0 && fb <= 0 || l.bars[e.section].r == 0 {
		return 0, 0
	}
	hole := &l.bars[e.section].lateral
	pa, pb := hole.onset(contact(l.across(nodes, i), e.build, e.turn, fa)), float64(nodes[i+1].Onset)
	return unit.Length(e.length * positiveShare(fa-pa, fb-pb)), unit.Length(e.length * positiveShare(fa-l.ratio*pa, fb-l.ratio*pb))
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
