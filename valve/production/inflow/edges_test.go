package inflow

import (
	"errors"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// No zone gives or takes an infinite rate.
func TestInfiniteRates(t *testing.T) {
	g := GasDeliverability{Reservoir: 200e5, OpenFlow: 10, Exponent: 0.8}
	l := LiquidDeliverability{Reservoir: 200e5, Index: 1e-9}
	for _, rate := range []float64{math.Inf(1), math.Inf(-1), math.NaN()} {
		_, err := g.Pressure(unit.FlowRate(rate))
		require.ErrorIs(t, err, ErrBeyondOpenFlow, "%v", rate)
		_, err = l.Pressure(unit.FlowRate(rate))
		require.ErrorIs(t, err, ErrBeyondOpenFlow, "%v", rate)
	}
	require.False(t, finite(math.Inf(-1)))
	require.False(t, finite(math.Inf(1)))
	require.True(t, finite(0))
	same := Test{Flowing: 100e5, Rate: 1}
	_, err := GasFromTests(200e5, same, same)
	require.ErrorContains(t, err, "all have the same flowing pressure")
	_, err = GasFromTests(200e5)
	require.NotContains(t, err.Error(), "all have the same")
	_, err = GasFromTests(200e5, same)
	require.ErrorContains(t, err, "has 1 rates")
	require.NotContains(t, err.Error(), "all have the same", "one is told once")
}

// A test may flow at no gauge pressure, and must flow below the reservoir's.
func TestFlowingPressureOnItsLimits(t *testing.T) {
	const reservoir = 200e5
	for flowing, ok := range map[unit.Pressure]bool{0: true, -1: false, reservoir: false, reservoir - 1: true} {
		_, err := LiquidFromTest(reservoir, 0, flowing, 0.001)
		require.Equal(t, !ok, errors.Is(err, ErrNoDrawdown), "%v: %v", flowing, err)
		_, err = GasFromTests(reservoir, Test{Flowing: 100e5, Rate: 1}, Test{Flowing: flowing, Rate: 1.5})
		require.Equal(t, !ok, errors.Is(err, ErrNoDrawdown), "%v: %v", flowing, err)
	}
}
