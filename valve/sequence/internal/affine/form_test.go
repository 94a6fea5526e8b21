package affine

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

func form(c float64, terms ...float64) Form {
	f := Form{C: c}
	for k, x := range terms {
		if x != 0 {
			f.T = append(f.T, Term{k, x})
		}
	}
	return f
}

// By hand: two forms of two symbols.
func TestFormsByHand(t *testing.T) {
	f, g := form(10, 2, 0, -1), form(4, 0, 3, 1)
	require.Equal(t, form(14, 2, 3), f.Plus(g), "what cancels is gone")
	require.Equal(t, form(6, 2, -3, -2), f.Minus(g))
	require.Equal(t, form(-20, -4, 0, 2), f.Times(-2))
	require.Equal(t, form(18, 2, 6, 1), f.PlusTimes(g, 2))
	require.Equal(t, 7.0, f.Least())
	require.Equal(t, 13.0, f.Greatest())
	require.Equal(t, 3.0, f.Radius())
	require.Equal(t, 10+2*0.5+1.0, f.At([]float64{0.5, 0, -1}))
	require.Equal(t, Form{C: 3, R: 1}, Within(2, 4))
	require.True(t, Const(3).Sharp())
	require.False(t, f.Sharp())
	require.True(t, f.Same(f.Shift(1e-6), 1e-5))
	require.False(t, f.Same(form(10, 2, 0, -1.1), 1e-5))
	half := f.Narrow(func(k int) (float64, float64, bool) { return 0.5, 0, k == 0 })
	require.Equal(t, Form{C: 11, T: []Term{{2, -1}}}, half, "a symbol made a number")
	part := f.Narrow(func(k int) (float64, float64, bool) { return -0.5, 0.5, k == 0 })
	require.Equal(t, form(9, 1, 0, -1), part, "the lower half of a symbol")
}

// What comes out holds whatever point of the box is taken: sums exactly, products as
// an enclosure.
func TestFormsEncloseTheirValues(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	any := func() Form {
		f := Form{C: 10 * random.NormFloat64(), R: math.Abs(random.NormFloat64()) * float64(random.IntN(2))}
		for k := range 5 {
			if random.IntN(2) == 0 {
				f.T = append(f.T, Term{k, random.NormFloat64()})
			}
		}
		return f
	}
	for range 500 {
		f, g, k := any(), any(), random.NormFloat64()
		e := make([]float64, 5)
		for i := range e {
			e[i] = 2*random.Float64() - 1
			if random.IntN(3) == 0 {
				e[i] = math.Copysign(1, e[i])
			}
		}
		value := func(f Form) float64 { return f.At(e) + f.R*(2*random.Float64()-1) }
		x, y := value(f), value(g)
		holds := func(r Form, v float64) {
			t.Helper()
			require.LessOrEqual(t, math.Abs(r.At(e)-v), r.R+1e-9)
			require.LessOrEqual(t, r.Least(), v+1e-9)
			require.GreaterOrEqual(t, r.Greatest(), v-1e-9)
		}
		holds(f.Plus(g), x+y)
		holds(f.Minus(g), x-y)
		holds(f.Times(k), k*x)
		holds(f.PlusTimes(g, k), x+k*y)
		holds(Mul(f, g), x*y)
		holds(f.Widen(0.5), x+0.5)
	}
}

// A line meets a level where arithmetic says, and where its slope isn't certain
// somewhere in what comes out.
func TestCrossing(t *testing.T) {
	l := Line{F: form(100, 10), S: 2}
	require.Equal(t, form(200, -5), l.Cross(Const(500)))
	require.Equal(t, form(300, 10), l.At(Const(100)))
	level := form(500, 0, 20)
	require.InDelta(t, 0, l.At(l.Cross(level)).Minus(level).Radius(), 1e-9)

	random := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		l := Line{F: form(10*random.NormFloat64(), random.NormFloat64()), S: 1 + random.Float64(), D: 0.8 * random.Float64()}
		level := Const(30 + 10*random.Float64())
		e := []float64{2*random.Float64() - 1}
		slope := l.S + l.D*(2*random.Float64()-1)
		s := (level.C - l.F.At(e)) / slope
		c := l.Cross(level)
		require.LessOrEqual(t, math.Abs(c.At(e)-s), c.R+1e-9)
		v := l.At(Const(s))
		require.LessOrEqual(t, math.Abs(v.At(e)-(l.F.At(e)+slope*s)), v.R+1e-9)
	}
}
