package valve_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"github.com/stretchr/testify/require"
)

// A ramp that just comes to the nearest a trigger may fire at may fire it; one that stays short of it moves nothing,
// whatever it was before.
func TestJustAtTheNearestThreshold(t *testing.T) {
	row := valve.Row{{Threshold: unit.Within(3000*unit.PSI, 0.05), Rearm: unit.Exactly(500 * unit.PSI), Count: 2}}
	var s valve.TriggerState
	for range 2 { // may have met it twice
		s = row.Ramp(s, 0, 2900*unit.PSI).State
		s = row.Ramp(s, 2900*unit.PSI, 0).State
	}
	require.Equal(t, valve.Unknown, row.Condition(s))
	near := row[0].Near()
	require.Equal(t, valve.MayFire, row.Ramp(s, 0, near).Verdict)
	require.Equal(t, valve.MayHaveFired, row.Ramp(s, 0, unit.Pressure(math.Nextafter(float64(near), 0))).Verdict)
}
