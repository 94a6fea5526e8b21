package sequence_test

import (
	"context"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// By hand: 3,375 psi less 0.7 lb/gal·(4/77 psi/ft per lb/gal)·9,000 ft =
// 3,047.7 psi at surface; the band of ±5 % of 3,375 psi about it.
func TestEventStandsWhereArithmeticPutsIt(t *testing.T) {
	r := verdict(t, mini())
	require.True(t, r.OK(), "%+v", r.Findings)
	hydrostatic := 0.7 * 4 / 77 * 9000 * psi
	e := eventOf(t, r.Steps[0], "packer: sets")
	require.InDelta(t, 3375, e.Differential.In(psi), 1e-6)
	require.InDelta(t, (3375*psi - hydrostatic).In(psi), e.Surface[0].Pressure.In(psi), 1e-6)
	require.Equal(t, 1, e.Ramp)
	x := triggerOf(t, r.Steps[0], "packer: sets")
	require.Equal(t, sequence.MustFire, x.Firing)
	require.InDelta(t, (3500*psi + hydrostatic - 3375*1.05*psi).In(psi), inPsi(t, x.Margin), 1e-6)
}

func TestWindowIsTheClosedForm(t *testing.T) {
	p := mini()
	device(p, "valve", 8000*foot, rising(4200*psi, 4400*psi))
	w := windowOf(t, check(t, p).Steps[0], "tubing", 1)
	require.True(t, w.Inside)
	require.Len(t, w.Intervals, 1)
	x := w.Intervals[0]
	// Whole psi on the good side: least up, greatest down.
	require.InDelta(t, 3375*1.05-0.7*4/77*9000, inPsi(t, x.Least), 1.2)
	require.GreaterOrEqual(t, inPsi(t, x.Least), 3375*1.05-0.7*4/77*9000)
	require.InDelta(t, 4200-0.7*4/77*8000, inPsi(t, x.Greatest), 1.2)
	require.LessOrEqual(t, inPsi(t, x.Greatest), 4200-0.7*4/77*8000)
	require.Contains(t, x.Below, "packer: sets")
	require.Contains(t, x.Above, "valve: moves")
}

func TestNoWindowIsAnAnswer(t *testing.T) {
	p := mini()
	device(p, "valve", 8000*foot, rising(3400*psi, 3600*psi))
	r := check(t, p)
	w := windowOf(t, r.Steps[0], "tubing", 1)
	require.False(t, w.Open())
	require.NotEmpty(t, w.Clash)
	require.Equal(t, []string{"unintended event | set | valve: moves"}, roots(r))
	require.Contains(t, r.Findings[0].Cure, "no surface pressure")
}

func TestBandEnteredButNotPassedIsUnknown(t *testing.T) {
	p := mini()
	p.Steps[0].Ramps[0]["tubing"] = 3050 * psi // between nominal and greatest
	r := check(t, p)
	require.Equal(t, []string{"intended event missing | set | packer: sets"}, roots(r))
	require.Equal(t, "may not happen, and is intended in this step", r.Findings[0].Says)
	require.Equal(t, sequence.MayFire, triggerOf(t, r.Steps[0], "packer: sets").Firing)
	require.Equal(t, []string{"packer"}, r.Steps[0].Unknown)
	require.Contains(t, r.Findings[0].Cure, "at least 3216.5 psi")
}

// A lock that opens above 2,000 psi and lets go below 300 psi is unknown, too,
// where only its first trigger is in doubt.
func TestHalfWayAlongARowIsUnknown(t *testing.T) {
	p := mini()
	device(p, "lock", 9000*foot, rising(3700*psi, 4000*psi), sequence.Trigger{
		Threshold: unit.Exactly(-500 * psi), Direction: valve.Falling})
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.Equal(t, []string{"lock"}, r.Steps[0].Unknown)
}

func TestRowAndCountInOneStep(t *testing.T) {
	p := mini()
	count := rising(1000*psi, 1100*psi)
	count.Count, count.Rearm = 3, unit.Exactly(500*psi)
	device(p, "counter", 9000*foot, count, sequence.Trigger{Threshold: unit.Exactly(400 * psi), Direction: valve.Falling})
	up, down := map[string]unit.Pressure{"tubing": 1000 * psi}, map[string]unit.Pressure{"tubing": 0}
	p.Devices = p.Devices[1:]
	p.Steps = []sequence.Step{
		{Name: "two", Ramps: []map[string]unit.Pressure{up, down, up, down}},
		{Name: "third", Ramps: []map[string]unit.Pressure{up, down}, Expect: []string{"counter: moves"}},
	}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	counted := map[int]string{}
	for _, e := range r.Steps[0].Events {
		counted[e.Ramp] = e.Partial
	}
	require.Equal(t, "trigger 1 of 2, counted 1 of 3", counted[1])
	require.Equal(t, "trigger 1 of 2, counted 2 of 3", counted[3])
	e := eventOf(t, r.Steps[1], "counter: moves")
	require.Equal(t, 2, e.Ramp, "at bleed-off")
	require.InDelta(t, 400, e.Differential.In(psi), 1e-6)
}

// A device that closes a port against itself and opens it again without end
// must not hang the walk.
func TestEndlessDevicesAreAnError(t *testing.T) {
	p := mini()
	p.Ports = []sequence.Port{{Name: "port", Joins: []string{"tubing", "annulus"}, MD: 9000 * foot}}
	p.Devices = []sequence.Device{{Name: "flapper", MD: 9000 * foot, Actions: []sequence.Action{
		{Name: "opens", Inside: "tubing", Outside: "annulus", Triggers: []sequence.Trigger{{Threshold: unit.Exactly(100 * psi)}},
			Opens: []string{"port"}, Arms: []string{"closes"}},
		{Name: "closes", Inside: "tubing", Outside: "annulus", Triggers: []sequence.Trigger{{Threshold: unit.Exactly(50 * psi), Direction: valve.Falling}},
			Closes: []string{"port"}, Arms: []string{"opens"}, Disarmed: true},
	}}}
	p.Steps[0].Expect = nil
	p.Steps[0].Ramps = []map[string]unit.Pressure{{"tubing": 500 * psi}}
	_, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.ErrorContains(t, err, "keep moving each other")
	require.ErrorContains(t, err, `step "set"`)
}

// With fluids whose density feels pressure the crossing is found as a root;
// it has to stand on the threshold all the same.
func TestCompressibleFluidsCrossOnTheThreshold(t *testing.T) {
	p := mini()
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: {
		{TVD: 0, Temperature: unit.Fahrenheit(70)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(190)}}}
	p.Fluids[0] = sequence.Fluid{Name: "tubing fluid", Kind: sequence.ClearBrine, Density: unit.Exactly(9.5 * ppg),
		Expansion: 2.54e-4 * unit.PerFahrenheit, Compression: 1.98e-6 * unit.PerPSI}
	p.Fluids[1] = sequence.Fluid{Name: "annulus fluid", Kind: sequence.FreshWater}
	p.Steps[0].Ramps[0]["tubing"] = 3600 * psi
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.InDelta(t, 3375, eventOf(t, r.Steps[0], "packer: sets").Differential.In(psi), 1e-3)
}
