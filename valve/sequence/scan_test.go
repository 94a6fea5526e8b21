package sequence_test

import (
	"context"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// scan holds the window of a ramp of a one-step plan against the verdict at every
// pressure of a scan: one judge, one answer.
func scan(t *testing.T, p *sequence.Plan, compartment string, ramp int, from, to, by float64) {
	t.Helper()
	w := windowOf(t, check(t, p).Steps[0], compartment, ramp)
	for x := from; x <= to; x += by {
		inside, near := false, false
		for _, i := range w.Intervals {
			inside = inside || inPsi(t, i.Least) <= x && x <= inPsi(t, i.Greatest)
			for _, edge := range []sequence.Level{i.Least, i.Greatest} {
				near = near || x-inPsi(t, edge) < 1 && x-inPsi(t, edge) > -1
			}
		}
		p.Steps[0].Ramps[ramp-1][compartment] = unit.Pressure(x) * psi
		if r := verdict(t, p); !near {
			require.Equal(t, inside, r.OK(), "at %v psi, window %s: %+v", x, w.Words(), r.Findings)
		}
	}
}

func TestWindowsAgreeWithTheVerdict(t *testing.T) {
	t.Run("two parts", func(t *testing.T) { scan(t, limitPlan(t, "window-in-two-parts"), "tubing", 1, 0, 3000, 37) })
	t.Run("two parts, the other pressure", func(t *testing.T) { scan(t, limitPlan(t, "window-in-two-parts"), "annulus", 2, 0, 3000, 37) })
	t.Run("event", func(t *testing.T) {
		p := mini()
		device(p, "valve", 8000*foot, rising(4200*psi, 4400*psi))
		scan(t, p, "tubing", 1, 2800, 4200, 23)
	})
	t.Run("none", func(t *testing.T) {
		p := mini()
		device(p, "valve", 8000*foot, rising(3400*psi, 3600*psi))
		scan(t, p, "tubing", 1, 0, 20000, 611)
	})
	t.Run("one late one early", func(t *testing.T) { scan(t, limitPlan(t, "one-late-one-early"), "tubing", 1, 0, 4500, 61) })
	t.Run("first early second late", func(t *testing.T) {
		scan(t, limitPlan(t, "first-early-second-late"), "annulus", 1, 0, 3000, 47)
	})
	t.Run("after a ramp down", func(t *testing.T) { // the edge is that of the second peak
		p := mini()
		p.Steps[0].Ramps = append(p.Steps[0].Ramps, map[string]unit.Pressure{"tubing": 1000 * psi})
		device(p, "valve", 8000*foot, rising(1600*psi, 1700*psi))
		p.Devices = p.Devices[1:]
		p.Steps[0].Expect = []string{"valve: moves"}
		p.Steps[0].Ramps[0]["tubing"] = 500 * psi
		p.Steps[0].Ramps[2]["tubing"] = 2000 * psi
		scan(t, p, "tubing", 1, 0, 3000, 53)
		scan(t, p, "tubing", 3, 0, 3000, 53)
	})
}

// Barriers bound a window: 9,000 ft of 9.5 lb/gal stand at 4,441.6 psi, so that
// 5,000 psi of formation want 558.4 psi at surface if the column is to be a barrier.
func TestWindowSeesBarriers(t *testing.T) {
	p := mini()
	p.Devices = nil
	p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Exactly(5000 * psi)}}
	p.Barriers = []sequence.Barrier{{Name: "valve", Formation: "sand"}, {Name: "column", Formation: "sand", Column: "tubing"}}
	p.Rules.Barriers = 2
	p.Steps = []sequence.Step{
		{Name: "hold", Ramps: []map[string]unit.Pressure{{"tubing": 700 * psi}}},
		{Name: "bleed", Ramps: []map[string]unit.Pressure{{"tubing": 600 * psi}}},
	}
	r := check(t, p)
	require.Equal(t, []string{"barriers lacking | hold | sand"}, roots(r), "nothing on the tubing to begin with")
	p.Fluids[0].Density = unit.Exactly(10.8 * ppg) // 5,049.4 psi
	p.Steps[0].Ramps[0]["tubing"] = 0
	p.Formations[0].Pressure = unit.Band[unit.Pressure]{Least: 4900 * psi, Nominal: 5000 * psi, Greatest: 5049 * psi}
	require.True(t, check(t, p).OK())

	p = mini()
	p.Devices = nil
	p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Within(4400*psi, 0)}}
	p.Barriers = []sequence.Barrier{{Name: "column", Formation: "sand", Column: "tubing"}}
	p.Rules.Barriers = 1
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "light", Density: unit.Exactly(9 * ppg)})
	p.Steps = []sequence.Step{
		{Name: "hold", Ramps: []map[string]unit.Pressure{{"tubing": 700 * psi}}},
		{Name: "lighten", Displace: []sequence.Displacement{{Compartment: "tubing", Fluid: "light", ToMD: 9000 * foot}}, Ramps: []map[string]unit.Pressure{{"tubing": 600 * psi}}},
	}
	// 9 lb/gal stand at 4,207.8 psi: 192.2 psi are wanted, less the half psi that
	// drives no flow.
	r = check(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	w := windowOf(t, r.Steps[1], "tubing", 1)
	require.Len(t, w.Intervals, 1)
	require.InDelta(t, 192, inPsi(t, w.Intervals[0].Least), 1e-9)
	require.Contains(t, w.Intervals[0].Below, "too few barriers")
}

