package drag

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// The march over three elements of unlike lengths, by hand: the force at an element's middle is foreseen by the change over
// the one below, in the ratio of their lengths; below the first by its own slope at the end.
func TestMarchOverUnevenElementsByHand(t *testing.T) {
	p := Prepared{elements: []element{
		{length: 10, weight: 1000, side: 400, build: 0.1, μ: 0.25},
		{length: 40, weight: 3800, side: 1700, build: 0.3, turn: 0.05, μ: 0.2},
		{length: 5, weight: 450, side: 220, build: -0.04, μ: 0.3},
	}}
	p.climb()
	for motion, sign := range map[Motion]float64{Pulled: 1, RunIn: -1} {
		const end = 20000.0
		d0 := 1000 + sign*0.25*math.Abs(400-end*0.1)
		middle := end + d0/2
		d1 := 1000 + sign*0.25*math.Abs(400-middle*0.1)
		f := end + d1
		middle = f + d1*40/10/2
		d2 := 3800 + sign*0.2*math.Hypot(1700-middle*0.3, middle*0.05)
		f += d2
		middle = f + d2*5/40/2
		f += 450 + sign*0.3*math.Abs(220+middle*0.04)
		require.InEpsilon(t, f, float64(p.HookLoad(motion, end)), 1e-14)
	}
}

// A friction may be the least or the greatest of its own band; a force between two depths needs two.
func TestFrictionOnTheEndsOfItsBand(t *testing.T) {
	s := bend(t)
	least, greatest := make([]float64, len(s.HoleSections)), make([]float64, len(s.HoleSections))
	for end, ok := range map[float64]bool{0: true, 1: true, -0.01: false, 1.01: false} {
		for k, z := range s.HoleSections {
			least[k] = z.Friction - 0.1*end
			greatest[k] = least[k] + 0.1
			if end == 1 {
				greatest[k] = z.Friction
			}
		}
		_, err := s.PrepareSpread(least, greatest)
		require.Equal(t, ok, err == nil, "%v: %v", end, err)
	}
	p, err := s.Prepare()
	require.NoError(t, err)
	none := func(unit.Length) unit.Force { return 0 }
	_, err = p.Along(Pulled, 100, 100, false, none)
	require.ErrorContains(t, err, "permitted a force between two depths from above")
	_, err = p.Along(Pulled, 100, 100.001, false, none)
	require.NoError(t, err)
}
