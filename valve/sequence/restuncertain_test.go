package sequence_test

import (
	"fmt"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// even is one temperature all along a hole.
func even(f, bottom float64) []sequence.MarkedTVD {
	return []sequence.MarkedTVD{{Temperature: unit.Fahrenheit(f)}, {TVD: feet(bottom), Temperature: unit.Fahrenheit(f)}}
}

// A state that isn't the same whichever way a plan went isn't written as if it were: the error says what differs.
func TestStatesThatDifferByTheWayAreNotWritten(t *testing.T) {
	type otherwise = *sequence.Otherwise
	for says, change := range map[string]func(p *sequence.Plan, o otherwise){
		"the well has one temperature or another; take the plan as it went, without branches": func(p *sequence.Plan, o otherwise) {
			p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: even(60, 1000), "warm": even(90, 1000)}
			o.Steps[0].Temperature = "warm"
		},
		`"tubing" holds one fluid or another; take the plan as it went, without branches`: func(p *sequence.Plan, o otherwise) {
			p.Fluids = append(p.Fluids, sequence.Fluid{Name: "water"})
			setDensity(&p.Fluids[1], 8.34)
			o.Steps[1].Displace = []sequence.Displacement{{Compartment: "tubing", Fluid: "water", ToMD: 500 * foot}}
		},
		`"sleeve: moves" may be stuck there, which can't be written`: func(p *sequence.Plan, o otherwise) { o.Steps = o.Steps[:1] },
		`it isn't certain whether "aside" is shut in`: func(p *sequence.Plan, o otherwise) {
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: "aside", BottomMD: 1000 * foot, Fluid: "brine", Surface: true})
			o.Steps[0].Shut = []string{"aside"}
		},
		`it isn't certain whether "aside" stands full under pressure or has fallen`: func(p *sequence.Plan, o otherwise) {
			p.Formations = []sequence.Formation{{Name: "sand", MD: 1000 * foot, Pressure: exactly(300)}}
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: "aside", BottomMD: 900 * foot, Fluid: "brine", Surface: true},
				sequence.Compartment{Name: "face", TopMD: 900 * foot, BottomMD: 1000 * foot, Fluid: "brine", Formation: "sand"})
			p.Ports = append(p.Ports, sequence.Port{Name: "hole", Joins: []string{"aside", "face"}, MD: 900 * foot, Open: true})
			p.Steps[0].Ramps[0]["aside"] = 100 * psi
			p.Steps[0].Allow, p.Steps[1].Allow = []sequence.Flow{sequence.FlowOut}, []sequence.Flow{sequence.FlowOut}
			for i := range o.Steps {
				o.Steps[i].Allow = p.Steps[0].Allow
			}
			o.Steps[0].Do = []sequence.Act{{Drain: "aside"}}
		},
	} {
		p := branched()
		change(p, p.Steps[0].Otherwise)
		_, err := p.Rest(t.Context(), "test")
		require.ErrorContains(t, err, "sequence: the state after step \"test\": ")
		require.ErrorContains(t, err, says)
	}
}