// A pull has a window as a pressure has: from what parts the release at its late end
// with the greatest drag, up to what the rig allows. Worked in TestReadingAtParting.
func TestWindowOfAPull(t *testing.T) {
	long.Skip(t, "takes some seconds")
	p := landed()
	p.String.Drag = unit.Band[unit.Force]{Least: 4000 * unit.PoundForce, Nominal: 5000 * unit.PoundForce, Greatest: 6000 * unit.PoundForce}
	p.String.Rig = 185000 * unit.PoundForce
	p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{170000 * unit.PoundForce}, Expect: []string{"release: parts"}})
	r := check(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.Len(t, r.Steps[1].Windows, 1)
	w := r.Steps[1].Windows[0]
	require.Len(t, w.Intervals, 1)
	require.InDelta(t, 161200, inPounds(t, w.Intervals[0].Least), 101)
	require.GreaterOrEqual(t, inPounds(t, w.Intervals[0].Least), 161195.0)
	require.Contains(t, w.Intervals[0].Below, "release: parts")
}

// A test may be reached in any ramp of the step.
func TestATestInTheSecondRamp(t *testing.T) {
	p := mini()
	p.Devices = nil
	p.Fluids[1].Density = p.Fluids[0].Density
	p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Exactly(4000 * psi)}}
	p.Barriers = []sequence.Barrier{{Name: "pipe", Formation: "sand"}}
	p.Steps = []sequence.Step{{Name: "test", Ramps: []map[string]unit.Pressure{{"tubing": 300 * psi}, {"tubing": 3000 * psi}, {"tubing": 0}},
		Tests: []sequence.Test{{Barrier: "pipe", Side: "above", Inside: "tubing", Outside: "annulus", MD: 8000 * foot,
			Differential: unit.Band[unit.Pressure]{Least: 2900 * psi, Nominal: 3000 * psi, Greatest: 3100 * psi}}}}}
	r := check(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.InDelta(t, 3000, r.Steps[0].Tests[0].Differential.In(psi), 1e-6)
	w := windowOf(t, r.Steps[0], "tubing", 2)
	require.InDelta(t, 2900.5, inPsi(t, w.Intervals[0].Least), 0.51)
	require.InDelta(t, 3099.5, inPsi(t, w.Intervals[0].Greatest), 0.51)
	p.Steps[0].Ramps[1]["tubing"] = 2800 * psi
	require.Equal(t, []string{"test off plan | test | pipe"}, roots(check(t, p)))
}

// Trapped bodies that meet want to know how large they are.
func TestBodiesWithoutCapacityDoNotMeet(t *testing.T) {
	p := limitPlan(t, "two-late-two-early")
	p.Compartments[2].Capacity, p.Compartments[4].Capacity = 0, 0
	_, err := sequence.Check(context.Background(), p, sequence.Options{})
	for _, want := range []string{"chamber 1", "wants a capacity", "link them"} {
		require.ErrorContains(t, err, want)
	}
}
