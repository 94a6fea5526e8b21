package sequence_test

import (
	"context"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

func pressureAt(t *testing.T, p sequence.Point, device, compartment string) unit.Pressure {
	t.Helper()
	for _, x := range p.Pressures {
		if x.Device == device && x.Compartment == compartment {
			return x.Pressure
		}
	}
	require.Fail(t, "no pressure", "%s at %s", compartment, device)
	return 0
}

// Open at the bottom, the heavier tubing would flow into the annulus: 0.7
// lb/gal·(4/77)·9,000 ft = 327.3 psi stand at the annulus' surface.
func TestTwoReferencesAreFlowNotAnError(t *testing.T) {
	p := mini()
	p.Ports = []sequence.Port{{Name: "end", Joins: []string{"tubing", "annulus"}, MD: 9000 * foot, Open: true}}
	p.Steps = []sequence.Step{{Name: "look"}}
	r := verdict(t, p)
	require.Equal(t, []string{"flow off plan | look | tubing to annulus"}, roots(r))
	f := r.Steps[0].Points[0].Flows[0]
	require.Equal(t, sequence.Circulation, f.Kind)
	require.InDelta(t, 0.7*4/77*9000, f.Differential.In(psi), 1e-6)

	p.Steps[0].Allow = []sequence.Flow{sequence.Circulation}
	require.True(t, verdict(t, p).OK())

	// Shut in, the annulus shows it on its gauge instead.
	p.Steps[0] = sequence.Step{Name: "look", Shut: []string{"annulus"}}
	r = verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.InDelta(t, 0.7*4/77*9000, r.Steps[0].Points[0].Surface[1].Pressure.In(psi), 1e-6)
	require.True(t, r.Steps[0].Points[0].Surface[1].Shut)
}

func TestFormationFlowsInOrTakes(t *testing.T) {
	p := mini()
	p.Devices = nil
	p.Formations = []sequence.Formation{{Name: "sand", MD: 8800 * foot, Pressure: unit.Exactly(4500 * psi), Fracture: unit.Exactly(6000 * psi)}}
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "face", TopMD: 8700 * foot, BottomMD: 9000 * foot, Fluid: "tubing fluid", Formation: "sand"})
	p.Ports = []sequence.Port{{Name: "perforations", Joins: []string{"tubing", "face"}, MD: 8800 * foot, Open: true}}
	column := 9.5 * 4 / 77 * 8800
	p.Steps = []sequence.Step{
		{Name: "at rest", Allow: []sequence.Flow{sequence.FlowIn}},
		{Name: "pressured", Ramps: []map[string]unit.Pressure{{"tubing": 500 * psi}}, Allow: []sequence.Flow{sequence.FlowIn, sequence.FlowOut}},
		{Name: "too much", Ramps: []map[string]unit.Pressure{{"tubing": 1800 * psi}}, Allow: []sequence.Flow{sequence.FlowOut}},
		{Name: "shut in", Shut: []string{"tubing"}},
	}
	r := verdict(t, p)
	f := r.Steps[0].Points[0].Flows[0]
	require.Equal(t, sequence.FlowIn, f.Kind)
	require.InDelta(t, 4500-column, f.Differential.In(psi), 1e-6)
	f = r.Steps[1].Points[1].Flows[0]
	require.Equal(t, sequence.FlowOut, f.Kind)
	require.InDelta(t, column+500-4500, f.Differential.In(psi), 1e-6)
	require.Equal(t, []string{"fracture pressure passed | too much | sand"}, roots(r))
	// Shut in, the formation itself fixes the pressure at surface.
	require.InDelta(t, 4500-column, r.Steps[3].Points[0].Surface[0].Pressure.In(psi), 1e-6)
	require.Empty(t, r.Steps[3].Points[0].Flows)
}

