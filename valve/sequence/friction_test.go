package sequence_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"completion.example/tubular/drag"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// rubbing is landed in a hole with a friction factor, pulled until its release parts.
func rubbing(path []sequence.Station, factor string) *sequence.Plan {
	p := landed()
	p.Well.Path = path
	p.Devices[1].MD = 8990 * foot
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(60000 * unit.PoundForce)
	var f unit.Band[sequence.Factor]
	if err := f.UnmarshalText([]byte(factor)); err != nil {
		panic(err)
	}
	p.String.Friction = []sequence.Friction{{To: 4000 * foot, Factor: f}, {To: 9000 * foot, Factor: f}}
	p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{250000 * unit.PoundForce}, Expect: []string{"release: parts"}})
	return p
}

// In a straight inclined hole the drag is μ·w·L·sinθ, whatever is pulled: at 40° and
// 0.2 of 8,990 ft of buoyed string, 0.2·8,990·(9.3 − 0.4935·2.590)·sin 40° = 9,271 lbf.
// With one fluid the joint feels effective force alone, so that the reading is
// w·L·cosθ + drag + pins + block.
//
// Source: Coulomb friction on an inclined plane; Johancsik, Friesen & Dawson 1984
// without bend; by hand.
func TestDragOfAnInclinedHole(t *testing.T) {
	slant := 40 * unit.Degree
	p := rubbing([]sequence.Station{{Inclination: slant}, {MD: 9000 * foot, Inclination: slant}}, "0.2 +/- 0.05")
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	w := 9.3 - 9.5*4/77*(outside-bore)
	sin, cos := math.Sincos(40 * math.Pi / 180)
	reading := func(μ float64) float64 { return 8990*w*(cos+μ*sin) + 60000 + 20000 }
	x := r.Steps[1].Partings[0]
	require.InDelta(t, reading(0.2), x.Nominal.In(unit.PoundForce), 1)
	require.InDelta(t, reading(0.15), x.Least.In(unit.PoundForce), 60, "enclosed")
	require.InDelta(t, reading(0.25), x.Greatest.In(unit.PoundForce), 60)
	require.LessOrEqual(t, x.Least.In(unit.PoundForce), reading(0.15)+1)
	require.GreaterOrEqual(t, x.Greatest.In(unit.PoundForce), reading(0.25)-1)
	at := lastString(r, 1)
	require.True(t, at.Free)
	require.InDelta(t, 0.2*8990*w*sin, at.Drag.In(unit.PoundForce), 1)
	workingtest.Check(t, at.Steps())
}

// In a hole that builds and turns the drag grows with what is pulled. The reading at
// parting is drag.HookLoad for the same string with the pins' effective force at its
// lower end: two marches, one that knows the end and one that knows the hook.
func TestDragOfACurvedHole(t *testing.T) {
	path := []sequence.Station{{}, {MD: 2000 * foot}, {MD: 4000 * foot, Inclination: 50 * unit.Degree},
		{MD: 6000 * foot, Inclination: 55 * unit.Degree, Azimuth: 40 * unit.Degree}, {MD: 9000 * foot, Inclination: 70 * unit.Degree, Azimuth: 40 * unit.Degree}}
	p := rubbing(path, "0.25")
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)

	stations := make([]hydrostatics.Station, len(path))
	for i, s := range path {
		stations[i] = hydrostatics.Station(s)
	}
	survey, err := hydrostatics.NewPath(stations)
	require.NoError(t, err)
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
	hole, err := drag.String{Sections: []drag.PipeSection{{Pipe: pipe, Length: 8990 * foot}}, BottomMD: 8990 * foot, Path: survey,
		HoleSections: []drag.HoleSection{{BottomMD: 9000 * foot, Friction: 0.25, Hole: 6.184 * unit.Inch}},
		Inside:       9.5 * ppg, Outside: 9.5 * ppg}.Prepare()
	require.NoError(t, err)
	want := hole.HookLoad(drag.Pulled, 60000*unit.PoundForce) + 20000*unit.PoundForce
	require.InEpsilon(t, float64(want), float64(r.Steps[1].Partings[0].Nominal), 2e-4, "250 ft between nodes against 10 m")
	free := hole.HookLoad(drag.Pulled, 0) - hole.HookLoad(drag.Rotating, 0)
	require.InEpsilon(t, float64(free), float64(lastString(r, 1).Drag), 2e-3)
}

