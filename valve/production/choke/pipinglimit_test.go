package choke

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// A coefficient so great in its bore that nothing is left of it between its pipes is refused, as is one for which the
// pipes have no factor at all.
func TestNoPipingFactor(t *testing.T) {
	trim := Trim{Coefficient: 10 * unit.Cv, Bore: 0.05, Upstream: 0.1, Downstream: 0.1}
	require.NoError(t, trim.check(false))
	trim.Coefficient = 1e200
	require.Zero(t, trim.PipingFactor())
	require.ErrorContains(t, trim.check(false), "has no piping factor; must be smaller")
}
