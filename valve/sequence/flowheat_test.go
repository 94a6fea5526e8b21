package sequence_test

import (
	"math"
	"testing"
	"time"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// injecting is landed with water of 50 °F going down it for a day.
func injecting() *sequence.Plan {
	p := landed()
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: {{Temperature: unit.Fahrenheit(70)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(214)}}}
	p.Well.Flowing = map[string]sequence.Flowing{"injecting": {
		Flow: sequence.Injecting, Inlet: unit.Fahrenheit(50), BottomMD: 9000 * foot, Rate: 20 * unit.PoundPerSecond, SpecificHeat: 1 * unit.BtuPerPoundFahrenheit,
		Bore: 2.992 * unit.Inch, Transfer: 8 * unit.BtuPerHourSquareFootFahrenheit, Hole: 8.5 * unit.Inch,
		Conductivity: 1.4 * unit.BtuPerHourFootFahrenheit, Diffusivity: 0.04 * unit.SquareFootPerHour, After: "24h",
	}}
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(300000 * unit.PoundForce)
	p.Steps = append(p.Steps, sequence.Step{Name: "inject", Temperature: "injecting"})
	return p
}

// The string of a well that is injected into is pulled by E·α·As times the mean of its
// cooling: that of Ramey's closed form for ground that is straight, T = a·z + b − a·A +
// (Tin + a·A − b)·e^(−z/A), with A the library's relaxation distance.
//
// Source: Ramey, JPT April 1962, 427; E = 30e6 psi, α = 6.9e-6 1/°F.
func TestTheStringCoolsAsRameySays(t *testing.T) {
	p := injecting()
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	f := p.Well.Flowing["injecting"]
	long, err := hydrostatics.HeatExchange{Rate: f.Rate, SpecificHeat: f.SpecificHeat, Radius: f.Bore / 2, Transfer: f.Transfer, Hole: f.Hole / 2,
		Conductivity: f.Conductivity, Diffusivity: f.Diffusivity, Time: 24 * time.Hour}.RelaxationDistance()
	require.NoError(t, err)
	const a, b, in, l = 144.0 / 9000, 70.0, 50.0, 9000.0
	A := long.In(foot)
	// The mean of (ground − fluid) over the string, by hand.
	mean := a*A - (in+a*A-b)*A/l*(1-math.Exp(-l/A))
	want := 30e6 * 6.9e-6 * mean * (outside - bore)
	got := (lastString(r, 1).Wall - lastString(r, 0).Wall).In(unit.PoundForce)
	require.InDelta(t, want, got, 0.003*want, "0.2 K between the points of the profile")
	require.Greater(t, want, 30000.0)
}

// In a hole that leans by 60° the ground warms half as fast along it, and where what flows goes down to nearly half of it only, the lower part keeps
// the ground's temperature: Ramey's closed form along the hole, by hand as in a vertical one.
func TestALeaningStringCoolsByTrueDepth(t *testing.T) {
	p := injecting()
	p.Well.Path = []sequence.Station{{Inclination: 60 * unit.Degree}, {MD: 9000 * foot, Inclination: 60 * unit.Degree}}
	f := p.Well.Flowing["injecting"]
	f.BottomMD = 4375 * foot // half way between two nodes of the string, 250 ft apart, over which the jump there is spread
	p.Well.Flowing["injecting"] = f
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	long, err := hydrostatics.HeatExchange{Rate: f.Rate, SpecificHeat: f.SpecificHeat, Radius: f.Bore / 2, Transfer: f.Transfer, Hole: f.Hole / 2,
		Conductivity: f.Conductivity, Diffusivity: f.Diffusivity, Time: 24 * time.Hour}.RelaxationDistance()
	require.NoError(t, err)
	const a, b, in, l = 144.0 / 9000 / 2, 70.0, 50.0, 4375.0
	A := long.In(foot)
	mean := a*A - (in+a*A-b)*A/l*(1-math.Exp(-l/A))
	want := 30e6 * 6.9e-6 * mean * l / 9000 * (outside - bore)
	got := (lastString(r, 1).Wall - lastString(r, 0).Wall).In(unit.PoundForce)
	require.InDelta(t, want, got, 0.004*want+30, "0.2 K between the points of the profile")
	require.Greater(t, want, 7000.0)

	p.Well.Path[1].MD = 0
	require.ErrorContains(t, p.Validate(), "well.path")
}

