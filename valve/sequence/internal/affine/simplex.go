package affine

import (
	"math"
	"slices"
	"sync"
)

// least minimises f over the rows of the region by the dual simplex with bounded
// variables: the corner of the box that is best for f alone is where it begins,
// and the worst row that is missed comes into the basis until none is. A row's
// variable is its slack, v = a·e + b >= 0.
//
// What comes out is only a guess. The bound is made anew from the multipliers:
// for any λ >= 0
//
//	f >= f - Σ λ·row >= C - R - Σ λ·b - Σ |c_k - Σ λ·a_k|
//
// and so never too high. ok is false where no optimum was found.
//
// Source: Wagner, The dual simplex algorithm for bounded variables, Naval Research
// Logistics Quarterly 5, 1958, 257-261; weak duality: any text on linear
// programming.
func (r *Region) least(f Form) (bound float64, at []float64, ok bool) {
	p := programmes.Get().(*programme)
	defer programmes.Put(p)
	p.begin(r, f)
	feasible := p.solve()
	bound = f.C - f.R - p.radius(f, nil)
	if b := p.bound(f, p.multipliers()); b > bound {
		bound = b
	}
	if !feasible {
		// Rows that contradict each other: then the ray shows it.
		if p.ray != nil && p.contradiction(p.ray) {
			return math.Inf(1), nil, false
		}
		return bound, nil, false
	}
	return bound, p.point(r), true
}

// programme is the tableau: each basic variable as a linear function of those
// that are not.
type programme struct {
	rows    []Form
	symbols []int // that take part
	column  []int // by symbol: its place in symbols; -1: it takes no part

	// Variables are numbered symbols first, then slacks.
	basic, other []int
	atUpper      []bool      // by place in other; a slack has no upper end
	t            [][]float64 // basic[i] = t[i][n] + Σ t[i][j]·other[j]
	d            []float64   // cost of other[j]
	ray          []float64
	gradient     []float64 // to work in
}

// programmes are used again: a walk asks for many thousands.
var programmes = sync.Pool{New: func() any { return new(programme) }}

// begin sets a programme up, in the memory that it has.
func (p *programme) begin(r *Region, f Form) {
	m := len(r.rows)
	p.rows, p.ray = r.rows, nil
	p.column, p.symbols = sized(p.column, r.n), p.symbols[:0]
	for k := range p.column {
		p.column[k] = -1
	}
	p.add(f)
	for _, row := range r.rows {
		p.add(row)
	}
	n := len(p.symbols)
	p.other, p.basic, p.atUpper = sized(p.other, n), sized(p.basic, m), sized(p.atUpper, n)
	p.d, p.gradient = sized(p.d, n), sized(p.gradient, n)
	clear(p.d)
	for j := range n {
		p.other[j] = j
	}
	for _, t := range f.T {
		p.d[p.column[t.Symbol]] = t.C
	}
	for j := range n {
		p.atUpper[j] = p.d[j] < 0
	}
	p.t = sized(p.t, m)
	for i, row := range r.rows {
		p.basic[i] = n + i
		line := sized(p.t[i], n+1)
		clear(line)
		line[n] = row.C
		for _, t := range row.T {
			line[p.column[t.Symbol]] = t.C
		}
		p.t[i] = line
	}
}

// sized is a slice of a length, in its own memory where that is large enough.
func sized[T any](s []T, n int) []T { return slices.Grow(s[:0], n)[:n] }

// add lets the symbols of a form take part.
func (p *programme) add(f Form) {
	for _, t := range f.T {
		if p.column[t.Symbol] < 0 {
			p.column[t.Symbol] = len(p.symbols)
			p.symbols = append(p.symbols, t.Symbol)
		}
	}
}

// bounds of a variable.
func (p *programme) bounds(v int) (least, greatest float64) {
	if v < len(p.symbols) {
		return -1, 1
	}
	return 0, math.Inf(1)
}

func (p *programme) value(j int) float64 {
	least, greatest := p.bounds(p.other[j])
	if p.atUpper[j] {
		return greatest
	}
	return least
}