// Two locks of one door are moved at the same pressure, in whichever order: what stands after that, or may come, isn't certain.
func TestStatesThatDifferByTheOrderAreNotWritten(t *testing.T) {
	twice := func(first, second func(a *sequence.Action)) *sequence.Plan {
		p := gaugeWell("room")
		addPort(p, "door", "tubing", "room", false)
		addAction(p, "one", "tubing", "", rising(900*psi, 1100*psi))
		addAction(p, "two", "tubing", "", rising(900*psi, 1100*psi))
		first(&p.Devices[0].Actions[0])
		second(&p.Devices[1].Actions[0])
		p.Steps = []sequence.Step{{Name: "press", Ramps: tubingTo(1500), Expect: []string{"one: moves", "two: moves"}}}
		return p
	}
	p := twice(func(a *sequence.Action) { a.Opens = []string{"door"} }, func(a *sequence.Action) { a.Closes = []string{"door"} })
	_, err := p.Rest(t.Context(), "press")
	require.ErrorContains(t, err, `it isn't certain whether "door" is open`)

	// A lock that may have been turned before the step unlocks it stands otherwise than one that was turned after it.
	none := pressure(0)
	p = gaugeWell()
	p.Devices = []sequence.Device{{Name: "valve", Actions: []sequence.Action{
		{Name: "unlocks", Inside: "tubing", Chamber: &none, Triggers: []sequence.Trigger{rising(900*psi, 1100*psi)}, Arms: []string{"opens"}},
		{Name: "locks", Inside: "annulus", Chamber: &none, Triggers: []sequence.Trigger{rising(2000*psi, 2000*psi)}, Disarms: []string{"opens"}},
		{Name: "opens", Inside: "tubing", Chamber: &none, Triggers: []sequence.Trigger{rising(9000*psi, 9000*psi)}, Disarmed: true},
	}}}
	p.Begin = &sequence.Begin{May: []string{"valve: locks"}}
	p.Steps = []sequence.Step{{Name: "press", Ramps: tubingTo(1500), Expect: []string{"valve: unlocks"}}}
	_, err = p.Rest(t.Context(), "press")
	require.ErrorContains(t, err, `it isn't certain in which state ["valve"] are`)
}

// Eight things that may have happened are as many as can be gone on from; a ninth that isn't certain is one too many.
func TestTooMuchThatMayHaveHappened(t *testing.T) {
	long.Skip(t, "two times 256 cases")
	p := branched()
	p.Begin = &sequence.Begin{}
	for n := range 8 {
		name := fmt.Sprint("gauge ", n)
		addAction(p, name, "tubing", "", rising(9000*psi, 9000*psi))
		p.Begin.May = append(p.Begin.May, name+": moves")
	}
	rest, err := p.Rest(t.Context(), "test")
	require.NoError(t, err)
	require.Len(t, rest.Begin.May, 8)
	// Where the sleeve is left shut on the other way, whether it has moved isn't certain either.
	addAction(p, "latch", "annulus", "", rising(1100*psi, 1190*psi)) // which only the open sleeve lets move
	p.Steps[0].Expect = append(p.Steps[0].Expect, "latch: moves")
	p.Steps[0].Otherwise.Not = []string{"sleeve: moves"}
	p.Steps[1].Ramps = tubingTo(1000)
	_, err = p.Rest(t.Context(), "test")
	require.ErrorContains(t, err, `it isn't certain which of [`)
	require.ErrorContains(t, err, `"latch: moves"`)
	require.ErrorContains(t, err, `have happened: too many to go on from`)
}

// What was moved by hand stands so in the rest: a port that was pulled open, or shut, and nothing of a device.
func TestPortsMovedByHandAreWritten(t *testing.T) {
	p := gaugeWell("room")
	addPort(p, "plug", "tubing", "room", false)
	addPort(p, "vent", "tubing", "annulus", true)
	addAction(p, "far", "tubing", "", rising(9000*psi, 9000*psi))
	p.Steps = []sequence.Step{{Name: "by hand", Do: []sequence.Act{{Pull: "plug", In: "tubing"}, {Close: "vent"}}}, {Name: "press", Ramps: tubingTo(700)}}
	rest, err := p.Rest(t.Context(), "by hand")
	require.NoError(t, err)
	require.Equal(t, []string{"plug"}, rest.Begin.Open)
	require.Equal(t, []string{"vent"}, rest.Begin.Shut)
	goesOnAlike(t, p, 1e-6)
}

// A packer that is set while a heavier fluid comes down the tubing was set with a front on its way, which isn't written.
func TestAPackerThatSetsBehindAFront(t *testing.T) {
	p := landed()
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "heavy"})
	setDensity(&p.Fluids[2], 10.5)
	// 1 lb/gal over 9,000 ft is 467 psi.
	p.Devices[0].Actions[0].Triggers = []sequence.Trigger{rising(300*psi, 300*psi)}
	p.Steps = []sequence.Step{{Name: "swap", Displace: []sequence.Displacement{{Compartment: "tubing", Fluid: "heavy", ToMD: 9000 * foot}}, Expect: []string{"packer: sets"}}}
	require.True(t, verdict(t, p).OK())
	_, err := p.Rest(t.Context(), "swap")
	require.ErrorContains(t, err, `"packer: sets" was done to the string while a fluid moved`)
}

