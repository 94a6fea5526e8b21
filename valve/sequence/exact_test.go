package sequence_test

import (
	"context"
	"fmt"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

func verdict(t testing.TB, p *sequence.Plan) *sequence.Programme {
	t.Helper()
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	return r
}

// Two chambers of equal volume share t1 and t2, two others t3 and t4; each is from
// 1,800 to 2,200 psi. (t1 + t2 − t3 − t4)/2 is at most 400 psi, at one corner of
// sixteen.
func TestFourShuttersAndADisc(t *testing.T) {
	at := func(disc float64) *sequence.Plan {
		p := limitPlan(t, "two-late-two-early")
		p.Devices[5].Actions[1].Triggers[0].Threshold = unit.Exactly(unit.Pressure(disc) * psi)
		return p
	}
	r := verdict(t, at(399.9))
	require.Equal(t, sequence.Refuted, r.Verdict)
	x := func(n string) float64 { return chosen(t, r.Findings[0], "devices.shutter "+n) }
	require.GreaterOrEqual(t, (x("1")+x("2")-x("3")-x("4"))/2, 399.9-1e-6)
	require.Equal(t, sequence.Refuted, verdict(t, at(400)).Verdict, "reaching a level fires it")
	require.Equal(t, sequence.Proved, verdict(t, at(400.1)).Verdict)
	require.Equal(t, sequence.Proved, verdict(t, at(400.00001)).Verdict)
}

// Reaching a level fires it, and reaching a rating isn't passing it, both to about
// 1e-7 psi, with columns whose weights are no round numbers.
func TestAPeakThatTouches(t *testing.T) {
	hydrostatic := 0.7 * 4 / 77 * 9000 // tubing over annulus, in psi
	plan := func(peak float64, expect ...string) *sequence.Plan {
		p := mini()
		p.Devices = nil
		device(p, "valve", 9000*foot, rising(2000*psi, 2200*psi))
		p.Steps = []sequence.Step{{Name: "up", Ramps: []map[string]unit.Pressure{{"tubing": unit.Pressure(peak-hydrostatic) * psi}}, Expect: expect}}
		return p
	}
	require.Equal(t, sequence.Refuted, verdict(t, plan(2000)).Verdict, "the early end is reached")
	require.Equal(t, sequence.Proved, verdict(t, plan(2000-1e-5)).Verdict)
	require.Equal(t, sequence.Proved, verdict(t, plan(2200, "valve: moves")).Verdict, "the late end is reached")
	require.Equal(t, sequence.Refuted, verdict(t, plan(2200-1e-5, "valve: moves")).Verdict)

	rated := func(peak float64) *sequence.Plan {
		p := plan(peak)
		p.Devices = nil
		p.Ratings = []sequence.Rating{{Name: "pipe", Inside: "tubing", Outside: "annulus", ToMD: 9000 * foot, Burst: unit.Exactly(2000 * psi)}}
		return p
	}
	require.Equal(t, sequence.Proved, verdict(t, rated(2000)).Verdict)
	require.Equal(t, sequence.Refuted, verdict(t, rated(2000+1e-5)).Verdict)
}

// The peak of a band of balance, a test and a fracture pressure may be stood on too.
func TestStandingOnALimitIsRight(t *testing.T) {
	p := mini()
	p.Devices = nil
	p.Fluids[1] = p.Fluids[0]
	p.Fluids[1].Name = "annulus fluid"
	column := 9.5 * 4 / 77 * 9000
	p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Exactly(unit.Pressure(column+800) * psi), Fracture: unit.Exactly(unit.Pressure(column+1000) * psi)}}
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "face", TopMD: 8900 * foot, BottomMD: 9000 * foot, Fluid: "tubing fluid", Formation: "sand"})
	p.Ports = []sequence.Port{{Name: "perforations", Joins: []string{"tubing", "face"}, MD: 9000 * foot, Open: true}}
	p.Barriers = []sequence.Barrier{{Name: "pipe", Formation: "sand"}}
	p.Steps = []sequence.Step{{Name: "hold", Ramps: []map[string]unit.Pressure{{"tubing": 1000 * psi}}, Allow: []sequence.Flow{sequence.FlowIn, sequence.FlowOut},
		Balance: []sequence.Balance{{Compartment: "tubing", Formation: "sand", Overbalance: unit.Exactly(200 * psi)}},
		Tests: []sequence.Test{{Barrier: "pipe", Side: "above", Inside: "tubing", Outside: "annulus", MD: 5000 * foot,
			Differential: unit.Band[unit.Pressure]{Least: 1000 * psi, Nominal: 1000 * psi, Greatest: 1000 * psi}}}}}
	r := verdict(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, "%+v", r.Findings)
	p.Steps[0].Ramps[0]["tubing"] += 1e-5 * psi
	r = verdict(t, p)
	require.Len(t, r.Findings, 3, "%+v", r.Findings)
}

