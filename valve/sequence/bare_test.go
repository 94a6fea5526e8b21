package sequence_test

import (
	"context"
	"maps"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Findings alone are those of the whole verdict, of every shipped plan and of random ones.
func TestFindingsAreThoseOfTheVerdict(t *testing.T) {
	t.Parallel()
	all := shippedPlans(t)
	for n := range uint64(long.Size(8, 40)) {
		p := plainPlan(2026, n)
		all[p.Name] = p
	}
	if !long.Wanted() {
		maps.DeleteFunc(all, func(name string, p *sequence.Plan) bool { return len(p.Steps) > 8 && name != "demo.json" })
	}
	for name, p := range all {
		t.Run(name, func(t *testing.T) {
			whole, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
			far := -1.0
			few, also := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.FindingsOnly, Progress: func(share float64, _ string) {
				require.GreaterOrEqual(t, share, far)
				far = share
			}})
			require.Equal(t, err, also)
			if err != nil {
				return
			}
			require.EqualValues(t, 1, far)
			require.Equal(t, whole.Findings, few.Findings)
			require.Equal(t, whole.Verdict, few.Verdict)
			require.Equal(t, whole.Open, few.Open)
			require.Equal(t, whole.Branches, few.Branches)
			require.Empty(t, few.Steps)
		})
	}
}