// A tolerance of the friction factors is one of the plan: no draw of it parts outside
// what is told, and a pull that is short at the rough end is refuted with it.
func TestFrictionFactorsAreBands(t *testing.T) {
	t.Parallel()
	path := []sequence.Station{{}, {MD: 3000 * foot}, {MD: 6000 * foot, Inclination: 60 * unit.Degree}, {MD: 9000 * foot, Inclination: 60 * unit.Degree}}
	p := rubbing(path, "0.15 .. 0.35")
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	x := r.Steps[1].Partings[0]
	require.Less(t, (x.Greatest - x.Least).In(unit.PoundForce), 60000.0)
	random := rand.New(rand.NewPCG(3, 8))
	for range 25 {
		q := p.Clone()
		for i := range q.String.Friction {
			μ := 0.15 + 0.2*random.Float64()
			if random.IntN(2) == 0 {
				μ = 0.15 + 0.2*float64(random.IntN(2))
			}
			q.String.Friction[i].Factor = unit.Exactly(sequence.Factor(μ))
		}
		got := verdict(t, q).Steps[1].Partings[0].Nominal
		require.GreaterOrEqual(t, got, x.Least)
		require.LessOrEqual(t, got, x.Greatest)
	}
	p.Steps[1].Pull[0] = x.Nominal + 2000*unit.PoundForce
	r = verdict(t, p)
	require.Equal(t, sequence.Refuted, r.Verdict)
	f := r.Findings[0]
	require.Equal(t, sequence.Missing, f.Kind)
	require.Contains(t, f.Assumed, "friction factor to ")
	choice, err := p.Choose("friction factor to 9000 ft = 0.35, friction factor to 4000 ft = 0.35")
	require.NoError(t, err)
	worst, err := p.At(choice)
	require.NoError(t, err)
	require.False(t, verdict(t, worst).OK())
}

// Slacked off, what the hole took on the way up is given back first, then it takes as
// much the other way: nothing arrives at depth of the first 2·D.
//
//	pulled     F = R − block − W − D
//	turning    F stays
//	slacked    F = R − block − W + D
//
// W is 72,196 lbf, D 5,000 lbf, block 20,000 lbf; the packer carries F less what it
// carried as set, on an effective force of nothing below.
func TestSlackedOffWeightArrivesLessTheDrag(t *testing.T) {
	p := landed()
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(300000 * unit.PoundForce)
	p.String.Drag = unit.Exactly(5000 * unit.PoundForce)
	hangs := 9000*9.3 - column(9.5, 9000)*(outside-bore)
	var pulls []unit.Force
	for _, over := range []float64{30000, 24000, 20000, 10000, -15000, -10000} {
		pulls = append(pulls, unit.Force(20000+hangs+over)*unit.PoundForce)
	}
	p.Steps = append(p.Steps, sequence.Step{Name: "pull and slack off", Pull: pulls})
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	for n, want := range []struct{ load, drag float64 }{
		{30000 - 5000, 5000}, {25000, -1000}, {20000 + 5000, -5000}, {10000 + 5000, -5000}, {-15000 + 5000, -5000}, {-10000 - 5000, 5000},
	} {
		at := r.Steps[1].Points[n+1].String
		require.InDelta(t, want.load, at.Packer.In(unit.PoundForce), 1, "pull %d", n+1)
		require.InDelta(t, want.drag, at.Drag.In(unit.PoundForce), 1, "pull %d", n+1)
		require.InDelta(t, float64(pulls[n]), float64(at.Reading), 1)
	}

	// From the hanger nothing has rubbed yet: the packer holds 9,492 lbf of tension, so
	// that the hook takes over W + 9,492; of 3,000 lbf less nothing arrives, of 9,492 only
	// what is beyond the drag.
	locked := 0.4 * 3375 * bore
	p.Steps[1].Pull = []unit.Force{unit.Force(20000+hangs+locked-3000) * unit.PoundForce, unit.Force(20000+hangs) * unit.PoundForce}
	r = verdict(t, p)
	require.InDelta(t, locked, r.Steps[1].Points[1].String.Packer.In(unit.PoundForce), 1)
	require.InDelta(t, 5000, r.Steps[1].Points[2].String.Packer.In(unit.PoundForce), 1)

	// A force at depth never jumps at a turn, so that nothing parts by turning: pins
	// that hold what was pulled hold on the way down.
	p = jointed(60000 * unit.PoundForce)
	p.String.Drag = unit.Band[unit.Force]{Least: 2000 * unit.PoundForce, Nominal: 4000 * unit.PoundForce, Greatest: 8000 * unit.PoundForce}
	p.Fluids[1].Density = p.Fluids[0].Density
	above := 8500*9.3 - column(9.5, 8500)*(outside-bore)
	hook := unit.Force(20000+above+60000+1000) * unit.PoundForce // parts with less than 1,000 lbf of drag
	p.Steps[1] = sequence.Step{Name: "pull", Pull: []unit.Force{hook, hook - 9000*unit.PoundForce, hook - 500*unit.PoundForce}}
	require.True(t, verdict(t, p).OK(), "%+v", verdict(t, p).Findings)
	p.Steps[1].Pull[0] = hook + 1500*unit.PoundForce
	require.False(t, verdict(t, p).OK(), "with 2,000 lbf of drag it parts")
}

