package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Two layers that meet between the depths at which a rating is looked at make
// its greatest differential where they meet: 2.2 lb/gal · 4/77 · 5,000 ft =
// 571.4 psi, by hand.
func TestRatingSeesTheCornerOfALayer(t *testing.T) {
	p := mini()
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "light", Density: unit.Exactly(6.6 * ppg)}, sequence.Fluid{Name: "heavy", Density: unit.Exactly(11.0 * ppg)})
	p.Compartments[1].Fluid = ""
	p.Compartments[1].Layers = []sequence.Layer{{Fluid: "light", ToMD: 5000 * foot}, {Fluid: "heavy", ToMD: 9000 * foot}}
	p.Ratings = []sequence.Rating{{Name: "pipe", Inside: "tubing", Outside: "annulus", ToMD: 9000 * foot, Burst: unit.Exactly(5000 * psi)}}
	p.Fluids[0].Density = unit.Exactly(8.8 * ppg)
	p.Steps = []sequence.Step{{Name: "rest"}}
	r := verdict(t, p)
	require.InDelta(t, 2.2*4/77*5000, r.Steps[0].Ratings[0].Burst.In(psi), 1e-6)
}
