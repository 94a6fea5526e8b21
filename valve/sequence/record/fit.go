package record

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// fit is what is left of a course once its factor and its leak are fitted.
type fit struct {
	factor float64 // what went in for a pressure, in shares of the programme's
	sure   bool    // the record tells it
	leak   float64 // m³ per Pa·s
	left   []float64
	misfit float64 // largest block of what is left, in shares of what it may be
	at     int     // row in the middle of that block
	by     float64 // what is left there
	square float64 // sum of squares
}

// fitted fits net = offset (by run) + factor·closed + leak·load to the rows in which
// nothing flows, the factor between least and greatest, the leak, where wanted, out of
// the well (sign 1) or into it (-1).
func (x *course) fitted(least, greatest, sign float64, leaks bool, load []float64) fit {
	f := x.solve(load, leaks, nil, nil)
	if leaks && !(f.leak*sign > 0) {
		zero := 0.
		f = x.solve(load, leaks, nil, &zero)
	}
	switch {
	case math.IsNaN(f.factor), f.factor < least, f.factor > greatest:
		g := 1.
		if !math.IsNaN(f.factor) {
			g = min(max(f.factor, least), greatest)
		}
		f = x.solve(load, leaks, &g, nil)
		if leaks && !(f.leak*sign > 0) {
			zero := 0.
			f = x.solve(load, leaks, &g, &zero)
		}
	}
	x.judge(&f)
	return f
}

// solve is the least-squares fit, with factor and leak given or free.
func (x *course) solve(load []float64, leaks bool, factor, leak *float64) fit {
	// Offsets go by taking each run's means off.
	runs := 0
	for _, r := range x.run {
		runs = max(runs, r+1)
	}
	type sums struct{ n, y, s, l float64 }
	mean := make([]sums, runs)
	for i, r := range x.run {
		if r >= 0 {
			m := &mean[r]
			m.n, m.y, m.s, m.l = m.n+1, m.y+x.net[i], m.s+x.closed[i], m.l+load[i]
		}
	}
	var ss, sl, ll, sy, ly float64
	least, greatest := math.Inf(1), math.Inf(-1)
	rows := 0
	for i, r := range x.run {
		if r < 0 {
			continue
		}
		m := mean[r]
		y, s, l := x.net[i]-m.y/m.n, x.closed[i]-m.s/m.n, load[i]-m.l/m.n
		ss, sl, ll, sy, ly = ss+s*s, sl+s*l, ll+l*l, sy+s*y, ly+l*y
		least, greatest = min(least, s), max(greatest, s)
		rows++
	}
	f := fit{factor: math.NaN()}
	f.sure = rows > 0 && greatest-least > 3*(x.within+4*x.noise/math.Sqrt(float64(max(rows/4, 1))))
	switch {
	case factor == nil && leaks && leak == nil && ss > 0 && ll > 0:
		a := mat.NewDense(2, 2, []float64{ss, sl / math.Sqrt(ll) * math.Sqrt(ss), sl / math.Sqrt(ll) * math.Sqrt(ss), ss}) // both columns of one size
		var v mat.VecDense
		if v.SolveVec(a, mat.NewVecDense(2, []float64{sy, ly / math.Sqrt(ll) * math.Sqrt(ss)})) == nil {
			f.factor, f.leak = v.AtVec(0), v.AtVec(1)*math.Sqrt(ss/ll)
		}
	case factor == nil && ss > 0:
		f.factor = sy / ss
	case factor != nil && leaks && leak == nil && ll > 0:
		f.factor, f.leak = *factor, (ly-*factor*sl)/ll
	case factor != nil:
		f.factor = *factor
	}
	g := f.factor
	if math.IsNaN(g) {
		g = 1
	}
	f.left = make([]float64, len(x.net))
	for i, r := range x.run {
		f.left[i] = math.NaN()
		if r >= 0 {
			m := mean[r]
			f.left[i] = x.net[i] - m.y/m.n - g*(x.closed[i]-m.s/m.n) - f.leak*(load[i]-m.l/m.n)
			f.square += f.left[i] * f.left[i]
		}
	}
	return f
}

// block is how many rows are averaged.
func block(rows int) int { return min(max(rows/12, 3), 25) }

// judge averages what is left in blocks, and holds the largest against what it may be.
func (x *course) judge(f *fit) {
	n := block(len(f.left))
	sum, count, from := 0., 0, 0
	done := func(to int) {
		if count >= min(n, 3) {
			mean := sum / float64(count)
			may := x.within + 4*x.noise/math.Sqrt(float64(count)) + 1e-9
			if m := math.Abs(mean) / may; m > f.misfit {
				f.misfit, f.at, f.by = m, (from+to)/2, mean
			}
		}
		sum, count, from = 0, 0, to
	}
	for i, v := range f.left {
		if math.IsNaN(v) || i > 0 && x.run[i] != x.run[i-1] {
			done(i)
		}
		if math.IsNaN(v) {
			continue
		}
		if sum, count = sum+v, count+1; count == n {
			done(i + 1)
		}
	}
	done(len(f.left))
}
