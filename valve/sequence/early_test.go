package sequence_test

import (
	"context"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	gocmp "github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// What is shown with the verdict, before windows are looked for, is what a check of the
// verdict alone answers, and doesn't change with what comes after it.
func TestTheVerdictIsShownEarly(t *testing.T) {
	t.Parallel()
	for name, p := range shippedPlans(t) {
		if len(p.Steps) > 4 && (name != "demo.json" || !long.Wanted()) || len(p.Steps) > 2 && !long.Wanted() {
			continue
		}
		t.Run(name, func(t *testing.T) {
			var early *sequence.Programme
			whole, err := sequence.Check(context.Background(), p, sequence.Options{Verdict: func(r *sequence.Programme) {
				require.Nil(t, early)
				early = r
			}})
			require.NoError(t, err)
			require.Equal(t, whole.Verdict, early.Verdict)
			require.Empty(t, gocmp.Diff(verdict(t, p), early, gocmp.AllowUnexported(sequence.Level{}),
				cmpopts.IgnoreUnexported(sequence.Window{}, sequence.Choice{}, sequence.StringAt{}, sequence.Point{}, sequence.TimePart{})))
		})
	}
}
