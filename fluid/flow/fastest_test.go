package flow_test

import (
	"fmt"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// running is the moving pipe of a published example (Lapeyrouse, Formulas and
// Calculations, chapter 5): 716 psi at a mean speed of 270 ft/min, the annulus taken
// for a slot.
func running() flow.Trip {
	return flow.Trip{Liquid: flow.PumpedFluid{Name: "mud", Density: 15 * unit.PoundPerGallon, Rheology: flow.PowerLaw(0.522*unit.PoundForceSecondNPer100SquareFeet, 0.8069)}, Cling: 0.45,
		Annulus: []flow.ConduitSection{{Name: "annulus", Conduit: flow.Conduit{Outer: 7.875 * unit.Inch, Inner: 4.5 * unit.Inch}, Length: 14300 * unit.Foot, BottomTVD: 14300 * unit.Foot}}}
}

func TestFastestIsTheInverseOfSolve(t *testing.T) {
	trip := running()
	v, err := trip.Fastest(716 * unit.PSI)
	require.NoError(t, err)
	require.InDelta(t, 270, v.In(unit.FootPerMinute), 3, "printed 270 ft/min; the exact annulus gives 713 psi there")
	trip.Speed = v
	s, err := trip.Solve()
	require.NoError(t, err)
	require.InDelta(t, 716, s.Loss.In(unit.PSI), 1e-6)

	half, err := trip.Fastest(358 * unit.PSI)
	require.NoError(t, err)
	require.InEpsilon(t, 0.42, float64(half/v), 0.02, "a power law of 0.81: half the pressure at 0.5^(1/0.81) of the speed")

	all, err := trip.Fastest(1e9 * unit.Pascal)
	require.NoError(t, err)
	require.Equal(t, 20*unit.MetrePerSecond, all)
}

func TestFastestFaults(t *testing.T) {
	trip := running()
	trip.Liquid.Rheology = flow.Bingham(10*unit.Centipoise, 10*unit.Pascal)
	_, err := trip.Fastest(5 * unit.PSI)
	require.ErrorIs(t, err, flow.ErrNoSpeed)
	_, err = trip.Fastest(-1 * unit.PSI)
	require.ErrorContains(t, err, "allowed")
	trip.Cling = 2
	_, err = trip.Fastest(100 * unit.PSI)
	require.ErrorContains(t, err, "Cling")
}

func ExampleTrip_Fastest() {
	v, err := running().Fastest(500 * unit.PSI)
	fmt.Printf("%.0f ft/min %v\n", v.In(unit.FootPerMinute), err)
	// Output:
	// 174 ft/min <nil>
}
