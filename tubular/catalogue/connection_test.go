package catalogue_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"github.com/stretchr/testify/require"
)

// TestConnection: non-upset 4-1/2 in 12.6 lb/ft L80 by hand, threads 0.07125 in
// high: 80,000 psi × π/4 × ((4.5 - 0.1425)² - 3.958²) in² = 208,730 lbf, of a body
// of 288,036 lbf. The tables that print it have 209,000 lbf (to 1,000 lbf; memory).
func TestConnection(t *testing.T) {
	l80, err := catalogue.FindGrade("L80")
	require.NoError(t, err)
	c := find(t, 4.5*unit.Inch, 12.6*unit.PoundPerFoot)
	c.Finish = catalogue.NonUpset
	joint := c.Connection(l80)
	require.True(t, joint.Known())
	require.InDelta(t, 208730, joint.Tension.In(unit.PoundForce), 5)
	require.InDelta(t, 288036, c.Pipe(l80).BodyYield().In(unit.PoundForce), 5)
	require.Equal(t, []string{"compression", "internal pressure", "external pressure", "triaxial share"}, joint.Unknown())

	c.Finish = catalogue.ExternalUpset
	require.Equal(t, c.Pipe(l80).BodyYield(), c.Connection(l80).Tension)
	for _, finish := range []catalogue.Finish{catalogue.IntegralJoint, catalogue.Threaded, catalogue.PlainEnd} {
		c.Finish = finish
		require.False(t, c.Connection(l80).Known(), finish)
	}
}
