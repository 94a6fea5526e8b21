package sequence_test

import (
	"context"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// landed is a uniform string of 3-1/2 in 9.3 lb/ft tubing that a packer at its
// lower end takes hold of, in a vertical well of one temperature.
func landed() *sequence.Plan {
	p := mini()
	even := func(f float64) []sequence.MarkedTVD {
		return []sequence.MarkedTVD{{TVD: 0, Temperature: unit.Fahrenheit(f)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(f)}}
	}
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: even(150), "cooled": even(50)}
	p.Fluids[1].Density = p.Fluids[0].Density
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "below", TopMD: 8990 * foot, BottomMD: 9000 * foot, Fluid: "annulus fluid"})
	p.Ports = []sequence.Port{{Name: "bypass", Joins: []string{"annulus", "below"}, MD: 9000 * foot, Open: true}}
	p.Devices[0].Actions[0].Holds, p.Devices[0].Actions[0].Closes = true, []string{"bypass"}
	p.Devices = append(p.Devices, sequence.Device{Name: "release", MD: 9000 * foot, Actions: []sequence.Action{{
		Name: "parts", Axial: true, Seal: 3.5 * unit.Inch, Releases: true, Triggers: []sequence.Trigger{{Tension: unit.Within(60000*unit.PoundForce, 0.05)}}}}})
	p.String = &sequence.String{
		Inside: "tubing", Around: []string{"annulus"}, Below: "below",
		Sections: []sequence.StringSection{{BottomMD: 9000 * foot, Hole: 6.184 * unit.Inch,
			Pipe: sequence.Pipe{Size: 3.5 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Grade: "L80"}}},
		HeldMD: 9000 * foot, Bore: 3.5 * unit.Inch, Up: 10 * foot, Down: 10 * foot, Block: 20000 * unit.PoundForce,
	}
	p.Steps = []sequence.Step{{Name: "set", Ramps: []map[string]unit.Pressure{{"tubing": 3600 * psi}, {"tubing": 0}}, Expect: []string{"packer: sets"}}}
	return p
}

func lastString(r *sequence.Programme, step int) *sequence.StringAt {
	points := r.Steps[step].Points
	return points[len(points)-1].String
}

// The three forces above a place that holds are told apart: wall force less effective is
// p inside·Ai − p outside·Ao, at 9,000 ft and whatever is applied; and what stands across the packer
// is counted from below. By hand, 9.5 lb/gal over 9,000 ft is 4,441.6 psi; bores of 2.992 and 3.5 in.
func TestForcesAndDifferentialAtThePacker(t *testing.T) {
	p := landed()
	p.Holding = &sequence.Holding{Below: "below", Above: "annulus", MD: 9000 * foot, Envelope: packer.Polygon{Name: "packer", Vertices: []packer.Load{
		{Differential: -9000 * psi, Axial: -90000 * unit.PoundForce}, {Differential: 9000 * psi, Axial: -90000 * unit.PoundForce},
		{Differential: 9000 * psi, Axial: 90000 * unit.PoundForce}, {Differential: -9000 * psi, Axial: 90000 * unit.PoundForce}}}}
	p.Steps = append(p.Steps, sequence.Step{Name: "press", Ramps: []map[string]unit.Pressure{{"annulus": 500 * psi}}})
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	s := r.Steps[1]
	held := s.Holding[len(s.Holding)-1]
	require.InDelta(t, -500, held.Differential.In(psi), 1e-6)
	area := func(d float64) float64 { return math.Pi / 4 * d * d }
	column := 9.5 * 9000 * 12 / 231
	f := s.Forces[0]
	inside, outside := column*area(2.992), column*area(3.5)
	lbf := func(x unit.Force) float64 { return x.In(unit.PoundForce) }
	require.InDelta(t, inside-outside-500*area(3.5), lbf(f.Wall.Final-f.Effective.Final), 0.5)
	for name, x := range map[string]sequence.ForceRange{"load": f.Load, "effective": f.Effective, "wall": f.Wall} {
		require.LessOrEqual(t, lbf(x.Least), lbf(x.Final)+1e-6, name)
		require.GreaterOrEqual(t, lbf(x.Greatest), lbf(x.Final)-1e-6, name)
		require.Less(t, lbf(x.Greatest-x.Least), 5000.0, "%s: 500 psi on a ring of 2.6 in² and what it balloons", name)
	}
}