// Shut a port and what is behind it keeps its pressure; squeeze it and it
// changes; open it again and the surface takes over.
func TestTrappedBodiesKeepTheirPressure(t *testing.T) {
	p := mini()
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "pocket", TopMD: 8000 * foot, BottomMD: 9000 * foot, Fluid: "tubing fluid"})
	p.Ports = []sequence.Port{{Name: "sleeve", Joins: []string{"tubing", "pocket"}, MD: 8500 * foot, Open: true}}
	p.Devices = []sequence.Device{{Name: "sleeve", MD: 8500 * foot, Actions: []sequence.Action{
		{Name: "closes", Inside: "annulus", Chamber: new(unit.Pressure), Triggers: []sequence.Trigger{rising(5000*psi, 5100*psi)}, Closes: []string{"sleeve"}, Arms: []string{"opens"}},
		{Name: "opens", Inside: "annulus", Chamber: new(unit.Pressure), Triggers: []sequence.Trigger{rising(6000*psi, 6100*psi)}, Opens: []string{"sleeve"}, Disarmed: true},
	}}}
	p.Steps = []sequence.Step{
		{Name: "close under pressure", Ramps: []map[string]unit.Pressure{{"tubing": 1000 * psi}, {"annulus": 1500 * psi}, {"annulus": 0}, {"tubing": 0}}, Expect: []string{"sleeve: closes"}},
		{Name: "warm", PressureChange: map[string]unit.Pressure{"pocket": 300 * psi}},
		{Name: "open", Ramps: []map[string]unit.Pressure{{"annulus": 2500 * psi}}, Expect: []string{"sleeve: opens"}},
	}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	rest := 9.5 * 4 / 77 * 8500
	last := func(k int) sequence.Point { return r.Steps[k].Points[len(r.Steps[k].Points)-1] }
	require.InDelta(t, rest+1000, pressureAt(t, last(0), "sleeve", "pocket").In(psi), 1e-6)
	require.InDelta(t, rest+1300, pressureAt(t, last(1), "sleeve", "pocket").In(psi), 1e-6)
	require.InDelta(t, rest, pressureAt(t, last(2), "sleeve", "pocket").In(psi), 1e-6)
	across := eventOf(t, r.Steps[2], "sleeve: opens").Across[0]
	require.Equal(t, []string{"sleeve", "pocket", "tubing"}, []string{across.Port, across.From, across.To})
	require.InDelta(t, 1300, across.Differential.In(psi), 1e-6)

	p.Steps[1].PressureChange = map[string]unit.Pressure{"tubing": 300 * psi}
	_, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.ErrorContains(t, err, "can't be squeezed")
}

// Two trapped pockets of volumes 3 to 1 at 1,000 and 2,000 psi meet at
// 1,250 psi.
func TestTrappedBodiesMeetByVolume(t *testing.T) {
	p := mini()
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "light", Density: unit.Exactly(1 * ppg)})
	pocket := func(name string, trapped unit.Pressure, capacity float64) sequence.Compartment {
		return sequence.Compartment{Name: name, TopMD: 8000 * foot, BottomMD: 9000 * foot, Fluid: "light", Trapped: unit.Exactly(trapped), Capacity: unit.Area(capacity) * unit.BarrelPerFoot}
	}
	p.Compartments = append(p.Compartments, pocket("large", 1000*psi, 0.03), pocket("small", 2000*psi, 0.01))
	p.Ports = []sequence.Port{{Name: "between", Joins: []string{"large", "small"}, MD: 8500 * foot}}
	a := device(p, "bulkhead", 8500*foot, rising(100*psi, 110*psi))
	a.Inside, a.Outside, a.Opens = "small", "large", []string{"between"}
	p.Devices = p.Devices[1:]
	p.Steps = []sequence.Step{{Name: "break", Expect: []string{"bulkhead: moves"}}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	head := 1 * 4.0 / 77 * 500
	at := r.Steps[0].Points[0]
	require.InDelta(t, 1250+head, pressureAt(t, at, "bulkhead", "large").In(psi), 1e-6)
	require.InDelta(t, 1250+head, pressureAt(t, at, "bulkhead", "small").In(psi), 1e-6)
}

// A sleeve that lets tubing and annulus flow into one another, with nothing else in the
// well: the step allows it, or it is a finding.
func TestASleeveThatOpensToCirculate(t *testing.T) {
	p := mini()
	p.Fluids[1].Density = p.Fluids[0].Density
	p.Ports = []sequence.Port{{Name: "sleeve", Joins: []string{"tubing", "annulus"}, MD: 9000 * foot}}
	p.Devices = nil
	device(p, "sleeve", 9000*foot, rising(1000*psi, 1100*psi)).Opens = []string{"sleeve"}
	p.Steps = []sequence.Step{{Name: "open", Ramps: []map[string]unit.Pressure{{"tubing": 2000 * psi}, {"tubing": 0}},
		Expect: []string{"sleeve: moves"}, Allow: []sequence.Flow{sequence.Circulation}}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.InDelta(t, 2000, r.Steps[0].Points[1].Flows[0].Differential.In(psi), 1e-6)
	p.Steps[0].Allow = nil
	require.Equal(t, []string{"flow off plan | open | tubing to annulus"}, roots(verdict(t, p)))
}
