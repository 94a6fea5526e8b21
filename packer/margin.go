package packer

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// Margin is how a load stands in an envelope.
type Margin struct {
	Load Load `json:"load"`

	// Limit names the edge that is reached first when the load grows in
	// proportion, and Usage is the share of the way to it: 1 on the edge, above 1
	// outside.
	Limit string  `json:"limit"`
	Usage float64 `json:"usage"`

	// Distance is to the nearest point of the edge, counted in half the span of
	// the envelope in each direction: positive inside, zero on the edge, negative
	// outside. Nearest is that point, so that the distance can be read in
	// pressure and force, and NearestLimit its edge.
	Distance     float64 `json:"distance"`
	Nearest      Load    `json:"nearest"`
	NearestLimit string  `json:"nearest_limit"`
}

// Inside tells whether the load is held, the edge included.
func (m Margin) Inside() bool { return m.Distance >= 0 }

// Margin returns how a load stands in the envelope.
//
//	used     = max over edges of (a·x + b·y) / c
//	distance = ± min over edges of |(x, y) - edge|
//
//	x, y     differential and axial load over half the span of the envelope
//	a, b, c  of an edge: a·x + b·y = c, with a² + b² = 1
//
// NaN in the load gives NaN and no limit. It allocates nothing. Source: distance
// of a point from a convex polygon.
func (e *Envelope) Margin(l Load) Margin {
	m := Margin{Load: l, Distance: math.NaN(), Usage: math.NaN()}
	if e == nil {
		m.Nearest = Load{unit.Pressure(math.NaN()), unit.Force(math.NaN())}
		return m
	}
	x, y := float64(l.Differential)/e.dp, float64(l.Axial)/e.fa
	if math.IsNaN(x) || math.IsNaN(y) || len(e.edges) == 0 {
		m.Nearest = Load{unit.Pressure(math.NaN()), unit.Force(math.NaN())}
		return m
	}
	used, inside, nearest := math.Inf(-1), true, math.Inf(1)
	var nx, ny float64
	for i := range e.edges {
		d := &e.edges[i]
		h := d.a*x + d.b*y
		if u := h / d.c; u > used {
			used = u
			m.Limit = d.limit
		}
		inside = inside && h <= d.c
		px, py := d.closest(x, y)
		if s := math.Hypot(x-px, y-py); s < nearest {
			nearest, nx, ny = s, px, py
			m.NearestLimit = d.limit
		}
	}
	m.Usage, m.Distance = used, nearest
	if !inside {
		m.Distance = -nearest
	}
	m.Nearest = Load{unit.Pressure(nx * e.dp), unit.Force(ny * e.fa)}
	return m
}

// closest is the point of the edge nearest to (x, y).
func (d *edge) closest(x, y float64) (px, py float64) {
	dx, dy := d.x1-d.x0, d.y1-d.y0
	t := ((x-d.x0)*dx + (y-d.y0)*dy) / (dx*dx + dy*dy)
	t = min(max(t, 0), 1)
	return d.x0 + t*dx, d.y0 + t*dy
}

// Margins appends the margin of every load to dst.
func (e *Envelope) Margins(dst []Margin, loads []Load) []Margin {
	for _, l := range loads {
		dst = append(dst, e.Margin(l))
	}
	return dst
}

// DifferentialAt returns the range of differential that the packer holds with an
// axial load: tests from above down to the least, and from below up to the
// greatest. ok is false where the axial load alone is outside.
//
//	the chord of the polygon at that axial load
//
// Range: any axial load; where ok is false both ends are zero, or NaN for NaN
// and an envelope without corners.
//
// Source: convexity.
func (e *Envelope) DifferentialAt(axial unit.Force) (least, greatest unit.Pressure, ok bool) {
	if e == nil {
		return unit.Pressure(math.NaN()), unit.Pressure(math.NaN()), false
	}
	y := float64(axial) / e.fa
	lo, hi, ok := e.chord(y, func(d *edge) (along, across float64) { return d.a, d.b })
	return unit.Pressure(lo * e.dp), unit.Pressure(hi * e.dp), ok
}

// AxialAt returns the range of axial load that the packer holds with a
// differential. ok is false where the differential alone is outside.
//
//	the chord of the polygon at that differential
//
// Range: any differential; where ok is false both ends are zero, or NaN for NaN
// and an envelope without corners.
//
// Source: convexity.
func (e *Envelope) AxialAt(differential unit.Pressure) (least, greatest unit.Force, ok bool) {
	if e == nil {
		return unit.Force(math.NaN()), unit.Force(math.NaN()), false
	}
	x := float64(differential) / e.dp
	lo, hi, ok := e.chord(x, func(d *edge) (along, across float64) { return d.b, d.a })
	return unit.Force(lo * e.fa), unit.Force(hi * e.fa), ok
}

// chord cuts the envelope at a fixed value of the other coordinate.
func (e *Envelope) chord(fixed float64, pick func(*edge) (along, across float64)) (lo, hi float64, ok bool) {
	if math.IsNaN(fixed) || len(e.edges) == 0 {
		return math.NaN(), math.NaN(), false
	}
	lo, hi = math.Inf(-1), math.Inf(1)
	for i := range e.edges {
		d := &e.edges[i]
		along, across := pick(d)
		room := d.c - across*fixed
		switch {
		case along > straight:
			hi = min(hi, room/along)
		case along < -straight:
			lo = max(lo, room/along)
		case room < -straight:
			return 0, 0, false
		}
	}
	if lo > hi {
		return 0, 0, false
	}
	return lo, hi, true
}
