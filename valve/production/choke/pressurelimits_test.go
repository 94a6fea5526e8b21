package choke

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// A pressure may be from vacuum up to the greatest, both included.
func TestPressuresOnTheirLimits(t *testing.T) {
	for p, ok := range map[unit.Pressure]bool{mostPressure: true, unit.Pressure(math.Nextafter(float64(mostPressure), math.Inf(1))): false} {
		_, _, err := pressures(p, 0)
		if ok {
			require.NoError(t, err)
		} else {
			require.ErrorContains(t, err, "upstream: is ")
		}
	}
}
