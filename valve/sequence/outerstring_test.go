package sequence_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// twoStrings is 5-1/2 in pipe of 17 lb/ft to 9,000 ft that a packer at its lower end
// holds, and in it 2-7/8 in pipe of 6.5 lb/ft from the wellhead to 8,500 ft, that an
// anchor at 8,000 ft holds in the bore of the outer one.
func twoStrings() *sequence.Plan {
	even := func(f float64) []sequence.MarkedTVD {
		return []sequence.MarkedTVD{{Temperature: unit.Fahrenheit(f)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(f)}}
	}
	comp := func(name string, bottom unit.Length, fluid string) sequence.Compartment {
		return sequence.Compartment{Name: name, BottomMD: bottom, Fluid: fluid, Surface: true}
	}
	return &sequence.Plan{
		Name: "two strings", Well: sequence.Well{MD: 9000 * foot, Temperatures: map[string][]sequence.MarkedTVD{sequence.Undisturbed: even(150), "cooled": even(70), "half": even(110)}},
		Fluids:       []sequence.Fluid{{Name: "in", Density: unit.Exactly(9.5 * ppg)}, {Name: "between", Density: unit.Exactly(9 * ppg)}, {Name: "out", Density: unit.Exactly(8.8 * ppg)}},
		Compartments: []sequence.Compartment{comp("inner bore", 8500*foot, "in"), comp("between the strings", 9000*foot, "between"), comp("annulus", 9000*foot, "out")},
		Devices: []sequence.Device{
			{Name: "packer", MD: 9000 * foot, On: sequence.OnOuterString, Actions: []sequence.Action{{Name: "sets", Inside: "between the strings", Outside: "annulus",
				Triggers: []sequence.Trigger{rising(1500*psi, 1500*psi)}, Holds: true}}},
			{Name: "anchor", MD: 8000 * foot, Actions: []sequence.Action{{Name: "sets", Inside: "inner bore", Outside: "between the strings",
				Triggers: []sequence.Trigger{rising(1800*psi, 1800*psi)}, Holds: true}}},
			{Name: "joint", MD: 7500 * foot, Actions: []sequence.Action{{Name: "parts", Axial: true, Seal: 2.6 * unit.Inch, Releases: true,
				Triggers: []sequence.Trigger{{Tension: unit.Exactly(250000 * unit.PoundForce)}}}}},
			{Name: "outer joint", MD: 8700 * foot, On: sequence.OnOuterString, Actions: []sequence.Action{{Name: "parts", Axial: true, Seal: 5.6 * unit.Inch, Releases: true,
				Triggers: []sequence.Trigger{{Tension: unit.Exactly(350000 * unit.PoundForce)}}}}},
		},
		String: &sequence.String{Inside: "inner bore", Around: []string{"between the strings"}, Below: "between the strings",
			Sections: []sequence.StringSection{{BottomMD: 8500 * foot, Hole: 4.892 * unit.Inch, Pipe: sequence.Pipe{Size: 2.875 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Grade: "L80"}}},
			HeldMD:   8000 * foot, Block: 10000 * unit.PoundForce,
			Seals: []sequence.Seal{{Name: "inner seals", MD: 8500 * foot, Bore: 3 * unit.Inch, Up: 30 * foot, Down: 30 * foot}}},
		OuterString: &sequence.String{Inside: "between the strings", Around: []string{"annulus"}, Below: "annulus",
			Sections: []sequence.StringSection{{BottomMD: 9000 * foot, Hole: 8.535 * unit.Inch, Pipe: sequence.Pipe{Size: 5.5 * unit.Inch, Weight: 17 * unit.PoundPerFoot, Grade: "L80"}}},
			HeldMD:   9000 * foot, Block: 25000 * unit.PoundForce,
			Seals: []sequence.Seal{{Name: "outer end", MD: 9000 * foot, Bore: 5.5 * unit.Inch, Up: 30 * foot, Down: 30 * foot}}},
		Steps: []sequence.Step{
			{Name: "set the packer", Ramps: []map[string]unit.Pressure{{"between the strings": 1800 * psi, "inner bore": 1800 * psi}, {"between the strings": 0, "inner bore": 0}}, Expect: []string{"packer: sets"}},
			{Name: "set the anchor", Ramps: []map[string]unit.Pressure{{"inner bore": 2900 * psi}, {"inner bore": 300 * psi}}, Expect: []string{"anchor: sets"}},
			{Name: "cool", Temperature: "cooled"},
			{Name: "pull the inner string", Pull: []unit.Force{70000 * unit.PoundForce}},
			{Name: "pull the outer string", Pull: []unit.Force{190000 * unit.PoundForce}, On: sequence.OnOuterString},
		},
	}
}

