package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/stringload"
)

// PlaceForces are the three forces of the string at a place that holds it or could,
// in a step: the worst either way over all choices of values, and what it ends with.
type PlaceForces struct {
	Place     string      `json:"place"` // the device
	Depth     unit.Length `json:"depth"`
	Load      ForceRange  `json:"load"`      // that it carries, up positive; nothing while it doesn't hold
	Effective ForceRange  `json:"effective"` // just above
	Wall      ForceRange  `json:"wall"`      // just above
}

// ForceRange is a force over a step. Least and Greatest are over all choices of
// values, enclosed between evaluated loads at every moment and along every stretch
// between two, with what isn't straight added: as a rule wider than the truth, not
// narrower, but not proved; see the package's doc. Final is where the step stands still
// at its end, with nominal values.
type ForceRange struct {
	Least      unit.Force `json:"least"`
	LeastAt    string     `json:"least_at"`
	Greatest   unit.Force `json:"greatest"`
	GreatestAt string     `json:"greatest_at"`
	Final      unit.Force `json:"final"`
}

// forces tells the worst and the final forces of a step.
func (k *checker) forces(i int, r *StepResult) {
	if k.String == nil || len(r.Points) == 0 {
		return
	}
	last := r.Points[len(r.Points)-1]
	k.forcesOf(i, r, k.plan.own(OnString), last.String)
	if last.OuterString != nil {
		k.forcesOf(i, r, k.plan.own(OnOuterString), last.OuterString)
	}
}

func (k *checker) forcesOf(i int, r *StepResult, s ownString, last *StringAt) {
	for n, p := range k.plan.places(s.on()) {
		out := PlaceForces{Place: p.Name, Depth: p.Depth}
		var final HoldAt
		for _, h := range last.Holds {
			if h.Depth == p.Depth {
				final = h
			}
		}
		seen := false
		for _, x := range []struct {
			kind  judge.ForceKind
			into  *ForceRange
			final unit.Force
		}{{judge.Carried, &out.Load, final.Load}, {judge.Effective, &out.Effective, final.Effective}, {judge.Wall, &out.Wall, final.Wall}} {
			e := k.out.Judge.Forces[judge.ForceKey{Step: i, Kind: x.kind, Place: s.of*stringload.Second + n}]
			if e == nil {
				continue
			}
			seen = true
			*x.into = ForceRange{Least: small(e.Least), LeastAt: k.moment(e.LeastAt), Greatest: small(e.Greatest), GreatestAt: k.moment(e.GreatestAt), Final: x.final}
		}
		if seen {
			r.Forces = append(r.Forces, out)
		}
	}
}

// small takes the last bits off a force that is zero but for rounding.
func small(f float64) unit.Force {
	if f > -1e-6 && f < 1e-6 {
		return 0
	}
	return unit.Force(f)
}

func (k *checker) moment(m judge.Moment) string {
	return k.place(&judge.Margin{Label: m.Label, Action: m.Action, After: m.After})
}
