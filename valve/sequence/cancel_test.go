package sequence_test

import (
	"context"
	"testing"
	"time"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// A caller that gives up gets its goroutine back within 50 ms, whatever is being
// worked on. Each moment has a few tries, since a busy machine may let any one of
// them wait; what is late by its own doing is late in all.
func TestCheckStopsSoonAfterItIsCancelled(t *testing.T) {
	const soon = 50 * time.Millisecond
	demonstrated, wide := demoPlan(t), large(10, 40)
	work := map[string]func(ctx context.Context) error{
		"demo": func(ctx context.Context) error {
			_, err := sequence.Check(ctx, demonstrated, sequence.Options{})
			return err
		},
		"10 devices, 40 steps": func(ctx context.Context) error {
			_, err := sequence.Check(ctx, wide, sequence.Options{})
			return err
		},
		"draws": func(ctx context.Context) error {
			_, err := sequence.Sample(ctx, demonstrated, sequence.Uncertainty{Samples: 2000, Seed: 1})
			return err
		},
	}
	for name, run := range work {
		t.Run(name, func(t *testing.T) {
			began := time.Now()
			require.NoError(t, run(context.Background()))
			whole := time.Since(began)
			soon := max(soon, whole/4) // on a slow machine
			for _, share := range []float64{0.1, 0.6, 0, 0.02, 0.05, 0.2, 0.4, 0.8}[:long.Size(2, 8)] {
				after := time.Duration(share * float64(whole))
				late := time.Duration(0)
				for range 4 {
					late = lateness(t, run, after)
					if late <= soon {
						break
					}
				}
				require.LessOrEqual(t, late, soon, "given up after %v", after)
			}
		})
	}
}

// lateness is how long after it was given up a run returns; nothing where it was
// through before.
func lateness(t *testing.T, run func(ctx context.Context) error, after time.Duration) time.Duration {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	gaveUp := make(chan time.Time, 1)
	stop := time.AfterFunc(after, func() { gaveUp <- time.Now(); cancel() })
	err := run(ctx)
	returned := time.Now()
	if stop.Stop() {
		require.NoError(t, err)
		return 0
	}
	if err != nil {
		require.ErrorIs(t, err, context.Canceled)
	}
	return returned.Sub(<-gaveUp)
}