// Seals that slide take their friction off the pull, and add it to what is slacked off.
func TestSealFriction(t *testing.T) {
	reading := func(friction string) *sequence.Parting {
		p := landed()
		p.Compartments[1].BottomMD, p.Compartments[2].TopMD = 6000*foot, 6000*foot
		p.Ports[0].MD = 6000 * foot
		p.Devices[0].Actions[0].Outside = "below"
		p.String.Around = []string{"annulus", "below"}
		p.String.Bore, p.String.Up, p.String.Down = 0, 0, 0
		p.Devices[0].Actions[0].Closes = nil
		p.String.Seals = []sequence.Seal{{Name: "travel joint", MD: 6000 * foot, Bore: 3.5 * unit.Inch, Up: 30 * foot, Down: 10 * foot}}
		require.NoError(t, p.String.Seals[0].Friction.UnmarshalText([]byte(friction)))
		p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(60000 * unit.PoundForce)
		p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{250000 * unit.PoundForce}, Expect: []string{"release: parts"}})
		r := verdict(t, p)
		require.Len(t, r.Steps[1].Partings, 1, "%+v", r.Findings)
		return &r.Steps[1].Partings[0]
	}
	none, some := reading("0 lbf"), reading("1000 lbf .. 2000 lbf")
	require.InDelta(t, 1500, (some.Nominal - none.Nominal).In(unit.PoundForce), 1)
	require.InDelta(t, 1000, (some.Least - none.Least).In(unit.PoundForce), 5)
	require.InDelta(t, 2000, (some.Greatest - none.Greatest).In(unit.PoundForce), 5)
}

func TestFaultsOfFriction(t *testing.T) {
	p := rubbing(nil, "0.2")
	p.String.Drag = unit.Exactly(5000 * unit.PoundForce)
	require.ErrorContains(t, p.Validate(), `string.friction: stands beside "drag"`)
	p.String.Drag = unit.Band[unit.Force]{}
	p.String.Friction = p.String.Friction[:1]
	require.ErrorContains(t, p.Validate(), "string.friction: ends at 4000 ft; the string goes down to 9000 ft")
	p.String.Friction[0].Factor.Greatest = 1.5
	require.ErrorContains(t, p.Validate(), "string.friction[0].factor: runs from 0.2 to 1.5; must be from 0 to 1")
	var f sequence.Factor
	require.ErrorContains(t, f.UnmarshalText([]byte("0.2 psi")), "is no number without a unit")
	require.Error(t, f.UnmarshalText([]byte("NaN")))
	_, err := sequence.Factor(math.Inf(1)).MarshalText()
	require.Error(t, err)
}

// As the string lies at the end of a step, what passes through it and what can be set
// down are the library's answers for it: a tool in a bend of 3 deg/100 ft, the most that
// arrives at the lower end of a hole of 70°.
func TestPassageAndSetDown(t *testing.T) {
	path := []sequence.Station{{}, {MD: 2000 * foot}, {MD: 4333.333 * foot, Inclination: 70 * unit.Degree}, {MD: 9000 * foot, Inclination: 70 * unit.Degree}}
	p := rubbing(path, "0.2 +/- 25 %")
	p.String.Tools = []sequence.Tool{{Name: "gauge", Diameter: 2.867 * unit.Inch}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	x := r.Steps[0].Passage[0]
	require.True(t, x.Limited)
	// A chord that fits between bore and tool in an arc: sqrt(8·R·(ID − d)) with
	// R = 100 ft/3° = 1,909.86 ft: sqrt(8·22,918 in·0.125 in) = 151.4 in, by hand.
	require.InEpsilon(t, math.Sqrt(8*100*12/(3*math.Pi/180)*0.125), x.Longest.In(unit.Inch), 0.001)
	require.GreaterOrEqual(t, x.At, 2000*foot)
	require.LessOrEqual(t, x.At, 4334*foot)

	stations := []hydrostatics.Station{{}, {MD: 2000 * foot}, {MD: 4333.333 * foot, Inclination: 70 * unit.Degree}, {MD: 9000 * foot, Inclination: 70 * unit.Degree}}
	survey, err := hydrostatics.NewPath(stations)
	require.NoError(t, err)
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot,
		Material: tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)}
	hole, err := drag.String{Sections: []drag.PipeSection{{Pipe: pipe, Length: 9000 * foot}}, BottomMD: 9000 * foot, Path: survey, Spacing: 250 * foot,
		HoleSections: []drag.HoleSection{{BottomMD: 4000 * foot, Friction: 0.2, Hole: 6.184 * unit.Inch}, {BottomMD: 9000 * foot, Friction: 0.2, Hole: 6.184 * unit.Inch}},
		Inside:       9.5 * ppg, Outside: 9.5 * ppg}.Prepare()
	require.NoError(t, err)
	most, err := hole.MostSetDown()
	require.NoError(t, err)
	got := r.Steps[0].SetDown
	require.InEpsilon(t, float64(most.Weight), float64(got.Arrives), 1e-9)
	require.InEpsilon(t, float64(most.Slacked), float64(got.Slacked), 1e-9)
	require.Equal(t, most.Locked(), got.Locked)
	require.Nil(t, r.Steps[1].SetDown, "what has parted sets nothing down")

	p.String.Tools[0].Diameter = 3 * unit.Inch
	require.ErrorContains(t, p.Validate(), "string.tools[0].diameter: is 3 in; must be below the bore of 2.992 in of section 1")
	straight := landed()
	straight.String.Tools = []sequence.Tool{{Name: "gauge", Diameter: 2.867 * unit.Inch}}
	straight.Steps = []sequence.Step{{Name: "hang"}}
	require.False(t, verdict(t, straight).Steps[0].Passage[0].Limited)
}

