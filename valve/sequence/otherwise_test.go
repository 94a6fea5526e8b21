package sequence_test

import (
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// branched is a sleeve between tubing and a shut-in annulus that should open at 1,000
// to 1,100 psi. Where it doesn't, it is shifted; then the annulus is tested through it.
func branched() *sequence.Plan {
	p := gaugeWell()
	addPort(p, "sleeve", "tubing", "annulus", false)
	p.Ports[0].MD = 900 * foot
	addAction(p, "sleeve", "tubing", "annulus", rising(1000*psi, 1100*psi)).Opens = []string{"sleeve"}
	p.Devices[0].MD = 900 * foot
	addAction(p, "disc", "annulus", "", rising(1900*psi, 2000*psi))
	p.Steps = []sequence.Step{
		{Name: "open", Shut: []string{"annulus"}, Ramps: tubingTo(1200), Expect: []string{"sleeve: moves"},
			Otherwise: &sequence.Otherwise{Steps: []sequence.Step{
				{Name: "bleed off", Ramps: tubingTo(0)},
				{Name: "shift it", Do: []sequence.Act{{Shift: "sleeve: moves", In: "tubing", By: "wireline"}}},
			}}},
		{Name: "test", Ramps: tubingTo(1500)},
	}
	return p
}

// Both ways are walked; what tells them apart is the shut annulus: 1,200 psi where the
// sleeve is open, nothing where it is stuck.
func TestABranchIsWalked(t *testing.T) {
	r := checked(t, branched())
	require.True(t, r.OK(), "%v", r.Findings)
	require.Len(t, r.Steps, 4)
	require.Equal(t, "open", r.Steps[1].BranchOf)
	b := r.Steps[0].Otherwise
	require.Equal(t, []string{"sleeve: moves"}, b.Not)
	require.Equal(t, "bleed off", b.First)
	require.Equal(t, "test", b.Then)
	require.Contains(t, b.Tells, sequence.Tell{Not: "sleeve: moves", Point: "ramp 1", What: "pressure of annulus", Seen: "1200 psi", Stuck: "0 psi"})
	require.True(t, r.Steps[2].Events[0].ByHand)
	require.Len(t, r.Steps[0].Windows[0].Intervals, 1)
	low, _ := r.Steps[0].Windows[0].Intervals[0].Least.Pressure()
	require.InDelta(t, 1100, low.In(psi), 1) // a device that isn't stuck must move
}

// What goes wrong on one way only is found, with the case in which it does.
func TestAMistakeInABranch(t *testing.T) {
	p := branched()
	p.Steps[0].Otherwise.Steps[0].Ramps = tubingTo(2100, 0) // nothing stands behind it then
	require.True(t, checked(t, p).OK())
	p.Steps[0].Otherwise.Steps[0].Ramps = tubingTo(2100)
	r := checked(t, p) // shifted with 2,100 psi on it, the annulus feels it
	require.Equal(t, sequence.Unintended, r.Findings[0].Kind)
	require.Equal(t, "shift it", r.Findings[0].Step)
	require.Equal(t, "disc: moves", r.Findings[0].Device)

	p = branched()
	p.Steps[0].Otherwise.Steps = p.Steps[0].Otherwise.Steps[:1] // and nobody shifts it
	p.Steps[1].Ramps = tubingTo(2100)
	r = checked(t, p)
	require.Equal(t, "test", r.Findings[0].Step) // where it has opened, the disc bursts
	p.Steps[1].Expect = []string{"disc: moves"}
	r = checked(t, p)
	require.Equal(t, sequence.Missing, r.Findings[0].Kind)
	require.Equal(t, "disc: moves", r.Findings[0].Device) // where it hasn't, it doesn't
	require.Contains(t, r.Findings[0].Assumed, "“sleeve: moves” stuck")
	p.Steps[0].Otherwise.Then = "end"
	require.True(t, checked(t, p).OK())

	p = branched()
	p.Steps[0].Otherwise.Steps = p.Steps[0].Otherwise.Steps[:1]
	p.Steps[1].Expect = []string{"sleeve: moves"} // tried again, and it moves: where it had moved before, that is wrong
	require.Equal(t, sequence.Missing, checked(t, p).Findings[0].Kind)
	p.Steps[0].Otherwise.Then = "end"
	p.Steps[1].Expect = nil
	p.Steps[0].Otherwise.Steps = []sequence.Step{{Name: "again", Ramps: tubingTo(0, 1300), Expect: []string{"sleeve: moves"}}}
	require.True(t, checked(t, p).OK())
}

// A device that its own band leaves in doubt is a finding, branch or not.
func TestABranchIsNoExcuse(t *testing.T) {
	p := branched()
	p.Steps[0].Ramps = tubingTo(1050)
	r := checked(t, p)
	require.Equal(t, sequence.Missing, r.Findings[0].Kind)
	require.Equal(t, "open", r.Findings[0].Step)
}

// What can't be meant is refused with its path.
func TestBranchesThatAreRefused(t *testing.T) {
	for text, change := range map[string]func(o *sequence.Otherwise){
		"steps[0].otherwise.steps: is empty":                     func(o *sequence.Otherwise) { o.Steps = nil },
		`steps[0].otherwise.not[0]: "disc: moves" is not among`:  func(o *sequence.Otherwise) { o.Not = []string{"disc: moves"} },
		`steps[0].otherwise.then: no later step "open"`:          func(o *sequence.Otherwise) { o.Then = "open" },
		"steps[0].otherwise.steps[0].otherwise: a branch has no": func(o *sequence.Otherwise) { o.Steps[0].Otherwise = &sequence.Otherwise{} },
		"steps[0].otherwise.steps[1].do[0]: does 0 things":       func(o *sequence.Otherwise) { o.Steps[1].Do[0] = sequence.Act{} },
		`"test" stands twice`:                                    func(o *sequence.Otherwise) { o.Steps[1].Name = "test" },
	} {
		p := branched()
		change(p.Steps[0].Otherwise)
		require.ErrorContains(t, p.Validate(), text)
	}
}

// Of two sleeves that may be stuck each may be alone, or both: what fails only with both of them shut is found, and said so.
func TestBothOfTwoMayBeStuck(t *testing.T) {
	p := gaugeWell()
	for _, name := range []string{"first", "second"} {
		addPort(p, name, "tubing", "annulus", false)
		addAction(p, name, "tubing", "", rising(1000*psi, 1100*psi)).Opens = []string{name}
	}
	addAction(p, "wall", "annulus", "", rising(1250*psi, 1260*psi)) // which sees the tubing through either of them
	o := &sequence.Otherwise{Then: "end", Steps: []sequence.Step{{Name: "press on", Ramps: tubingTo(1240)}}}
	p.Steps = []sequence.Step{{Name: "open", Shut: []string{"annulus"}, Ramps: tubingTo(1200), Expect: []string{"first: moves", "second: moves"}, Otherwise: o}, {Name: "look", Ramps: tubingTo(1200)}}
	r := checked(t, p)
	require.True(t, r.OK(), "%v", r.Findings)
	require.ElementsMatch(t, []string{"first: moves", "second: moves"}, r.Steps[0].Otherwise.Not)
	o.Steps[0].Ramps = tubingTo(1300)
	o.Steps[0].Expect = []string{"wall: moves"}
	r = checked(t, p)
	require.Equal(t, sequence.Missing, r.Findings[0].Kind)
	require.Equal(t, "wall: moves", r.Findings[0].Device)
	require.Contains(t, r.Findings[0].Assumed, "“first: moves”")
	require.Contains(t, r.Findings[0].Assumed, "“second: moves”")
	o.Not = []string{"first: moves"} // alone it does no harm
	require.True(t, checked(t, p).OK())
}

// A lock of two conditions that is stuck moves by neither; shifted by hand once one of them is met, it has moved.
func TestALockOfTwoConditionsMayBeStuck(t *testing.T) {
	p := gaugeWell("room")
	addPort(p, "door", "tubing", "room", false)
	a := addAction(p, "lock", "tubing", "")
	none := pressure(0)
	a.All = []sequence.Condition{{Inside: "tubing", Chamber: &none, Triggers: []sequence.Trigger{rising(1000*psi, 1100*psi)}},
		{Inside: "annulus", Chamber: &none, Triggers: []sequence.Trigger{rising(500*psi, 600*psi)}}}
	a.Inside, a.Chamber, a.Triggers, a.Opens = "", nil, nil, []string{"door"}
	p.Steps = []sequence.Step{
		{Name: "open", Ramps: []map[string]pressure{{"tubing": 1200 * psi, "annulus": 700 * psi}}, Expect: []string{"lock: moves"},
			Otherwise: &sequence.Otherwise{Steps: []sequence.Step{{Name: "shift it", Do: []sequence.Act{{Shift: "lock: moves", In: "tubing", By: "wireline"}}}}}},
		{Name: "look", Ramps: tubingTo(1300)},
	}
	r := checked(t, p)
	require.True(t, r.OK(), "%v", r.Findings)
	require.Equal(t, "shift it", r.Steps[1].Name)
	require.True(t, r.Steps[1].Events[0].ByHand)
	rest, err := p.Rest(t.Context(), "look")
	require.NoError(t, err)
	require.Equal(t, []string{"lock: moves"}, rest.Begin.Happened)
}

// A device of another part of the well shuts one way before a second is opened: then nothing goes round. Later, it does.
func TestARingThatIsShutBefore(t *testing.T) {
	plan := func(shuts float64) *sequence.Plan {
		p := gaugeWell("room")
		p.Fluids = append(p.Fluids, sequence.Fluid{Name: "mud"})
		setDensity(&p.Fluids[1], 12)
		p.Compartments[2].Fluid = "mud"
		p.Compartments = append(p.Compartments, sequence.Compartment{Name: "aside", BottomMD: 1000 * foot, Fluid: "brine", Surface: true})
		addPort(p, "up", "tubing", "room", true)
		addPort(p, "down", "tubing", "room", false)
		p.Ports[1].MD = 900 * foot
		addAction(p, "a shutter", "aside", "", rising(pounds(shuts), pounds(shuts))).Closes = []string{"up"}
		addAction(p, "sleeve", "tubing", "", rising(900*psi, 900*psi)).Opens = []string{"down"}
		p.Steps = []sequence.Step{{Name: "press", Ramps: []map[string]pressure{{"tubing": 1500 * psi, "aside": 1500 * psi}}, Expect: []string{"a shutter: moves", "sleeve: moves"}}}
		return p
	}
	require.Equal(t, sequence.Proved, verdicted(t, plan(500)).Verdict)
	_, err := sequence.Check(t.Context(), plan(1200), sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, "it goes round by itself")
}
