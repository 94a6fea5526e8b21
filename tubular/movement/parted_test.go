package movement_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Above a joint that has parted hangs nothing: the wall force at its end is what the
// pressures do to the pin's ring and bore, by hand. With 3,000 psi inside over the
// annulus at the joint the bore of 5 in is pushed down on, and the wall carries the
// pressures inside and outside on its own areas.
func TestForceAboveAPartedJointUnderPressure(t *testing.T) {
	m := made(t, handAssembly(t))
	c := water(0, 0, 0, 0)
	s, err := m.Land(c)
	require.NoError(t, err)
	s, err = m.Part(s, 0)
	require.NoError(t, err)
	for _, inside := range []unit.Pressure{0, 3000 * unit.PSI} {
		l, err := m.Load(s, water(inside, 0, 0, 0))
		require.NoError(t, err)
		at := 0
		for i, n := range l.Nodes {
			if n.MD == jointAt {
				at = i
				break
			}
		}
		n := l.Nodes[at]
		ring := -inch2(jointBore) * inside.In(unit.PSI)
		require.InDelta(t, ring, lbf(n.Effective), 1e-3, "what is inside, less what is outside, on the joint's seal")
		require.InDelta(t, float64(n.Effective)+float64(n.Inside)*math.Pi/4*math.Pow(float64(handPipe.ID), 2)-float64(n.Outside)*math.Pi/4*math.Pow(float64(handPipe.OD), 2), float64(n.True), 1e-3)
	}
}
