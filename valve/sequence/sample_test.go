package sequence_test

import (
	"context"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

func sample(t testing.TB, p *sequence.Plan, u sequence.Uncertainty) *sequence.Risk {
	t.Helper()
	r, err := sequence.Sample(context.Background(), p, u)
	require.NoError(t, err)
	return r
}

// A threshold drawn evenly from 3,000 to 3,400 psi, tried with 3,100 psi: one
// in four moves.
func evenly() *sequence.Plan {
	p := mini()
	p.Fluids[1].Density = p.Fluids[0].Density
	p.Devices = nil
	device(p, "valve", 9000*foot, rising(3000*psi, 3400*psi))
	p.Steps = []sequence.Step{{Name: "test", Ramps: []map[string]unit.Pressure{{"tubing": 3100 * psi}}}}
	return p
}

func TestSampleMeetsTheExactProbability(t *testing.T) {
	r := sample(t, evenly(), sequence.Uncertainty{Samples: 4000, Seed: 7, Even: true})
	require.Less(t, r.Fails.Least, 0.25)
	require.Greater(t, r.Fails.Greatest, 0.25)
	require.InDelta(t, 0.25, r.Fails.Value, 0.03)
	require.Len(t, r.Events, 1)
	require.Equal(t, "valve: moves", r.Events[0].Device)
	require.Equal(t, sequence.Unintended, r.Events[0].Kind)
	// It alone decides: a quarter of the draws are three of twelve bins.
	require.Len(t, r.Inputs, 1)
	require.InDelta(t, 1, r.Inputs[0].Share, 0.05)
}

// phi is the standard normal distribution; the default draws are from it, with the band
// at two standard deviations either way, cut off.
func phi(x float64) float64 { return 0.5 * math.Erfc(-x/math.Sqrt2) }

func TestSampleOfTheDefaultDistribution(t *testing.T) {
	r := sample(t, evenly(), sequence.Uncertainty{Samples: 4000, Seed: 3})
	exact := (phi(-1) - phi(-2)) / (phi(2) - phi(-2))
	require.Less(t, r.Fails.Least, exact)
	require.Greater(t, r.Fails.Greatest, exact)
}

// An exact threshold of 3,000 psi tried with 3,050 psi on a gauge that is off by up to
// 200 psi: it stays shut below -50 psi, half a standard deviation.
func TestSampleOfTheGauge(t *testing.T) {
	p := evenly()
	p.Rules.Gauge = unit.Band[unit.Pressure]{Least: -200 * psi, Greatest: 200 * psi}
	p.Devices[0].Actions[0].Triggers[0] = sequence.Trigger{Threshold: unit.Exactly(3000 * psi)}
	p.Steps[0].Ramps[0]["tubing"] = 3050 * psi
	p.Steps[0].Expect = []string{"valve: moves"}
	r := sample(t, p, sequence.Uncertainty{Samples: 4000, Seed: 5})
	exact := (phi(-0.5) - phi(-2)) / (phi(2) - phi(-2))
	require.Less(t, r.Fails.Least, exact)
	require.Greater(t, r.Fails.Greatest, exact)
	require.Equal(t, sequence.Missing, r.Events[0].Kind)
}

// A valve that opens only where a shutter moves at 2,150 to 2,180 psi of its 1,800 to
// 2,200: 30 of 400, and the shutter is what decides it, though neither end does.
func TestSampleOfTheMiddleOfABand(t *testing.T) {
	r := sample(t, limitPlan(t, "relief-opens-in-the-middle-of-a-band"), sequence.Uncertainty{Samples: 4000, Seed: 9, Even: true})
	require.Less(t, r.Fails.Least, 0.075)
	require.Greater(t, r.Fails.Greatest, 0.075)
	require.Len(t, r.Inputs, 1)
	require.Contains(t, r.Inputs[0].Input, "shutter")
	require.Greater(t, r.Inputs[0].Share, 0.3)
}

// What is proved fails in no draw; what fails with every value fails in all.
func TestSampleAgreesWithTheVerdict(t *testing.T) {
	r := sample(t, demoPlan(t), sequence.Uncertainty{Samples: 500, Seed: 1})
	require.Zero(t, r.Fails.Value)
	for _, name := range []string{"body-opens-past-its-rating", "opens-closes-opens", "column-falls-when-shut-in"} {
		r := sample(t, limitPlan(t, name), sequence.Uncertainty{Samples: 50, Seed: 1})
		require.Equal(t, 1.0, r.Fails.Value, name)
		require.Zero(t, r.Unwalked)
	}
}

func TestSampleDoesNotDependOnTheWorkers(t *testing.T) {
	u := sequence.Uncertainty{Samples: 300, Seed: 11, Workers: 1}
	p := mini()
	p.Steps[0].Ramps[0]["tubing"] = 3100 * psi
	one := sample(t, p, u)
	u.Workers = 7
	require.Empty(t, cmp.Diff(one, sample(t, p, u)))
	require.Positive(t, one.Fails.Value)
	require.Less(t, one.Fails.Value, 1.0)
}

func TestSampleRefusesNonsense(t *testing.T) {
	_, err := sequence.Sample(context.Background(), mini(), sequence.Uncertainty{Workers: -1})
	require.ErrorContains(t, err, "samples is 0")
	require.ErrorContains(t, err, "workers is -1")
	p := mini()
	p.Steps = nil
	_, err = sequence.Sample(context.Background(), p, sequence.Uncertainty{Samples: 1})
	require.Error(t, err)
	_, err = sequence.Sample(context.Background(), nil, sequence.Uncertainty{Samples: 1})
	require.Error(t, err)
}

// 50 of 100 is 40.38 to 59.62 %: the figure that statistics programs print for
// this interval (from memory).
func TestWilsonInterval(t *testing.T) {
	p := evenly()
	p.Devices[0].Actions[0].Triggers[0] = rising(3000*psi, 3200*psi)
	for seed := range uint64(200) {
		r := sample(t, p, sequence.Uncertainty{Samples: 100, Seed: seed, Even: true})
		if r.Fails.Value == 0.5 {
			require.InDelta(t, 0.4038, r.Fails.Least, 5e-5)
			require.InDelta(t, 0.5962, r.Fails.Greatest, 5e-5)
			return
		}
	}
	require.Fail(t, "no seed gave half")
}

func BenchmarkSample(b *testing.B) {
	p := demoPlan(b)
	for b.Loop() {
		sample(b, p, sequence.Uncertainty{Samples: 1000, Seed: 1})
	}
}