func lastOuter(r *sequence.Programme, step int) *sequence.StringAt {
	points := r.Steps[step].Points
	return points[len(points)-1].OuterString
}

// Two strings in the programme are what tubular/movement makes of the same two, landed,
// held in the conditions of those moments, and loaded, to 1e-9: put together here a
// second time. The outer one may have its own temperature.
func TestTwoStringsAreThoseOfMovement(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	for n := range 6 {
		p := twoStrings()
		if n >= 3 { // the inner one hangs in the outer one
			p.String.HangerMD = unit.Length(between(1000, 6000)) * foot
			p.Compartments[0].TopMD, p.Compartments[0].Surface = 0, true
		}
		density := [3]unit.Density{}
		for k := range density {
			density[k] = unit.Density(between(8.5, 10)) * ppg
			p.Fluids[k].Density = unit.Exactly(density[k])
		}
		outerCool := 70.0
		if n%2 == 1 {
			p.OuterString.Temperatures = map[string]string{"cooled": "half"}
			outerCool = 110
		}
		slant := unit.Angle(between(0, 35)) * unit.Degree
		p.Well.Path = []sequence.Station{{Inclination: slant}, {MD: 9000 * foot, Inclination: slant}}
		r := verdict(t, p)
		require.Len(t, r.Steps[4].Points, 2, "%+v", r.Findings)

		made := putTogether(t, p)
		outer, pair, state := made.outer, made.pair, made.state
		at := func(step int, action string, k int) unit.Pressure {
			return eventOf(t, r.Steps[step], action).Surface[k].Pressure
		}
		oc, ic := state(0, 0, 150, 150)
		s, err := outer.Land(oc)
		require.NoError(t, err)
		stand, err := pair.Land(s, oc, ic)
		require.NoError(t, err)
		oc, ic = state(at(0, "packer: sets", 0), at(0, "packer: sets", 1), 150, 150)
		stand, err = pair.TakeHoldOuter(stand, 0, oc, ic)
		require.NoError(t, err)
		oc, ic = state(at(1, "anchor: sets", 0), 0, 150, 150)
		stand, err = pair.TakeHold(stand, 0, oc, ic)
		require.NoError(t, err)
		same := func(step int, oc, ic movement.Conditions) {
			l, err := pair.Load(stand, oc, ic)
			require.NoError(t, err)
			for k, x := range [2]struct {
				l  *movement.Loading
				at *sequence.StringAt
			}{{&l.Inner, lastString(r, step)}, {&l.Outer, lastOuter(r, step)}} {
				near := func(want, got unit.Force) {
					require.InDelta(t, float64(want), float64(got), 1e-9*1e6, "%s, string %d, well %d", p.Steps[step].Name, k, n)
				}
				near(x.l.HangerLoad, x.at.Hanger)
				near(x.l.Joints[0].Balance, x.at.Joints[0].Balance)
				near(x.l.Holds[0].Load, x.at.Holds[0].Load)
				near(x.l.Holds[0].WallAbove, x.at.Holds[0].Wall)
				require.InDelta(t, float64(x.l.Seals[0].Travel), float64(x.at.Seals[0].Travel), 1e-8)
				if x.l.Top != movement.AtHanger {
					near(x.l.Reading, x.at.Reading)
				}
			}
		}
		// The anchor has set in step 2: how both stand before is step 1's matter.
		oc, ic = state(300*psi, 0, 150, 150)
		same(1, oc, ic)
		oc, ic = state(300*psi, 0, outerCool, 70)
		same(2, oc, ic)
		pulled := ic
		pulled.Top, pulled.Reading = movement.OnHookOpen, 70000*unit.PoundForce
		same(3, oc, pulled)
		pulled = oc
		pulled.Top, pulled.Reading = movement.OnHookOpen, 190000*unit.PoundForce
		same(4, pulled, ic)
	}
}

