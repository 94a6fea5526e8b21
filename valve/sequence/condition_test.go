package sequence_test

import (
	"context"
	"fmt"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/controlline"
	"completion.example/valve/sequence"
	"completion.example/valve/sleeve"
	"github.com/stretchr/testify/require"
)

func checked(t *testing.T, p *sequence.Plan) *sequence.Programme {
	t.Helper()
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
	return r
}

// All of two conditions, in whatever order, and any of two, by hand: the tubing to
// 1,000 to 1,100 psi, the annulus to 500 to 600 psi.
func TestAllAndAny(t *testing.T) {
	plan := func(all bool, ramps ...map[string]pressure) *sequence.Plan {
		p := gaugeWell()
		a := addAction(p, "lock", "tubing", "")
		none := pressure(0)
		list := []sequence.Condition{{Inside: "tubing", Chamber: &none, Triggers: []sequence.Trigger{rising(1000*psi, 1100*psi)}},
			{Inside: "annulus", Chamber: &none, Triggers: []sequence.Trigger{rising(500*psi, 600*psi)}}}
		a.Inside, a.Chamber, a.Triggers = "", nil, nil
		if a.Any = list; all {
			a.All, a.Any = list, nil
		}
		p.Steps = []sequence.Step{{Name: "up", Ramps: ramps, Expect: []string{"lock: moves"}}}
		return p
	}
	tubing, annulus := map[string]pressure{"tubing": 1200 * psi}, map[string]pressure{"annulus": 700 * psi}
	bleed := map[string]pressure{"tubing": 0}
	for name, x := range map[string]struct {
		plan  *sequence.Plan
		fails bool
	}{
		"all, one after the other":          {plan(true, tubing, annulus), false},
		"all, the other way round":          {plan(true, annulus, tubing), false},
		"all, the first bled off before":    {plan(true, tubing, bleed, annulus), false}, // it stays met
		"all, one of them missing":          {plan(true, tubing), true},
		"all, one of them in its band":      {plan(true, tubing, map[string]pressure{"annulus": 550 * psi}), true},
		"any, the first":                    {plan(false, tubing), false},
		"any, the second":                   {plan(false, annulus), false},
		"any, both":                         {plan(false, tubing, annulus), false}, // it happens once
		"any, neither":                      {plan(false, map[string]pressure{"tubing": 900 * psi, "annulus": 400 * psi}), true},
		"any, the one or the other or none": {plan(false, map[string]pressure{"tubing": 1050 * psi}), true},
	} {
		t.Run(name, func(t *testing.T) {
			r := checked(t, x.plan)
			require.Equal(t, x.fails, !r.OK(), "%v", r.Findings)
			if x.fails {
				require.Equal(t, sequence.Missing, r.Findings[0].Kind)
			}
		})
	}
	half := plan(true, tubing)
	half.Steps[0].Expect = nil // of all, one alone is no event
	require.True(t, checked(t, half).OK())
}

// What locks: a valve that has locked open doesn't close.
func TestLockedOpen(t *testing.T) {
	p := openCloseOpen("valve: opens")
	p.Devices[0].Actions[0].Disarms, p.Devices[0].Actions[0].Arms = []string{"closes"}, nil
	p.Devices[0].Actions[1].Disarmed = false
	p.Steps[0].Expect = []string{"valve: opens"}
	p.Steps[0].Ramps = tubingTo(2500, 0)
	r := checked(t, p)
	require.Equal(t, "valve: closes", r.Findings[0].Device) // before anything: it feels nothing, and that is below its 400 psi
	p.Devices[0].Actions[1].Triggers[0] = falling(-200*psi, -100*psi)
	require.True(t, checked(t, p).OK())
}

