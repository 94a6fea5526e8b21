package packer

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Load is what a packer bears at one moment.
type Load struct {
	Differential unit.Pressure `json:"differential"` // below minus above
	Axial        unit.Force    `json:"axial"`        // tubing on packer, positive up
}

// Polygon is a holding envelope as its corners are given, in either sense of
// rotation. Limits[i] names what ends the packer between Vertices[i] and the
// next one; it may be left out.
type Polygon struct {
	Name     string   `json:"name,omitempty"`
	Vertices []Load   `json:"vertices"`
	Limits   []string `json:"limits,omitempty"`
}

// Faults of a polygon.
var (
	ErrTooFewVertices = errors.New("packer: an envelope needs three corners or more")
	ErrNotConvex      = errors.New("packer: the envelope is not convex")
	ErrNoRest         = errors.New("packer: the envelope does not hold the packer at rest")
)

// maxVertices keeps a file from outside within reason.
const maxVertices = 10000

// Envelope is a polygon made ready to hold loads against. It is safe for
// concurrent use, and made by Polygon.Envelope alone; the zero value has no
// corners, and every load is outside it.
type Envelope struct {
	polygon Polygon
	edges   []edge
	// Half the span in each direction: what distances are counted in.
	dp, fa float64
}

// edge is the half-plane a·x + b·y ≤ c in loads divided by the half spans, with
// a² + b² = 1, and the corners it runs between.
type edge struct {
	a, b, c        float64
	x0, y0, x1, y1 float64
	limit          string
}

// Envelope checks p and makes it ready.
//
// It must have three corners or more that are finite, turn the same way at every
// one of them and go round once, and hold the packer at rest (no differential,
// no axial load) strictly inside. Corners in one line are permitted, two at one
// place are not. Errors name the corner: ErrTooFewVertices, ErrNotConvex,
// ErrNoRest.
//
//	a·x + b·y ≤ 1 for each edge
//
// Source: half-planes of a convex polygon.
func (p Polygon) Envelope() (*Envelope, error) {
	if err := p.validate(); err != nil {
		return nil, err
	}
	e := &Envelope{polygon: p.clone()}
	lo, hi := p.Vertices[0], p.Vertices[0]
	for _, v := range p.Vertices {
		lo = Load{min(lo.Differential, v.Differential), min(lo.Axial, v.Axial)}
		hi = Load{max(hi.Differential, v.Differential), max(hi.Axial, v.Axial)}
	}
	e.dp, e.fa = float64(hi.Differential-lo.Differential)/2, float64(hi.Axial-lo.Axial)/2
	if !(e.dp > 0) || !(e.fa > 0) || !finite(e.dp) || !finite(e.fa) {
		return nil, fmt.Errorf("%w: it spans %v by %v", ErrNotConvex, (hi.Differential - lo.Differential).Rounded(4), (hi.Axial - lo.Axial).Rounded(4))
	}
	if err := e.prepare(); err != nil {
		return nil, err
	}
	return e, nil
}

func (p Polygon) validate() error {
	f := fault.In(scope)
	n := len(p.Vertices)
	if n < 3 {
		return fmt.Errorf("%w: there are %d", ErrTooFewVertices, n)
	}
	if n > maxVertices {
		return fault.NewIn("packer", "Vertices", "has %d corners; must be at most %d", n, maxVertices)
	}
	if len(p.Limits) != 0 && len(p.Limits) != n {
		f.New("Limits", "has %d names for %d corners; must be one for each, or none", len(p.Limits), n)
	}
	for i, v := range p.Vertices {
		f.Add(fault.Finite(fmt.Sprintf("Vertices[%d].Differential", i), v.Differential))
		f.Add(fault.Finite(fmt.Sprintf("Vertices[%d].Axial", i), v.Axial))
	}
	return f.Err()
}

// straight is how far from a straight line, in the sine of the angle, counts as
// one: it lets rounded corners of a long edge pass.
const straight = 1e-9

func (e *Envelope) prepare() error {
	v := e.polygon.Vertices
	n := len(v)
	at := func(i int) (x, y float64) {
		return float64(v[i%n].Differential) / e.dp, float64(v[i%n].Axial) / e.fa
	}
	area := 0.0
	for i := range v {
		x0, y0 := at(i)
		x1, y1 := at(i + 1)
		area += x0*y1 - x1*y0
	}
	sense := 1.0
	if area < 0 {
		sense = -1
	}
	turned := 0.0
	for i := range v {
		x0, y0 := at(i)
		x1, y1 := at(i + 1)
		x2, y2 := at(i + 2)
		dx, dy, ex, ey := x1-x0, y1-y0, x2-x1, y2-y1
		l, m := math.Hypot(dx, dy), math.Hypot(ex, ey)
		if l < straight {
			return fmt.Errorf("%w: corners %d and %d are at one place", ErrNotConvex, i+1, (i+1)%n+1)
		}
		sin, cos := sense*(dx*ey-dy*ex), dx*ex+dy*ey
		if sin < -straight*l*m || cos < 0 && sin <= straight*l*m {
			return fmt.Errorf("%w: it turns back at corner %d, %s and %s", ErrNotConvex, (i+1)%n+1,
				v[(i+1)%n].Differential.Rounded(4), v[(i+1)%n].Axial.Rounded(4))
		}
		turned += math.Atan2(sin, cos)
		a, b := sense*dy/l, -sense*dx/l
		e.edges = append(e.edges, edge{a: a, b: b, c: a*x0 + b*y0, x0: x0, y0: y0, x1: x1, y1: y1, limit: e.polygon.limit(i)})
	}
	if turned > 3*math.Pi {
		return fmt.Errorf("%w: it goes round %.0f times", ErrNotConvex, turned/(2*math.Pi))
	}
	for i, d := range e.edges {
		if d.c < straight {
			return fmt.Errorf("%w: the edge after corner %d (%s) leaves it outside", ErrNoRest, i+1, d.limit)
		}
	}
	return nil
}

func (p Polygon) limit(i int) string {
	if len(p.Limits) == 0 || p.Limits[i] == "" {
		return fmt.Sprintf("edge %d", i+1)
	}
	return p.Limits[i]
}

func (p Polygon) clone() Polygon {
	p.Vertices = append([]Load(nil), p.Vertices...)
	p.Limits = append([]string(nil), p.Limits...)
	return p
}

// Polygon returns the corners that e was made from.
func (e *Envelope) Polygon() Polygon {
	if e == nil {
		return Polygon{}
	}
	return e.polygon.clone()
}
