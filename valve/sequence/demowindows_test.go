package sequence_test

import (
	"context"
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Every window of the demo is held against the verdict on the demo with the pressure
// or the pull changed: at the edges and in the middle of an interval the step is
// proved, and just beyond an edge it isn't. The plain walker of the other tests knows
// no string and no production; what stands here is that window and verdict are one
// answer, and that an interval ends where a limit does.
func TestWindowsOfTheDemoAgainstItsVerdict(t *testing.T) {
	long.Skip(t, "some hundred walks of the demo")
	p := demoPlan(t)
	r := everything(t, p)
	require.True(t, r.OK())
	for k := range r.Steps {
		for n := range r.Steps[k].Windows {
			w := &r.Steps[k].Windows[n]
			require.True(t, w.Inside, "%s: %s", r.Steps[k].Name, w.Words())
			beyond, right := varied(t, p, k, w)
			for _, x := range w.Intervals {
				a, b := value(x.Least), value(x.Greatest)
				for _, y := range []float64{a, a + 0.61*(b-a), b} {
					require.True(t, right(y), "step %d, %v: %s: %v fails", k+1, w.Planned, w.Words(), y)
				}
				if x.Above != "" {
					require.False(t, right(b+beyond), "step %d, %v: %s: %v is right", k+1, w.Planned, w.Words(), b+beyond)
				}
				if x.Below != "" && a > beyond {
					require.False(t, right(a-beyond), "step %d, %v: %s: %v is right", k+1, w.Planned, w.Words(), a-beyond)
				}
			}
		}
	}
}

// value is a level in psi or lbf.
func value(l sequence.Level) float64 {
	if f, ok := l.Force(); ok {
		return f.In(unit.PoundForce)
	}
	return levelPressure(l).In(psi)
}

// varied tells of a step whether it is proved with another value of what a window is
// of; beyond is by how much an edge may be off: what windows are rounded to, twice.
func varied(t *testing.T, p *sequence.Plan, k int, w *sequence.Window) (beyond float64, right func(float64) bool) {
	at := func(x float64) *sequence.Plan {
		return held{k, append([]string{w.Compartment}, w.Together...), levelPressure(w.Planned)}.at(p, x)
	}
	beyond = 2
	if w.Compartment == "" {
		beyond = 400
		at = func(x float64) *sequence.Plan {
			c := *p
			c.Steps = slices.Clone(p.Steps[:k+1])
			c.Steps[k].Pull = slices.Clone(c.Steps[k].Pull)
			c.Steps[k].Pull[w.Ramp-1] = unit.Force(x) * unit.PoundForce
			return &c
		}
	}
	return beyond, func(x float64) bool {
		r, err := sequence.Check(context.Background(), at(x), sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		return r.OK()
	}
}
