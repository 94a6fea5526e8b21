package sequence_test

import (
	"context"
	"testing"

	"completion.example/fluid"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// pumpedWell is 9,000 ft of 3-1/2 in tubing in 9-5/8 in casing, open at its end, full of
// a 9 lb/gal brine of 1 cP.
func pumpedWell() *sequence.Plan {
	p := &sequence.Plan{Name: "pumped", Well: sequence.Well{MD: 9000 * foot},
		Fluids: []sequence.Fluid{{Name: "brine", Viscosity: unit.Centipoise}, {Name: "kill", Viscosity: 8 * unit.Centipoise, Yield: 5 * unit.PoundForcePer100SquareFeet}}}
	setDensity(&p.Fluids[0], 9)
	setDensity(&p.Fluids[1], 11)
	p.Compartments = []sequence.Compartment{
		{Name: "tubing", BottomMD: 9000 * foot, Fluid: "brine", Surface: true, Bores: []sequence.Bore{{To: 9000 * foot, Outer: 2.992 * unit.Inch}}},
		{Name: "annulus", BottomMD: 9000 * foot, Fluid: "brine", Surface: true, Bores: []sequence.Bore{{To: 5000 * foot, Outer: 8.681 * unit.Inch, Inner: 3.5 * unit.Inch}, {To: 9000 * foot, Outer: 8.535 * unit.Inch, Inner: 3.5 * unit.Inch}}},
	}
	p.Ports = []sequence.Port{{Name: "end", Joins: []string{"tubing", "annulus"}, MD: 9000 * foot, Open: true}}
	addAction(p, "gauge", "tubing", "annulus", rising(19000*psi, 19000*psi))
	p.Devices[0].MD = 6000 * foot
	return p
}

func verdicted(t *testing.T, p *sequence.Plan) *sequence.Programme {
	t.Helper()
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	return r
}

// friction of a fluid at a rate over some feet.
func friction(t *testing.T, f sequence.Fluid, c flow.Conduit, rate unit.FlowRate, length float64) float64 {
	t.Helper()
	r := flow.Bingham(f.Viscosity, f.Yield)
	x, err := flow.Stream{Conduit: c, Rheology: r, Density: f.Density.Nominal, Rate: rate}.Friction()
	require.NoError(t, err)
	return float64(x.Gradient) * length * float64(foot) / float64(psi)
}

// One fluid that goes round costs what flow.Circulation makes of the same sections, at
// the pump and at every device; the returns stand at what is held on them.
func TestPumpGoesRound(t *testing.T) {
	p := pumpedWell()
	const rate = 4 * unit.BarrelPerMinute
	p.Steps = []sequence.Step{{Name: "hold", Ramps: []map[string]pressure{{"annulus": 200 * psi, "tubing": 200 * psi}}},
		{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: rate}}}}
	r := verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	c := flow.Circulation{Rate: rate, BackPressure: 200 * psi, Liquid: flow.PumpedFluid{Density: 9 * ppg, Rheology: flow.Newtonian(unit.Centipoise)}}
	c.Well.Pipe = []flow.ConduitSection{{Conduit: flow.Conduit{Outer: 2.992 * unit.Inch}, Length: 9000 * foot, BottomTVD: 9000 * foot}}
	c.Well.Annulus = []flow.ConduitSection{{Conduit: flow.Conduit{Outer: 8.681 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: 5000 * foot, BottomTVD: 5000 * foot},
		{Conduit: flow.Conduit{Outer: 8.535 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: 4000 * foot, BottomTVD: 9000 * foot}}
	want, err := c.Solve()
	require.NoError(t, err)
	at := r.Steps[1].Pumps[0].Points[0]
	require.InEpsilon(t, float64(want.PumpPressure), float64(at.Pressure), 1e-9)
	head := 9 * psiPerFootPpg * 6000
	inside := at.Pressure.In(psi) + head - friction(t, p.Fluids[0], flow.Conduit{Outer: 2.992 * unit.Inch}, rate, 6000)
	outside := 200 + head + friction(t, p.Fluids[0], flow.Conduit{Outer: 8.681 * unit.Inch, Inner: 3.5 * unit.Inch}, rate, 5000) +
		friction(t, p.Fluids[0], flow.Conduit{Outer: 8.535 * unit.Inch, Inner: 3.5 * unit.Inch}, rate, 1000)
	require.InDelta(t, inside, at.Devices[0].Pressure.In(psi), 1e-6)
	require.InDelta(t, outside, at.Devices[1].Pressure.In(psi), 1e-6)
	end := r.Steps[1].Points[0]
	require.InDelta(t, 200, end.Surface[0].Pressure.In(psi), 1e-6, "the pump stands at what it began with")
}

// 11 lb/gal follows 9 lb/gal: each pump pressure is back pressure, columns and friction
// of either part, added up by hand; what is pumped beyond the way comes back.
func TestPumpDisplaces(t *testing.T) {
	p := pumpedWell()
	const rate = 3 * unit.BarrelPerMinute
	pipe := flow.Conduit{Outer: 2.992 * unit.Inch}
	volume := unit.Volume(float64(pipe.Area()) * float64(9000*foot))
	p.Steps = []sequence.Step{{Name: "displace", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: rate, Fluid: "kill", Volume: volume}}}}
	r := verdicted(t, p)
	require.Equal(t, sequence.ColumnFalls, r.Findings[0].Kind, "the heavy column falls once it is deep enough")
	pump := r.Steps[0].Pumps[0]
	annulus := friction(t, p.Fluids[0], flow.Conduit{Outer: 8.681 * unit.Inch, Inner: 3.5 * unit.Inch}, rate, 5000) +
		friction(t, p.Fluids[0], flow.Conduit{Outer: 8.535 * unit.Inch, Inner: 3.5 * unit.Inch}, rate, 4000)
	for _, at := range pump.Points {
		front := float64(at.Pumped) / float64(pipe.Area()) / float64(foot)
		want := annulus + 9*psiPerFootPpg*9000 - 11*psiPerFootPpg*front - 9*psiPerFootPpg*(9000-front) +
			friction(t, p.Fluids[1], pipe, rate, front) + friction(t, p.Fluids[0], pipe, rate, 9000-front)
		require.InDelta(t, want, at.Pressure.In(psi), 1e-6, "front at %v ft", front)
		require.Equal(t, want < -0.01, at.Falls)
	}
	require.Len(t, pump.Returns, 1)
	require.InEpsilon(t, float64(volume), float64(pump.Returns[0].Volume), 1e-9)
	last := r.Steps[0].Points[0]
	require.InDelta(t, 2*psiPerFootPpg*9000, -last.Surface[0].Pressure.In(psi), 1e-6, "the heavy column would fall")
}

