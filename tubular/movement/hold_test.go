package movement

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// A string of 4 m/MN whose helix takes 0.5 m/MN² off it, with the answers of the
// quadratic by hand.
func TestHoldByTangentsAndByBracketAgree(t *testing.T) {
	const compliance, squeeze = 4e-6, 0.5e-12
	buckling := func(f, ff float64) float64 { return -squeeze * math.Pow(max(0, ff-f), 2) }
	for _, ff := range []float64{-1e6, 0, 2e5, 3e6} {
		for _, free := range []float64{-7, -1e-6, 1e-9, 0.3, 12} {
			calls := 0
			steep := func(f float64) (float64, float64) {
				calls++
				return free + compliance*f + buckling(f, ff) - buckling(0, ff), compliance + 2*squeeze*max(0, ff-f)
			}
			blind := func(f float64) (float64, float64) { x, _ := steep(f); return x, math.NaN() }
			a, motion, err := hold(free, steep, 0, 0, compliance)
			require.NoError(t, err)
			require.Zero(t, motion)
			require.LessOrEqual(t, calls, 9, "free %g, ff %g", free, ff)
			b, _, err := hold(free, blind, 0, 0, compliance)
			require.NoError(t, err)
			require.InDelta(t, b, a, 1e-6, "free %g, ff %g", free, ff)
			x, _ := steep(a)
			require.InDelta(t, 0, x, 1e-12)
		}
	}
}

func TestHoldSaysWhyNot(t *testing.T) {
	stubborn := func(float64) (float64, float64) { return 1, math.NaN() }
	_, _, err := hold(1, stubborn, 0, 0, 1e-6)
	require.ErrorIs(t, err, ErrNoRest)
	// Between the stops nothing holds.
	f, motion, err := hold(1, stubborn, -2, 2, 1e-6)
	require.NoError(t, err)
	require.Zero(t, f)
	require.Equal(t, 1.0, motion)
}
