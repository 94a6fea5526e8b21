package sequence_test

import (
	"context"
	"encoding/json"
	"fmt"
	"testing"

	"completion.example/valve/sequence"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// The short form says what the full one says, in a twentieth of its length, and reads
// back as written.
func TestSummaryIsShortAndWhole(t *testing.T) {
	for _, p := range []*sequence.Plan{demoPlan(t), limitPlan(t, "joint-breaks-before-the-release")} {
		r := verdict(t, p)
		s := r.Summary()
		require.Equal(t, r.Verdict, s.Verdict)
		require.Equal(t, r.Findings, s.Findings)
		require.Len(t, s.Steps, len(p.Steps))
		kinds := map[sequence.Kind]bool{}
		for _, m := range r.Margins {
			kinds[m.Kind] = true
		}
		require.Len(t, s.Margins, len(kinds))
		for i := range s.Steps {
			require.Equal(t, r.Steps[i].OK, s.Steps[i].OK)
			require.Len(t, s.Steps[i].Windows, len(r.Steps[i].Windows))
			require.LessOrEqual(t, len(s.Steps[i].Moves), len(r.Steps[i].Events))
		}
		text, err := json.Marshal(s)
		require.NoError(t, err)
		var back sequence.Summary
		require.NoError(t, json.Unmarshal(text, &back))
		require.Empty(t, cmp.Diff(s, back, cmpopts.EquateEmpty(), cmp.AllowUnexported(sequence.Level{}), cmpopts.IgnoreUnexported(sequence.Choice{})))
		full, err := json.Marshal(r)
		require.NoError(t, err)
		if len(p.Steps) > 10 {
			require.Less(t, 20*len(text), len(full), "%d of %d bytes", len(text), len(full))
		}
	}
}

func ExampleProgramme_Summary() {
	p := mini()
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	s := r.Summary()
	fmt.Println(s.Verdict, len(s.Findings))
	for _, step := range s.Steps {
		fmt.Println(step.Name, step.OK, step.Moves)
	}
	// Output:
	// proved 0
	// set true [packer: sets]
}

// The plan of one choice of values: the pins such that 3,500 psi part them.
func ExamplePlan_At() {
	p := mini()
	choices, err := p.Choose("packer: sets = 3500 psi")
	if err != nil {
		fmt.Println(err)
		return
	}
	q, err := p.At(choices)
	fmt.Println(q.Devices[0].Actions[0].Triggers[0].Pins.Strength, err)
	fmt.Printf("%.2f of it\n", sequence.PressureLevel(1500*psi).Share(sequence.PressureLevel(2000*psi)))
	// Output:
	// 4666.666666666668 lbf <nil>
	// 0.75 of it
}