// A kill that is bullheaded: what hydrostatics.Bullhead makes of the same job, column,
// friction behind the front and injection; the pump's schedule here has the friction of
// what is pushed ahead, too.
func TestPumpBullheads(t *testing.T) {
	p := pumpedWell()
	p.Fluids[0].Viscosity = 0.7 * unit.Centipoise
	f := sequence.Formation{Name: "sand", MD: 9000 * foot}
	setPore(&f, 4600)
	setFracture(&f, 6500)
	p.Formations = []sequence.Formation{f}
	p.Ports[0].Open, p.Ports[0].MD, p.Devices[0].Actions[0].Outside = false, 8000*foot, ""
	none := pressure(0)
	p.Devices[0].Actions[0].Chamber = &none
	p.Compartments[0].Surface, p.Compartments[0].Formation = true, ""
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "face", TopMD: 8999 * foot, BottomMD: 9000 * foot, Fluid: "brine", Formation: "sand",
		Bores: []sequence.Bore{{To: 9000 * foot, Outer: 2.992 * unit.Inch}}})
	p.Ports = append(p.Ports, sequence.Port{Name: "perforations", Joins: []string{"tubing", "face"}, MD: 8999 * foot, Open: true})
	const rate = 2 * unit.BarrelPerMinute
	pipe := flow.Conduit{Outer: 2.992 * unit.Inch}
	p.Steps = []sequence.Step{{Name: "hold", Ramps: []map[string]pressure{{"tubing": 391.6883116883117 * psi}}, Allow: []sequence.Flow{sequence.FlowIn}},
		{Name: "kill", Pump: []sequence.Pump{{Into: "tubing", Formation: "sand", Rate: rate, Fluid: "kill", Injection: 300 * psi,
			Volume: unit.Volume(float64(pipe.Area()) * float64(8000*foot))}}}}
	r := verdicted(t, p)
	kill := flow.Bingham(p.Fluids[1].Viscosity, p.Fluids[1].Yield)
	x, err := flow.Stream{Conduit: pipe, Rheology: kill, Density: 11 * ppg, Rate: rate}.Friction()
	require.NoError(t, err)
	b := hydrostatics.Bullhead{Formation: hydrostatics.Formation{Pressure: 4600 * psi, TVD: 9000 * foot}, Injection: 300 * psi, Fracture: 6500 * psi,
		Sections: []hydrostatics.LegSection{{Area: pipe.Area(), BottomMD: 9000 * foot}}, Influx: fluid.Constant{Value: 9 * ppg}, Kill: 11 * ppg, Friction: []unit.Gradient{x.Gradient}}
	points, err := b.Schedule(16)
	require.NoError(t, err)
	seen := 0
	for _, at := range r.Steps[1].Pumps[0].Points {
		for _, want := range points {
			front := want.FrontMD.In(foot)
			if d := float64(at.Pumped - want.Pumped); d*d > 1e-16 {
				continue
			}
			seen++
			ahead := friction(t, p.Fluids[0], pipe, rate, 9000-front)
			require.InDelta(t, want.Pump.In(psi)+ahead, at.Pressure.In(psi), 1e-3, "front at %v ft", front)
		}
	}
	require.Greater(t, seen, 0)
	require.Equal(t, "brine", r.Steps[1].Pumps[0].Returns[0].What)
}

