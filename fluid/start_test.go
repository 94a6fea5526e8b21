package fluid

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// The search for a gas's density starts within 4 % of it as a rule.
func TestZFactorStartsNear(t *testing.T) {
	var off []float64
	for tpr := 1.05; tpr <= 3; tpr *= 1.05 {
		s := newIsotherm(tpr)
		for ppr := 0.05; ppr <= 30; ppr *= 1.2 {
			r := zCritical * ppr * s.u
			off = append(off, math.Abs(s.start(r)/s.density(r)-1))
		}
	}
	slices.Sort(off)
	// Half of them within 1.1 %, four of five within 2.6 %; near the critical point one is half as much off.
	require.Less(t, off[len(off)/2], 0.011)
	require.Less(t, off[len(off)*8/10], 0.026)
	require.Less(t, off[len(off)*9/10], 0.035)
	require.Less(t, off[len(off)-1], 0.5)
}
