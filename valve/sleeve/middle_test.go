package sleeve

import (
	"testing"

	"completion.example/fluid/confined"
	"github.com/stretchr/testify/require"
)

// The nominal force lies in the middle of its band, and the pressure of a leg in the
// middle of its window; a blocked line rises by the volume pressed into it over what
// it and its liquid give.
func TestMiddlesAndRises(t *testing.T) {
	p := piston{ao: 2e-3, ac: 2e-3, low: 1e6, high: 3e6}
	c := closeLine{low: 0.5e6, high: 2e6}
	f := p.effect(Closed, &c).Force
	require.InEpsilon(t, 2e-3*(1e6-2e6), float64(f.Least), 1e-12)
	require.InEpsilon(t, 2e-3*(3e6-0.5e6), float64(f.Greatest), 1e-12)
	require.InEpsilon(t, 2e-3*(1e6-2e6+3e6-0.5e6)/2, float64(f.Nominal), 1e-12)

	s := well(2)
	legs, err := s.Plan(Route{From: []Position{Closed, Closed}, To: []Position{Open, Closed}, Surface: surface})
	require.NoError(t, err)
	for _, l := range legs {
		require.InEpsilon(t, float64(l.Window.Least+l.Window.Greatest)/2, float64(l.Pressure), 1e-12)
	}
	require.InEpsilon(t, float64(s.CloseLine.Volume())*float64(s.Liquid.Compressibility+s.CloseLine.WallCompliance(confined.EndsFixed)), s.softness(s.CloseLine), 1e-12)
	require.Zero(t, rise(0, 5))
	require.Equal(t, 6.0, rise(2, 3))
}

// A sleeve that opens against a blocked close line presses its stroke's volume into
// it: the line rises by that over what it gives.
func TestBlockedCloseLineRises(t *testing.T) {
	s := well(1)
	s.Sleeves[0].Stroke = 1e-4
	e, err := s.Apply([]Position{Closed}, Panel{Open: []Setting{on(3000)}, Close: Setting{Mode: Blocked}})
	require.NoError(t, err)
	vented, err := s.Apply([]Position{Closed}, Panel{Open: []Setting{on(3000)}, Close: Setting{}})
	require.NoError(t, err)
	ac := float64(s.Sleeves[0].CloseArea)
	want := float64(vented[0].Force.Least) - ac*ac*1e-4/s.softness(s.CloseLine)
	require.InEpsilon(t, want, float64(e[0].Force.Least), 1e-12)
}
