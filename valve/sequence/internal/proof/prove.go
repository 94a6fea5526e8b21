package proof

import (
	"context"
	"fmt"
	"math"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Outcome is what was found of a plan.
type Outcome struct {
	*Run
	Failures []Failure // limits that are passed, or not known to be kept
}

// Failure is a limit that is passed somewhere in the box, or may be.
type Failure struct {
	*judge.Margin
	// Witness is a choice with which a walk of plain numbers passes the limit; nil:
	// none was found, and it isn't decided.
	Witness []float64
	Shown   *judge.Margin // what that walk sees

	follows bool // in a step before, that walk does what isn't intended
}

// Decided tells whether every failure has its witness.
func (o *Outcome) Decided() bool {
	if o.Open != nil {
		return false
	}
	for _, f := range o.Failures {
		if f.Witness == nil {
			return false
		}
	}
	return true
}

// Prove walks a plan in all choices of its inputs, and looks for a witness of each
// limit that may be passed. Where neither that nor the limit's keeping can be shown,
// because something is only enclosed, the box is parted and each part is proved by
// itself.
func (p *Problem) Prove(ctx context.Context, o Options) (*Outcome, error) {
	run, err := p.Walk(ctx, affine.Box(len(p.Network.Symbols), p.Nominal()), o)
	if err != nil {
		return nil, err
	}
	out := &Outcome{Run: run}
	w := witnesses{p, ctx, map[string]*judge.Judge{}, 60, p.enclosed()}
	for _, m := range run.Judge.Passed() {
		f := Failure{Margin: m}
		if err = w.find(&f, m); err != nil {
			return nil, err
		}
		out.Failures = append(out.Failures, f)
	}
	out.first(p)
	if out.Decided() {
		return out, nil
	}
	parts := mostParts
	for _, f := range out.Failures {
		if f.Witness != nil {
			parts = fewParts // the plan is refuted; the rest is for the reader
		}
	}
	w.most = 6
	return out, p.part(&w, out, o, parts)
}

// first leaves out what only follows, in all choices that were found to show it, from what
// isn't intended in a step before: that is a failure of its own.
func (o *Outcome) first(p *Problem) {
	before := -1 // the first step with a failure that stands by itself
	for _, f := range o.Failures {
		if f.Witness != nil && !f.follows && f.Kind.Leaves() && (before < 0 || f.Step < before) {
			before = f.Step
		}
	}
	all := slices.Clone(o.Failures)
	o.Failures = slices.DeleteFunc(o.Failures, func(f Failure) bool {
		return f.follows && before >= 0 && before < f.Step || p.touches(&f) && slices.ContainsFunc(all, func(g Failure) bool {
			return g.Witness != nil && g.Kind == f.Kind && g.Index == f.Index && g.Step < f.Step
		})
	})
}

// touches tells whether what isn't intended comes just at its level: as it stood in a step
// before, where it may have come as well.
func (p *Problem) touches(f *Failure) bool {
	if f.Witness == nil || f.Kind != judge.Event {
		return false
	}
	return slices.ContainsFunc(p.Network.Actions[f.Index].Row, func(t well.Trigger) bool {
		return math.Abs(f.Shown.Value.C-t.Level.At(f.Witness)) <= 10*walk.Reach
	})
}

// witnesses walks choices with plain numbers, each once.
type witnesses struct {
	*Problem
	ctx   context.Context
	known map[string]*judge.Judge
	most  int  // points tried for one limit
	loose bool // what is shown must be certain
}

// find looks for a choice with which a limit is passed: the nominal one if that
// does it, which anybody understands best.
func (w *witnesses) find(f *Failure, m *judge.Margin) error {
	points := [][]float64{w.Nominal()}
	points = append(points, m.Points...)
	points = append(points, w.shared(points)...)
	for _, r := range m.Regions {
		points = append(points, r.Region.Points()...)
	}
	// What goes wrong earlier with a choice may hide it: then it is looked for after
	// that, too.
	for _, past := range [2]bool{false, true} {
		for n, e := range points {
			if n > w.most || past && n > 2 {
				break
			}
			for _, fine := range [2]int{1, Finer} {
				j, err := w.walk(e, past, fine)
				if err != nil {
					return err
				}
				shown := j.Margins[m.Key]
				if shown == nil || !shown.Fails() {
					break
				}
				if !w.loose || shown.Certain() {
					f.Witness, f.Shown = e, shown
					f.follows = past && w.left(e, m.Step)
					return nil
				}
			}
		}
	}
	return nil
}

// left tells whether a walk with a choice does what isn't intended before a step.
func (w *witnesses) left(e []float64, step int) bool {
	j, err := w.walk(e, false, 1)
	if err != nil {
		return false
	}
	for key, m := range j.Margins {
		if key.Step < step && key.Kind.Leaves() && m.Fails() {
			return true
		}
	}
	return false
}

// shared are choices in which each share of a flow between two references lies at
// an end: what lies between is only enclosed.
func (w *witnesses) shared(points [][]float64) [][]float64 {
	var all [][]float64
	for k, s := range w.Network.Symbols {
		if !w.Network.IsShare(k) || s.Half == 0 {
			continue
		}
		for _, p := range points[:min(3, len(points))] {
			for _, end := range [2]float64{-1, 1} {
				e := slices.Clone(p)
				e[k] = end
				all = append(all, e)
			}
		}
	}
	return all
}

// enclosed tells whether gas, flow or the string makes pressures of a walk of plain numbers only
// enclosed.
func (p *Problem) enclosed() bool {
	if slices.ContainsFunc(p.Network.Actions, func(a well.Action) bool { return a.Slow || a.Axial }) {
		return true // how much of a ramp's time counts; where on a ramp what isn't straight parts
	}
	if slices.ContainsFunc(p.Steps, func(s walk.Step) bool {
		return slices.ContainsFunc(s.Acts, func(a walk.Act) bool { return a.Drain >= 0 })
	}) {
		return true // what the string makes of a level
	}
	return p.Network.HasGas() || slices.ContainsFunc(p.Steps, func(s walk.Step) bool { return len(s.Pumps) > 0 || s.Flow != nil })
}

// Finer is into how many times as many pieces a leg is cut that gas feels, where what
// gas makes of it is only enclosed and too wide to say what fails.
const Finer = 8

func (w *witnesses) walk(e []float64, past bool, fine int) (*judge.Judge, error) {
	key := fmt.Sprint(past, fine, e)
	if j, ok := w.known[key]; ok {
		return j, nil
	}
	run, err := w.At(e).Walk(w.ctx, affine.Box(0, nil), Options{PastUnintended: past, Fine: fine})
	if err != nil {
		return nil, err
	}
	w.known[key] = run.Judge
	return run.Judge, nil
}
