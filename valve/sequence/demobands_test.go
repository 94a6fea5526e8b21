package sequence

import (
	"context"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
	"github.com/stretchr/testify/require"
)

// wideDemo is the demo with a tolerance on everything that may have one.
func wideDemo(t *testing.T, share float64) *Plan {
	t.Helper()
	data, err := os.ReadFile("../../examples/installation/plans/demo.json")
	require.NoError(t, err)
	p, err := Read(data)
	require.NoError(t, err)
	for i := range p.Fluids {
		p.Fluids[i].Density = unit.Within(p.Fluids[i].Density.Nominal, share)
	}
	for i := range p.Formations {
		f := &p.Formations[i]
		f.Pressure, f.Fracture = unit.Within(f.Pressure.Nominal, 2*share), unit.Within(f.Fracture.Nominal, 2*share)
	}
	for i := range p.Ratings {
		p.Ratings[i].Burst = unit.Within(p.Ratings[i].Burst.Nominal, share)
	}
	off := unit.Pressure(5000*share) * unit.PSI
	p.Rules.Gauge = unit.Band[unit.Pressure]{Least: -off, Greatest: off}
	for i := range p.Devices {
		p.Devices[i].Error = unit.Band[unit.Length]{Least: -2 * unit.Foot, Greatest: 2 * unit.Foot}
	}
	p.Devices[0].Actions[1].Bites = "starts to set"
	heat := unit.TemperatureDifference(2000*share) * unit.FahrenheitDifference
	p.Well.Errors = map[string]unit.Band[unit.TemperatureDifference]{
		"producing": {Least: -heat, Greatest: heat}, Undisturbed: {Least: -heat, Greatest: heat}}
	return p
}

// What is enclosed, and not exact, must hold all the same: with the string, the
// gauges, depths and temperatures uncertain at once, no draw falls below the least
// margin that the walk in all choices gives for it. Draws are walked with plain
// numbers by the engine itself: the plain walker of the other tests knows no string.
func TestNoDrawFallsBelowAMargin(t *testing.T) {
	t.Parallel()
	p := wideDemo(t, 0.003)
	c, err := p.compiled()
	require.NoError(t, err)
	k := &checker{compiled: c, ctx: context.Background(), programme: &Programme{}}
	k.Producing = k.rates
	require.NoError(t, k.walkNominal())
	k.peaks()
	out, err := k.Prove(k.ctx, proof.Options{})
	require.NoError(t, err)
	require.Empty(t, out.Failures)
	random := rand.New(rand.NewPCG(3, 1))
	margins := 0
	for n := range 24 {
		e := make([]float64, len(c.Network.Symbols))
		for i := range e {
			if e[i] = 2*random.Float64() - 1; n%2 == 0 {
				e[i] = math.Copysign(1, e[i])
			}
		}
		run, err := c.At(e).Walk(k.ctx, affine.Box(0, nil), proof.Options{})
		require.NoError(t, err)
		require.Empty(t, run.Judge.Passed())
		for key, m := range run.Judge.Margins {
			all := out.Judge.Margins[key]
			require.NotNil(t, all, "%v", key)
			require.GreaterOrEqual(t, m.Least, all.Least-1e-3-1e-9*math.Abs(all.Least), "%v of draw %d", key, n)
			margins++
		}
	}
	require.Greater(t, margins, 10_000)
}