// A gauge that may stand 20 ft higher or deeper feels that much more friction or less: down the tubing and up
// the annulus, as one column stands on the other. By hand: what is left of friction below it.
func TestADepthInDoubtWhileItIsPumped(t *testing.T) {
	rate := 5 * unit.BarrelPerMinute
	plan := func(threshold float64) *sequence.Plan {
		p := pumpedWell()
		p.Devices[0].Actions[0].Triggers[0] = rising(pounds(threshold), pounds(threshold))
		p.Devices[0].Error = unit.Band[unit.Length]{Least: -20 * foot, Greatest: 20 * foot}
		p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: rate}}}}
		return p
	}
	p := plan(1)
	left := func(feet float64) float64 { // above the end
		return friction(t, p.Fluids[0], flow.Conduit{Outer: 2.992 * unit.Inch}, rate, feet) + friction(t, p.Fluids[0], flow.Conduit{Outer: 8.535 * unit.Inch, Inner: 3.5 * unit.Inch}, rate, feet)
	}
	require.Greater(t, left(3020)-left(3000), 0.5)
	require.Equal(t, sequence.Proved, verdicted(t, plan(left(3020)+8)).Verdict, "enclosed by some psi")
	require.Equal(t, sequence.Refuted, verdicted(t, plan(left(3020)-0.3)).Verdict)
}

