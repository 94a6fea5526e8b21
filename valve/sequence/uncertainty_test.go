package sequence_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

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
	r, err := sequence.Sample(evenly(), sequence.Uncertainty{Samples: 4000, Seed: 7, Even: true})
	require.NoError(t, err)
	require.Less(t, r.Fails.Least, 0.25)
	require.Greater(t, r.Fails.Greatest, 0.25)
	require.InDelta(t, 0.25, r.Fails.Value, 0.03)
	require.Len(t, r.Events, 1)
	require.Equal(t, "valve: moves", r.Events[0].Action)
	require.Equal(t, "threshold of “valve: moves”", r.Inputs[0].Input)
	// Of a threshold in units of half its band, even over (-1, 1), and failing
	// below -1/2: cov = -3/16, variances 1/3 and 3/16, so -3/4.
	require.InDelta(t, -0.75, r.Inputs[0].Correlation, 0.03)
}

// The default: a normal of which the band is two standard deviations either
// way, cut off. P(z < -1) within ±2 is (Φ(-1) - Φ(-2)) / (Φ(2) - Φ(-2)).
func TestSampleOfTheDefaultDistribution(t *testing.T) {
	r, err := sequence.Sample(evenly(), sequence.Uncertainty{Samples: 4000, Seed: 3})
	require.NoError(t, err)
	phi := func(x float64) float64 { return 0.5 * math.Erfc(-x/math.Sqrt2) }
	exact := (phi(-1) - phi(-2)) / (phi(2) - phi(-2))
	require.Less(t, r.Fails.Least, exact)
	require.Greater(t, r.Fails.Greatest, exact)
}

func TestSampleDoesNotDependOnTheWorkers(t *testing.T) {
	u := sequence.Uncertainty{Samples: 300, Seed: 11, Density: 0.01, Formation: 50 * psi, Gauge: 40 * psi, Temperature: 5 * unit.FahrenheitDifference}
	p := mini()
	p.Steps[0].Ramps[0]["tubing"] = 3100 * psi
	u.Workers = 1
	one, err := sequence.Sample(p, u)
	require.NoError(t, err)
	u.Workers = 7
	seven, err := sequence.Sample(p, u)
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(one, seven))
	require.Positive(t, one.Fails.Value)
	require.Less(t, one.Fails.Value, 1.0)
}

// An exact threshold of 3,000 psi tried with 3,050 psi on a gauge that is off
// by 100 psi (one standard deviation): it stays shut with P(z < -0.5) = 0.3085.
func TestSampleOfTheGauge(t *testing.T) {
	p := evenly()
	p.Devices[0].Actions[0].Triggers[0] = sequence.Trigger{Threshold: unit.Exactly(3000 * psi)}
	p.Steps[0].Ramps[0]["tubing"] = 3050 * psi
	p.Steps[0].Expect = []string{"valve: moves"}
	r, err := sequence.Sample(p, sequence.Uncertainty{Samples: 4000, Seed: 5, Gauge: 100 * psi})
	require.NoError(t, err)
	require.Less(t, r.Fails.Least, 0.3085)
	require.Greater(t, r.Fails.Greatest, 0.3085)
	require.Equal(t, "gauge", r.Inputs[0].Input)
}

func TestSampleRefusesNonsense(t *testing.T) {
	_, err := sequence.Sample(mini(), sequence.Uncertainty{Density: math.NaN(), Formation: -1, Workers: -1})
	require.ErrorContains(t, err, "samples is 0")
	require.ErrorContains(t, err, "density is NaN")
	require.ErrorContains(t, err, "formation is")
	require.ErrorContains(t, err, "workers is -1")
	p := mini()
	p.Steps = nil
	_, err = sequence.Sample(p, sequence.Uncertainty{Samples: 1})
	require.Error(t, err)
}

// 50 of 100 is 40.38 to 59.62 %: the figure that statistics programs print for
// this interval (from memory).
func TestWilsonInterval(t *testing.T) {
	p := evenly()
	p.Devices[0].Actions[0].Triggers[0] = rising(3000*psi, 3200*psi)
	for seed := range uint64(200) {
		r, err := sequence.Sample(p, sequence.Uncertainty{Samples: 100, Seed: seed, Even: true})
		require.NoError(t, err)
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
		if _, err := sequence.Sample(p, sequence.Uncertainty{Samples: 32, Seed: 1}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCheckDemo(b *testing.B) {
	p := demoPlan(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := sequence.Check(p); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkWalkDemo is one world through all steps of the demo plan, by events
// alone: what each draw of Sample costs.
func BenchmarkWalkDemo(b *testing.B) {
	p := demoPlan(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := sequence.Sample(p, sequence.Uncertainty{Samples: 1, Seed: 1, Workers: 1}); err != nil {
			b.Fatal(err)
		}
	}
}
