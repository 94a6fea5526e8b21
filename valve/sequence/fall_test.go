package sequence_test

import (
	"context"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// lossy is a well of 10 lb/gal, 120/231 psi/ft, over a formation of 4,000 psi at 9,000
// ft: that carries 7,700 ft of it, and the level stands at 1,300 ft.
func lossy(pore unit.Band[pressure]) *sequence.Plan {
	p := &sequence.Plan{Name: "lossy", Well: sequence.Well{MD: 10000 * foot}, Fluids: []sequence.Fluid{{Name: "brine"}}}
	setDensity(&p.Fluids[0], 10)
	p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: pore}}
	p.Compartments = []sequence.Compartment{
		{Name: "tubing", BottomMD: 8000 * foot, Fluid: "brine", Surface: true, Capacity: 0.01 * unit.BarrelPerFoot},
		{Name: "annulus", BottomMD: 8000 * foot, Fluid: "brine", Surface: true},
		{Name: "face", TopMD: 7500 * foot, BottomMD: 10000 * foot, Fluid: "brine", Formation: "sand"},
	}
	p.Ports = []sequence.Port{{Name: "valve", Joins: []string{"tubing", "face"}, MD: 8000 * foot, Open: true}}
	for _, d := range []struct {
		name string
		md   unit.Length
	}{{"high", 1000 * foot}, {"low", 2000 * foot}} {
		none := pressure(0)
		p.Devices = append(p.Devices, sequence.Device{Name: d.name, MD: d.md, Actions: []sequence.Action{{Name: "moves", Inside: "tubing", Chamber: &none,
			Triggers: []sequence.Trigger{rising(9000*psi, 9000*psi)}}}})
	}
	p.Steps = []sequence.Step{
		{Name: "open", Allow: []sequence.Flow{sequence.FlowOut}},
		{Name: "falls", Do: []sequence.Act{{Drain: "tubing"}}, Allow: []sequence.Flow{sequence.FlowOut}},
		{Name: "stands", Ramps: []map[string]pressure{{"annulus": 500 * psi}}},
		{Name: "press", Ramps: []map[string]pressure{{"tubing": 300 * psi}}, Allow: []sequence.Flow{sequence.FlowOut}},
	}
	return p
}