// Produced, it is warmed; below what flows the ground keeps its temperature. Names must
// differ, and what is wrong is said with its path.
func TestFlowingTemperatures(t *testing.T) {
	p := injecting()
	f := p.Well.Flowing["injecting"]
	f.Flow, f.Inlet = sequence.Producing, unit.Temperature{}
	p.Well.Flowing["producing"] = f
	p.Steps = append(p.Steps, sequence.Step{Name: "produce", Temperature: "producing"})
	r := verdict(t, p)
	require.Less(t, lastString(r, 2).Wall, lastString(r, 0).Wall-20000*unit.PoundForce)
	text := func(change func(f *sequence.Flowing)) string {
		q := injecting()
		f := q.Well.Flowing["injecting"]
		change(&f)
		q.Well.Flowing["injecting"] = f
		err := q.Validate()
		require.Error(t, err)
		return err.Error()
	}
	require.Contains(t, text(func(f *sequence.Flowing) { f.Flow = "up" }), `well.flowing_temperatures.injecting: flow is "up"; there are "producing" and "injecting"`)
	require.Contains(t, text(func(f *sequence.Flowing) { f.After = "a day" }), `after is "a day"; write a time such as 36h`)
	require.Contains(t, text(func(f *sequence.Flowing) { f.Inlet = unit.Temperature{} }), "inlet is missing")
	require.Contains(t, text(func(f *sequence.Flowing) { f.Rate = 0 }), "Rate: is 0 lb/s; must be above")
	require.Contains(t, text(func(f *sequence.Flowing) { f.BottomMD = 20000 * foot }), "bottom")
	p.Well.Temperatures["producing"] = p.Well.Temperatures[sequence.Undisturbed]
	require.ErrorContains(t, p.Validate(), "stands in well.temperatures too")
	p = injecting()
	p.Well.Temperatures = nil
	require.ErrorContains(t, p.Validate(), "want well.temperatures.undisturbed")
}

// A day after injection the ground still has some of the cold: the string's tension goes
// with the share that the library tells of the flowing difference, by hand of what it was
// while it flowed.
func TestTheStringWarmsAfterShutIn(t *testing.T) {
	p := injecting()
	f := p.Well.Flowing["injecting"]
	f.ShutIn = "24h"
	p.Well.Flowing["a day after"] = f
	p.Steps = append(p.Steps, sequence.Step{Name: "wait", Temperature: "a day after"})
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	left, err := hydrostatics.HeatExchange{Rate: f.Rate, SpecificHeat: f.SpecificHeat, Radius: f.Bore / 2, Transfer: f.Transfer, Hole: f.Hole / 2,
		Conductivity: f.Conductivity, Diffusivity: f.Diffusivity, Time: 24 * time.Hour}.LeftAfterShutIn(24 * time.Hour)
	require.NoError(t, err)
	// Horner's line: ln(2)/2 of f(tD) + k/(r·U), with tD = 0.04·24/0.3542² = 7.654, f = 1.4239·1.0784
	// and k/(r·U) = 1.4/(0.12467·8) = 1.4037: 11.8 %; by the exact integral somewhat more.
	require.InDelta(t, 0.118, left, 0.02)
	flowing, after := lastString(r, 1).Wall-lastString(r, 0).Wall, lastString(r, 2).Wall-lastString(r, 0).Wall
	require.InEpsilon(t, left, float64(after/flowing), 0.002)
	f.ShutIn = "1m"
	p.Well.Flowing["a day after"] = f
	require.ErrorContains(t, p.Validate(), "must be at least 10m0s")
	f.ShutIn = "soon"
	p.Well.Flowing["a day after"] = f
	require.ErrorContains(t, p.Validate(), `shut_in is "soon"; write a time such as 12h`)
}
