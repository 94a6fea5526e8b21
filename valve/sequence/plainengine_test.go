package sequence_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// With sharp values the programme and the plain walker must tell the same story:
// the same actions in the same order at the same surface pressures, and the same
// pressures wherever a step stands still.
func TestProgrammeTellsThePlainWalkersStory(t *testing.T) {
	events := 0
	for n := range uint64(150) {
		p := sharp(plainPlan(2, n), func(b plainBand) float64 { return b.nominal })
		r := plainWalkOf(p, nil, 16, nil)
		if r.close || len(r.choices) > 0 {
			continue // another order is another story
		}
		has := map[string]bool{}
		if coverEvents(p, r, has); has["moves in a squeeze"] {
			continue // the programme still counts the whole squeeze twice where a body changes on the way
		}
		e, err := sequence.Check(p)
		require.Equal(t, r.fault != nil, err != nil, "plan %d: %v, plain %v", n, err, r.fault)
		if err != nil {
			continue
		}
		require.Empty(t, difference(p, r, e), "plan %d", n)
		events += r.fired()
	}
	require.Greater(t, events, 300)
}

// difference says where a programme and a plain walk part.
func difference(p *sequence.Plan, r *plainResult, e *sequence.Programme) string {
	var fired []plainEvent
	for _, x := range r.events {
		if x.fired {
			fired = append(fired, x)
		}
	}
	k := 0
	for i, s := range e.Steps {
		for _, x := range s.Events {
			if x.Partial != "" {
				continue
			}
			if k >= len(fired) {
				return fmt.Sprintf("%q in %q, which the plain walker doesn't see", x.Action, s.Name)
			}
			f := fired[k]
			k++
			if f.action != x.Action || f.step != i || f.leg != x.Ramp {
				return fmt.Sprintf("%q in %q, ramp %d; the plain walker has %q in step %d, ramp %d", x.Action, s.Name, x.Ramp, f.action, f.step, f.leg)
			}
			for j, q := range x.Surface {
				if !q.Shut && math.Abs(q.Pressure.In(psi)-f.surface[j]) > 1e-4 {
					return fmt.Sprintf("%q in %q at %v; the plain walker has %v psi", x.Action, s.Name, q.Pressure, f.surface[j])
				}
			}
		}
		if d := differenceOfPressures(p, r.stands[i], s); d != "" {
			return d
		}
	}
	if k < len(fired) {
		return fmt.Sprintf("no %q in step %d, which the plain walker sees", fired[k].action, fired[k].step)
	}
	return ""
}

// differenceOfPressures compares the pressures at the tops of all compartments.
func differenceOfPressures(p *sequence.Plan, stands []plainStand, s sequence.StepResult) string {
	for j, at := range s.Points {
		for c, comp := range p.Compartments {
			for _, x := range at.Profiles {
				if x.Compartment != comp.Name {
					continue
				}
				if d := x.Pressure.In(psi) - stands[j].top[c]; math.Abs(d) > 1e-4 {
					return fmt.Sprintf("%q at its top in %q, %s: %v; the plain walker has %v psi", comp.Name, s.Name, at.Label, x.Pressure, stands[j].top[c])
				}
				break // the first is the top
			}
		}
	}
	return ""
}
