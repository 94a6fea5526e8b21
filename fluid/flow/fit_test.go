package flow_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// stressPerDegree is the constant of API RP 13D (3rd ed.): 5.11 dyn/cm².
const stressPerDegree = 0.511

func readings(r flow.Rheology, speeds ...float64) []flow.Reading {
	var all []flow.Reading
	for _, s := range speeds {
		x := flow.Reading{Speed: s}
		x.Dial = float64(r.Stress(x.Rate())) / stressPerDegree
		all = append(all, x)
	}
	return all
}

var six = []float64{600, 300, 200, 100, 6, 3}

func TestFitFindsWhatMadeTheReadings(t *testing.T) {
	for _, c := range []struct {
		model flow.Model
		r     flow.Rheology
	}{
		{flow.ModelNewtonian, flow.Newtonian(20 * unit.Centipoise)},
		{flow.ModelBingham, flow.Bingham(20*unit.Centipoise, 5)},
		{flow.ModelPowerLaw, flow.PowerLaw(0.8, 0.5)},
		{flow.ModelHerschelBulkley, mud},
		{flow.ModelHerschelBulkley, flow.Rheology{Yield: 0.5, Consistency: 3, Index: 0.3}},
		{flow.ModelHerschelBulkley, flow.Rheology{Yield: 12, Consistency: 0.05, Index: 0.95}},
	} {
		fit, err := flow.Fit(c.model, readings(c.r, six...))
		require.NoError(t, err)
		require.InDelta(t, float64(c.r.Yield), float64(fit.Rheology.Yield), 1e-5, "%v", c.r)
		near(t, float64(c.r.Consistency), float64(fit.Rheology.Consistency), 1e-5, c.r)
		near(t, c.r.Index, fit.Rheology.Index, 1e-6, c.r)
		require.InDelta(t, 1, fit.R2, 1e-10)
		require.Less(t, float64(fit.RMS), 1e-5)
		require.False(t, fit.AtBound)
		require.Len(t, fit.Residuals, 6)
	}
}

// A finer law never fits worse; the best is a least square: a step aside is worse.
func TestFitIsALeastSquare(t *testing.T) {
	api := []flow.Reading{{Speed: 600, Dial: 53}, {Speed: 300, Dial: 34}, {Speed: 200, Dial: 27.5}, {Speed: 100, Dial: 21}, {Speed: 6, Dial: 9}, {Speed: 3, Dial: 8}}
	sum := func(r flow.Rheology) (s float64) {
		for _, x := range api {
			d := float64(x.Stress() - r.Stress(x.Rate()))
			s += d * d
		}
		return s
	}
	rms := map[flow.Model]unit.Pressure{}
	for _, m := range flow.Models() {
		fit, err := flow.Fit(m, api)
		require.NoError(t, err)
		rms[m] = fit.RMS
		near(t, math.Sqrt(sum(fit.Rheology)/6), float64(fit.RMS), 1e-12)
		r := fit.Rheology
		for _, step := range []float64{1 - 1e-3, 1 + 1e-3} {
			aside := r
			aside.Consistency *= unit.Consistency(step)
			require.Greater(t, sum(aside), sum(r), m)
			if m == flow.ModelPowerLaw || m == flow.ModelHerschelBulkley {
				aside = r
				aside.Index *= step
				require.Greater(t, sum(aside), sum(r), m)
			}
			if r.Yield > 0 {
				aside = r
				aside.Yield *= unit.Pressure(step)
				require.Greater(t, sum(aside), sum(r), m)
			}
		}
	}
	require.Less(t, rms[flow.ModelHerschelBulkley], rms[flow.ModelBingham])
	require.Less(t, rms[flow.ModelHerschelBulkley], rms[flow.ModelPowerLaw])
	require.Less(t, rms[flow.ModelBingham], rms[flow.ModelNewtonian])
}

func TestFitKeepsItsBounds(t *testing.T) {
	// Readings that rise ever faster would want a yield stress below zero.
	fit, err := flow.Fit(flow.ModelBingham, []flow.Reading{{Speed: 600, Dial: 60}, {Speed: 300, Dial: 20}, {Speed: 100, Dial: 3}})
	require.NoError(t, err)
	require.True(t, fit.AtBound)
	require.Zero(t, fit.Rheology.Yield)
	// Readings that fall with speed: no K above zero fits.
	fit, err = flow.Fit(flow.ModelHerschelBulkley, []flow.Reading{{Speed: 600, Dial: 5}, {Speed: 300, Dial: 10}, {Speed: 3, Dial: 30}})
	require.NoError(t, err)
	require.True(t, fit.AtBound)
	require.NoError(t, fit.Rheology.Validate())
	require.Less(t, fit.R2, 0.1)
	// As many readings as constants: no freedom left.
	fit, err = flow.Fit(flow.ModelHerschelBulkley, readings(mud, 600, 300, 3))
	require.NoError(t, err)
	require.Zero(t, fit.Freedom)
}

