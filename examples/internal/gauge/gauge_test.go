package gauge_test

import (
	"math"
	"testing"

	"completion.example/examples/internal/gauge"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestPossible(t *testing.T) {
	require.NoError(t, gauge.Possible("inside", 0))
	require.NoError(t, gauge.Possible("inside", -14*unit.PSI))
	require.ErrorContains(t, gauge.Possible("inside", -15*unit.PSI), "inside is -15 psi")
	require.Error(t, gauge.Possible("inside", unit.Pressure(math.NaN())))
}