// By hand: see lossy. Above the level stands nothing, under it 120/231 psi/ft; 1,300 ft
// of 0.01 bbl/ft are 13 bbl, lost and then filled again.
func TestALevelFallsAndFills(t *testing.T) {
	r, err := sequence.Check(context.Background(), lossy(exactly(4000)), sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	require.Len(t, r.Steps[1].Levels, 1)
	l := r.Steps[1].Levels[0]
	require.InDelta(t, 1300, l.Depth.In(foot), 1e-6)
	require.InDelta(t, 13, l.Lost.In(unit.Barrel), 1e-6)
	require.True(t, l.Falls)
	require.Equal(t, "sand", l.Into)
	at := func(step int, device string) float64 {
		points := r.Steps[step].Points
		for _, x := range points[len(points)-1].Pressures {
			if x.Device == device && x.Compartment == "tubing" {
				return x.Pressure.In(psi)
			}
		}
		panic(device)
	}
	for step := 1; step < 3; step++ {
		require.Zero(t, at(step, "high"))
		require.InDelta(t, 700*120.0/231, at(step, "low"), 1e-6)
		require.Equal(t, pressure(0), r.Steps[step].Points[0].Surface[0].Pressure)
	}
	require.False(t, r.Steps[2].Levels[0].Falls)
	require.InDelta(t, 300+2000*120.0/231, at(3, "low"), 1e-6)
	require.True(t, r.Steps[3].Levels[0].Filled)
	require.Equal(t, "fill with brine", r.Steps[3].Volumes[0].What)
	require.InDelta(t, 13, r.Steps[3].Volumes[0].Volume.In(unit.Barrel), 1e-6)
}

// A casing outside has 10 lb/gal up to surface: what it has more than the tubing is
// greatest at the level, 1,300 ft·120/231 = 675.32 psi for a formation of 4,000 psi,
// and 623.38 psi for one of 4,051.95 (100 ft of the column more).
func TestCollapseIsWorstAtTheLevel(t *testing.T) {
	for _, x := range []struct {
		rating float64
		proved bool
	}{{675.4, true}, {675.2, false}} {
		p := lossy(unit.Band[pressure]{Least: 4000 * psi, Nominal: 4040 * psi, Greatest: 4100 * psi})
		p.Ratings = []sequence.Rating{{Name: "pipe", Inside: "tubing", Outside: "annulus", ToMD: 7000 * foot, Collapse: exactly(x.rating)}}
		p.Steps = p.Steps[:2]
		r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		require.Equal(t, x.proved, r.OK(), "%v: %v", x.rating, r.Findings)
	}
}

// A device between the levels that the formation's band makes feels air in one part of
// the box and liquid in the other.
func TestALevelOnEitherSideOfADevice(t *testing.T) {
	p := lossy(unit.Band[pressure]{Least: 4000 * psi, Nominal: 4200 * psi, Greatest: 4400 * psi})
	p.Steps = p.Steps[:2]
	// At 1,000 ft stand 4,400 - 8,000*120/231 = 244.2 psi at the most.
	for _, x := range []struct {
		threshold float64
		proved    bool
	}{{244, false}, {245, true}, {-1, false}} {
		a := &p.Devices[0].Actions[0]
		a.Triggers = []sequence.Trigger{falling(pounds(x.threshold), pounds(x.threshold))}
		a.Disarmed = false
		p.Devices[0].Actions[0].Name = "moves"
		p.Steps[1].Expect = []string{"high: moves"}
		r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		require.Equal(t, x.proved, r.OK(), "%v: %v %v", x.threshold, r.Verdict, r.Findings)
	}
}

// What isn't modelled is refused with a line that says what to do.
func TestLevelsThatAreRefused(t *testing.T) {
	for _, x := range []struct {
		name string
		edit func(p *sequence.Plan)
		says string
	}{
		{"shut in", func(p *sequence.Plan) { p.Steps[2].Shut = []string{"tubing"} }, "fill it first"},
		{"displaced", func(p *sequence.Plan) {
			p.Steps[2].Displace = []sequence.Displacement{{Compartment: "tubing", Fluid: "brine", ToMD: 8000 * foot}}
		}, "fill it first"},
		{"no formation", func(p *sequence.Plan) { p.Ports[0].Open = false }, "no formation is joined"},
		{"two fluids", func(p *sequence.Plan) {
			p.Fluids = append(p.Fluids, sequence.Fluid{Name: "mud", Density: p.Fluids[0].Density})
			p.Compartments[2].Fluid = "mud"
		}, "displace one by the other first"},
		{"below the port", func(p *sequence.Plan) { p.Formations[0].Pressure = exactly(400) }, "falls out of the compartment's lower end"},
		{"below an open port", func(p *sequence.Plan) {
			p.Ports = append(p.Ports, sequence.Port{Name: "hole", Joins: []string{"tubing", "room"}, MD: 500 * foot, Open: true})
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: "room", TopMD: 400 * foot, BottomMD: 600 * foot, Fluid: "brine"})
		}, "air would get in there"},
		{"twice in a step", func(p *sequence.Plan) { p.Steps[1].Do = append(p.Steps[1].Do, sequence.Act{Fill: "tubing"}) }, "moved twice in one step"},
	} {
		p := lossy(exactly(4000))
		x.edit(p)
		_, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.ErrorContains(t, err, x.says, x.name)
	}
}

