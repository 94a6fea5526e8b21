package proof

import (
	"context"
	"errors"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/stringload"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Problem is a plan put together.
type Problem struct {
	Network *well.Network
	Steps   []walk.Step
	Limits  *judge.Limits
	String  *stringload.Room // nil: the plan has no string
	Begin   *walk.Begin      // nil: as its things were run
	Flow    []Flow           // by step; nil: one after the other
	// Producing, where not nil, is called for every world while the zones of a step flow, or
	// where none does.
	Producing func(j *judge.Judge, w *walk.World, p walk.Place) error
}

// Nominal is the choice of all nominal values.
func (p *Problem) Nominal() []float64 {
	e := make([]float64, len(p.Network.Symbols))
	for i, s := range p.Network.Symbols {
		e[i] = s.Nominal
	}
	return e
}

// At is the problem with every input at one choice.
func (p *Problem) At(e []float64) *Problem {
	return p.narrow(func(k int) (float64, float64, bool) { return e[k], 0, true })
}

// narrow is the problem with some symbols narrowed.
func (p *Problem) narrow(part affine.Part) *Problem {
	f := *p
	f.Network = p.Network.Narrow(part)
	f.Limits = p.Limits.Narrow(part)
	f.Begin = p.Begin.Narrow(part)
	f.Steps = nil
	for _, s := range p.Steps {
		f.Steps = append(f.Steps, s.Narrow(part))
	}
	if p.String != nil {
		f.String = p.String.Narrow(f.Network, part)
	}
	return &f
}

// Flow is where a step leads.
type Flow struct {
	Next int // after what was intended
	Fail int // where a device was stuck; -1: none may be
}

// Run is a walk through all steps.
type Run struct {
	Judge *judge.Judge
	// Died is the step after which no world was left that did what was intended,
	// or -1.
	Died int
	// Before are the worlds at the beginning of each step.
	Before [][]*walk.World
	// After are those at the end of each step, whichever way they go on.
	After [][]*walk.World
	Last  []*walk.World // that came to the end of the last step
	// Open says in which step the walk was given up, and why; nil: it wasn't.
	Open     error
	OpenStep int
	Worlds   int // how many came to the end of a step, all in all
	Events   int // how many places of the walk were looked at
}

// Options of a walk.
type Options struct {
	Stops          bool // devices that move each other without end are an error
	PastUnintended bool // go on where something unintended has happened
	Budget         int
	Quiet          bool
	Deaf           bool // see judge.Judge
	Parts          bool
	Generic        bool // see walk.Walker
	// Pumps, where not nil, is shown the well while something is pumped.
	Pumps func(walk.Pumped)
	Flows func(w *walk.World, step int) // while zones flow
	Fine  int                           // into how many times as many pieces legs are cut that gas feels
	// Standstills, where not nil, is shown where each step stands still.
	Standstills func(w *walk.World, p walk.Place, number int) error
	From        int  // step to begin with
	To          int  // step to end before; zero: all
	Begins      bool // of the last of them only its beginning is wanted
	Begin       []*walk.World
}

// Walk takes the well through the steps. The error says what keeps it from being
// walked.
func (p *Problem) Walk(ctx context.Context, region *affine.Region, o Options) (*Run, error) {
	var ties []int
	var room walk.StringRoom
	if p.String != nil {
		own := *p.String
		if own.Memory == nil { // one of its own
			own.Memory = new(stringload.Memory)
		}
		q := *p
		q.String = &own
		p = &q
		ties, room = p.String.Ties(), p.String
	}
	j, all := judge.New(p.Network, p.Limits, ties)
	j.Standstills, j.Quiet, j.Deaf, j.Parts = o.Standstills, o.Quiet, o.Deaf, o.Parts
	if p.String != nil {
		j.Load = p.String.Judge
	}
	k := walk.New(p.Network, j, all, ties, room)
	k.PastUnintended, k.Budget, k.Context, k.Stops, k.Fine, k.Pumps, k.Flows, k.Generic = o.PastUnintended, o.Budget, ctx, o.Stops, o.Fine, o.Pumps, o.Flows, o.Generic
	if p.Producing != nil {
		k.Producing = func(w *walk.World, at walk.Place) error { return p.Producing(j, w, at) }
	}
	r := &Run{Judge: j, Died: -1}
	worlds := o.Begin
	if worlds == nil {
		var err error
		if worlds, err = walk.Starts(p.Network, region, p.Begin, room); err != nil {
			return r, err
		}
	}
	to := o.To
	if to == 0 {
		to = len(p.Steps)
	}
	coming := make([][]*walk.World, len(p.Steps)+1) // by step: what goes on there
	coming[o.From] = worlds
	for i := o.From; i < to; i++ {
		worlds := walk.Merge(coming[i])
		r.Before = append(r.Before, worlds)
		if o.Begins && i == to-1 {
			return r, nil
		}
		next, err := k.Step(worlds, &p.Steps[i], i)
		r.Events += k.Spent()
		if errors.Is(err, walk.ErrBudget) || errors.Is(err, walk.ErrEnclosed) {
			r.Open, r.OpenStep = err, i
			return r, nil
		}
		if err != nil {
			return r, err
		}
		failed := k.Failed
		r.After = append(r.After, append(next[:len(next):len(next)], failed...))
		r.Worlds += len(next) + len(failed)
		n := i + 1
		if p.Flow != nil {
			n = p.Flow[i].Next
			if f := p.Flow[i].Fail; f >= 0 {
				coming[f] = append(coming[f], failed...)
			}
		}
		coming[n] = append(coming[n], next...)
		left := 0
		for _, c := range coming[i+1:] {
			left += len(c)
		}
		if left == 0 {
			r.Died = i
			break
		}
	}
	r.Last = coming[to]
	return r, nil
}