func TestFitErrors(t *testing.T) {
	_, err := flow.Fit(flow.ModelHerschelBulkley, []flow.Reading{{Speed: 600, Dial: 50}, {Speed: -3, Dial: math.NaN()}})
	require.ErrorContains(t, err, "readings[1].Speed: is -3 rev/min")
	require.ErrorContains(t, err, "readings[1].Dial: is NaN degrees")
	require.ErrorContains(t, err, "2 different speeds; must have, for a herschel-bulkley fluid, at least 3")
	_, err = flow.Fit(flow.Model(7), nil)
	require.ErrorContains(t, err, "must be a rheological model")
}

// Scattered readings come out near what made them: of 200 fits, the mean.
func TestFitUnderScatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	var n float64
	for range 200 {
		all := readings(mud, six...)
		for i := range all {
			all[i].Dial += 0.3 * rng.NormFloat64()
		}
		fit, err := flow.Fit(flow.ModelHerschelBulkley, all)
		require.NoError(t, err)
		n += fit.Rheology.Index / 200
	}
	require.InDelta(t, mud.Index, n, 0.01)
}

func TestTwoPoints(t *testing.T) {
	fast, slow := flow.Reading{Speed: 600, Dial: 53}, flow.Reading{Speed: 300, Dial: 34}
	// By hand: PV 19 cP, YP 15 lbf/100 ft².
	near(t, 19, flow.PlasticViscosity(53, 34).In(unit.Centipoise), 1e-14)
	near(t, 15, flow.YieldPoint(53, 34).In(unit.PoundForcePer100SquareFeet), 1e-14)
	b, err := flow.TwoPointBingham(fast, slow)
	require.NoError(t, err)
	near(t, 19e-3, float64(b.Consistency), 1e-12)
	near(t, 15*0.511, float64(b.Yield), 1e-12)
	p, err := flow.TwoPointPowerLaw(fast, slow)
	require.NoError(t, err)
	for _, r := range []flow.Rheology{b, p} {
		near(t, 53*0.511, float64(r.Stress(fast.Rate())), 1e-12)
		near(t, 34*0.511, float64(r.Stress(slow.Rate())), 1e-12)
	}
	b, err = flow.TwoPointBingham(flow.Reading{Speed: 600, Dial: 20}, flow.Reading{Speed: 300, Dial: 10})
	require.NoError(t, err)
	require.Zero(t, b.Yield)
	for _, bad := range [][2]flow.Reading{{slow, fast}, {fast, fast}, {{}, slow}, {{Speed: 600, Dial: 30}, {Speed: 300, Dial: 34}}} {
		_, err = flow.TwoPointPowerLaw(bad[0], bad[1])
		require.Error(t, err)
	}
	_, err = flow.TwoPointBingham(flow.Reading{Speed: 600, Dial: 30}, flow.Reading{Speed: 300, Dial: 10})
	require.ErrorContains(t, err, "Yield")
}

func FuzzFit(f *testing.F) {
	f.Add(3, 600.0, 53.0, 300.0, 34.0, 3.0, 8.0)
	f.Add(2, 600.0, 1e4, 0.01, 0.01, 3.0, 1e4)
	f.Fuzz(func(t *testing.T, model int, s1, d1, s2, d2, s3, d3 float64) {
		fit, err := flow.Fit(flow.Model(model), []flow.Reading{{Speed: s1, Dial: d1}, {Speed: s2, Dial: d2}, {Speed: s3, Dial: d3}})
		if err != nil {
			return
		}
		if math.IsNaN(float64(fit.RMS)) || math.IsNaN(fit.R2) || fit.Rheology.Validate() != nil {
			t.Fatalf("%+v", fit)
		}
	})
}

func BenchmarkFitHerschelBulkley(b *testing.B) {
	b.ReportAllocs()
	all := readings(mud, six...)
	for b.Loop() {
		_, _ = flow.Fit(flow.ModelHerschelBulkley, all)
	}
}

func ExampleTwoPointPowerLaw() {
	// API RP 13D (3rd edition) worked set: n 0.64, K 3.21 dyn·sⁿ/cm² (with 3.32
	// for 1/log10 2).
	r, err := flow.TwoPointPowerLaw(flow.Reading{Speed: 600, Dial: 53}, flow.Reading{Speed: 300, Dial: 34})
	fmt.Printf("n %.2f, K %.2f dyn.s^n/cm2, %v\n", r.Index, r.Consistency.In(unit.DyneSecondNPerSquareCentimetre), err)
	// Output: n 0.64, K 3.20 dyn.s^n/cm2, <nil>
}

func ExampleFit() {
	fit, err := flow.Fit(flow.ModelHerschelBulkley, []flow.Reading{{600, 53}, {300, 34}, {200, 27.5}, {100, 21}, {6, 9}, {3, 8}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("yield %.2f Pa, K %.4f Pa.s^n, n %.3f\n", float64(fit.Rheology.Yield), float64(fit.Rheology.Consistency), fit.Rheology.Index)
	fmt.Printf("R² %.4f, worst %.1f Pa at %.0f rev/min\n", fit.R2, float64(fit.Worst), fit.WorstAt)
	// Output:
	// yield 3.75 Pa, K 0.1582 Pa.s^n, n 0.719
	// R² 0.9982, worst 0.6 Pa at 100 rev/min
}