// A step's pressure may have two good ranges: see the plan.
func TestWindowInTwoParts(t *testing.T) {
	p := limitPlan(t, "window-in-two-parts")
	r := check(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	w := windowOf(t, r.Steps[0], "tubing", 1)
	require.Len(t, w.Intervals, 2)
	require.InDeltaSlice(t, []float64{0, 949.5, 1520.5, 20000}, []float64{
		inPsi(t, w.Intervals[0].Least), inPsi(t, w.Intervals[0].Greatest), inPsi(t, w.Intervals[1].Least), inPsi(t, w.Intervals[1].Greatest)}, 1e-9)
	require.True(t, w.Inside)
	require.Contains(t, w.Intervals[0].Above, "lock: opens")
	require.Contains(t, w.Intervals[1].Below, "lock: opens")
	for pressure, want := range map[float64]sequence.Verdict{949.9: sequence.Proved, 950: sequence.Refuted, 1200: sequence.Refuted, 1520: sequence.Refuted, 1520.1: sequence.Proved} {
		p.Steps[0].Ramps[0]["tubing"] = unit.Pressure(pressure) * psi
		require.Equal(t, want, verdict(t, p).Verdict, "%v psi", pressure)
	}
}

// thirty is a well with n pockets and n devices, whose ports and triggers are the
// caller's.
func thirty(n int, build func(p *sequence.Plan, d int, pocket string, a *sequence.Action)) *sequence.Plan {
	p := mini()
	p.Fluids[1].Density = p.Fluids[0].Density
	p.Devices = nil
	p.Steps = []sequence.Step{{Name: "ramp", Ramps: []map[string]unit.Pressure{{"tubing": 3000 * psi}}}}
	for d := range n {
		pocket := fmt.Sprintf("pocket %d", d)
		p.Compartments = append(p.Compartments, sequence.Compartment{Name: pocket, TopMD: 8000 * foot, BottomMD: 8200 * foot, Fluid: "tubing fluid", Capacity: 0.01 * unit.BarrelPerFoot})
		a := device(p, fmt.Sprintf("device %d", d), 8100*foot, rising(1000*psi, 1400*psi))
		build(p, d, pocket, a)
	}
	return p
}

// Thirty devices with one band, each in its own chamber: n! orders, which all come to
// the same.
func ownChambers(n int) *sequence.Plan {
	return thirty(n, func(p *sequence.Plan, d int, pocket string, a *sequence.Action) {
		p.Ports = append(p.Ports, sequence.Port{Name: pocket, Joins: []string{"tubing", pocket}, MD: 8100 * foot, Open: true})
		a.Closes = []string{pocket}
		p.Steps[0].Expect = append(p.Steps[0].Expect, p.Devices[d].Name+": moves")
	})
}

// In series: each lets the pressure through to the next.
func inSeries(n int) *sequence.Plan {
	return thirty(n, func(p *sequence.Plan, d int, pocket string, a *sequence.Action) {
		before := "tubing"
		if d > 0 {
			before = fmt.Sprintf("pocket %d", d-1)
		}
		p.Ports = append(p.Ports, sequence.Port{Name: pocket, Joins: []string{before, pocket}, MD: 8100 * foot})
		p.Compartments[len(p.Compartments)-1].Trapped = unit.Exactly(3900 * psi)
		a.Inside = before
		a.Opens = []string{pocket}
		p.Steps[0].Expect = append(p.Steps[0].Expect, p.Devices[d].Name+": moves")
	})
}

// Thirty counters that may have counted once or not.
func countersInDoubt(n int) *sequence.Plan {
	p := thirty(n, func(p *sequence.Plan, d int, pocket string, a *sequence.Action) {
		a.Triggers[0] = sequence.Trigger{Threshold: unit.Band[unit.Pressure]{Least: 2900 * psi, Nominal: 3000 * psi, Greatest: 3100 * psi}, Count: 2, Rearm: unit.Within(500*psi, 0.1)}
	})
	p.Steps[0].Ramps = append(p.Steps[0].Ramps, map[string]unit.Pressure{"tubing": 0})
	return p
}

// Thirty overlapping bands must not explode. What is counted are the events that are
// walked through in all orders, which the machine's load doesn't change.
func TestThirtyDevicesDoNotExplode(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		plan   *sequence.Plan
		budget int
	}{
		"own chambers": {ownChambers(30), 2000},
		"series":       {inSeries(8), 3000},
		"counters":     {countersInDoubt(30), 2000},
	} {
		r, err := sequence.Check(context.Background(), c.plan, sequence.Options{Only: sequence.VerdictOnly, Budget: c.budget})
		require.NoError(t, err)
		require.Equal(t, sequence.Proved, r.Verdict, "%s: %+v %s", name, r.Findings, r.Open)
	}
	require.Equal(t, sequence.Proved, verdict(t, inSeries(30)).Verdict)
	// A wall between two of the chambers, for which one shuts late and the other early.
	p := ownChambers(30)
	p.Ratings = []sequence.Rating{{Name: "wall", Inside: "pocket 3", Outside: "pocket 17", FromMD: 8000 * foot, ToMD: 8200 * foot, Burst: unit.Exactly(399.9 * psi)}}
	require.Equal(t, sequence.Refuted, verdict(t, p).Verdict)
	p.Ratings[0].Burst = unit.Exactly(400 * psi)
	require.Equal(t, sequence.Proved, verdict(t, p).Verdict)
	// The second count of one of them.
	p = countersInDoubt(30)
	p.Steps[0].Ramps = append(p.Steps[0].Ramps, map[string]unit.Pressure{"tubing": 3000 * psi})
	require.Equal(t, sequence.Refuted, verdict(t, p).Verdict)
}

func BenchmarkThirty(b *testing.B) {
	for _, c := range []struct {
		name string
		of   func(n int) *sequence.Plan
	}{{"own chambers", ownChambers}, {"series", inSeries}, {"counters", countersInDoubt}} {
		b.Run(c.name, func(b *testing.B) { benchmark(b, c.of(30), sequence.Options{Only: sequence.VerdictOnly}) })
	}
}

// Both triggers of a row are due at one pressure, and two devices at one pressure:
// in either order all is well.
func TestDueAtOnce(t *testing.T) {
	p := mini()
	p.Devices = nil
	device(p, "a", 9000*foot, sequence.Trigger{Threshold: unit.Exactly(1000 * psi)}, sequence.Trigger{Threshold: unit.Exactly(1000 * psi)})
	device(p, "b", 9000*foot, sequence.Trigger{Threshold: unit.Exactly(1000 * psi)})
	device(p, "c", 9000*foot, sequence.Trigger{Threshold: unit.Exactly(1000 * psi), Direction: valve.Rising})
	p.Steps = []sequence.Step{{Name: "up", Ramps: []map[string]unit.Pressure{{"tubing": 1500 * psi}}, Expect: []string{"c: moves", "b: moves", "a: moves"}}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
}