// A spool that feels three compartments, by hand: 2·p tubing − 1.5·p annulus − 0.5·p
// line against 400 lbf ± 10 lbf and 100 lbf of friction: at an annulus of 200 psi and a
// line of 400 psi it needs (500 + 300 + 200)/2 = 500 psi, 505 psi at the most.
func TestThreeAreas(t *testing.T) {
	plan := func(to pressure) *sequence.Plan {
		p := gaugeWell()
		p.Compartments = append(p.Compartments, p.Compartments[1])
		p.Compartments[2].Name = "line"
		a := addAction(p, "spool", "tubing", "")
		a.Inside, a.Chamber = "", nil
		a.Triggers = []sequence.Trigger{{}}
		a.Areas = &sequence.Areas{On: []sequence.Pressed{{"tubing", 2 * unit.SquareInch}, {"annulus", -1.5 * unit.SquareInch}, {"line", -0.5 * unit.SquareInch}},
			Spring: unit.Band[unit.Force]{Least: 390 * unit.PoundForce, Nominal: 400 * unit.PoundForce, Greatest: 410 * unit.PoundForce}, Friction: unit.Exactly(100 * unit.PoundForce)}
		p.Steps = []sequence.Step{{Name: "up", Ramps: []map[string]pressure{{"annulus": 200 * psi, "line": 400 * psi}, {"tubing": to}}, Expect: []string{"spool: moves"}}}
		return p
	}
	require.True(t, checked(t, plan(505*psi)).OK())
	r := checked(t, plan(504.9*psi))
	require.Equal(t, sequence.Missing, r.Findings[0].Kind)
	window := checked(t, plan(600*psi)).Steps[0].Windows
	low, _ := window[2].Intervals[0].Least.Pressure()
	require.InDelta(t, 505, low.In(psi), 0.6) // of a window, half a psi inward
}

// A device that stands later in the list feels its third compartment as well: with 2,000 psi on the line it
// stays at 600 psi of tubing, and moves as the line is bled below (2·600 − 500)/0.5 = 1,400 psi.
func TestALaterDeviceFeelsItsThirdCompartment(t *testing.T) {
	plan := func(before int, bled pressure, expect ...string) *sequence.Plan {
		p := gaugeWell()
		p.Compartments = append(p.Compartments, p.Compartments[1])
		p.Compartments[2].Name = "line"
		for i := range before {
			addAction(p, fmt.Sprint("other ", i), "tubing", "", rising(9000*psi, 9000*psi))
		}
		a := addAction(p, "spool", "tubing", "")
		a.Inside, a.Chamber, a.Triggers = "", nil, []sequence.Trigger{{}}
		a.Areas = &sequence.Areas{On: []sequence.Pressed{{Compartment: "tubing", Area: 2 * unit.SquareInch}, {Compartment: "annulus", Area: -1.5 * unit.SquareInch}, {Compartment: "line", Area: -0.5 * unit.SquareInch}},
			Spring: unit.Exactly(400 * unit.PoundForce), Friction: unit.Exactly(100 * unit.PoundForce)}
		p.Steps = []sequence.Step{{Name: "press", Ramps: []map[string]pressure{{"line": 2000 * psi}, {"tubing": 600 * psi}}},
			{Name: "bleed", Ramps: []map[string]pressure{{"line": bled}}, Expect: expect}}
		return p
	}
	// The same with the line shut in, and bled by what is let out of it.
	shut := func(before int, bled pressure, expect ...string) *sequence.Plan {
		p := plan(before, bled, expect...)
		p.Compartments[2].Surface = false
		setTrapped(&p.Compartments[2], 2000)
		p.Steps[0].Ramps = tubingTo(600)
		p.Steps[1].Ramps, p.Steps[1].PressureChange = nil, map[string]pressure{"line": bled - 2000*psi}
		return p
	}
	for before := range 4 {
		for _, of := range []func(int, pressure, ...string) *sequence.Plan{plan, shut} {
			require.Equal(t, sequence.Proved, verdicted(t, of(before, 1399*psi, "spool: moves")).Verdict, "%d", before)
			require.Equal(t, sequence.Missing, verdicted(t, of(before, 1401*psi, "spool: moves")).Findings[0].Kind, "%d", before)
			require.Equal(t, sequence.Proved, verdicted(t, of(before, 1401*psi)).Verdict, "%d", before)
			require.Equal(t, sequence.Refuted, verdicted(t, of(before, 1399*psi)).Verdict, "%d", before)
		}
	}
}

