package sequence_test

import (
	"context"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// metered is a sleeve that opens at 1,900 to 2,100 psi after four to six minutes. At 500
// psi/min the ramp to 2,500 psi takes five: what of that counts isn't known.
func metered(hold ...string) *sequence.Plan {
	p := gaugeWell()
	a := addAction(p, "sleeve", "tubing", "", rising(1900*psi, 2100*psi))
	a.Delay, a.DelayMost = "4m", "6m"
	p.Rules.Rise = 500 * psi
	p.Steps = []sequence.Step{{Name: "press", Ramps: tubingTo(2500, 0), Hold: hold, Expect: []string{"sleeve: moves"}}}
	return p
}

func TestADelayWantsToBeHeldOut(t *testing.T) {
	for _, x := range []struct {
		hold    string
		expects bool
		verdict sequence.Verdict
	}{
		{"6m", true, sequence.Proved},
		{"5m59s", true, sequence.Undecided}, // the ramps may make up for it
		{"", false, sequence.Undecided},     // ramps of five minutes each
	} {
		p := metered(x.hold)
		if !x.expects {
			p.Steps[0].Expect = nil
		}
		r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		require.Equal(t, x.verdict, r.Verdict, "%+v: %v", x, r.Findings)
	}
	// As fast as 10,000 psi/min the ramps take half a minute: 3 minutes are too short for
	// certain, and a test of 3 minutes doesn't move it.
	for _, x := range []struct {
		hold    string
		expects bool
		verdict sequence.Verdict
	}{{"3m", true, sequence.Refuted}, {"3m", false, sequence.Proved}, {"7m", false, sequence.Refuted}} {
		p := metered(x.hold)
		p.Rules.Rise = 10000 * psi
		if !x.expects {
			p.Steps[0].Expect = nil
		}
		r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		require.Equal(t, x.verdict, r.Verdict, "%+v: %v", x, r.Findings)
		if x.verdict == sequence.Refuted && x.expects {
			require.Equal(t, sequence.Missing, r.Findings[0].Kind)
			require.Contains(t, r.Findings[0].Numbers, "4m to 6m")
		}
	}
	// Two holds at its level add up.
	p := metered("3m", "3m")
	p.Steps[0].Ramps = tubingTo(2500, 2400, 0)
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
}

// Time at its level counts on from step to step, by what the next takes before anything
// is done in it; in tests that are held; and by hand, before what is done.
func TestDelaysGoOnThroughSteps(t *testing.T) {
	over := func(takes string) *sequence.Plan {
		p := metered("3m")
		p.Steps[0].Ramps, p.Steps[0].Expect = tubingTo(2500), nil
		p.Steps = append(p.Steps, sequence.Step{Name: "bleed", Takes: takes, Ramps: tubingTo(0), Expect: []string{"sleeve: moves"}})
		p.Rules.Rise = 10000 * psi
		return p
	}
	check := func(p *sequence.Plan) *sequence.Programme {
		r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		return r
	}
	require.True(t, check(over("3m")).OK())                         // 3 and 3 make 6
	require.Equal(t, sequence.Undecided, check(over("2m")).Verdict) // 5 of 4 to 6
	short := check(over("20s"))                                     // 3:20, and the ramps
	require.Equal(t, sequence.Refuted, short.Verdict)
	require.Equal(t, "bleed", short.Findings[0].Step)
	_, err := sequence.Check(context.Background(), over(""), sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `step "press": "sleeve: moves" may stand at its level as the step ends, and moves with a delay: nobody knows whether it has stood there for long enough; write in the next step how long that takes before anything is done in it ("takes": "5 min")`)

	// What goes on after the first of the two steps begins with the three minutes and what of
	// the ramp's quarter of a minute counts.
	for takes, verdict := range map[string]sequence.Verdict{"3m": sequence.Proved, "2m": sequence.Undecided, "20s": sequence.Refuted} {
		rest, err := over(takes).Rest(context.Background(), "press")
		require.NoError(t, err)
		require.Equal(t, []sequence.RowAt{{Stood: "3m0s", StoodMost: "3m15s"}}, rest.Begin.Progress["sleeve: moves"])
		require.Equal(t, verdict, check(readBack(t, rest)).Verdict, takes)
	}
	rest, err := over("3m").Rest(context.Background(), "press")
	require.NoError(t, err)
	rest.Steps[0].Takes = ""
	_, err = sequence.Check(context.Background(), rest, sequence.Options{Only: sequence.VerdictOnly})
	require.ErrorContains(t, err, `write in its first step how long it takes before anything is done in it`)
	rest.Begin.Progress["sleeve: moves"][0] = sequence.RowAt{Stood: "5m", StoodMost: "4m"}
	require.ErrorContains(t, rest.Validate(), `stood_at_most: is "4m"; must be no less than stood, "5m"`)
	rest.Begin.Progress["sleeve: moves"] = []sequence.RowAt{{Stood: "3m"}, {Stood: "4m"}}
	require.ErrorContains(t, rest.Validate(), `stood: wants one entry: from stood to stood_at_most is all that it may be`)

	// A test that is held for seven minutes moves it, wherever it is written.
	for _, at := range []sequence.Moment{"", sequence.AtEnd} {
		p := metered()
		p.Rules.Rise = 10000 * psi
		p.Formations = []sequence.Formation{{Name: "sand", MD: 900 * foot, Pressure: exactly(100)}}
		p.Barriers = []sequence.Barrier{{Name: "pipe", Formation: "sand"}}
		p.Steps[0].Expect = nil
		p.Steps[0].Tests = []sequence.Test{{Barrier: "pipe", Side: "above", Inside: "tubing", Outside: "annulus", MD: 500 * foot, Differential: band(2500, 10), Hold: "7m", Moment: at}}
		if at == sequence.AtEnd {
			p.Steps[0].Ramps = tubingTo(2500)
			p.Steps = append(p.Steps, sequence.Step{Name: "bleed", Takes: "1s", Ramps: tubingTo(0)})
		}
		r := check(p)
		require.NotEqual(t, sequence.Proved, r.Verdict)
		require.Equal(t, sequence.Unintended, r.Findings[0].Kind, "%v", r.Findings)
	}

	// Six minutes pass while a line is run, before it does anything.
	p := over("1s")
	none := pressure(0)
	p.Devices = append(p.Devices, sequence.Device{Name: "other", MD: 600 * foot, Actions: []sequence.Action{{Name: "shifts", Inside: "annulus", Chamber: &none, Triggers: []sequence.Trigger{rising(9000*psi, 9000*psi)}}}})
	p.Steps[1].Do = []sequence.Act{{Shift: "other: shifts", In: "annulus", Takes: "6m", AtMost: 10 * psi}}
	p.Steps[1].Expect = []string{"sleeve: moves", "other: shifts"}
	require.True(t, check(p).OK())
}

// A pump that holds a metered device at its level for as long as it wants moves it: at 4
// bbl/min 60 bbl take 15 minutes, and friction alone makes more than its level inside. A
// device below its level all the time isn't in the way of a pump.
func TestADelayWhileItIsPumped(t *testing.T) {
	p := pumpedWell()
	p.Rules.Rise = 500 * psi
	a := addAction(p, "sleeve", "tubing", "annulus", rising(150*psi, 160*psi))
	p.Devices[1].MD = 1000 * foot
	a.Delay, a.DelayMost = "4m", "6m"
	p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Fluid: "brine", Rate: 4 * unit.BarrelPerMinute, Volume: 60 * unit.Barrel}},
		Expect: []string{"sleeve: moves"}}}
	r := verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	p.Steps[0].Pump[0].Volume = 14 * unit.Barrel // 3.5 minutes
	r = verdicted(t, p)
	require.Equal(t, sequence.Refuted, r.Verdict, r.Findings)
	require.Equal(t, sequence.Missing, r.Findings[0].Kind)
	p.Steps[0].Expect = nil
	r = verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
}

