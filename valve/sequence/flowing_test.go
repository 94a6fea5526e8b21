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

// flowed is the pressure that a step shows in the tubing at its device while zones flow.
func flowedAt(t *testing.T, p *sequence.Plan, compartment string) float64 {
	t.Helper()
	r := verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	for _, x := range r.Steps[0].Flowing {
		if x.Compartment == compartment {
			return x.Pressure.In(psi)
		}
	}
	require.Fail(t, compartment)
	return 0
}

// Outflow by a table, oil under its bubble point, and a gas zone: each is what package
// production makes of the same well.
func TestOutflowByATableAndInflowOfOtherKinds(t *testing.T) {
	table := production.OutflowTable{{Rate: 200 * unit.BarrelPerDay, Pressure: 2500 * psi}, {Rate: 1000 * unit.BarrelPerDay, Pressure: 2600 * psi},
		{Rate: 2500 * unit.BarrelPerDay, Pressure: 2900 * psi}, {Rate: 5000 * unit.BarrelPerDay, Pressure: 3600 * psi}}
	lines := func(t production.OutflowTable) (all []sequence.OutflowAt) {
		for _, x := range t {
			all = append(all, sequence.OutflowAt{Rate: x.Rate, Pressure: x.Pressure})
		}
		return all
	}
	plan := func(edit func(p *sequence.Plan, x *sequence.Produce)) *sequence.Plan {
		p := producer()
		x := p.Steps[0].Produce
		x.Loss, x.Rate, x.Chokes, x.Outflow = 0, 0, nil, lines(table)
		edit(p, x)
		return p
	}
	// Without a choke the zone comes in where its formation is.
	zone := func(in production.Inflow) production.Well {
		return production.Well{Zones: []production.Zone{{Name: "sand", TVD: 8900 * foot, Inflow: in}}, Outflow: table}
	}
	under := func(well production.Well) float64 { // 350 ft above where it comes in, straight to 400 psi at the top
		flow, err := well.Flow()
		require.NoError(t, err)
		return 400 + (flow.Zones[0].Tubing.In(psi)-400)*8550/8900
	}
	straight := plan(func(*sequence.Plan, *sequence.Produce) {})
	want := under(zone(inflow.LiquidDeliverability{Reservoir: 4300 * psi, Index: 3 * unit.BarrelPerDayPSI}))
	require.InDelta(t, want, flowedAt(t, straight, "tubing"), 1e-6)

	vogel := plan(func(p *sequence.Plan, _ *sequence.Produce) { p.Formations[0].Inflow.Bubble = 4000 * psi })
	bent := under(zone(inflow.LiquidDeliverability{Reservoir: 4300 * psi, Index: 3 * unit.BarrelPerDayPSI, Bubble: 4000 * psi}))
	require.InDelta(t, bent, flowedAt(t, vogel, "tubing"), 1e-6)
	require.Less(t, bent, want-5, "it gives less under its bubble point")

	gas := plan(func(p *sequence.Plan, x *sequence.Produce) {
		p.Formations[0].Inflow = &sequence.Inflow{OpenFlow: 12000 * unit.BarrelPerDay, Exponent: 0.8, Density: 1.5 * ppg}
	})
	require.InDelta(t, under(zone(inflow.GasDeliverability{Reservoir: 4300 * psi, OpenFlow: 12000 * unit.BarrelPerDay, Exponent: 0.8})), flowedAt(t, gas, "tubing"), 1e-6)

	for says, edit := range map[string]func(p *sequence.Plan, x *sequence.Produce){
		"stands beside loss or rate": func(_ *sequence.Plan, x *sequence.Produce) { x.Loss, x.Rate = 10*psi, 500*unit.BarrelPerDay },
		"must be above the":          func(_ *sequence.Plan, x *sequence.Produce) { x.Outflow[1].Rate = x.Outflow[0].Rate },
		"must be told by a table": func(p *sequence.Plan, x *sequence.Produce) {
			p.Formations[0].Inflow, x.Outflow = &sequence.Inflow{OpenFlow: 12000 * unit.BarrelPerDay, Exponent: 0.8, Density: ppg}, nil
		},
		"belong to liquid":              func(p *sequence.Plan, _ *sequence.Produce) { p.Formations[0].Inflow.OpenFlow = unit.BarrelPerDay },
		"exponent without an open_flow": func(p *sequence.Plan, _ *sequence.Produce) { p.Formations[0].Inflow.Exponent = 0.8 },
		"Exponent": func(p *sequence.Plan, _ *sequence.Produce) {
			p.Formations[0].Inflow = &sequence.Inflow{OpenFlow: 12000 * unit.BarrelPerDay, Exponent: 1.8, Density: ppg}
		},
		"how they flow together isn't modelled": func(p *sequence.Plan, _ *sequence.Produce) {
			f := p.Formations[0]
			f.Name, f.Inflow = "gas sand", &sequence.Inflow{OpenFlow: 12000 * unit.BarrelPerDay, Exponent: 0.8, Density: ppg}
			p.Formations = append(p.Formations, f)
		},
	} {
		require.ErrorContains(t, plan(edit).Validate(), says)
	}
}