// Plugged tubing that is pressured to p, held there and bled off keeps
// (1 − 2ν)·p·Ai of tension: the closed end had made it longer. The packer takes
// hold at 3,375 psi; ν is 0.3 and Ai 7.0309 in². Effective weight and buoyancy
// are the same before and after.
//
// Source: Hooke's law and Lubinski, Althouse & Logan (1962) for a closed end;
// by hand.
func TestSettingLocksInTension(t *testing.T) {
	p := landed()
	p.Steps = append([]sequence.Step{{Name: "before"}}, p.Steps...)
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	before, after := lastString(r, 0), lastString(r, 1)
	require.False(t, before.Held)
	require.True(t, after.Held)
	locked := (1 - 2*0.3) * 3375 * math.Pi / 4 * 2.992 * 2.992
	require.InDelta(t, locked, (after.Wall - before.Wall).In(unit.PoundForce), 0.01*locked)
}

// 100 °F of cooling in a string fixed at both ends makes E·α·ΔT·As of tension:
// 53,617 lbf for this tubing with E = 30e6 psi, α = 6.9e-6 1/°F.
func TestCoolingPullsAndPartsTheRelease(t *testing.T) {
	p := landed()
	p.Steps = append(p.Steps, sequence.Step{Name: "cool", Temperature: "cooled"})
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(200000 * unit.PoundForce)
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.InDelta(t, 53617, (lastString(r, 1).Wall - lastString(r, 0).Wall).In(unit.PoundForce), 0.002*53617)

	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Within(50000*unit.PoundForce, 0.05)
	r = verdict(t, p)
	require.Equal(t, []string{"unintended event | cool | release: parts"}, roots(r))
}

// The pins feel effective force, with the same pressure on both sides of their
// seal nothing else. So the weight indicator at parting is the buoyed weight
// above the release, the pins, the drag and the block:
// 9,000 ft·9.3 lb/ft − 4,441.6 psi·2.590 in² + 60,000 + 5,000 + 20,000 lbf.
func TestReadingAtParting(t *testing.T) {
	p := landed()
	p.String.Drag = unit.Band[unit.Force]{Least: 4000 * unit.PoundForce, Nominal: 5000 * unit.PoundForce, Greatest: 6000 * unit.PoundForce}
	p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{190000 * unit.PoundForce}, Expect: []string{"release: parts"}})
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	x := r.Steps[1].Partings[0]
	steel := math.Pi / 4 * (3.5*3.5 - 2.992*2.992)
	buoyed := 9000*9.3 - steel*9.5*4/77*9000
	nominal := buoyed + 60000 + 5000 + 20000
	require.InDelta(t, nominal, x.Nominal.In(unit.PoundForce), 100)
	require.InDelta(t, nominal-3000-1000, x.Least.In(unit.PoundForce), 100)
	require.InDelta(t, nominal+3000+1000, x.Greatest.In(unit.PoundForce), 100)
	require.True(t, lastString(r, 1).Joints[0].Parted)
	require.True(t, lastString(r, 1).Free, "what is above the joint comes up")

	p.Steps[1].Pull = []unit.Force{155000 * unit.PoundForce}
	r = verdict(t, p)
	require.Equal(t, []string{"intended event missing | pull | release: parts"}, roots(r))
	require.Contains(t, r.Findings[0].Cure, "161196", "157,195 and 4,000 lbf")
}