// A column that has fallen is filled with its own fluid before it is pumped into: the same
// as filling it by hand and pumping then, and what it lacks is counted: 1,300 ft of
// 2.992 in, 2.992²/1029.4 bbl/ft.
func TestPumpingFillsWhatHasFallen(t *testing.T) {
	plan := func(by ...sequence.Act) *sequence.Plan {
		p := lossy(exactly(4000))
		p.Fluids[0].Viscosity = unit.Centipoise
		bore := func(bottom float64) []sequence.Bore {
			return []sequence.Bore{{To: feet(bottom), Outer: 2.992 * unit.Inch}}
		}
		p.Compartments[0].Capacity = 0
		p.Compartments[0].Bores, p.Compartments[2].Bores = bore(8000), bore(10000)
		p.Steps[3] = sequence.Step{Name: "bullhead", Do: by, Allow: []sequence.Flow{sequence.FlowOut},
			Pump: []sequence.Pump{{Into: "tubing", Formation: "sand", Rate: unit.BarrelPerMinute, Fluid: "brine", Volume: 10 * unit.Barrel, Injection: 200 * psi}}}
		return p
	}
	check := func(p *sequence.Plan) *sequence.Programme {
		r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		return r
	}
	hand, itself := check(plan(sequence.Act{Fill: "tubing"})), check(plan())
	require.Equal(t, hand.Verdict, itself.Verdict)
	require.Equal(t, hand.Steps[3].Points[0].Pressures, itself.Steps[3].Points[0].Pressures)
	require.NotEmpty(t, itself.Steps[3].Pumps[0].Points)
	require.Equal(t, hand.Steps[3].Pumps, itself.Steps[3].Pumps)
	require.True(t, itself.Steps[3].Levels[0].Filled)
	require.Equal(t, "fill with brine", itself.Steps[3].Volumes[0].What)
	require.InEpsilon(t, 1300*2.992*2.992/1029.4, itself.Steps[3].Volumes[0].Volume.In(unit.Barrel), 1e-4)
}

// Outside stands 9 lb/gal, lighter than the 10 lb/gal in the pipe: what it has more than the tubing grows down to the level and falls from there on.
// At 1,300 ft it is 1,300·9·12/231 = 607.79 psi; at 1,000 and 2,000 ft, where devices stand, 467.5 and 571.4 psi. The same against
// the fluid behind a pipe, which is no compartment.
func TestTheLevelIsWhereItIsWorst(t *testing.T) {
	for _, behind := range []bool{false, true} {
		for rating, proved := range map[float64]bool{608.2: true, 607.4: false} {
			p := lossy(exactly(4000))
			p.Fluids = append(p.Fluids, sequence.Fluid{Name: "light"})
			setDensity(&p.Fluids[1], 9)
			p.Compartments[1].Fluid = "light"
			p.Ratings = []sequence.Rating{{Name: "pipe", Inside: "tubing", Outside: "annulus", FromMD: 500 * foot, ToMD: 7000 * foot, Collapse: exactly(rating)}}
			if behind {
				p.Ratings[0].Outside, p.Ratings[0].Background = "", "light"
			}
			p.Steps = p.Steps[:2]
			r := verdicted(t, p)
			require.Equal(t, proved, r.OK(), "%v, behind %v: %v", rating, behind, r.Findings)
			if !proved {
				require.Equal(t, sequence.RatingCross, r.Findings[0].Kind)
			}
			p.Ratings[0].ToMD = 1500 * foot // the level is in the last piece of it
			require.Equal(t, proved, verdicted(t, p).OK(), "%v, behind %v", rating, behind)
			p.Ratings[0].ToMD = 7000 * foot
			// Between depths that don't hold the level it isn't looked for.
			p.Ratings[0].FromMD = 1500 * foot
			require.True(t, verdicted(t, p).OK())
			p.Ratings[0].FromMD, p.Ratings[0].ToMD = 500*foot, 1200*foot
			require.True(t, verdicted(t, p).OK())
		}
	}
}
