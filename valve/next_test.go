package valve

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestNextFollowsARow(t *testing.T) {
	r := Row{
		{Threshold: unit.Exactly(3000 * unit.PSI), Count: 2, Rearm: unit.Exactly(500 * unit.PSI)},
		{Threshold: unit.Exactly(200 * unit.PSI), Direction: Falling},
	}
	var s TriggerState
	for i, want := range []struct {
		at unit.Pressure
		d  Direction
	}{
		{3000 * unit.PSI, Rising}, {500 * unit.PSI, Falling}, {3000 * unit.PSI, Rising}, {200 * unit.PSI, Falling},
	} {
		at, d, ok := r.Next(s)
		require.True(t, ok)
		require.Equal(t, want.at, at, "level %d", i)
		require.Equal(t, want.d, d, "level %d", i)
		s = r.Ramp(s, at, at).State
	}
	_, _, ok := r.Next(s)
	require.False(t, ok)
}
