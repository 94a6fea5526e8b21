package affine

import (
	"math"
	"math/rand/v2"
)

// Region is the part of the box in which all rows hold. It never changes: With
// returns another. The zero value won't do; Box makes the first.
type Region struct {
	n        int // symbols
	rows     []Form
	points   [][]float64 // some points of it
	radii    []float64   // by row: how much it was loosened, as it is only enclosed
	enclosed bool        // one was
	wide     bool        // it may hold points that neither of two regions has that it was made of
}

// Wide tells whether the region may hold points that none of the worlds had that it
// stands for.
func (r *Region) Wide() bool { return r.wide }

// Widened is the region marked as Wide.
func (r *Region) Widened() *Region {
	if r.wide {
		return r
	}
	c := *r
	c.wide = true
	return &c
}

// Enclosed tells whether a condition of the region was only enclosed.
func (r *Region) Enclosed() bool { return r.enclosed }

// Tight is the part of the region in which every condition holds for certain, or
// nil.
func (r *Region) Tight() *Region {
	if !r.enclosed {
		return r
	}
	t := &Region{n: r.n, points: r.points, wide: r.wide}
	for n, row := range r.rows {
		if t = t.With(row.Shift(-2 * r.radii[n])); t == nil {
			return nil
		}
	}
	return t
}

// Holds tells whether a point of the box fulfils all conditions.
func (r *Region) Holds(p []float64) bool { return r.holds(p) }

// slack is how far a row may be missed by rounding: pressures in Pa, and so far
// below what counts (1e-7 psi is 7e-4 Pa).
const slack = 1e-5

// samples are the points that a box begins with.
const samples = 24

// Box is the whole box of n symbols. Its first point is the given one, such as
// that of the nominal values.
func Box(n int, first []float64) *Region {
	r := &Region{n: n, points: [][]float64{first}}
	if n == 0 {
		return r
	}
	random := rand.New(rand.NewPCG(20, uint64(n)))
	for k := range samples {
		p := make([]float64, n)
		for i := range p {
			p[i] = 2*random.Float64() - 1
			if k%2 == 0 { // a corner
				p[i] = math.Copysign(1, p[i])
			}
		}
		r.points = append(r.points, p)
	}
	return r
}

// Rows are the conditions.
func (r *Region) Rows() []Form { return r.rows }

// Point is a point of the region: the first that is known.
func (r *Region) Point() ([]float64, bool) {
	if len(r.points) == 0 {
		return nil, false
	}
	return r.points[0], true
}

// Points are the points that are known.
func (r *Region) Points() [][]float64 { return r.points }

// With is the region where also row >= 0 holds, or nil if there is no such
// point.
func (r *Region) With(row Form) *Region {
	if row.Least() >= -slack {
		return r
	}
	if row.Greatest() < -slack {
		return nil
	}
	if !row.finite() { // what isn't known to be false may hold
		n := *r
		n.wide = true
		return &n
	}
	// The radius is nobody's choice: it loosens the row.
	radius := row.R
	loose := r.enclosed || radius > 0
	row.C += radius
	row.R = 0
	for _, x := range r.rows {
		if x.Same(row, slack) {
			return r
		}
	}
	n := &Region{n: r.n, rows: append(r.rows[:len(r.rows):len(r.rows)], row), radii: append(r.radii[:len(r.radii):len(r.radii)], radius), wide: r.wide, enclosed: loose}
	for _, p := range r.points {
		if row.At(p) >= -slack {
			n.points = append(n.points, p)
		}
	}
	if len(n.points) > 0 {
		return n
	}
	bound, at, ok := r.least(row.Times(-1))
	if -bound < -slack {
		return nil
	}
	if ok && row.At(at) >= -slack-1e-9*(math.Abs(row.C)+row.Radius()) && r.near(at) {
		n.points = append(n.points, at)
	}
	return n
}

// And is the region where the rows of both hold, or nil.
func (r *Region) And(rows []Form) *Region {
	for _, row := range rows {
		if r = r.With(row); r == nil {
			return nil
		}
	}
	return r
}

// near tells whether a point is in the region but for rounding.
func (r *Region) near(p []float64) bool {
	for _, row := range r.rows {
		if row.At(p) < -1e-9*(math.Abs(row.C)+row.Radius())-slack {
			return false
		}
	}
	return true
}

// Inner is a point of the region away from its edges, as far as that can be: the
// mean of points at which the symbols of its conditions are least and greatest.
func (r *Region) Inner() []float64 {
	sum := make([]float64, r.n)
	if len(r.points) > 0 {
		copy(sum, r.points[0])
	}
	symbols := map[int]bool{}
	for _, row := range r.rows {
		for _, t := range row.T {
			symbols[t.Symbol] = true
		}
	}
	for k := range symbols {
		sum[k] = 0
	}
	count := 0.0
	for k := range r.n {
		if !symbols[k] || count > 40 {
			continue
		}
		for _, c := range [2]float64{1, -1} {
			if _, at, ok := r.least(Form{T: []Term{{k, c}}}); ok {
				count++
				for i := range symbols {
					sum[i] += at[i]
				}
			}
		}
	}
	if count == 0 {
		return sum
	}
	for k := range symbols {
		sum[k] /= count
	}
	return sum
}

func (r *Region) holds(p []float64) bool {
	for _, row := range r.rows {
		if row.At(p) < -slack {
			return false
		}
	}
	return true
}

// Least is a bound that f is nowhere below in the region, and a point at which it
// is attained, to rounding, where one was found.
func (r *Region) Least(f Form) (bound float64, at []float64) {
	if len(r.rows) == 0 || !f.finite() {
		at = r.corner(f)
		return f.Least(), at
	}
	bound, at, ok := r.least(f)
	if !ok || !r.near(at) {
		at = nil
		best := math.Inf(1)
		for _, p := range r.points {
			if x := f.At(p); x < best {
				best, at = x, p
			}
		}
	}
	return bound, at
}

// Greatest is a bound that f is nowhere above.
func (r *Region) Greatest(f Form) float64 {
	b, _ := r.Least(f.Times(-1))
	return -b
}

// corner is where a form is least in the box; what it doesn't depend on stays as
// at the first point.
func (r *Region) corner(f Form) []float64 {
	at := make([]float64, r.n)
	if len(r.points) > 0 {
		copy(at, r.points[0])
	}
	for _, t := range f.T {
		at[t.Symbol] = -math.Copysign(1, t.C)
	}
	return at
}

// Extend is the region in a box with one symbol more, the last one, at some values
// of it.
func (r *Region) Extend(values ...float64) *Region {
	c := &Region{n: r.n + 1, rows: r.rows, radii: r.radii, wide: r.wide, enclosed: r.enclosed}
	for k, v := range values {
		for n, p := range r.points {
			if k > 0 && n > 3 {
				break
			}
			c.points = append(c.points, append(p[:len(p):len(p)], v))
		}
	}
	return c
}
