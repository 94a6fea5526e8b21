package flow_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// What stands in the pipe comes to the outlet when the annulus has been swept, or pumped the other way what stands in
// the annulus when the pipe has.
func TestWhatStoodBeforeComesToTheOutlet(t *testing.T) {
	ring := func(outer, inner, length float64) float64 { return math.Pi / 4 * (outer*outer - inner*inner) * length }
	for _, reverse := range []bool{false, true} {
		d := followed()
		d.InAnnulus.Name = "packer fluid"
		d.Reverse = reverse
		want, name := ring(0.22, 0.127, 900)+ring(0.2, 0.1, 1000), "old at the outlet"
		if reverse {
			want, name = ring(0.11, 0, 1200)+ring(0.08, 0, 700), "packer fluid at the outlet"
		}
		s, err := d.Schedule()
		require.NoError(t, err)
		found := false
		for _, e := range s.Events {
			if e.What == name {
				found = true
				require.InDelta(t, want, float64(e.Volume), 1e-9)
			}
		}
		require.True(t, found, "%v", s.Events)
	}
}