// One model of a sleeve: what the plan's sleeve needs at surface is what package
// sleeve says, and the same as its two actions written out.
func TestASleeveByItsKind(t *testing.T) {
	m := sleeve.Sleeve{Name: "s", TVD: 1000 * foot, OpenArea: 3 * unit.SquareInch, CloseArea: 2.5 * unit.SquareInch, Stroke: 6 * unit.Inch, Across: unit.Exactly(0 * psi),
		Friction: unit.Band[unit.Force]{Least: 2700 * unit.PoundForce, Nominal: 3000 * unit.PoundForce, Greatest: 3300 * unit.PoundForce}, Inside: "tubing", Outside: "annulus"}
	p := gaugeWell()
	for _, name := range []string{"open line", "close line"} {
		p.Compartments = append(p.Compartments, p.Compartments[0])
		p.Compartments[len(p.Compartments)-1].Name = name
	}
	addPort(p, "sleeve", "tubing", "annulus", false)
	p.Devices = []sequence.Device{{Name: "sleeve", MD: 1000 * foot, Kind: &sequence.Model{Sleeve: &sequence.SleeveModel{OpenLine: "open line", CloseLine: "close line",
		Port: "sleeve", OpenArea: m.OpenArea, CloseArea: m.CloseArea, Friction: m.Friction}}}}
	p.Steps = []sequence.Step{{Name: "open", Ramps: []map[string]pressure{{"open line": 3000 * psi}}, Expect: []string{"sleeve: opens"}}}
	r := checked(t, p)
	require.True(t, r.OK(), "%v", r.Findings)
	low, _ := r.Steps[0].Windows[0].Intervals[0].Least.Pressure()

	line := controlline.Line{Length: 1000 * foot, TVD: 1000 * foot, OD: 0.25 * unit.Inch, Wall: 0.049 * unit.Inch}
	s := sleeve.System{Sleeves: []sleeve.Sleeve{m}, OpenLines: []controlline.Line{line}, CloseLine: line, Liquid: controlline.LineFluid{Density: 9 * ppg, Viscosity: 1 * unit.Centipoise}}
	want, err := s.Shifting(0)
	require.NoError(t, err)
	require.InDelta(t, want.Open.Greatest.In(psi), low.In(psi), 0.6) // of a window, half a psi inward
}

// The valves of package valve carry over by one line: their rows are theirs.
func TestValvesByTheirKind(t *testing.T) {
	none := pressure(0)
	p := gaugeWell()
	addPort(p, "valve", "tubing", "annulus", false)
	unlock, bleed := unit.Band[pressure]{Least: 2000 * psi, Nominal: 2050 * psi, Greatest: 2100 * psi}, unit.Band[pressure]{Least: 300 * psi, Nominal: 350 * psi, Greatest: 400 * psi}
	p.Devices = []sequence.Device{{Name: "valve", Kind: &sequence.Model{Isolation: &sequence.IsolationModel{Inside: "tubing", Chamber: &none, Port: "valve",
		Opens: valve.OpensAfterCycles, Unlock: unlock, Bleed: bleed, Cycles: 2}}}}
	p.Steps = []sequence.Step{{Name: "cycle", Ramps: tubingTo(2200, 200, 2200, 0), Expect: []string{"valve: opens"}, Allow: []sequence.Flow{sequence.Circulation}}}
	require.True(t, checked(t, p).OK())
	p.Steps[0].Ramps = tubingTo(2200, 200, 2200)
	require.Equal(t, sequence.Missing, checked(t, p).Findings[0].Kind)

	p.Ports[0].Open = true
	p.Compartments = append(p.Compartments, p.Compartments[1])
	p.Compartments[2].Name = "line"
	p.Devices[0].Kind = &sequence.Model{Safety: &sequence.SafetyModel{Line: "line", Port: "valve", Opens: unlock, Closes: bleed}}
	p.Steps = []sequence.Step{{Name: "nothing on the line", Expect: []string{"valve: closes"}}, {Name: "open", Ramps: []map[string]pressure{{"line": 2200 * psi}}, Expect: []string{"valve: opens"}},
		{Name: "fail", Ramps: []map[string]pressure{{"line": 0}}, Expect: []string{"valve: closes"}}}
	p.Steps[0].Allow, p.Steps[1].Allow, p.Steps[2].Allow = []sequence.Flow{sequence.Circulation}, []sequence.Flow{sequence.Circulation}, []sequence.Flow{sequence.Circulation}
	require.True(t, checked(t, p).OK())
	p.Devices[0].Kind.Safety.Closes = unlock
	p.Devices[0].Kind.Safety.Opens = bleed
	require.ErrorContains(t, p.Validate(), "devices[0].kind")
}
