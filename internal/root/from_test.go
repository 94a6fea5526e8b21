package root_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/internal/root"
)

// exp(x) = 2 at ln 2, and as exactly where the start or the slope is far off.
func TestFrom(t *testing.T) {
	f := func(x float64) (float64, error) { return math.Exp(x) - 2, nil }
	for _, c := range [][2]float64{{0.7, 2}, {0, 1}, {3, 20}, {-3, 1e-3}, {0.6, 1e9}} {
		x, err := root.From(f, c[0], c[1], -4, 4)
		require.NoError(t, err)
		require.InDelta(t, math.Ln2, x, 1e-12, "from %v", c)
	}
}

func TestFromWhereTheFunctionHasNoValue(t *testing.T) {
	broken := errors.New("broken")
	_, err := root.From(func(float64) (float64, error) { return 0, broken }, 0, 1, -1, 1)
	require.ErrorIs(t, err, broken)
	outside := func(x float64) (float64, error) {
		if math.Abs(x) > 1 {
			return 0, broken
		}
		return x - 0.5, nil
	}
	x, err := root.From(outside, 0, 0.01, -1, 1) // the first step leaves the range
	require.NoError(t, err)
	require.InDelta(t, 0.5, x, 1e-12)
	_, err = root.From(func(x float64) (float64, error) { return x*x + 1, nil }, 0, 1, -1, 1)
	require.ErrorIs(t, err, root.ErrNotBracketed)
}
