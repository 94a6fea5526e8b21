package hydrostatics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
)

// The tables follow from their definitions: the points are cosines, and each
// entry is a Gauss–Legendre integral of a Lagrange polynomial.
func TestCollocationTables(t *testing.T) {
	x := make([]float64, degree+1)
	for j := range x {
		x[j] = -math.Cos(math.Pi * float64(j) / degree)
		require.InDelta(t, (1+x[j])/2, chebyshev[j], 2e-16)
	}
	for m := range cosine {
		require.InDelta(t, math.Cos(math.Pi*float64(m)/degree), cosine[m], 1e-15)
	}
	for j := 1; j <= degree; j++ {
		for k := range x {
			lagrange := func(s float64) float64 {
				p := 1.0
				for i := range x {
					if i != k {
						p *= (s - x[i]) / (x[k] - x[i])
					}
				}
				return p
			}
			want := quad.Fixed(lagrange, -1, x[j], 12, quad.Legendre{}, 0)
			require.InDelta(t, want, collocated[j-1][k], 1e-14, "row %d, column %d", j, k)
		}
	}
}

// Series, integral and sum of a polynomial of degree 8 are exact.
func TestSeriesOfAPolynomial(t *testing.T) {
	f := func(x float64) float64 { return 1 - 2*x + 3*math.Pow(x, 5) - 4*math.Pow(x, 8) }
	primitive := func(x float64) float64 { return x - x*x + math.Pow(x, 6)/2 - 4*math.Pow(x, 9)/9 }
	var v [degree + 1]float64
	for j := range v {
		v[j] = f(2*chebyshev[j] - 1)
	}
	c := series(&v)
	b := integral(&c)
	for x := -1.0; x <= 1; x += 0.05 {
		require.InDelta(t, primitive(x)-primitive(-1), sum(&b, x), 1e-14)
	}
	for j := 1; j <= degree; j++ {
		s := 0.0
		for k := range v {
			s += collocated[j-1][k] * v[k]
		}
		require.InDelta(t, sum(&b, 2*chebyshev[j]-1), s, 1e-14)
	}
}

// The estimate isn't below what is really left out, and not far above.
func TestMisfit(t *testing.T) {
	for name, f := range map[string]func(x float64) float64{
		"exponential": func(x float64) float64 { return math.Exp(1.5 * x) },
		"pole":        func(x float64) float64 { return 1 / (3 - x) },
		"even":        func(x float64) float64 { return 1 / (4 + x*x) },
		"wave":        func(x float64) float64 { return 2 + math.Sin(2*x) },
	} {
		var v [degree + 1]float64
		for j := range v {
			v[j] = f(2*chebyshev[j] - 1)
		}
		c := series(&v)
		b := integral(&c)
		missed := 0.0
		for x := -1.0; x <= 1; x += 0.01 {
			missed = math.Max(missed, math.Abs(quad.Fixed(f, -1, x, 40, quad.Legendre{}, 0)-sum(&b, x)))
		}
		require.GreaterOrEqual(t, misfit(&v), missed, name)
		require.LessOrEqual(t, misfit(&v), 100*missed, name)
	}
}
