package sequence_test

import (
	"context"
	"os"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/valve/sequence"
)

// told gathers what is told of how far the work has come.
type told struct {
	t      *testing.T
	inside atomic.Int32
	shares []float64 // written by whoever tells: the race detector sees two at once
	over   bool
	each   func()
}

func (o *told) progress(share float64, doing string) {
	if o.inside.Add(1) != 1 {
		o.t.Error("told from two goroutines at once")
	}
	defer o.inside.Add(-1)
	if o.over {
		o.t.Error("told after the work's end")
	}
	if doing == "" {
		o.t.Error("nothing said of what is being done")
	}
	o.shares = append(o.shares, share)
	if o.each != nil {
		o.each()
	}
}

// rises: from 0 on, never back; to 1 where the work was brought to its end.
func (o *told) rises(whole bool) {
	o.t.Helper()
	o.over = true
	require.NotEmpty(o.t, o.shares)
	require.Zero(o.t, o.shares[0])
	require.IsNonDecreasing(o.t, o.shares)
	last := o.shares[len(o.shares)-1]
	if whole {
		require.Equal(o.t, 1.0, last) //nolint:testifylint // just that
		require.Less(o.t, o.shares[len(o.shares)-2], 1.0, "1 is told once, at the end")
	} else {
		require.Less(o.t, last, 1.0)
	}
}

func TestProgressOfACheck(t *testing.T) {
	text, err := os.ReadFile("../../examples/installation/plans/demo.json")
	require.NoError(t, err)
	p, err := sequence.Read(text)
	require.NoError(t, err)
	for _, only := range []sequence.Part{sequence.Everything, sequence.VerdictOnly} {
		o := told{t: t}
		_, err = sequence.Check(t.Context(), p, sequence.Options{Only: only, Workers: 4, Progress: o.progress})
		require.NoError(t, err)
		o.rises(true)
		if only == sequence.Everything {
			require.Greater(t, len(o.shares), 20, "one for each window")
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	o := told{t: t}
	o.each = func() {
		if len(o.shares) == 5 {
			cancel()
		}
	}
	_, err = sequence.Check(ctx, p, sequence.Options{Workers: 4, Progress: o.progress})
	require.ErrorIs(t, err, context.Canceled)
	o.rises(false)
}

func TestProgressOfDraws(t *testing.T) {
	for _, samples := range []int{1, 64, 1000, 5000} {
		o := told{t: t}
		_, err := sequence.Sample(t.Context(), mini(), sequence.Uncertainty{Samples: samples, Workers: 4, Progress: o.progress})
		require.NoError(t, err)
		o.rises(true)
		require.GreaterOrEqual(t, len(o.shares), 2+samples/64)
	}
}
