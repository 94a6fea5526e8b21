package sequence_test

import (
	"context"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// plugged is a gauge well whose tubing has a valve (at 500 ft) and a plug under it (at
// 900 ft): tubing, then "between", then "below". All of one brine, so that pressures at
// the ports differ as those at the tops do, less the column between.
func plugged(trapped float64, do ...sequence.Act) *sequence.Plan {
	p := gaugeWell()
	p.Compartments[0].BottomMD = 500 * foot
	for _, c := range []sequence.Compartment{{Name: "between", TopMD: 500 * foot, BottomMD: 900 * foot}, {Name: "below", TopMD: 900 * foot, BottomMD: 1000 * foot}} {
		c.Fluid, c.Capacity = "brine", p.Compartments[0].Capacity
		p.Compartments = append(p.Compartments, c)
	}
	setTrapped(&p.Compartments[3], 9*psiPerFootPpg*900+trapped)
	addPort(p, "valve", "tubing", "between", true)
	addPort(p, "plug", "between", "below", false)
	p.Ports[0].MD, p.Ports[1].MD = 500*foot, 900*foot
	addAction(p, "valve", "between", "annulus", rising(4000*psi, 4100*psi)).Closes = []string{"valve"}
	p.Devices[0].MD = 500 * foot
	p.Steps = []sequence.Step{{Name: "by hand", Do: do}}
	return p
}

// What an act by hand needs is judged; numbers by hand.
func TestActsByHandAreJudged(t *testing.T) {
	through := []string{"valve"}
	for name, x := range map[string]struct {
		plan    *sequence.Plan
		kind    sequence.Kind // empty: proved
		numbers string
	}{
		"a plug with nothing across it": {plugged(0, sequence.Act{Pull: "plug", In: "tubing", Through: through}), "", ""},
		"a plug with 100 psi across it": {plugged(100, sequence.Act{Pull: "plug", In: "tubing", Through: through}), sequence.ByHand, "100 psi across it; at most 0.5 psi"},
		"a plug that bears 150 psi":     {plugged(100, sequence.Act{Pull: "plug", In: "tubing", Through: through, AtMost: 150 * psi}), "", ""},
		"a plug that bears 100 psi":     {plugged(100, sequence.Act{Pull: "plug", In: "tubing", Through: through, AtMost: 100 * psi}), "", ""},
		"a plug that isn't there":       {plugged(0, sequence.Act{Drop: "plug", In: "tubing", Through: through}), sequence.ByHand, "“plug” is shut"},
		"past a valve shut by hand": {plugged(0, sequence.Act{Shift: "valve: moves", In: "tubing"}, sequence.Act{Pull: "plug", In: "tubing", Through: through}),
			sequence.ByHand, `on its way are ["valve"]`},
		"shifted twice": {plugged(0, sequence.Act{Shift: "valve: moves", In: "tubing"}, sequence.Act{Shift: "valve: moves", In: "tubing"}), sequence.ByHand, "as the steps before left it"},
	} {
		t.Run(name, func(t *testing.T) {
			r, err := sequence.Check(context.Background(), x.plan, sequence.Options{})
			require.NoError(t, err)
			if x.kind == "" {
				require.True(t, r.OK(), "%v", r.Findings)
				require.True(t, r.Steps[0].Acts[0].Done)
				return
			}
			require.Equal(t, sequence.Refuted, r.Verdict)
			require.Equal(t, x.kind, r.Findings[0].Kind)
			require.Contains(t, r.Findings[0].Numbers, x.numbers)
		})
	}
}

// A plug that is pulled joins the two sides: what then is due happens, and isn't
// intended. An action that is shifted may stand in what the step expects, or not.
func TestWhatAnActSetsOff(t *testing.T) {
	p := plugged(400, sequence.Act{Pull: "plug", In: "tubing", Through: []string{"valve"}, AtMost: 500 * psi})
	addAction(p, "disc", "below", "annulus", falling(9*psiPerFootPpg*0+200*psi, 210*psi))
	p.Devices[1].MD = 950 * foot
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
	require.Equal(t, sequence.Unintended, r.Findings[0].Kind)
	require.Equal(t, "disc: moves", r.Findings[0].Device)

	for _, expect := range [][]string{nil, {"valve: moves"}} {
		p = plugged(0, sequence.Act{Shift: "valve: moves", In: "tubing", By: "wireline"})
		p.Steps[0].Expect = expect
		r, err = sequence.Check(context.Background(), p, sequence.Options{})
		require.NoError(t, err)
		require.True(t, r.OK(), "%v", r.Findings)
		require.Equal(t, "shift by wireline: “valve: moves”", r.Steps[0].Acts[0].Act)
		require.True(t, r.Steps[0].Events[0].ByHand)
		require.False(t, r.Steps[0].Ports[0].Open)
	}
}

// Venting is a ramp to nothing: what feels the way down is judged on it.
func TestVentingIsARampToNothing(t *testing.T) {
	p := gaugeWell()
	addAction(p, "relief", "annulus", "tubing", rising(600*psi, 700*psi))
	p.Steps = []sequence.Step{{Name: "up", Ramps: []map[string]pressure{{"tubing": 1000 * psi, "annulus": 1000 * psi}}},
		{Name: "vent", Do: []sequence.Act{{Vent: "tubing"}}}}
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
	require.Equal(t, sequence.Unintended, r.Findings[0].Kind)
	require.Equal(t, "vent", r.Findings[0].Step)
	p.Steps[1].Expect = []string{"relief: moves"}
	r, err = sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
	require.True(t, r.OK(), "%v", r.Findings)
}

// What can't be meant is refused with what to write.
func TestActsThatAreRefused(t *testing.T) {
	for text, a := range map[string]sequence.Act{
		"does 0 things":              {},
		"does 2 things":              {Drop: "plug", Vent: "tubing"},
		`through: "drop" is run in`:  {Drop: "plug", In: "tubing"},
		"only what is at surface":    {Open: "plug"},
		"in: is missing":             {Pull: "plug"},
		"needs the plan's string":    {Turn: "valve: moves"},
		"in and through have no":     {Vent: "tubing", In: "tubing"},
		`port "plug" joins`:          {Pull: "plug", In: "tubing", Through: []string{"plug"}},
		"doesn't reach the surface":  {Vent: "below"},
		`no action "valve: drops"; `: {Shift: "valve: drops", In: "tubing"},
	} {
		require.ErrorContains(t, plugged(0, a).Validate(), text)
	}
}

// What keeps something from being done by hand is told, with what would mend it.
func TestWordsOfWhatCannotBeDoneByHand(t *testing.T) {
	for says, x := range map[string]struct {
		do          []sequence.Act
		cure, moved string
	}{
		"there is nothing to do: it stands so already":                               {[]sequence.Act{{Pull: "plug", In: "tubing"}, {Pull: "plug", In: "tubing"}}, "take the act out, or look at what moved it before", "“plug” is open at that moment"},
		"what is dropped or run can't come there: the way is shut":                   {[]sequence.Act{{Pull: "plug", In: "tubing", Through: []string{"gate"}}}, "open what is on its way first", `on its way are ["gate"]`},
		"there is nothing to shift: it has happened before, or what arms it has not": {[]sequence.Act{{Shift: "lock: moves", In: "tubing"}, {Shift: "lock: moves", In: "tubing"}}, "take the act out, or let first happen what arms it", "the device stands as the steps before left it"},
		"more stands across it than the act bears when it opens":                     {[]sequence.Act{{Vent: "annulus"}, {Pull: "wall", In: "tubing", AtMost: 100 * psi}}, "equalise before it is opened, or state what it bears (at_most)", "500 psi across it; at most 100 psi"},
	} {
		p := gaugeWell("room")
		addPort(p, "plug", "tubing", "room", false)
		addPort(p, "gate", "tubing", "room", false)
		addPort(p, "wall", "tubing", "annulus", false)
		for i := range p.Ports {
			p.Ports[i].MD = 500 * foot
		}
		addAction(p, "lock", "tubing", "", rising(9000*psi, 9000*psi))
		p.Compartments[2].Trapped = exactly(500)
		p.Steps = []sequence.Step{{Name: "press", Ramps: tubingTo(500)}, {Name: "by hand", Do: x.do, Allow: []sequence.Flow{sequence.FlowIn, sequence.FlowOut, sequence.Circulation}}}
		r := verdicted(t, p)
		require.Equal(t, sequence.Refuted, r.Verdict, says)
		f := r.Findings[0]
		require.Equal(t, sequence.ByHand, f.Kind)
		require.Equal(t, says, f.Says)
		require.Equal(t, x.cure, f.Cure)
		require.Equal(t, x.moved, f.Numbers)
	}
	for act, says := range map[*sequence.Act]string{
		{Drop: "seat"}: "drop a ball or plug: shuts “seat”", {Pull: "plug"}: "pull the ball or plug: opens “plug”", {Turn: "r: parts"}: "turn the string: “r: parts”",
		{Open: "wing"}: "open at surface: “wing”", {Close: "wing"}: "close at surface: “wing”", {Vent: "tubing"}: "vent “tubing” to 0 psi",
		{Drain: "tubing"}: "leave “tubing” open to the air until its level has fallen", {Fill: "tubing"}: "fill “tubing” to surface",
		{Shift: "s: opens", By: "100 % wire"}: "shift by 100 % wire: “s: opens”", {Open: "wing", By: "the crew"}: "open at surface: “wing” (the crew)",
	} {
		require.Equal(t, says, act.String())
	}
}
