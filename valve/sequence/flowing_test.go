package sequence_test

import (
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// producer is a well whose one zone flows through a sleeve at 8,500 ft into tubing
// whose wellhead stands at 400 psi.
func producer() *sequence.Plan {
	p := &sequence.Plan{Name: "producer", Well: sequence.Well{MD: 9000 * foot}, Fluids: []sequence.Fluid{{Name: "oil"}, {Name: "brine"}}}
	setDensity(&p.Fluids[0], 7.5)
	setDensity(&p.Fluids[1], 9)
	f := sequence.Formation{Name: "sand", MD: 8900 * foot, Inflow: &sequence.Inflow{Index: 3 * unit.BarrelPerDayPSI, Density: 7 * ppg}}
	setPore(&f, 4300)
	p.Formations = []sequence.Formation{f}
	p.Compartments = []sequence.Compartment{
		{Name: "tubing", BottomMD: 8600 * foot, Fluid: "oil", Surface: true},
		{Name: "annulus", BottomMD: 8600 * foot, Fluid: "brine", Surface: true},
		{Name: "screen", TopMD: 8500 * foot, BottomMD: 9000 * foot, Fluid: "oil", Formation: "sand"},
	}
	p.Ports = []sequence.Port{{Name: "sleeve", Joins: []string{"tubing", "screen"}, MD: 8500 * foot, Open: true}}
	addAction(p, "gauge", "screen", "annulus", rising(19000*psi, 19000*psi))
	p.Devices[0].MD = 8550 * foot
	p.Steps = []sequence.Step{{Name: "produce", Allow: []sequence.Flow{sequence.FlowIn}, Ramps: tubingTo(400), Produce: &sequence.Produce{Compartment: "tubing", Surface: 400 * psi,
		Loss: 200 * psi, Rate: 2000 * unit.BarrelPerDay, Density: 5 * ppg, Chokes: map[string]unit.FlowCoefficient{"sleeve": 20 * unit.Cv}}}}
	return p
}

// What devices feel while the zone flows is what package production makes of the same
// well: beside the sleeve the tubing's, behind it that of the sandface.
func TestFlowingPressuresAtDevices(t *testing.T) {
	p := producer()
	r := verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	w := production.Well{Zones: []production.Zone{{Name: "sand", TVD: 8500 * foot, Density: 7 * ppg,
		Inflow: inflow.LiquidDeliverability{Reservoir: 4300*psi - hydrostatics.Pressure(7*ppg, 400*foot), Index: 3 * unit.BarrelPerDayPSI},
		Chokes: choke.Table{{Name: "set", Travel: 1, Coefficient: 20 * unit.Cv}}}},
		Outflow: production.Tubing{Surface: 400 * psi, Height: 8500 * foot, Density: 5 * ppg, Loss: production.Loss{At: 2000 * unit.BarrelPerDay, Turbulent: 200 * psi}}}
	flow, err := w.Flow()
	require.NoError(t, err)
	at := map[string]float64{}
	for _, x := range r.Steps[0].Flowing {
		at[x.Compartment] = x.Pressure.In(psi)
	}
	require.InDelta(t, flow.Zones[0].Tubing.In(psi)+5*psiPerFootPpg*50, at["tubing"], 1e-6, "under where the zone comes in")
	require.InDelta(t, flow.Zones[0].Sandface.In(psi)+7*psiPerFootPpg*50, at["screen"], 1e-6)
	require.InDelta(t, 9*psiPerFootPpg*8550, at["annulus"], 1e-6)
	require.Greater(t, at["screen"]-at["tubing"], 10.0, "the sleeve takes something")
}

// A disc that no pressure at rest bursts is burst by the drawdown, and says so.
func TestTheDrawdownMovesSomething(t *testing.T) {
	p := producer()
	addAction(p, "disc", "annulus", "screen", rising(750*psi, 800*psi))
	p.Devices[1].MD = 8550 * foot
	atRest := *p
	atRest.Steps = []sequence.Step{p.Steps[0]}
	atRest.Steps[0].Produce = nil
	require.Equal(t, sequence.Proved, verdicted(t, &atRest).Verdict)
	r := verdicted(t, p)
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, sequence.Unintended, r.Findings[0].Kind)
	require.Equal(t, "disc: moves", r.Findings[0].Device)
}

// Choices of the formation's pressure lie in what encloses all of them.
func TestFlowingPressuresAreEnclosed(t *testing.T) {
	p := producer()
	p.Formations[0].Pressure = band(4300, 150)
	p.Ratings = []sequence.Rating{{Name: "screen", Inside: "annulus", Outside: "screen", FromMD: 8550 * foot, ToMD: 8550 * foot, Burst: exactly(5000)}}
	least := 0.0
	for _, m := range verdicted(t, p).Margins {
		if m.Kind == sequence.RatingCross {
			var x pressure
			require.NoError(t, x.UnmarshalText([]byte(m.Left)))
			least = x.In(psi)
		}
	}
	require.Greater(t, least, 0.0)
	worst := 1e9
	for k := range 21 {
		q := p.Clone()
		q.Formations[0].Pressure = exactly(4150 + 15*float64(k))
		for _, x := range verdicted(t, q).Steps[0].Flowing {
			if x.Compartment == "screen" {
				worst = min(worst, 5000-(9*psiPerFootPpg*8550-x.Pressure.In(psi)))
			}
		}
	}
	require.LessOrEqual(t, least, worst+0.01)
	require.Greater(t, least, worst-5)
}
