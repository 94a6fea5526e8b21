package sequence_test

import (
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// A row of two levels that are both passed at once fires at once, before or after whatever
// else is due there. By hand: a room at 5,000 ft stands under 5000·12/231·9 = 2338 psi of the
// annulus until a valve shuts it off at 2,000 psi of tubing; then it has the sand's 1,000 psi.
// A disc waits for 1,500 psi or less; a sleeve for 1,600 and then 1,700 psi or less, and lets
// the annulus in again. If the sleeve is first the disc never feels it.
func TestARowThatFiresAtOnceMayComeFirst(t *testing.T) {
	plan := func(row ...sequence.Trigger) *sequence.Plan {
		p := &sequence.Plan{Name: "at once", Well: sequence.Well{MD: 6000 * foot}, Fluids: []sequence.Fluid{{Name: "brine"}}}
		setDensity(&p.Fluids[0], 9)
		f := sequence.Formation{Name: "sand", MD: 5000 * foot}
		setPore(&f, 1000)
		p.Formations = []sequence.Formation{f}
		p.Compartments = []sequence.Compartment{{Name: "tubing", BottomMD: 6000 * foot, Fluid: "brine", Surface: true}, {Name: "annulus", BottomMD: 6000 * foot, Fluid: "brine", Surface: true},
			{Name: "room", TopMD: 4900 * foot, BottomMD: 5100 * foot, Fluid: "brine", Formation: "sand"}}
		p.Ports = []sequence.Port{{Name: "port", Joins: []string{"annulus", "room"}, MD: 5000 * foot, Open: true}}
		addAction(p, "valve", "tubing", "", rising(2000*psi, 2000*psi)).Closes = []string{"port"}
		addAction(p, "disc", "room", "", falling(1500*psi, 1500*psi))
		addAction(p, "sleeve", "room", "", row...).Opens = []string{"port"}
		p.Devices[1].MD, p.Devices[2].MD = 5000*foot, 5000*foot
		p.Steps = []sequence.Step{{Name: "press", Allow: []sequence.Flow{sequence.FlowOut}, Ramps: tubingTo(2500), Expect: []string{"valve: moves", "disc: moves", "sleeve: moves"}}}
		return p
	}
	r := verdicted(t, plan(falling(1600*psi, 1600*psi), falling(1700*psi, 1700*psi)))
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, sequence.Missing, r.Findings[0].Kind)
	require.Equal(t, "disc: moves", r.Findings[0].Device)
	// One level alone did the same before.
	require.Equal(t, sequence.Refuted, verdicted(t, plan(falling(1700*psi, 1700*psi))).Verdict)
	// A row whose second level isn't passed leaves the disc its time.
	p := plan(falling(1600*psi, 1600*psi), rising(2400*psi, 2400*psi))
	p.Steps[0].Expect = p.Steps[0].Expect[:2]
	r = verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
}
