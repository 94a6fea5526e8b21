package sequence

import (
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence/internal/judge"
)

// triggers writes every action that was armed, with its margin over all values.
func (k *checker) triggers(i int, r *StepResult) {
	for n := range k.Network.Actions {
		a := &k.Network.Actions[n]
		if len(a.With) > 0 && !a.All && slices.Contains(k.plan.Steps[i].Expect, a.Name) {
			continue // any of its conditions will do: none has a margin of its own
		}
		f := k.out.Judge.SensedBy(i, n)
		if !f.Seen {
			f = k.nominal.Judge.SensedBy(i, n)
		}
		if !f.Seen || math.IsInf(f.Left, 0) && !f.HasReach {
			continue // or it feels what is no number
		}
		t := TriggerResult{Action: a.Name, Intended: slices.Contains(k.plan.Steps[i].Expect, a.Name),
			Least: level(a.Axial, f.Least), Greatest: level(a.Axial, f.Greatest)}
		link := f.Link
		if t.Intended && f.HasReach {
			link = f.ReachLink
		}
		link = min(link, len(a.Row)-1)
		t.Threshold, t.Direction = k.threshold(n, link), valve.Rising
		if a.Row[link].Falling {
			t.Direction = valve.Falling
		}
		t.Margin = level(a.Axial, f.Left)
		if t.Intended {
			t.Margin = level(a.Axial, f.Reach)
			if !f.HasReach {
				t.Margin = level(a.Axial, -f.Left)
			}
		}
		happens, fails := k.broken(i, judge.Event, n), k.broken(i, judge.Omission, a.Of)
		switch {
		case t.Intended && !fails:
			t.Firing = MustFire
		case t.Intended && k.happened(i, n), happens:
			t.Firing = MayFire
		case f.CameOn:
			t.Firing = ComesOnOnly
		default:
			t.Firing = CannotFire
		}
		if len(a.With) > 0 {
			t.Action += fmt.Sprintf(", condition %d", n-a.Of+1)
		}
		r.Triggers = append(r.Triggers, t)
	}
}

func (k *checker) broken(step int, kind judge.Kind, index int) bool {
	m := k.out.Judge.Margins[judge.Key{Step: step, Kind: kind, Index: index}]
	return m != nil && m.Fails()
}

// happened tells whether an action is completed with the nominal values.
func (k *checker) happened(step, action int) bool {
	for _, e := range events(k.ends[step], step) {
		if e.Action >= 0 && e.Complete && k.Network.Actions[e.Action].Of == k.Network.Actions[action].Of {
			return true
		}
	}
	return false
}

// threshold is the band of a trigger.
func (k *checker) threshold(action, link int) LevelBand {
	a := &k.Network.Actions[action]
	f := a.Row[link].Level
	mid := f.C
	for _, t := range f.T {
		mid += t.C * k.Network.Symbols[t.Symbol].Nominal
	}
	return LevelBand{level(a.Axial, f.Least()), level(a.Axial, mid), level(a.Axial, f.Greatest())}
}

func (k *checker) ratings(i int, r *StepResult) {
	for n, p := range k.plan.Ratings {
		x := &k.Limits.Ratings[n]
		out := RatingResult{Name: p.Name}
		at := func(kind judge.Kind) (float64, bool) {
			m := k.margin(i, kind, n)
			if m == nil {
				return 0, false
			}
			return m.Least, true
		}
		if left, ok := at(judge.Inside); ok {
			limit := x.Burst.Least()
			out.Burst = unit.Pressure(max(limit-left, 0))
			out.Usage = max(out.Usage, float64(out.Burst)/limit)
		}
		if left, ok := at(judge.Outside); ok {
			limit := x.Collapse.Least()
			out.Collapse = unit.Pressure(max(limit-left, 0))
			out.Usage = max(out.Usage, float64(out.Collapse)/limit)
		}
		r.Ratings = append(r.Ratings, out)
	}
}

// margin is the least of a limit in a step over all values, or with the nominal
// ones where no world came so far.
func (k *checker) margin(step int, kind judge.Kind, index int) *judge.Margin {
	key := judge.Key{Step: step, Kind: kind, Index: index}
	if m := k.out.Judge.Margins[key]; m != nil {
		return m
	}
	return k.nominal.Judge.Margins[key]
}
