package drag

import (
	"math"
	"testing"

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