// By hand: an inner string that hangs at 6,000 ft in the outer one and is held nowhere
// puts its weight in the fluid on it: 2,500 ft of 6.5 lb/ft less what 9 lb/gal carry of
// its end, all fluids alike.
func TestWhatHangsInTheOuterStringHangsOnIt(t *testing.T) {
	hanger := func(hangs unit.Length) (float64, *sequence.Programme) {
		p := twoStrings()
		for k := range p.Fluids {
			p.Fluids[k].Density = unit.Exactly(9 * ppg)
		}
		p.String.HangerMD = hangs
		p.Steps = []sequence.Step{{Name: "hang"}}
		r := verdict(t, p)
		require.Empty(t, r.Findings)
		return lastOuter(r, 0).Hanger.In(unit.PoundForce), r
	}
	alone, _ := hanger(0)
	both, r := hanger(6000 * foot)
	ai, ao := math.Pi/4*2.441*2.441, math.Pi/4*2.875*2.875
	// At 6,000 ft the wall has the weight below it, and at the end it is pressed up by
	// the column there on its steel.
	weight := 2500*6.5 - column(9, 8500)*(ao-ai)
	require.InDelta(t, weight, lastString(r, 0).Hanger.In(unit.PoundForce), 1)
	require.InDelta(t, alone+weight, both, 1)
}

// By hand: an inner string that seals at the lower end of the outer one, on 3.25 in,
// closes its bore. 1,000 psi more between the two pull at the outer one on what is left
// of its bore, p·(Ai − Ap), and at the inner one on the ring of its seal, p·(Ap − Ao):
// together on the whole space between them.
func TestTheInnerStringClosesTheEndOfTheOuterOne(t *testing.T) {
	p := twoStrings()
	p.Well.MD = 9200 * foot
	p.Compartments[0].BottomMD = 9200 * foot
	p.Compartments[2].BottomMD = 9200 * foot
	p.String.Sections[0].BottomMD = 9200 * foot
	p.String.Around, p.String.Below = append(p.String.Around, "annulus"), "annulus"
	p.String.Seals = []sequence.Seal{{Name: "seals in the outer string", MD: 9000 * foot, Bore: 3.25 * unit.Inch, Up: 30 * foot, Down: 30 * foot}}
	p.Devices[0].Actions[0].Triggers[0], p.Devices[1].Actions[0].Triggers[0] = rising(9000*psi, 9000*psi), rising(9000*psi, 9000*psi)
	p.Steps = []sequence.Step{{Name: "hang"}, {Name: "press", Ramps: []map[string]unit.Pressure{{"between the strings": 1000 * psi}}}}
	r := verdict(t, p)
	require.Empty(t, r.Findings)
	area := func(d float64) float64 { return math.Pi / 4 * d * d }
	outer := (lastOuter(r, 1).Hanger - lastOuter(r, 0).Hanger).In(unit.PoundForce)
	inner := (lastString(r, 1).Hanger - lastString(r, 0).Hanger).In(unit.PoundForce)
	require.InDelta(t, 1000*(area(4.892)-area(3.25)), outer, 0.1)
	require.InDelta(t, 1000*(area(3.25)-area(2.875)), inner, 0.1)
	require.InDelta(t, 1000*(area(4.892)-area(2.875)), outer+inner, 0.2)
}

