package main

import (
	"context"
	"os"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// horizontal are the second demo plan and the mistakes beside it: each is found by
// nothing but gas, friction and injection, or the flow.
var horizontal = map[string]struct {
	kind         sequence.Kind
	step, device string
}{
	"horizontal-nitrogen-cushion":     {},
	"cushion-opens-the-toe-valve":     {sequence.Unintended, "nitrogen cushion in the tubing", "toe valve: opens"},
	"bullhead-breaks-the-toe-zone":    {sequence.Fracture, "bullhead brine into the toe zone", "toe zone"},
	"drawdown-unlocks-the-kill-valve": {sequence.Unintended, "produce the toe zone", "kill valve: unlocks"},
}

func TestHorizontalWell(t *testing.T) {
	t.Parallel()
	for file, want := range horizontal {
		t.Run(file, func(t *testing.T) {
			data, err := os.ReadFile(planFile(file))
			require.NoError(t, err)
			p, err := sequence.Read(data)
			require.NoError(t, err)
			r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
			require.NoError(t, err)
			if want.step == "" {
				require.Equal(t, sequence.Proved, r.Verdict, r.Findings)
				return
			}
			require.Equal(t, sequence.Refuted, r.Verdict)
			f := r.Findings[0]
			require.Equal(t, want.kind, f.Kind)
			require.Equal(t, want.step, f.Step)
			require.Equal(t, want.device, f.Device)
		})
	}
}

// What a pump and gas do is said step by step, in the trade's units.
func TestGasAndPumpsAreWritten(t *testing.T) {
	u := reader{}
	data, err := os.ReadFile(planFile("horizontal-nitrogen-cushion"))
	require.NoError(t, err)
	p, err := sequence.Read(data)
	require.NoError(t, err)
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	u.units, err = unitsNamed("field", nil)
	require.NoError(t, err)
	lines := u.pumping(&r.Steps[1], 0)
	require.Contains(t, lines[0], "into annulus at 3 bbl/min, out at tubing")
	require.Contains(t, lines[len(lines)-1], "350 bbl of completion brine go out at tubing")
	require.LessOrEqual(t, len(lines), mostPumpPoints+5)
	require.Contains(t, u.gasIn(r.Steps[6].Gas[0]), "Mscf let in")
	require.Contains(t, u.gasIn(r.Steps[8].Gas[0]), "shut in with")
	require.Contains(t, u.gasIn(r.Steps[10].Gas[0]), "no nitrogen is left in tubing")
}
