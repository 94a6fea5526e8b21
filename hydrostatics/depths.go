package hydrostatics

import (
	"math"
	"slices"
	"sort"

	"completion.example/hydrostatics/unit"
)

// MDs returns every measured depth at which the path passes a true vertical
// depth, least first: none if it never does, several where the hole rises. Of
// a level interval at just that depth it returns both ends.
//
// On an arc it solves, with x = tan(θ/2), β the bend and l the length,
//
//	(2·nv − c)·x² + 2·tv·x − c = 0,  c = (h − h1)·β/l
//
// tv and nv are the vertical parts of the tangent and the normal where the arc
// starts, h − h1 the depth below that.
//
// Range: any depth; none for one that the path never passes, for NaN and for a
// nil path.
//
// Source: the arc of minimum curvature, see Path.
func (p *Path) MDs(tvd unit.Length) []unit.Length {
	h := float64(tvd)
	if p == nil || len(p.nodes) < 2 || math.IsNaN(h) {
		return nil
	}
	near := 1e-12 * (math.Abs(h) + p.nodes[len(p.nodes)-1].md)
	first, last := 0, len(p.nodes)-2
	if p.falling { // then the arcs are in order of depth too
		first = sort.Search(last, func(i int) bool { return p.nodes[i+1].pos.v >= h-near })
	}
	var mds []unit.Length
	for i := first; i <= last; i++ {
		n := &p.nodes[i]
		if high, low := verticalReach(n, &p.nodes[i+1]); h < low-near || h > high+near {
			if p.falling {
				break
			}
			continue
		}
		for _, s := range p.arc(i).reach(h-n.pos.v, near) {
			if !math.IsNaN(s) {
				mds = append(mds, unit.Length(n.md+s))
			}
		}
	}
	slices.Sort(mds)
	// A station belongs to two arcs, and a turning point counts once.
	same := unit.Length(1e-9 * (1 + p.nodes[len(p.nodes)-1].md))
	return slices.CompactFunc(mds, func(a, b unit.Length) bool { return math.Abs(float64(a-b)) <= float64(same) })
}

// reach returns the lengths along the arc at which it is h below its start,
// NaN where there is none; near is what rounding may have cost h.
func (a arc) reach(h, near float64) (s [2]float64) {
	s = [2]float64{math.NaN(), math.NaN()}
	slack := 1e-9 * a.length
	if (math.Abs(a.along.v)+math.Abs(a.aside.v))*a.length < near { // level all along
		if math.Abs(h) <= near {
			return [2]float64{0, a.length}
		}
		return s
	}
	if a.bend == 0 {
		s[0] = a.inside(h/a.along.v, slack)
		return s
	}
	c := h * a.bend / a.length
	tv, nv := a.along.v, a.aside.v
	q := tv*tv + c*(2*nv-c)
	// Rounding may put a turning point's double root just below zero.
	root := tv + math.Copysign(math.Sqrt(math.Max(q, 0)), tv)
	for i, x := range [2]float64{c / root, -root / (2*nv - c)} {
		s[i] = a.inside(2*math.Atan(x)/a.bend*a.length, slack)
	}
	return s
}

// inside carries s into 0 to length if it misses by no more than slack.
func (a arc) inside(s, slack float64) float64 {
	if !(s >= -slack && s <= a.length+slack) {
		return math.NaN()
	}
	return min(max(s, 0), a.length)
}

// verticalReach returns the greatest and the least depth on the arc from one
// node to the next. Only between a falling and a rising tangent the hole turns
// on the way: once, where tan θ = −tv/nv.
func verticalReach(from, to *node) (high, low float64) {
	high, low = math.Max(from.pos.v, to.pos.v), math.Min(from.pos.v, to.pos.v)
	if (from.dir.v < 0) == (to.dir.v < 0) {
		return high, low
	}
	a := between(from, to)
	if s := a.turn(); s > 0 {
		bend, _ := a.at(s)
		high, low = math.Max(high, from.pos.v+bend.v), math.Min(low, from.pos.v+bend.v)
	}
	return high, low
}

// turn returns the length after which the arc is level, zero if it never is
// between its ends: a straight one, whose bend is nought, would be beyond all bounds.
func (a arc) turn() float64 {
	theta := math.Atan(-a.along.v / a.aside.v)
	if theta < 0 {
		theta += math.Pi
	}
	if s := theta / a.bend * a.length; s < a.length {
		return s
	}
	return 0
}
