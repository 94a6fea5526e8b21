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

// Every window of the small plans against the verdict at pressures all along it: a step
// fails just where its window says.
func TestEveryWindowAgreesWithTheVerdict(t *testing.T) {
	t.Parallel()
	windows, by := 0, float64(long.Size(4997, 397))
	for name, p := range shippedPlans(t) {
		if len(p.Steps) > long.Size(2, 5) {
			continue
		}
		for _, s := range check(t, p).Steps {
			for _, w := range s.Windows {
				if w.Planned.Axial() || w.Awaits > 0 { // which no proof came to: it claims nothing
					continue
				}
				windows++
				for x := 3.0; x <= 9000; x += by {
					q := p.Clone()
					hold(t, q, s.Name, w, unit.Pressure(x)*psi)
					inside, near := within(t, w, x)
					r, err := sequence.Check(context.Background(), q, sequence.Options{Only: sequence.VerdictOnly})
					if err != nil { // a pressure with which it can't be walked is in no window
						require.True(t, near || !inside, "%s, %s, ramp %d at %v psi: window %s, %v", name, s.Name, w.Ramp, x, w.Words(), err)
						continue
					}
					require.True(t, near || inside != failsIn(r, s.Name), "%s, %s, ramp %d at %v psi: window %s, %+v", name, s.Name, w.Ramp, x, w.Words(), r.Findings)
				}
			}
		}
	}
	require.Greater(t, windows, long.Size(3, 15))
}

// hold gives what a window is of another pressure wherever it is held in a step, which
// may stand in a branch.
func hold(t *testing.T, p *sequence.Plan, step string, w sequence.Window, to unit.Pressure) {
	planned, _ := w.Planned.Pressure()
	var all []*sequence.Step
	for i := range p.Steps {
		all = append(all, &p.Steps[i])
		if o := p.Steps[i].Otherwise; o != nil {
			for k := range o.Steps {
				all = append(all, &o.Steps[k])
			}
		}
	}
	n := slices.IndexFunc(all, func(s *sequence.Step) bool { return s.Name == step })
	require.GreaterOrEqual(t, n, 0, step)
	for _, ramp := range all[n].Ramps {
		for _, name := range append([]string{w.Compartment}, w.Together...) {
			if x, ok := ramp[name]; ok && x == planned {
				ramp[name] = to
			}
		}
	}
}

// within tells whether a pressure lies in a window, and whether it is within 1.5 psi of
// an edge.
func within(t *testing.T, w sequence.Window, x float64) (inside, near bool) {
	for _, i := range w.Intervals {
		a, b := inPsi(t, i.Least), inPsi(t, i.Greatest)
		inside = inside || a <= x && x <= b
		near = near || x > a-1.5 && x < a+1.5 || x > b-1.5 && x < b+1.5
	}
	return inside, near
}

// failsIn tells whether a step fails by itself.
func failsIn(r *sequence.Programme, step string) bool {
	for _, f := range r.Findings {
		if f.Step == step && f.Follows == "" {
			return true
		}
	}
	return false
}
