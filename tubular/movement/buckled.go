package movement

import "completion.example/hydrostatics/unit"

// squeeze is what buckling does to the string's length under an axial force
// added all along.
type squeeze struct {
	shortening float64 // change of length: never positive
	slope      float64 // of it over the force: never negative
}

// buckled is that of the elements from one to before another.
func (l *line) buckled(nodes []Node, from, to int, force float64) squeeze {
	var s squeeze
	fb := -float64(nodes[from].Effective) - force
	for i := from; i < to; i++ {
		e := &l.elements[i]
		fa := fb
		fb = -float64(nodes[i+1].Effective) - force
		if fa <= 0 && fb <= 0 {
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
		at := ends{fa: fa, fb: fb}
		l.onsets(nodes, i, &at)
		load, slope := at.equivalentLoad(l.ratio)
		s.shortening -= give * load
		s.slope += give * slope
	}
	return s
}

// onsets fills in the sinusoidal loads at the ends of element i under its
// compressions. Curvature is the element's, weight and inclination the node's. There
// must be clearance.
func (l *line) onsets(nodes []Node, i int, at *ends) {
	e := &l.elements[i]
	hole := &l.bars[e.section].lateral
	ga, gb := l.across(nodes, i), l.across(nodes, i+1)
	wa, wb := contact(ga, e.build, e.turn, at.fa), contact(gb, e.build, e.turn, at.fb)
	at.pa, at.pb = hole.onset(wa), hole.onset(wb)
	if e.curvature != 0 {
		at.qa, at.qb = e.rate(at.pa, wa, ga, at.fa), e.rate(at.pb, wb, gb, at.fb)
	}
}

// rate is how the sinusoidal load p changes with the compression f, through the
// contact force wc that a weight g across a curved hole makes: p² goes with wc.
func (e *element) rate(p, wc, g, f float64) float64 {
	if wc == 0 {
		return 0
	}
	slope := ((g+f*e.build)*e.build + f*e.turn*e.turn) / wc
	return p / (2 * wc) * slope
}

// across is the weight across the hole at node i.
func (l *line) across(nodes []Node, i int) float64 { return float64(nodes[i].Weight) * l.points[i].sin }

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
