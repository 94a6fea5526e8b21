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