func TestSealsThatLeaveTheirBore(t *testing.T) {
	p := landed()
	p.Steps = []sequence.Step{{Name: "cool", Temperature: "cooled"}}
	p.String.Up = 70 * unit.Inch
	r := verdict(t, p)
	require.Equal(t, []string{"seals leave their bore | cool | seals"}, roots(r))
	// α·L·ΔT = 6.9e-6·108,000·100 = 74.52 in, by hand
	require.InDelta(t, -74.52, lastString(r, 0).Seals[0].Travel.In(unit.Inch), 0.01)
	p.String.Up = 75 * unit.Inch
	require.True(t, verdict(t, p).OK())
}

func TestStringOverload(t *testing.T) {
	p := landed()
	p.Rules.Triaxial = 10
	r := verdict(t, p)
	require.Contains(t, roots(r), "string overloaded | set | string")
}

// 5,000 psi more in tubing that is fixed at both ends makes 2ν·Ai·Δp of
// tension: 21,093 lbf for this bore, by hand.
func TestPressureBalloonsAgainstTheHold(t *testing.T) {
	p := landed()
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(200000 * unit.PoundForce)
	p.Steps = append(p.Steps, sequence.Step{Name: "pressure up", Ramps: []map[string]unit.Pressure{{"tubing": 5000 * psi}}})
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	// Buckling takes a little of it back.
	require.InDelta(t, 21093, (lastString(r, 1).Wall - lastString(r, 0).Wall).In(unit.PoundForce), 0.01*21093)
}

// A string that nothing holds comes up at its own weight and the drag, however
// hard somebody means to pull: 9,000 ft · 9.3 lb/ft in air less the buoyancy of
// 9.5 lb/gal on its end, 5,000 lbf of drag and 20,000 lbf of block.
func TestPullThatNothingHolds(t *testing.T) {
	p := landed()
	p.String.Drag = unit.Exactly(5000 * unit.PoundForce)
	p.Steps = []sequence.Step{{Name: "pull", Pull: []unit.Force{190000 * unit.PoundForce}, Expect: []string{"release: parts"}}}
	r := verdict(t, p)
	at := lastString(r, 0)
	require.True(t, at.Free)
	area := math.Pi / 4 * (3.5*3.5 - 2.992*2.992)
	buoyancy := area * 9.5 * 4 / 77 * 9000
	require.InDelta(t, 9000*9.3-buoyancy+5000+20000, at.Reading.In(unit.PoundForce), 1)
	require.ElementsMatch(t, []string{"intended event missing | pull | release: parts", "pull off plan | pull | string"}, roots(r))
	require.Contains(t, r.Findings[0].Cure, "nothing holds the string")
}

// After it has parted, the string comes up: the weight indicator falls away
// from what was pulled.
func TestStringIsFreeOnceParted(t *testing.T) {
	r := verdict(t, demoPlan(t))
	s := stepNamed(t, r, "release by overpull")
	at := s.Points[len(s.Points)-1].String
	require.True(t, at.Free)
	require.True(t, at.Joints[0].Parted)
	require.Less(t, at.Reading, s.Partings[0].Least)
}

// A planned reading that the string never shows, because nothing holds it, is
// off the plan; one below its weight isn't.
func TestPlannedPullThatNeverComes(t *testing.T) {
	p := landed()
	p.String.Drag = unit.Exactly(5000 * unit.PoundForce)
	p.Steps = []sequence.Step{{Name: "pull", Pull: []unit.Force{190000 * unit.PoundForce}}}
	r := verdict(t, p)
	require.Equal(t, []string{"pull off plan | pull | string"}, roots(r))
	p.Steps[0].Pull[0] = 95000 * unit.PoundForce
	require.True(t, verdict(t, p).OK())
}

func TestLandingWhileHeldIsAnError(t *testing.T) {
	p := landed()
	p.Steps = append(p.Steps, sequence.Step{Name: "land again", Lands: true})
	_, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.ErrorContains(t, err, `step "land again": the string can't land`)
}