// A pipe's rating is held against what friction leaves at its depth: below 8,000 ft that of the last 1,000
// ft down the tubing and back, and not the pump's pressure.
func TestRatingsWhileItIsPumped(t *testing.T) {
	rate := 5 * unit.BarrelPerMinute
	plan := func(burst float64) *sequence.Plan {
		p := pumpedWell()
		p.Ratings = []sequence.Rating{{Name: "tail", Inside: "tubing", Outside: "annulus", FromMD: 8000 * foot, ToMD: 9000 * foot, Burst: exactly(burst)}}
		p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: rate}}}}
		return p
	}
	p := plan(1)
	bore := flow.Conduit{Outer: 2.992 * unit.Inch}
	ring := flow.Conduit{Outer: 8.535 * unit.Inch, Inner: 3.5 * unit.Inch}
	left := friction(t, p.Fluids[0], bore, rate, 1000) + friction(t, p.Fluids[0], ring, rate, 1000)
	require.Greater(t, left, 40.0)
	require.Equal(t, sequence.Proved, verdicted(t, plan(left+0.5)).Verdict)
	r := verdicted(t, plan(left-0.5))
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, "tail", r.Findings[0].Device, "%+v", r.Findings)
}

// What isn't modelled, or isn't said, says so.
func TestPumpsThatAreRefused(t *testing.T) {
	pump := sequence.Pump{Into: "tubing", Returns: "annulus", Rate: unit.BarrelPerMinute}
	for want, change := range map[string]func(p *sequence.Plan){
		"no way is open":   func(p *sequence.Plan) { p.Ports[0].Open = false },
		"has no bores":     func(p *sequence.Plan) { p.Compartments[0].Bores = nil },
		"has no viscosity": func(p *sequence.Plan) { p.Fluids[0].Viscosity = 0 },
		"more than one way is open": func(p *sequence.Plan) {
			p.Ports = append(p.Ports, p.Ports[0])
			p.Ports[1].Name, p.Ports[1].MD = "other", 4000*foot
		},
		"shut in at the top":      func(p *sequence.Plan) { p.Steps[0].Shut = []string{"annulus"} },
		"must be above zero":      func(p *sequence.Plan) { p.Steps[0].Pump[0].Rate = 0 },
		"a fluid and its volume":  func(p *sequence.Plan) { p.Steps[0].Pump[0].Fluid = "kill" },
		"wants either returns":    func(p *sequence.Plan) { p.Steps[0].Pump[0].Returns = "" },
		"its bores make":          func(p *sequence.Plan) { p.Compartments[0].Capacity = unit.BarrelPerFoot },
		"they must reach":         func(p *sequence.Plan) { p.Compartments[0].Bores[0].To = 8000 * foot },
		"neither a viscosity":     func(p *sequence.Plan) { p.Fluids[0].Viscosity, p.Fluids[0].Yield = 0, 1 },
		"belongs to pumping into": func(p *sequence.Plan) { p.Steps[0].Pump[0].Injection = 1 },
		"its way changes while it is pumped": func(p *sequence.Plan) {
			p.Devices[0].Actions[0].Triggers = []sequence.Trigger{rising(20*psi, 20*psi)}
			p.Devices[0].Actions[0].Closes = []string{"end"}
			p.Steps[0].Expect = []string{"gauge: moves"}
			p.Steps[0].Pump[0].Rate = 5 * unit.BarrelPerMinute
		},
	} {
		p := pumpedWell()
		p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{pump}}}
		change(p)
		_, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.ErrorContains(t, err, want)
	}
}

// The greatest rate is the one at which friction takes the tubing to its rating.
func TestGreatestRate(t *testing.T) {
	p := pumpedWell()
	p.Ratings = []sequence.Rating{{Name: "head", Inside: "tubing", Outside: "annulus", ToMD: 0, Burst: exactly(2000)}}
	p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: 2 * unit.BarrelPerMinute}}}}
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	greatest := r.Steps[0].Pumps[0].Greatest
	p.Steps[0].Pump[0].Rate = greatest
	at := verdicted(t, p).Steps[0].Pumps[0].Points[0].Pressure.In(psi)
	require.Less(t, at, 2000.0)
	require.Greater(t, at, 1950.0)
}