func TestDelaysThatAreRefused(t *testing.T) {
	for _, x := range []struct {
		edit func(p *sequence.Plan)
		says string
	}{
		{func(p *sequence.Plan) { p.Rules.Rise = 0 }, "how long ramps take"},
		{func(p *sequence.Plan) { p.Steps[0].Ramps = tubingTo(2500); p.Steps[0].Hold = []string{"1m"} }, "nobody knows whether"},
		{func(p *sequence.Plan) {
			p.Steps[0].Ramps, p.Steps[0].Hold, p.Steps[0].Expect = tubingTo(2500), []string{"1m"}, nil
			p.Steps = append(p.Steps, sequence.Step{Name: "swap", Takes: "1m", Displace: []sequence.Displacement{{Compartment: "annulus", Fluid: "brine", ToMD: 500 * foot}}})
		}, "at its level while a fluid is displaced, and moves with a delay"},
		{func(p *sequence.Plan) { p.Steps[0].Ramps, p.Steps[0].Hold = tubingTo(2500), []string{"5m"} }, "as the programme ends"},
		{func(p *sequence.Plan) { p.Devices[0].Actions[0].Triggers[0] = rising(-20*psi, -10*psi) }, "begin where it isn't there, or with what has brought it there"},
		{func(p *sequence.Plan) {
			*p = *producer()
			p.Rules.Rise = 500 * psi
			addAction(p, "slow", "tubing", "", falling(3200*psi, 3200*psi)).Delay = "1m"
			p.Devices[1].MD = 8400 * foot
		}, "while the zones flow"},
		{func(p *sequence.Plan) { p.Steps[0].Hold = []string{"6m", "6m", "6m"} }, "3 times for 2 ramps"},
		{func(p *sequence.Plan) { p.Devices[0].Actions[0].Delay = "7m" }, "must not be less"},
		{func(p *sequence.Plan) { p.Devices[0].Actions[0].Triggers[0].Count = 2 }, "one trigger that counts once"},
	} {
		p := metered("6m")
		x.edit(p)
		_, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.ErrorContains(t, err, x.says)
	}
}