// Slacked off a string that nothing holds, the seals at its lower end first give back what
// they took, pound by pound: a joint 500 ft above them feels its tail of 4,011 lbf less that,
// and a latch that falls in at 2,000 lbf does so 2,011 lbf below what hangs, 72,197 lbf and
// 20,000 of block; after 4,000 lbf the seals slide, and it feels no less.
func TestSealsAtTheEndGiveBackTheirFriction(t *testing.T) {
	p := jointed(60000 * unit.PoundForce)
	p.Fluids[1].Density = p.Fluids[0].Density
	p.String.Seals = []sequence.Seal{{Name: "seals", MD: 9000 * foot, Bore: 3.5 * unit.Inch, Up: 10 * foot, Down: 10 * foot, Friction: unit.Exactly(4000 * unit.PoundForce)}}
	p.String.Bore, p.String.Up, p.String.Down = 0, 0, 0
	p.Devices[1].Actions[0].Triggers[0] = sequence.Trigger{Tension: unit.Exactly(2000 * unit.PoundForce), Direction: valve.Falling}
	p.Steps = []sequence.Step{{Name: "slack off", Pull: []unit.Force{85000 * unit.PoundForce}, Expect: []string{"release: parts"}}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	tail := 500*9.3 - column(9.5, 500)*(outside-bore)
	hangs := 9000*9.3 - column(9.5, 9000)*(outside-bore)
	require.InDelta(t, 20000+hangs-(tail-2000), r.Steps[0].Partings[0].Nominal.In(unit.PoundForce), 1)

	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(5 * unit.PoundForce)
	p.Steps[0].Expect = nil
	r = verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.InDelta(t, tail-4000, lastString(r, 0).Joints[0].Balance.In(unit.PoundForce), 1)
}

// A joint that gives at 40,000 lbf and then parts at 60,000 lbf isn't called parted at the reading at which it gave: by hand 20,000 lbf of block,
// 72,196 lbf of string and 60,000 lbf of pins are 152,200 lbf, which a pull to 145,000 lbf doesn't come to.
func TestAJointThatOnlyGave(t *testing.T) {
	p := landed()
	first, second := p.Devices[1].Actions[0].Triggers[0], p.Devices[1].Actions[0].Triggers[0]
	first.Tension, second.Tension = unit.Exactly(40000*unit.PoundForce), unit.Exactly(60000*unit.PoundForce)
	p.Devices[1].Actions[0].Triggers = []sequence.Trigger{first, second}
	p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{145000 * unit.PoundForce}, Expect: []string{"release: parts"}})
	r := verdict(t, p)
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, sequence.Missing, r.Findings[0].Kind)
	require.Len(t, r.Steps[1].Events, 1)
	require.NotEmpty(t, r.Steps[1].Events[0].Partial)
	hangs := 9000*9.3 - column(9.5, 9000)*(outside-bore)
	require.InDelta(t, 20000+hangs+40000, r.Steps[1].Events[0].Pull.In(unit.PoundForce), 1)
	for _, x := range r.Steps[1].Partings {
		require.InDelta(t, 20000+hangs+60000, x.Nominal.In(unit.PoundForce), 1)
	}
	p.Steps[1].Pull[0] = 160000 * unit.PoundForce
	r = verdict(t, p)
	require.True(t, r.OK(), "%v", r.Findings)
	require.Len(t, r.Steps[1].Partings, 1)
	require.InDelta(t, 20000+hangs+60000, r.Steps[1].Partings[0].Nominal.In(unit.PoundForce), 1)
}
