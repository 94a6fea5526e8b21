package sequence_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// bullheaded is 8,000 ft of 2.992 in tubing full of an oil of 7 lb/gal over a sand, into which
// brine of 9 lb/gal is pumped at 2 bbl/min: a foot of it is 2.992²·π/4·12/9702 bbl. A valve at
// 4,000 ft feels the tubing, which falls once the brine has passed it, by 2·12/231 psi for
// every foot; it locks for good when it has felt for some minutes what it feels once the brine
// is at 5,000 ft, and shuts at what it feels once that is at 6,500 ft.
func bullheaded(delay string) *sequence.Plan {
	p := &sequence.Plan{Name: "bullheaded", Well: sequence.Well{MD: 9000 * foot}, Fluids: []sequence.Fluid{{Name: "oil", Viscosity: unit.Centipoise}, {Name: "brine", Viscosity: unit.Centipoise}}}
	setDensity(&p.Fluids[0], 7)
	setDensity(&p.Fluids[1], 9)
	f := sequence.Formation{Name: "sand", MD: 8900 * foot}
	setPore(&f, 4300)
	p.Formations = []sequence.Formation{f}
	bore := func(to unit.Length, d float64) []sequence.Bore {
		return []sequence.Bore{{To: to, Outer: unit.Length(d) * unit.Inch}}
	}
	p.Compartments = []sequence.Compartment{
		{Name: "tubing", BottomMD: 8000 * foot, Fluid: "oil", Surface: true, Bores: bore(8000*foot, 2.992)},
		{Name: "annulus", BottomMD: 8000 * foot, Fluid: "brine", Surface: true},
		{Name: "screen", TopMD: 7900 * foot, BottomMD: 9000 * foot, Fluid: "oil", Formation: "sand", Bores: bore(9000*foot, 6)},
	}
	p.Ports = []sequence.Port{{Name: "tail", Joins: []string{"tubing", "screen"}, MD: 8000 * foot, Open: true}}
	p.Begin = &sequence.Begin{ShutIn: []string{"tubing"}}
	none := pressure(0)
	// Before the brine comes it stands at the sand's 4,300 psi, less 4,900 ft of oil, and
	// some friction below the valve.
	stands := 4300 - 4900*7*psiPerFootPpg
	at := func(brine float64) sequence.Trigger {
		x := pounds(stands + 40 - (brine-4000)*2*psiPerFootPpg)
		return sequence.Trigger{Threshold: unit.Exactly(x), Direction: valve.Falling}
	}
	p.Devices = []sequence.Device{{Name: "valve", MD: 4000 * foot, Actions: []sequence.Action{
		{Name: "locks", Inside: "tubing", Chamber: &none, Triggers: []sequence.Trigger{at(5000)}, Delay: delay, Disarms: []string{"shuts"}},
		{Name: "shuts", Inside: "tubing", Chamber: &none, Triggers: []sequence.Trigger{at(6500)}},
	}}}
	p.Steps = []sequence.Step{
		{Name: "stand"},
		{Name: "bullhead", Takes: "1m", Allow: []sequence.Flow{sequence.FlowOut}, Expect: []string{"valve: locks"},
			Pump: []sequence.Pump{{Into: "tubing", Formation: "sand", Rate: 2 * unit.BarrelPerMinute, Fluid: "brine", Volume: 66 * unit.Barrel}}},
		{Name: "on", Takes: "1m", Allow: []sequence.Flow{sequence.FlowOut}},
	}
	return p
}

// A metered device moves where its time comes, in the middle of what is pumped: by hand, 4
// minutes are 8 bbl or 920 ft of tubing, in which the pressure falls by 95.6 psi more, and by
// what the brine rubs more than the oil. After 7 minutes it is too late: the valve has shut.
func TestWhatIsMeteredMovesWhileItIsPumped(t *testing.T) {
	p := bullheaded("4m")
	r := verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	e := r.Steps[1].Events[0]
	require.Equal(t, "valve: locks", e.Action)
	level := p.Devices[0].Actions[0].Triggers[0].Threshold.Nominal.In(psi)
	far := 4 * 2 / (math.Pi / 4 * 2.992 * 2.992 * 12 / 9702) * 2 * psiPerFootPpg
	require.InDelta(t, level-far, e.Differential.In(psi), 0.02*far)
	plain := plainWalkOf(p, 64, nil)
	require.NoError(t, plain.fault)
	require.InDelta(t, plain.events[0].felt, e.Differential.In(psi), 1e-6)

	r = verdicted(t, bullheaded("7m"))
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, sequence.Unintended, r.Findings[0].Kind)
	require.Equal(t, "valve: shuts", r.Findings[0].Device)
}

// With a density that isn't certain nobody knows just where on its way the brine lets it move: anywhere on a piece of it. What fails with the
// nominal values isn't called proved, and what holds in every draw isn't called wrong.
func TestWhatIsMeteredOverADensityThatIsNotCertain(t *testing.T) {
	for delay, holds := range map[string]bool{"1m": true, "7m": false} {
		p := bullheaded(delay)
		p.Fluids[1].Density = unit.Within(9*ppg, 0.001)
		r := verdicted(t, p)
		if holds {
			require.NotEqual(t, sequence.Refuted, r.Verdict, r.Findings)
			require.True(t, r.Steps[1].Events[0].Action == "valve: locks")
		} else {
			require.Equal(t, sequence.Refuted, r.Verdict, r.Findings)
		}
		for _, d := range []float64{8.991, 9.009} {
			q := bullheaded(delay)
			setDensity(&q.Fluids[1], d)
			require.Equal(t, holds, verdicted(t, q).Verdict == sequence.Proved, "%v, %v lb/gal", delay, d)
		}
	}
}
