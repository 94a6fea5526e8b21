package sequence_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// With sharp values the programme and the plain walker must tell the same story:
// the same actions in the same order at the same surface pressures, and the same
// pressures wherever a step stands still.
func TestProgrammeTellsThePlainWalkersStory(t *testing.T) {
	t.Parallel()
	events := 0
	for n := range uint64(long.Size(40, 150)) {
		p := sharp(plainPlan(2, n), func(b plainBand) float64 { return b.nominal })
		p.Rules.Barriers = 0 // what is wrong is another test's matter
		r := plainWalkOf(p, 16, nil)
		if r.close || len(r.choices) > 0 {
			continue // another order is another story
		}
		ctx, stop := context.WithTimeout(context.Background(), 30*time.Second)
		e, err := sequence.Check(ctx, p, sequence.Options{Only: sequence.VerdictOnly})
		stop()
		require.NotErrorIs(t, err, context.DeadlineExceeded, "plan %d", n)
		require.Equal(t, r.fault != nil, err != nil, "plan %d: %v, plain %v", n, err, r.fault)
		if err != nil {
			continue
		}
		require.Empty(t, difference(p, r, e), "plan %d", n)
		events += r.fired()
	}
	require.Greater(t, events, long.Size(60, 300))
}

// difference says where a programme and a plain walk part. What no fluid connects
// has no order.
func difference(p *sequence.Plan, r *plainResult, e *sequence.Programme) string {
	var fired []plainEvent
	for _, x := range r.events {
		if x.fired {
			fired = append(fired, x)
		}
	}
	for i, s := range e.Steps {
		for _, x := range s.Events {
			if x.Partial != "" {
				continue
			}
			k := slices.IndexFunc(fired, func(f plainEvent) bool { return f.action == x.Action && f.step == i && f.leg == x.Ramp })
			if k < 0 {
				return fmt.Sprintf("%q in %q, ramp %d, which the plain walker doesn't see", x.Action, s.Name, x.Ramp)
			}
			f := fired[k]
			fired = slices.Delete(fired, k, k+1)
			for _, q := range x.Surface {
				c := slices.IndexFunc(p.Compartments, func(c sequence.Compartment) bool { return c.Name == q.Compartment })
				if !q.Shut && math.Abs(q.Pressure.In(psi)-f.surface[c]) > nearOf(p) {
					return fmt.Sprintf("%q in %q at %v; the plain walker has %v psi", x.Action, s.Name, q.Pressure, f.surface[c])
				}
			}
		}
		if d := differenceOfPressures(p, r.stands[i], s); d != "" {
			return d
		}
	}
	if len(fired) > 0 {
		return fmt.Sprintf("no %q in step %d, which the plain walker sees", fired[0].action, fired[0].step)
	}
	return ""
}

// differenceOfPressures compares the pressures at the tops of all compartments.
func differenceOfPressures(p *sequence.Plan, stands []plainStand, s sequence.StepResult) string {
	for j, at := range s.Points {
		if at.String != nil {
			if d := differenceOfString(p, p.String, sequence.OnString, stands[j].str, at.String); d != "" {
				return fmt.Sprintf("string in %q, %s: %s", s.Name, at.Label, d)
			}
		}
		if at.OuterString != nil {
			if d := differenceOfString(p, p.OuterString, sequence.OnOuterString, stands[j].str.outer, at.OuterString); d != "" {
				return fmt.Sprintf("outer string in %q, %s: %s", s.Name, at.Label, d)
			}
		}
		profile, err := at.Profile()
		if err != nil {
			return err.Error()
		}
		for c, comp := range p.Compartments {
			for _, x := range profile {
				if x.Compartment != comp.Name {
					continue
				}
				if d := x.Pressure.In(psi) - stands[j].top[c]; math.Abs(d) > nearOf(p) {
					return fmt.Sprintf("%q at its top in %q, %s: %v; the plain walker has %v psi", comp.Name, s.Name, at.Label, x.Pressure, stands[j].top[c])
				}
				break // the first is the top
			}
		}
	}
	return ""
}

// nearOf is how near two walks come, in psi: what the string feels isn't straight along a
// ramp, and the programme takes the straight line with what is off enclosed.
func nearOf(p *sequence.Plan) float64 {
	if p.String != nil {
		return 20 // of some 50 lbf
	}
	return 1e-4
}
