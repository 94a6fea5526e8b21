package affine

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

// byHand is min c·e + c0 over the box -1..1 and the rows a·e + b >= 0 by gonum, in its
// standard form: x = e + 1, slack to 2, and a surplus for each row.
func byHand(t *testing.T, n int, f Form, rows []Form) (least float64, known, feasible bool) {
	t.Helper()
	m := len(rows)
	c := make([]float64, 2*n+m)
	offset := f.C
	for _, x := range f.T {
		c[x.Symbol] = x.C
		offset -= x.C
	}
	a := mat.NewDense(n+m, 2*n+m, nil)
	b := make([]float64, n+m)
	for k := range n {
		a.Set(k, k, 1)
		a.Set(k, n+k, 1)
		b[k] = 2
	}
	for i, row := range rows {
		b[n+i] = -row.C
		for _, x := range row.T {
			a.Set(n+i, x.Symbol, x.C)
			b[n+i] += x.C
		}
		a.Set(n+i, 2*n+i, -1)
	}
	least, _, err := lp.Simplex(c, a, b, 1e-10, nil)
	switch {
	case errors.Is(err, lp.ErrInfeasible):
		return 0, true, false
	case err != nil:
		return 0, false, false // gonum gives up on some degenerate ones
	}
	return least + offset, true, true
}

// The dual simplex finds what another one finds, on random programmes: with rows that
// meet in one point, rows that are the same, and rows that contradict each other. A
// bound is never above the optimum, and an empty region never holds a point.
func TestLeastAgainstGonum(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 13))
	solved, empty := 0, 0
	for trial := range 3000 {
		n := 1 + random.IntN(6)
		any := func(c float64) Form {
			f := Form{C: c}
			for k := range n {
				if x := random.NormFloat64(); random.IntN(3) > 0 {
					if trial%3 == 0 {
						x = math.Round(2 * x) // whole numbers: degenerate corners
					}
					if x != 0 {
						f.T = append(f.T, Term{k, x})
					}
				}
			}
			return f
		}
		r := Box(n, make([]float64, n))
		var rows []Form
		for range random.IntN(8) {
			row := any(random.NormFloat64())
			if trial%3 == 0 {
				row.C = math.Round(row.C)
			}
			if len(rows) > 0 && random.IntN(5) == 0 {
				row = rows[0].Times(2).Shift(0.5 * float64(random.IntN(2)))
			}
			rows = append(rows, row)
			if r != nil {
				r = r.With(row)
			}
		}
		f := any(10 * random.NormFloat64())
		want, known, feasible := byHand(t, n, f, rows)
		if !known {
			continue
		}
		if !feasible {
			// Ours is nil, or empty within what rounding may miss.
			if r == nil {
				empty++
			} else if p, ok := r.Point(); ok {
				for _, row := range rows {
					require.GreaterOrEqual(t, row.At(p), -1e-4)
				}
			}
			continue
		}
		if r == nil {
			// Only where the rows leave next to nothing.
			t.Fatalf("trial %d: no point left, where %v is attained", trial, want)
		}
		solved++
		bound, at := r.Least(f)
		require.LessOrEqual(t, bound, want+1e-7, "trial %d: a bound above the optimum", trial)
		require.InDelta(t, want, bound, 1e-3, "trial %d", trial)
		require.NotNil(t, at, "trial %d", trial)
		require.InDelta(t, want, f.At(at), 1e-3, "trial %d", trial)
		for _, x := range at {
			require.LessOrEqual(t, math.Abs(x), 1+1e-12)
		}
		for _, row := range rows {
			require.GreaterOrEqual(t, row.At(at), -2e-5, "trial %d", trial)
		}
		require.InDelta(t, -bound, r.Greatest(f.Times(-1)), 1e-9)
	}
	require.Greater(t, solved, 1000)
	require.Greater(t, empty, 200)
}

// By hand: over the triangle e0 + e1 >= 0 of the square, e0 - 2·e1 is least at (-1, 1):
// -3; with e1 <= 1/2 too at (-1/2, 1/2): -3/2.
func TestLeastByHand(t *testing.T) {
	r := Box(2, []float64{0, 0}).With(form(0, 1, 1))
	bound, at := r.Least(form(0, 1, -2))
	require.InDelta(t, -3, bound, 1e-12)
	require.InDeltaSlice(t, []float64{-1, 1}, at, 1e-12)
	r = r.With(form(0.5, 0, -1))
	bound, at = r.Least(form(0, 1, -2))
	require.InDelta(t, -1.5, bound, 1e-12)
	require.InDeltaSlice(t, []float64{-0.5, 0.5}, at, 1e-12)
	require.Nil(t, r.With(form(-1.6, 0, 1)), "e1 can't be 1.6")
	require.Nil(t, r.With(form(-0.6, 0, 1)), "e1 is 0.6 and no more than 0.5")
	require.NotNil(t, r.With(form(-0.5, 0, 1)), "what only touches counts")
	require.Same(t, r, r.With(form(5, 1, 1)), "a row that always holds is none")
}

// What stands for two regions holds every point of either.
func TestCommonHoldsBoth(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		cut := func() *Region {
			r := Box(3, make([]float64, 3))
			for range 3 {
				if q := r.With(form(0.5*random.Float64(), random.NormFloat64(), random.NormFloat64(), random.NormFloat64())); q != nil {
					r = q
				}
			}
			return r
		}
		a, b := cut(), cut()
		c := a.Common(b)
		for range 100 {
			p := []float64{2*random.Float64() - 1, 2*random.Float64() - 1, 2*random.Float64() - 1}
			if a.Holds(p) || b.Holds(p) {
				require.True(t, c.Holds(p))
			}
		}
	}
}

// What is no number is no row, and has no least value that a margin could stand on.
func TestWhatIsNoNumber(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		r := Box(2, []float64{0, 0}).With(form(0, 1, 1))
		bound, _ := r.Least(form(0, x, 1))
		require.False(t, bound > -math.MaxFloat64, "%v", bound)
		bound, _ = r.Least(form(-math.Abs(x), 1, 1))
		require.False(t, bound > -math.MaxFloat64, "%v", bound)
		require.NotNil(t, r.With(form(0, x, 1)))
	}
}

// A region in a box with one symbol more has the same rows.
func TestExtend(t *testing.T) {
	r := Box(1, []float64{0}).With(form(0, 1))
	x := r.Extend(0.25, -1, 1)
	bound, at := x.Least(form(0, 1, 1))
	require.InDelta(t, -1, bound, 1e-12)
	require.InDeltaSlice(t, []float64{0, -1}, at, 1e-12)
	p, ok := x.Point()
	require.True(t, ok)
	require.Equal(t, 0.25, p[1])
}

func BenchmarkLeast(b *testing.B) {
	random := rand.New(rand.NewPCG(1, 1))
	r := Box(30, make([]float64, 30))
	for range 20 {
		f := Form{C: 1}
		for k := range 30 {
			f.T = append(f.T, Term{k, random.NormFloat64()})
		}
		if q := r.With(f); q != nil {
			r = q
		}
	}
	f := Form{}
	for k := range 30 {
		f.T = append(f.T, Term{k, random.NormFloat64()})
	}
	for b.Loop() {
		r.Least(f)
	}
}