// What goes on from step to step is one finding, but each of the steps fails.
func TestAStandingFaultFailsEveryStep(t *testing.T) {
	p := landed()
	p.Steps = []sequence.Step{{Name: "cool", Temperature: "cooled"}, {Name: "wait"}}
	p.String.Up = 70 * unit.Inch
	r := verdict(t, p)
	require.Len(t, r.Findings, 1)
	require.Equal(t, "wait", r.Findings[0].Until)
	require.False(t, r.Steps[0].OK)
	require.False(t, r.Steps[1].OK)
}

// What holds the string has no load at the moment of taking hold. Bled off
// then, the plug's p·Ai is gone from below and 2ν·p·Ai from above, so that
// (1 − 2ν)·p·Ai of pull upwards stay: 9,492 lbf for 3,375 psi, by hand.
//
// Source: Lubinski, Althouse & Logan (1962), for a closed end and ballooning.
func TestPackerLoadIsTheStepInTension(t *testing.T) {
	p := landed()
	r := verdict(t, p)
	packer := func(step, point int) float64 { return r.Steps[step].Points[point].String.Packer.In(unit.PoundForce) }
	ai := math.Pi / 4 * 2.992 * 2.992
	require.InDelta(t, (1-2*0.3)*3375*ai, packer(0, 2), 0.01*9492)
	// At 3,600 psi the plug pulls with 225 psi · Ai more, ballooning with 2ν of it.
	require.InDelta(t, -(1-2*0.3)*225*ai, packer(0, 1), 20)

	// The same with 1,000 ft of tail under the packer.
	p.Well.MD = 10000 * foot
	for i := range p.Compartments {
		p.Compartments[i].BottomMD = 10000 * foot
	}
	p.Compartments[1].BottomMD, p.Compartments[2].TopMD = 9000*foot, 9000*foot
	p.String.Around = []string{"annulus", "below"}
	p.String.Sections[0].BottomMD = 10000 * foot
	r = verdict(t, p)
	require.InDelta(t, (1-2*0.3)*3375*ai, packer(0, 2), 0.01*9492)
}

// Of two packers on a string each has its own forces: what it ends a step with is that of the string there, and lies in what it had in the step.
func TestForcesOfEachOfTwoPackers(t *testing.T) {
	p := landed()
	p.Devices = append(p.Devices, sequence.Device{Name: "anchor", MD: 5000 * foot, Actions: []sequence.Action{{Name: "sets", Inside: "tubing", Outside: "annulus", Holds: true,
		Triggers: []sequence.Trigger{rising(1000*psi, 1000*psi)}}}})
	p.Steps[0].Expect = append(p.Steps[0].Expect, "anchor: sets")
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(300000 * unit.PoundForce)
	p.Steps = append(p.Steps, sequence.Step{Name: "cool", Temperature: "cooled"})
	r := verdict(t, p)
	require.True(t, r.OK(), "%v", r.Findings)
	loaded := map[string]bool{}
	for _, s := range r.Steps {
		if len(s.Points) == 0 {
			continue
		}
		at := s.Points[len(s.Points)-1].String
		for _, f := range s.Forces {
			for _, h := range at.Holds {
				if h.Depth != f.Depth {
					continue
				}
				require.Equal(t, h.Load, f.Load.Final, "%s: %s", s.Name, f.Place)
				require.Equal(t, h.Effective, f.Effective.Final)
				require.LessOrEqual(t, f.Load.Least, f.Load.Final+unit.PoundForce, "%s: %s", s.Name, f.Place)
				require.GreaterOrEqual(t, f.Load.Greatest, f.Load.Final-unit.PoundForce, "%s: %s", s.Name, f.Place)
				loaded[f.Place] = loaded[f.Place] || f.Load.Final > 1000*unit.PoundForce || f.Load.Final < -1000*unit.PoundForce
			}
		}
	}
	count := 0
	for _, is := range loaded {
		if is {
			count++
		}
	}
	require.GreaterOrEqual(t, count, 2, "%v", loaded)
}