// A valve that the shut-in closes doesn't take away what its zone gave before; one that the
// drawdown closes would change what flows, which isn't modelled. By hand: at 8,400 ft the
// tubing stands 400 + 8400·12/231·(7.5 - 9) = -255 psi to the annulus at rest; while it flows
// it is 858 psi under it.
func TestRatesAreThoseOfTheFlow(t *testing.T) {
	valved := func(row ...sequence.Trigger) *sequence.Plan {
		p := producer()
		p.Steps[0].Produce.Chokes = nil
		p.Steps[0].Produce.Want = map[string]sequence.RateBetween{"sand": {Least: 500 * unit.BarrelPerDay, Greatest: 9000 * unit.BarrelPerDay}}
		p.Devices = append(p.Devices, sequence.Device{Name: "valve", MD: 8400 * foot, Actions: []sequence.Action{{
			Name: "shuts", Inside: "tubing", Outside: "annulus", Triggers: row, Closes: []string{"sleeve"}}}})
		p.Steps[0].Expect = []string{"valve: shuts"}
		return p
	}
	drawn, back := falling(-700*psi, -700*psi), rising(-500*psi, -500*psi)
	r := verdicted(t, valved(drawn, back))
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	_, err := sequence.Check(t.Context(), valved(drawn), sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `step "produce"`)
	require.ErrorContains(t, err, "changes which of them do")
}

// Two zones behind one choke, and one behind two, aren't what the model has: each zone's
// own choke.
func TestChokesThatAreNotModelled(t *testing.T) {
	p := producer()
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "sump", TopMD: 8950 * foot, BottomMD: 9000 * foot, Fluid: "oil", Formation: "toe"})
	toe := sequence.Formation{Name: "toe", MD: 8990 * foot, Inflow: p.Formations[0].Inflow}
	setPore(&toe, 4350)
	p.Formations = append(p.Formations, toe)
	p.Ports = append(p.Ports, sequence.Port{Name: "packer bypass", Joins: []string{"screen", "sump"}, MD: 8960 * foot, Open: true})
	_, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `zones "sand" and "toe" flow through one choke, "sleeve"`)
	p.Formations[0].Inflow = nil
	p.Steps[0].Produce.Chokes["packer bypass"] = 10 * unit.Cv
	_, err = sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `zone "toe" flows through two chokes`)
}

// Seven zones together are more than can be enclosed, even with nothing uncertain: the plan is refused by the step, and not called anything.
func TestMoreZonesThanCanBeEnclosed(t *testing.T) {
	p := producer()
	for n := range 6 {
		f := p.Formations[0]
		f.Name = "sand " + string(rune('a'+n))
		p.Formations = append(p.Formations, f)
		face := p.Compartments[2]
		face.Name, face.Formation = "screen "+f.Name, f.Name
		p.Compartments = append(p.Compartments, face)
		p.Ports = append(p.Ports, sequence.Port{Name: "sleeve " + f.Name, Joins: []string{"tubing", face.Name}, MD: 8500 * foot, Open: true})
		p.Steps[0].Produce.Chokes["sleeve "+f.Name] = 20 * unit.Cv
	}
	_, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `sequence: step "produce" can't be walked with the nominal values: `)
}
