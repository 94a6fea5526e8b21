package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// gasLifted is a well whose annulus holds nitrogen down to a valve at 4,000 ft, through which
// it goes into tubing that flows. The valve is told by what it feels: it passes gas from 20
// psi across it on, and stops where there is none.
func gasLifted(supply float64) *sequence.Plan {
	p := cushionWell()
	c := p.Compartments
	c[0].Layers, c[0].Fluid, c[1].Layers, c[1].Fluid = nil, "oil", c[0].Layers, ""
	c[1].Layers[0].ToMD = 4100 * foot
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "oil"})
	setDensity(&p.Fluids[2], 7)
	f := sequence.Formation{Name: "sand", MD: 7900 * foot, Inflow: &sequence.Inflow{Index: 2 * unit.BarrelPerDayPSI, Density: 7 * ppg}}
	setPore(&f, 2600)
	p.Formations = []sequence.Formation{f}
	p.Compartments = append(c, sequence.Compartment{Name: "screen", TopMD: 7000 * foot, BottomMD: 8000 * foot, Fluid: "oil", Formation: "sand"})
	p.Ports = []sequence.Port{{Name: "tail", Joins: []string{"tubing", "screen"}, MD: 7500 * foot, Open: true}}
	p.Devices = []sequence.Device{{Name: "lift valve", MD: 4000 * foot, Actions: []sequence.Action{
		{Name: "passes gas", Inside: "annulus", Outside: "tubing", Triggers: []sequence.Trigger{rising(20*psi, 20*psi)}, Arms: []string{"stops"}},
		{Name: "stops", Inside: "annulus", Outside: "tubing", Disarmed: true, Triggers: []sequence.Trigger{{Direction: valve.Falling}}, Arms: []string{"passes gas"}}}}}
	p.Steps = []sequence.Step{
		{Name: "gas on", Allow: []sequence.Flow{sequence.FlowIn, sequence.FlowOut}, Ramps: []map[string]pressure{{"tubing": 400 * psi}, {"annulus": pounds(supply)}}},
		{Name: "lift", Allow: []sequence.Flow{sequence.FlowIn, sequence.FlowOut}, Expect: []string{"lift valve: passes gas", "lift valve: stops"},
			Produce: &sequence.Produce{Compartment: "tubing", Surface: 150 * psi, Density: 3.5 * ppg, Loss: 60 * psi, Rate: 1000 * unit.BarrelPerDay}},
	}
	return p
}

// While it flows the tubing has 150 + 4000·12/231·3.5 = 877 psi and some friction at the valve,
// at rest 400 + 4000·12/231·7 = 1855 psi. 1,000 psi of nitrogen are 1,131 psi there, which is
// enough to flow and not at rest; 700 psi are 793 psi, too little. An open port between the two
// is refused, with what to write in its place.
func TestAnnulusThatLiftsWithGas(t *testing.T) {
	r := verdicted(t, gasLifted(1000))
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	q, _ := gasByHand(t, 1000*float64(psi), 0, float64(4000*foot))
	for _, x := range r.Steps[1].Flowing {
		if x.Compartment == "annulus" {
			require.InEpsilon(t, q, float64(x.Pressure), 1e-6)
		}
	}
	r = verdicted(t, gasLifted(700))
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, sequence.Missing, r.Findings[0].Kind)
	require.Equal(t, "lift valve: passes gas", r.Findings[0].Device)

	p := gasLifted(1000)
	p.Ports = append(p.Ports, sequence.Port{Name: "lift valve", Joins: []string{"annulus", "tubing"}, MD: 4000 * foot, Open: true})
	p.Devices = nil
	p.Steps[1].Expect = nil
	for i := range p.Steps {
		p.Steps[i].Allow = append(p.Steps[i].Allow, sequence.Circulation)
	}
	_, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `of lift gas write no open port but an action that feels "annulus" less "tubing" where it comes in`)
}
