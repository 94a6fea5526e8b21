package hydrostatics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The fractions against the standard library's functions, on both sides of where they
// hand over; at zero the limits.
func TestSeries(t *testing.T) {
	near := func(want, got, x float64) {
		t.Helper()
		require.InEpsilon(t, want, got, 6e-16, "%v", x)
	}
	for x := 1e-12; x < 1; x *= 1.003 {
		for _, x := range []float64{x, -x} {
			near(-math.Expm1(-x)/x, shrink(x), x)
			near(-math.Log1p(-x)/x, swell(x), x)
			near(math.Exp(x), exp(x), x)
		}
	}
	for _, x := range []float64{gentle, math.Nextafter(gentle, 1), -gentle, math.Nextafter(-gentle, -1)} {
		near(-math.Expm1(-x)/x, shrink(x), x)
		near(-math.Log1p(-x)/x, swell(x), x)
		near(math.Exp(x), exp(x), x)
	}
	require.Equal(t, 1.0, exp(0))
	require.Zero(t, exp(math.Inf(-1)))
	require.Equal(t, 1.0, shrink(0))
	require.Equal(t, 1.0, swell(0))
	for _, f := range []func(float64) float64{shrink, swell, exp} {
		require.True(t, math.IsNaN(f(math.NaN())))
	}
	require.True(t, math.IsInf(swell(1), 1), "a column without end")
}
