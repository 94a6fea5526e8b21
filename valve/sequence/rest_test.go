package sequence_test

import (
	"context"
	"os"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Walking all steps, and walking some and then the rest from the state that is
// written, is the same: every finding, event and margin of the rest.
func TestCutAnywhereAndGoOn(t *testing.T) {
	t.Parallel()
	cuts := 0
	for name, p := range shippedPlans(t) {
		if len(p.Steps) > long.Size(5, 8) && (name != "demo.json" || !long.Wanted()) && os.Getenv("SEQUENCE_PLANS") == "" {
			continue
		}
		t.Run(name, func(t *testing.T) {
			whole, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
			require.NoError(t, err)
			for i := range p.Steps {
				rest, err := p.Rest(context.Background(), p.Steps[i].Name)
				if p.Steps[i].Otherwise != nil {
					require.ErrorContains(t, err, "which way its branches went")
					return
				}
				if !whole.Steps[i].OK || whole.Steps[i].Follows != "" {
					return // from here on another thing is walked
				}
				require.NoError(t, err, p.Steps[i].Name)
				cuts++
				r, err := sequence.Check(context.Background(), rest, sequence.Options{Only: sequence.VerdictOnly})
				require.NoError(t, err, p.Steps[i].Name)
				if i == len(p.Steps)-1 {
					require.Len(t, r.Steps, 1)
					continue
				}
				if len(rest.Begin.May) > 0 { // proved for more than can be
					require.False(t, r.OK() && !whole.OK(), p.Steps[i].Name)
					continue
				}
				require.Equal(t, whole.Verdict, r.Verdict, p.Steps[i].Name)
				for n := i + 1; n < len(whole.Steps); n++ {
					a, b := whole.Steps[n], r.Steps[n-i-1]
					require.Equal(t, a.OK, b.OK, a.Name)
					require.Len(t, b.Events, len(a.Events), "%s after %s", a.Name, p.Steps[i].Name)
					for k := range a.Triggers {
						require.Equal(t, a.Triggers[k].Action, b.Triggers[k].Action)
						require.Equal(t, a.Triggers[k].Margin.Rounded(5), b.Triggers[k].Margin.Rounded(5), "%s: %s after %s", a.Name, a.Triggers[k].Action, p.Steps[i].Name)
					}
					for k := range a.Ratings {
						require.InDelta(t, a.Ratings[k].Usage, b.Ratings[k].Usage, 1e-6, "%s: %s after %s", a.Name, a.Ratings[k].Name, p.Steps[i].Name)
					}
					for k := range a.Points {
						if a.Points[k].String != nil {
							require.InDelta(t, a.Points[k].String.Usage, b.Points[k].String.Usage, 1e-6, "%s after %s", a.Name, p.Steps[i].Name)
							require.InDelta(t, float64(a.Points[k].String.Packer), float64(b.Points[k].String.Packer), 1, "%s after %s", a.Name, p.Steps[i].Name)
						}
					}
				}
			}
		})
	}
	require.Greater(t, cuts, long.Size(5, 20))
}

// A rest is written as a file and reads back to the same.
func TestARestReadsBack(t *testing.T) {
	p := shippedPlans(t)["demo.json"]
	for _, step := range []string{"set the packer", "open isolation valve A", "release by overpull"} {
		rest, err := p.Rest(context.Background(), step)
		require.NoError(t, err)
		data, err := sequence.Write(rest)
		require.NoError(t, err)
		back, err := sequence.Read(data)
		require.NoError(t, err, string(data))
		again, err := sequence.Write(back)
		require.NoError(t, err)
		require.Equal(t, string(data), string(again))
	}
}
