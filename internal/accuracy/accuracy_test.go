package accuracy

import (
	"math"
	"testing"

	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// Every formula keeps its digits, and its limit isn't far above what it does.
func TestAccuracy(t *testing.T) {
	for _, r := range Run(200) {
		if !r.Met() {
			t.Errorf("%v", r)
		}
		if !r.loose && r.Worst < r.Limit/12 {
			t.Errorf("%v: the limit says nothing", r)
		}
	}
}

// The measure itself: a last place is a last place, worked out or searched for.
func TestDeviation(t *testing.T) {
	third := Formula{equation: "1/x"}
	root := Formula{equation: "y*y - x", answer: "y"}
	for _, c := range []struct {
		f    Formula
		got  float64
		x    float64
		want float64
	}{
		{third, 0.25, 4, 0},
		{third, 0.25 * (1 + 8*lastPlace), 4, 8},
		{root, 3, 9, 0},
		{root, 3 * (1 + 4*lastPlace), 9, 4},
		{root, 3 * (1 - 1000*lastPlace), 9, 1000},
	} {
		off, err := c.f.deviation(sample{got: c.got, of: precise.Values{"x": c.x}})
		require.NoError(t, err)
		require.InDelta(t, c.want, off, 0.51+1e-6*c.want, "%+v", c)
	}
	off, err := third.deviation(sample{got: 0.25 * (1 + 8*lastPlace), of: precise.Values{"x": 4}, scale: 1})
	require.NoError(t, err)
	require.InDelta(t, 2, off, 1e-9, "against another scale")
	off, err = third.deviation(sample{got: math.NaN()})
	require.NoError(t, err)
	require.True(t, math.IsInf(off, 1))
	_, err = third.deviation(sample{got: 1})
	require.Error(t, err, "no x")
}
