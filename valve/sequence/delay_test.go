package sequence_test

import (
	"context"
	"testing"

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

func TestDelaysThatAreRefused(t *testing.T) {
	for _, x := range []struct {
		edit func(p *sequence.Plan)
		says string
	}{
		{func(p *sequence.Plan) { p.Rules.Rise = 0 }, "how long ramps take"},
		{func(p *sequence.Plan) { p.Steps[0].Ramps = tubingTo(2500); p.Steps[0].Hold = []string{"1m"} }, "nobody knows whether"},
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
