package sequence_test

import (
	"slices"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// sleeves is tubing with mud beside an annulus with oil, joined by two sleeves.
func sleeves(upper, lower bool) *sequence.Plan {
	p := &sequence.Plan{Name: "two sleeves", Well: sequence.Well{MD: 9000 * foot}, Fluids: []sequence.Fluid{{Name: "oil"}, {Name: "mud"}}}
	setDensity(&p.Fluids[0], 7)
	setDensity(&p.Fluids[1], 12)
	p.Compartments = []sequence.Compartment{{Name: "tubing", BottomMD: 9000 * foot, Fluid: "mud", Surface: true}, {Name: "annulus", BottomMD: 9000 * foot, Fluid: "oil"}}
	p.Ports = []sequence.Port{{Name: "upper sleeve", Joins: []string{"tubing", "annulus"}, MD: 3000 * foot, Open: upper},
		{Name: "lower sleeve", Joins: []string{"tubing", "annulus"}, MD: 8000 * foot, Open: lower}}
	addAction(p, "gauge", "tubing", "annulus", rising(1300*psi, 1300*psi))
	p.Devices[0].MD = 8500 * foot
	p.Steps = []sequence.Step{{Name: "hold", Ramps: tubingTo(2500)}}
	return p
}

// Two ways between columns that differ: the lower sleeve alone lets the gauge at 8,500 ft feel
// 500·12/231·5 = 130 psi, the upper one alone 5500·12/231·5 = 1429 psi, so that which of them
// counts can't be left to the order of the file. With both open it goes round by itself, driven
// by 5000·12/231·5 = 1299 psi, and is refused.
func TestWhatGoesRoundByItselfIsRefused(t *testing.T) {
	for _, turn := range []bool{false, true} {
		p := sleeves(true, true)
		if turn {
			slices.Reverse(p.Ports)
		}
		_, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.ErrorContains(t, err, `"tubing" and "annulus" are joined by "upper sleeve" and by another open way`)
		require.ErrorContains(t, err, "1299 psi")

		// The same fluid in both stands still.
		p.Compartments[1].Fluid = "mud"
		require.Equal(t, sequence.Proved, verdicted(t, p).Verdict)
		// So do different ones above the upper and below the lower sleeve.
		p.Compartments[1].Fluid, p.Compartments[1].Layers = "", []sequence.Layer{{Fluid: "oil", ToMD: 1000 * foot}, {Fluid: "mud", ToMD: 8000 * foot}, {Fluid: "oil", ToMD: 9000 * foot}}
		require.Equal(t, sequence.Proved, verdicted(t, p).Verdict)
	}
	require.Equal(t, sequence.Proved, verdicted(t, sleeves(false, true)).Verdict)
	require.Equal(t, sequence.Refuted, verdicted(t, sleeves(true, false)).Verdict)
}

// A sleeve that opens without being meant to makes a ring, too; that is a finding, with the
// sleeve that opened, and not a refusal.
func TestARingThatNobodyWants(t *testing.T) {
	p := sleeves(false, true)
	p.Devices[0].Actions[0].Triggers[0] = rising(9000*psi, 9000*psi)
	addAction(p, "disc", "tubing", "", rising(3000*psi, 3200*psi)).Opens = []string{"upper sleeve"}
	p.Devices[1].MD = 3000 * foot
	r := verdicted(t, p)
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, sequence.Unintended, r.Findings[0].Kind)
	p.Steps[0].Expect = []string{"disc: moves"}
	_, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, "goes round by itself")
}

// Zones that could flow to surface by two ways are refused, once they are joined so by what is
// intended; shut in, the other way stands as it is.
func TestZonesFlowOneWay(t *testing.T) {
	p := producer()
	p.Ports = append(p.Ports, sequence.Port{Name: "circulation sleeve", Joins: []string{"tubing", "annulus"}, MD: 8000 * foot, Open: true})
	p.Compartments[1].Fluid = "oil"
	p.Steps[0].Allow = append(p.Steps[0].Allow, sequence.Circulation)
	_, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `zones flow through "tubing" while "annulus" stands open at surface too, joined to it by "circulation sleeve"`)
	p.Steps[0].Shut = []string{"annulus"}
	p.Steps[0].Ramps, p.Steps[0].Produce.Surface = tubingTo(1400), 1400*psi // so that the annulus's column stands
	r := verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
}