// Nothing that can be done to one string is said of the other: too little strength, too
// hard a pull, seals that leave their bore.
func TestFindingsOfTwoStrings(t *testing.T) {
	require.True(t, verdict(t, twoStrings()).OK(), "%+v", verdict(t, twoStrings()).Findings)
	p := twoStrings()
	p.OuterString.Sections[0].Pipe.Grade = "J55"
	p.Steps[4].Pull[0] = 320000 * unit.PoundForce
	r := verdict(t, p)
	require.Equal(t, []string{"string overloaded | pull the outer string | outer string"}, roots(r))
	require.Contains(t, r.Findings[0].Says, "the outer string passes its")

	p = twoStrings()
	p.OuterString.Rig = 150000 * unit.PoundForce
	p.String.Rig = 150000 * unit.PoundForce
	require.Equal(t, []string{"pull off plan | pull the outer string | rig"}, roots(verdict(t, p)))

	p = twoStrings()
	p.String.Seals[0].Up, p.OuterString.Seals[0].Up = 1*unit.Inch, 1*unit.Inch
	r = verdict(t, p)
	for _, f := range r.Findings {
		require.Equal(t, sequence.SealTravel, f.Kind, "%+v", f)
	}
	require.NotEmpty(t, r.Findings)

	// The joint of the outer string parts by a pull on it, and the window says from
	// which reading on; the inner string's doesn't.
	p = twoStrings()
	p.Devices[3].Actions[0].Triggers[0].Tension = unit.Within(60000*unit.PoundForce, 0.02)
	p.Steps[4].Pull[0] = 260000 * unit.PoundForce
	p.Steps[4].Expect = []string{"outer joint: parts"}
	p.Steps = []sequence.Step{p.Steps[0], p.Steps[4]} // the anchor not set: nothing of the one hangs on the other
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
	require.True(t, r.OK(), "%+v", r.Findings)
	x := r.Steps[1].Partings[0]
	// It hangs in its own fluid: 8,700 ft of 17 lb/ft less the columns on its ends, and
	// what the joint's own differential does.
	ai, ao, seal := math.Pi/4*4.892*4.892, math.Pi/4*5.5*5.5, math.Pi/4*5.6*5.6
	pi, po := column(9, 8700), column(8.8, 8700)
	want := 25000 + 8700*17 + pi*ai - po*ao + 60000 - (pi-po)*seal
	require.InDelta(t, want, x.Nominal.In(unit.PoundForce), 1)
	require.NotEmpty(t, r.Steps[1].Windows)
}

// Cut after any step, what is left of the programme of two strings finds them as the
// whole one left them; one that lands again leaves the other as it stands.
func TestTwoStringsCutAndGoOn(t *testing.T) {
	p := twoStrings()
	p.Steps = append(p.Steps[:1], append([]sequence.Step{{Name: "land the inner string", Lands: true}}, p.Steps[1:]...)...)
	whole := verdict(t, p)
	require.True(t, whole.OK(), "%+v", whole.Findings)
	require.True(t, lastOuter(whole, 1).Held)
	require.False(t, lastString(whole, 1).Held)
	for i := range p.Steps[:len(p.Steps)-1] {
		rest, err := p.Rest(context.Background(), p.Steps[i].Name)
		require.NoError(t, err)
		r := verdict(t, rest)
		require.True(t, r.OK(), "%s: %+v", p.Steps[i].Name, r.Findings)
		for k := range r.Steps {
			a, b := whole.Steps[i+1+k].Points, r.Steps[k].Points
			require.InDelta(t, float64(a[len(a)-1].OuterString.Hanger), float64(b[len(b)-1].OuterString.Hanger), 1, "cut after %s: %s", p.Steps[i].Name, r.Steps[k].Name)
			require.InDelta(t, float64(a[len(a)-1].String.Hanger), float64(b[len(b)-1].String.Hanger), 1)
		}
	}
	p.Steps = append(p.Steps, sequence.Step{Name: "land the outer string", Lands: true, On: sequence.OnOuterString})
	_, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.ErrorContains(t, err, "the string can't land: it is held")
}

// The working of either string adds up to its figures wherever a step stands still: what
// hangs on the outer one is a term of its own.
func TestTheWorkingOfTwoStringsAddsUp(t *testing.T) {
	p := twoStrings()
	p.String.HangerMD = 2000 * foot
	points := 0
	for _, s := range verdict(t, p).Steps {
		for _, at := range s.Points {
			for _, x := range []*sequence.StringAt{at.String, at.OuterString} {
				steps := x.Steps()
				workingtest.Check(t, steps)
				equals(t, float64(x.Hanger), worked(t, steps, "wall force at the top"), "hanger")
				equals(t, float64(x.Reading), worked(t, steps, "weight indicator"), "reading")
				points++
			}
		}
	}
	require.Equal(t, 2*len(p.Steps)+2*(2+2+0+1+1), points)
}
