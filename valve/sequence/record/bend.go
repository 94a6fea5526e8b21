package record

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// bend is where a record changes its slope.
type bend struct {
	row    int
	f      float64 // F ratio of two slopes against one
	unsure int     // rows either way that do as well
}

// bends looks for the row of a leg after which the volume no longer follows the
// programme's slope: before it net = a + b·closed, after it net = a' + b'·pressure +
// c'·time, least squares over all rows of the leg. Source: Quandt 1958; F as in Chow
// 1960. Both from memory.
func bends(net, closed, p, t []float64, first, last int) (bend, bool) {
	n := len(net)
	if n < 9 {
		return bend{}, false
	}
	whole := regression(net, closed)
	best, square := -1, math.Inf(1)
	stride := max((last-first)/150, 1)
	var all []float64
	var at []int
	for k := max(first, 3); k <= min(last, n-4); k += stride {
		s := regression(net[:k], closed[:k]) + regression(net[k:], p[k:], t[k:])
		all, at = append(all, s), append(at, k)
		if s < square {
			best, square = k, s
		}
	}
	if best < 0 || n <= 6 {
		return bend{}, false
	}
	floor := 1e-12 * whole / float64(n)
	b := bend{row: best, f: (whole - square) / 3 / max(square/float64(n-5), floor)}
	// Rows that fit as well but for chance: a likelihood ratio of 95 %, 3.84.
	limit := square * (1 + 3.84/float64(n-5))
	for i, s := range all {
		if s <= limit {
			b.unsure = max(b.unsure, at[i]-best, best-at[i])
		}
	}
	b.unsure = max(b.unsure, stride)
	return b, b.f > 25
}

// regression is the sum of squares that is left of y on a constant and columns.
func regression(y []float64, x ...[]float64) float64 {
	n := len(y)
	cols := [][]float64{}
	for _, c := range x {
		if v, ok := normal(c); ok {
			cols = append(cols, v)
		}
	}
	mean := 0.
	for _, v := range y {
		mean += v / float64(n)
	}
	k := len(cols)
	sum := 0.
	if k == 0 || n <= k+1 {
		for _, v := range y {
			sum += (v - mean) * (v - mean)
		}
		return sum
	}
	a, b := mat.NewSymDense(k, nil), mat.NewVecDense(k, nil)
	for i := range k {
		for j := i; j < k; j++ {
			s := 0.
			for r := range n {
				s += cols[i][r] * cols[j][r]
			}
			if i == j {
				s *= 1 + 1e-9
			}
			a.SetSym(i, j, s)
		}
		s := 0.
		for r := range n {
			s += cols[i][r] * (y[r] - mean)
		}
		b.SetVec(i, s)
	}
	var chol mat.Cholesky
	var w mat.VecDense
	if !chol.Factorize(a) || chol.SolveVecTo(&w, b) != nil {
		w.Reset()
		w.ReuseAsVec(k)
	}
	for r := range n {
		d := y[r] - mean
		for i := range k {
			d -= w.AtVec(i) * cols[i][r]
		}
		sum += d * d
	}
	return sum
}

// normal is a column less its mean and of length one; false: it never changes.
func normal(x []float64) ([]float64, bool) {
	mean := 0.
	for _, v := range x {
		mean += v / float64(len(x))
	}
	sum := 0.
	all := make([]float64, len(x))
	for i, v := range x {
		all[i] = v - mean
		sum += all[i] * all[i]
	}
	if sum <= 1e-18*mean*mean*float64(len(x)) || sum == 0 {
		return nil, false
	}
	for i := range all {
		all[i] /= math.Sqrt(sum)
	}
	return all, true
}
