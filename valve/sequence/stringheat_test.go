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

// Each string has the temperature of its step: undisturbed, circulating (a table of the
// plan's), producing, injecting, and a day after that was shut in (Ramey's closed forms for
// ground that is straight, T = a·z + b). Free strings are longer by α·L times the mean of
// what is warmer, by hand with α = 6.9e-6 1/°F:
//
//	injecting   T − ground = (Tin + a·A − b)·e^(−z/A) − a·A
//	producing   T − ground = a·A·(1 − e^(−(L − z)/A)), from the ground's own at L
//
// The seals of the inner string at 8,500 ft move in the bore of the outer one, which has
// other temperatures of its own in two of the steps. The profile is kept at points, to 0.2 K between.
//
// Source: Ramey, JPT April 1962, 427.
func TestEachStringHasTheTemperatureOfItsStep(t *testing.T) {
	p := twoStrings()
	const a, b, in, l = 0.014, 70.0, 50.0, 9000.0
	line := func(top, bottom float64) []sequence.MarkedTVD {
		return []sequence.MarkedTVD{{Temperature: unit.Fahrenheit(top)}, {TVD: l * foot, Temperature: unit.Fahrenheit(bottom)}}
	}
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: line(b, b+a*l), "circulating": line(95, 165), "annulus while injecting": line(66, 150)}
	f := sequence.Flowing{Flow: sequence.Injecting, Inlet: unit.Fahrenheit(in), BottomMD: l * foot, Rate: 20 * unit.PoundPerSecond, SpecificHeat: 1 * unit.BtuPerPoundFahrenheit,
		Bore: 2.441 * unit.Inch, Transfer: 8 * unit.BtuPerHourSquareFootFahrenheit, Hole: 8.5 * unit.Inch,
		Conductivity: 1.4 * unit.BtuPerHourFootFahrenheit, Diffusivity: 0.04 * unit.SquareFootPerHour, After: "24h"}
	made, after := f, f
	made.Flow, made.Inlet = sequence.Producing, unit.Temperature{}
	after.ShutIn = "24h"
	p.Well.Flowing = map[string]sequence.Flowing{"injecting": f, "producing": made, "a day after": after}
	p.OuterString.Temperatures = map[string]string{"injecting": "annulus while injecting", "a day after": sequence.Undisturbed}
	p.Devices[0].Actions[0].Triggers[0], p.Devices[1].Actions[0].Triggers[0] = rising(9000*psi, 9000*psi), rising(9000*psi, 9000*psi)
	p.Steps = nil
	for _, name := range []string{sequence.Undisturbed, "circulating", "producing", "injecting", "a day after"} {
		p.Steps = append(p.Steps, sequence.Step{Name: name, Temperature: name})
	}
	r := verdict(t, p)
	require.Empty(t, r.Findings)

	heat := hydrostatics.HeatExchange{Rate: f.Rate, SpecificHeat: f.SpecificHeat, Radius: f.Bore / 2, Transfer: f.Transfer, Hole: f.Hole / 2,
		Conductivity: f.Conductivity, Diffusivity: f.Diffusivity, Time: 24 * time.Hour}
	long, err := heat.RelaxationDistance()
	require.NoError(t, err)
	left, err := heat.LeftAfterShutIn(24 * time.Hour)
	require.NoError(t, err)
	A := long.In(foot)
	table := func(top, bottom float64) func(float64) float64 { // mean over the ground down to z
		return func(z float64) float64 { return (top - b) + ((bottom-top)/l-a)*z/2 }
	}
	injecting := func(z float64) float64 { return (in+a*A-b)*A/z*(1-math.Exp(-z/A)) - a*A }
	producing := func(z float64) float64 { return a * A * (1 - A/z*(math.Exp(-(l-z)/A)-math.Exp(-l/A))) }
	none := func(float64) float64 { return 0 }
	for step, x := range [][2]func(float64) float64{ // inner, outer
		{none, none}, {table(95, 165), table(95, 165)}, {producing, producing}, {injecting, table(66, 150)},
		{func(z float64) float64 { return left * injecting(z) }, none},
	} {
		grown := func(of func(float64) float64, z float64) float64 { return 6.9e-6 * 12 * z * of(z) }
		outer, inner := grown(x[1], 9000), grown(x[0], 8500)-grown(x[1], 8500)
		require.InDelta(t, outer, lastOuter(r, step).Seals[0].Travel.In(unit.Inch), 0.005*math.Abs(outer)+0.02, "outer, %s", p.Steps[step].Name)
		require.InDelta(t, inner, lastString(r, step).Seals[0].Travel.In(unit.Inch), 0.005*(math.Abs(inner)+math.Abs(outer))+0.02, "inner, %s", p.Steps[step].Name)
		if step > 0 {
			require.Greater(t, math.Abs(outer)+math.Abs(inner), 2.0, "%s", p.Steps[step].Name)
		}
	}
}