// solve pivots until no basic variable is out of its bounds.
func (p *programme) solve() bool {
	n := len(p.symbols)
	for range 50 + 10*(n+len(p.rows)) {
		out, below, worst := -1, false, 1e-9
		for i, v := range p.basic {
			x, size := p.t[i][n], math.Abs(p.t[i][n])
			for j := range n {
				if c := p.t[i][j]; c != 0 {
					y := c * p.value(j)
					x += y
					size += math.Abs(y)
				}
			}
			least, greatest := p.bounds(v)
			scale := 1 + size
			if miss := (least - x) / scale; miss > worst {
				out, below, worst = i, true, miss
			}
			if miss := (x - greatest) / scale; miss > worst {
				out, below, worst = i, false, miss
			}
		}
		if out < 0 {
			return true
		}
		in, best := -1, math.Inf(1)
		for j := range n {
			c := p.t[out][j]
			if !below {
				c = -c
			}
			// The basic variable has to rise (c counts towards it).
			if p.atUpper[j] && c > -1e-12 || !p.atUpper[j] && c < 1e-12 {
				continue
			}
			if ratio := math.Abs(p.d[j] / c); ratio < best || ratio == best && math.Abs(c) > math.Abs(p.t[out][in]) {
				in, best = j, ratio
			}
		}
		if in < 0 {
			p.ray = p.certificate(out, below)
			return false
		}
		p.pivot(out, in, !below)
	}
	return false
}

// pivot brings other[in] into the basis for basic[out], which goes to one of its
// bounds.
func (p *programme) pivot(out, in int, toUpper bool) {
	n := len(p.symbols)
	row := p.t[out]
	c := row[in]
	p.basic[out], p.other[in] = p.other[in], p.basic[out]
	p.atUpper[in] = toUpper
	for j := range row {
		row[j] = -row[j] / c
	}
	row[in] = 1 / c
	for i := range p.t {
		if i == out {
			continue
		}
		k := p.t[i][in]
		if k == 0 {
			continue
		}
		p.t[i][in] = 0
		for j := range n + 1 {
			p.t[i][j] += k * row[j]
		}
	}
	k := p.d[in]
	p.d[in] = 0
	for j := range n {
		p.d[j] += k * row[j]
	}
}

// multipliers are the costs of the slacks, those that are negative by rounding
// taken as nought.
func (p *programme) multipliers() []float64 {
	lambda := make([]float64, len(p.rows))
	for j, v := range p.other {
		if v >= len(p.symbols) {
			lambda[v-len(p.symbols)] = math.Max(p.d[j], 0)
		}
	}
	return lambda
}

// certificate is the combination of rows that shows that they contradict each
// other: the row of the basic variable that can't be put right.
func (p *programme) certificate(out int, below bool) []float64 {
	lambda := make([]float64, len(p.rows))
	sign := -1.0
	if !below {
		sign = 1
	}
	set := func(v int, c float64) {
		if v >= len(p.symbols) {
			lambda[v-len(p.symbols)] = math.Max(c, 0)
		}
	}
	set(p.basic[out], 1)
	if !below {
		set(p.basic[out], -1)
	}
	for j, v := range p.other {
		set(v, sign*p.t[out][j])
	}
	return lambda
}

func (p *programme) radius(f Form, lambda []float64) float64 {
	g := p.gradient
	clear(g)
	for _, t := range f.T {
		g[p.column[t.Symbol]] += t.C
	}
	for i, l := range lambda {
		if l == 0 {
			continue
		}
		for _, t := range p.rows[i].T {
			g[p.column[t.Symbol]] -= l * t.C
		}
	}
	sum := 0.0
	for _, x := range g {
		sum += math.Abs(x)
	}
	return sum
}

func (p *programme) bound(f Form, lambda []float64) float64 {
	b := f.C - f.R
	for i, l := range lambda {
		b -= l * p.rows[i].C
	}
	b -= p.radius(f, lambda)
	if math.IsNaN(b) {
		return math.Inf(-1)
	}
	return b
}

// contradiction tells whether Σ λ·row is below nought in the whole box.
func (p *programme) contradiction(lambda []float64) bool {
	sum, scale := 0.0, 0.0
	for i, l := range lambda {
		sum += l * p.rows[i].C
		scale += l
	}
	return scale > 0 && sum+p.radius(Form{}, lambda) < -slack*scale
}

func (p *programme) point(r *Region) []float64 {
	n := len(p.symbols)
	at := make([]float64, r.n)
	if len(r.points) > 0 {
		copy(at, r.points[0])
	}
	for j, v := range p.other {
		if v < n {
			at[p.symbols[v]] = p.value(j)
		}
	}
	for i, v := range p.basic {
		if v >= n {
			continue
		}
		x := p.t[i][n]
		for j := range n {
			if c := p.t[i][j]; c != 0 {
				x += c * p.value(j)
			}
		}
		at[p.symbols[v]] = math.Min(math.Max(x, -1), 1)
	}
	return at
}
