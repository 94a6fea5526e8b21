package record

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// mostKnots bounds the time that a record of mere noise takes.
const mostKnots = 400

// way is what was applied in a step: the pressures of some compartments along a
// broken line.
type way struct {
	knots  []int       // rows
	values [][]float64 // by knot and compartment
}

// segmented finds the broken line through readings y (by compartment and row) that
// misses none by more than off (by compartment): knots by the longest distance, then
// values by least squares.
func segmented(y [][]float64, off []float64) way {
	n := len(y[0])
	knots := []int{0}
	split(y, off, 0, n-1, &knots)
	if n > 1 {
		knots = append(knots, n-1)
	}
	w := way{knots: knots}
	values := make([][]float64, len(y))
	for c := range y {
		values[c] = fitted(y[c], knots)
	}
	for k := range knots {
		v := make([]float64, len(y))
		for c := range y {
			v[c] = values[c][k]
		}
		w.values = append(w.values, v)
	}
	return w
}

// split adds the row that is furthest off the chord between two rows, as long as it
// is too far off, and does so on either side of it.
func split(y [][]float64, off []float64, from, to int, knots *[]int) {
	worst, at := 1., -1
	for i := from + 1; i < to; i++ {
		share := float64(i-from) / float64(to-from)
		for c := range y {
			d := math.Abs(y[c][i]-(y[c][from]+share*(y[c][to]-y[c][from]))) / off[c]
			if d > worst {
				worst, at = d, i
			}
		}
	}
	if at < 0 || len(*knots) >= mostKnots {
		return
	}
	split(y, off, from, at, knots)
	*knots = append(*knots, at)
	split(y, off, at, to, knots)
}

// fitted are the values at the knots of the broken line nearest to y.
func fitted(y []float64, knots []int) []float64 {
	k := len(knots)
	raw := make([]float64, k)
	for i, n := range knots {
		raw[i] = y[n]
	}
	if k < 2 || k > 200 {
		return raw
	}
	// The normal equations of the hats on the knots, which only neighbours share.
	a := mat.NewSymBandDense(k, 1, nil)
	b := mat.NewVecDense(k, nil)
	n := 0
	for i := range y {
		for n+2 < k && i > knots[n+1] {
			n++
		}
		h := float64(i-knots[n]) / float64(knots[n+1]-knots[n])
		a.SetSymBand(n, n, a.At(n, n)+(1-h)*(1-h))
		a.SetSymBand(n, n+1, a.At(n, n+1)+h*(1-h))
		a.SetSymBand(n+1, n+1, a.At(n+1, n+1)+h*h)
		b.SetVec(n, b.AtVec(n)+(1-h)*y[i])
		b.SetVec(n+1, b.AtVec(n+1)+h*y[i])
	}
	var chol mat.BandCholesky
	var x mat.VecDense
	if !chol.Factorize(a) || chol.SolveVecTo(&x, b) != nil {
		return raw
	}
	all := make([]float64, k)
	for i := range all {
		all[i] = x.AtVec(i)
	}
	if floats.HasNaN(all) {
		return raw
	}
	return all
}

// leg is a part of a way along which pressures move, with the rows from its
// beginning to that of the next.
type leg struct {
	from, to []float64
	begin    int // first row
	end      int // row at which it is done
	next     int // row at which the next begins
}

// legs are the parts of a way in which something moves by more than still (by
// compartment); what is on one straight line of pressures is one leg. What stands
// still belongs to the leg before it; rest is the row at which the first begins.
func (w way) legs(still []float64) (all []leg, rest int) {
	n := len(w.knots)
	for k := 1; k < n; k++ {
		from, to := w.values[k-1], w.values[k]
		if len(all) > 0 {
			from = all[len(all)-1].to // what a rest has drifted counts with what comes next
		}
		if !moves(from, to, still) {
			continue
		}
		l := leg{from: from, to: to, begin: w.knots[k-1], end: w.knots[k]}
		if m := len(all) - 1; m >= 0 && straight(all[m].from, all[m].to, l.to, still) {
			all[m].to, all[m].end = l.to, l.end
			continue
		}
		all = append(all, l)
	}
	rest = w.knots[n-1] + 1
	for i := len(all) - 1; i >= 0; i-- {
		all[i].next, rest = rest, all[i].begin
	}
	return all, rest
}

// settle takes what a leg was brought to from the first rows in which it then stands:
// the corner of the broken line is less sure.
func settle(all []leg, y [][]float64, still []float64) {
	const few, most = 4, 7
	for i := range all {
		l := &all[i]
		end := min(l.end+most, l.next, len(y[0]))
		if end-l.end < few {
			continue
		}
		to := slices.Clone(l.to)
		for c := range y {
			if mean := stat.Mean(y[c][l.end:end], nil); math.Abs(mean-l.to[c]) <= still[c] {
				to[c] = mean
			}
		}
		l.to = to
		if i+1 < len(all) {
			all[i+1].from = to
		}
	}
}

func moves(from, to, still []float64) bool {
	for c := range from {
		if math.Abs(to[c]-from[c]) > still[c] {
			return true
		}
	}
	return false
}

// straight tells whether b lies on the way from a to c, as pressures go.
func straight(a, b, c, still []float64) bool {
	lead := 0
	for k := range a {
		if math.Abs(c[k]-a[k])/still[k] > math.Abs(c[lead]-a[lead])/still[lead] {
			lead = k
		}
	}
	d := c[lead] - a[lead]
	if d == 0 {
		return false
	}
	share := (b[lead] - a[lead]) / d
	if share < 0 || share > 1 {
		return false
	}
	for k := range a {
		if math.Abs(a[k]+share*(c[k]-a[k])-b[k]) > still[k] {
			return false
		}
	}
	return true
}

// filled are readings with gaps closed by straight lines.
func filled(y []float64) []float64 {
	y = slices.Clone(y)
	last := -1
	for i, v := range y {
		if math.IsNaN(v) {
			continue
		}
		for k := last + 1; k < i; k++ {
			if last < 0 {
				y[k] = v
			} else {
				y[k] = y[last] + (v-y[last])*float64(k-last)/float64(i-last)
			}
		}
		last = i
	}
	for k := last + 1; k < len(y) && last >= 0; k++ {
		y[k] = y[last]
	}
	return y
}