// What was done to two strings is done again, each to its own.
func TestTwoStringsGoOnFromTheirRest(t *testing.T) {
	p := twoStrings()
	p.Steps = append([]sequence.Step{{Name: "land both", Lands: true, On: sequence.OnOuterString}, {Name: "land the inner string", Lands: true}}, p.Steps...)
	goesOnAlike(t, p, 1e-6)
	rest, err := p.Rest(t.Context(), "set the anchor")
	require.NoError(t, err)
	var did []string
	for _, m := range rest.Begin.String {
		did = append(did, m.Does+" "+string(m.On))
	}
	require.Equal(t, []string{"lands outer_string", "lands ", "packer: sets ", "anchor: sets "}, did)
}

// hungLow is a string in a well whose column has fallen: the packer is set by the annulus while the tubing stands at 1,300 ft, and the
// well is then filled, pressed on and left to fall once more.
func hungLow(pore unit.Band[pressure]) *sequence.Plan {
	p := lossy(pore)
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: even(150, 10000)}
	none := pressure(0)
	p.Devices = append(p.Devices, sequence.Device{Name: "packer", MD: 7900 * foot, Actions: []sequence.Action{{Name: "sets", Inside: "annulus", Chamber: &none, Holds: true,
		Triggers: []sequence.Trigger{rising(4400*psi, 4400*psi)}}}}) // 7,900 ft of 120/231 psi/ft are 4,104 psi
	p.String = &sequence.String{Inside: "tubing", Around: []string{"annulus"}, Below: "face",
		Sections: []sequence.StringSection{{BottomMD: 8000 * foot, Hole: 6.184 * unit.Inch, Pipe: sequence.Pipe{Size: 3.5 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Grade: "L80"}}},
		HeldMD:   7900 * foot, Bore: 3.5 * unit.Inch, Up: 20 * foot, Down: 20 * foot, Block: 20000 * unit.PoundForce}
	p.Steps[2].Expect = []string{"packer: sets"}
	p.Steps = append(p.Steps, sequence.Step{Name: "falls again", Do: []sequence.Act{{Drain: "tubing"}}, Allow: []sequence.Flow{sequence.FlowOut}},
		sequence.Step{Name: "pull", Pull: []unit.Force{90000 * unit.PoundForce}})
	return p
}

// What was done to a string in a well whose column had fallen is done again with the level where it was: readings and usage
// of the string as in the whole plan, wherever that is cut.
func TestAStringSetOverAFallenLevelGoesOn(t *testing.T) {
	for _, pore := range []unit.Band[pressure]{exactly(4000), band(4000, 60)}[:long.Size(1, 2)] {
		p := hungLow(pore)
		goesOnAlike(t, p, 1e-6)
		// The level then may be stated as a depth: 8,000·... of 4,000 psi at 9,000 ft stand 7,700 ft, so that it is 1,300 ft down.
		rest, err := p.Rest(t.Context(), "stands")
		require.NoError(t, err)
		last := &rest.Begin.String[len(rest.Begin.String)-1]
		require.Equal(t, "packer: sets", last.Does)
		require.NotNil(t, last.Levels["tubing"], "%+v", last)
		if pore == exactly(4000) {
			lack := last.Levels["tubing"].Lacks.Pressure.Nominal
			require.InDelta(t, 1300*120.0/231, lack.In(psi), 1e-6)
			last.Levels["tubing"] = &sequence.StatedDepth{Depth: unit.Exactly(1300 * foot)}
			whole := verdict(t, p)
			again := verdict(t, rest)
			require.InDelta(t, lastString(whole, 3).Reading.In(unit.PoundForce), lastString(again, 0).Reading.In(unit.PoundForce), 0.1)
			require.InDelta(t, lastString(whole, 3).Packer.In(unit.PoundForce), lastString(again, 0).Packer.In(unit.PoundForce), 0.1)
		}
	}
}
