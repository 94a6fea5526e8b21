package sequence_test

import (
	"context"
	"testing"
	"time"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// A caller that gives up gets its goroutine back within 50 ms, whatever is being
// worked on. Each moment has a few tries, since a busy machine may let any one of
// them wait; what is late by its own doing is late in all.
func TestCheckStopsSoonAfterItIsCancelled(t *testing.T) {
	const soon = 50 * time.Millisecond
	work := map[string]func(ctx context.Context) error{
		"demo": func(ctx context.Context) error {
			_, err := sequence.Check(ctx, demoPlan(t), sequence.Options{})
			return err
		},
		"20 devices, 100 steps": func(ctx context.Context) error {
			_, err := sequence.Check(ctx, large(20, 100), sequence.Options{})
			return err
		},
		"draws": func(ctx context.Context) error {
			_, err := sequence.Sample(ctx, demoPlan(t), sequence.Uncertainty{Samples: 20_000, Seed: 1})
			return err
		},
	}
	for name, run := range work {
		t.Run(name, func(t *testing.T) {
			for after := time.Duration(0); ; after += max(after, 3*time.Millisecond) {
				late := time.Duration(0)
				for range 4 {
					ctx, cancel := context.WithCancel(context.Background())
					gaveUp := make(chan time.Time, 1)
					stop := time.AfterFunc(after, func() { gaveUp <- time.Now(); cancel() })
					err := run(ctx)
					returned := time.Now()
					if stop.Stop() { // it was through before
						cancel()
						require.NoError(t, err)
						return
					}
					if late = returned.Sub(<-gaveUp); err != nil {
						require.ErrorIs(t, err, context.Canceled)
					}
					if late <= soon {
						break
					}
				}
				require.LessOrEqual(t, late, soon, "given up after %v", after)
			}
		})
	}
}