// readBack writes a plan as a file and reads it.
func readBack(t *testing.T, p *sequence.Plan) *sequence.Plan {
	t.Helper()
	text, err := sequence.Write(p)
	require.NoError(t, err)
	q, err := sequence.Read(text)
	require.NoError(t, err, string(text))
	return q
}

// What is done by hand takes its time before it is done, or while it is: a sleeve that is metered, and at its level, moves as it passes.
func TestADelayWhileSomethingIsDoneByHand(t *testing.T) {
	vented := func(takes string) *sequence.Plan {
		p := metered()
		p.Rules.Rise = 10000 * psi
		p.Steps = []sequence.Step{{Name: "press", Ramps: tubingTo(2500), Hold: []string{"1s"}}, {Name: "vent", Takes: "1s", Do: []sequence.Act{{Vent: "annulus", Takes: takes}, {Vent: "tubing"}}}}
		return p
	}
	r := verdicted(t, vented("1m"))
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	p := vented("10m")
	require.NotEqual(t, sequence.Proved, verdicted(t, p).Verdict)
	p.Steps[1].Expect = []string{"sleeve: moves"}
	r = verdicted(t, p)
	require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
	require.Equal(t, "sleeve: moves", r.Steps[1].Events[0].Action)

	if !long.Wanted() {
		return
	}
	// While the well warms it may stand at its level, or come there: for as long as the step takes.
	warm := func(takes string) *sequence.Plan {
		p := metered()
		p.Rules.Rise = 10000 * psi
		p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: even(60, 1000), "warm": even(90, 1000)}
		p.Steps = []sequence.Step{{Name: "press", Ramps: tubingTo(2500), Hold: []string{"1s"}}, {Name: "warms", Takes: takes, Temperature: "warm", Ramps: tubingTo(0)}}
		return p
	}
	require.Equal(t, sequence.Proved, verdicted(t, warm("1m")).Verdict)
	require.NotEqual(t, sequence.Proved, verdicted(t, warm("10m")).Verdict)
}
