package proof

import (
	"fmt"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/stringload"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// axis is where a held quantity is walked: with all else in its whole box, or at one
// choice.
type axis struct {
	*Problem
	before []*walk.World // of the step
	choice []float64     // of all else; nil: the whole box
	memory stringload.Memory
}

func (w *window) axis(p *Problem, choice []float64) *axis {
	return &axis{Problem: p, choice: choice, memory: stringload.Memory{Work: &w.work}}
}

// wholeBox is the axis with all else in its box.
func (w *window) wholeBox(before []*walk.World) *axis {
	c := w.axis(w.Problem, nil)
	for _, x := range before {
		y := *x
		y.Region = x.Region.Extend(0, -1, 1)
		c.before = append(c.before, &y)
	}
	return c
}

// alongLine keeps where a range fails with one choice of all else: that is known for
// certain.
func (w *window) alongLine(e []float64, x span) error {
	if len(w.Network.Symbols) == 0 {
		return nil // there is no other choice
	}
	key := fmt.Sprint(e)
	c, known := w.lines[key]
	if !known {
		if len(w.lines) >= mostLines {
			return nil
		}
		var err error
		if c, err = w.line(key, e); err != nil {
			return err
		}
		w.lines[key] = c
	}
	if c == nil {
		return nil
	}
	certain, _, err := w.walk(c, x)
	w.bad = append(w.bad, certain...)
	return err
}

// line is the axis at one choice of all else; nil: the step isn't come to with it.
func (w *window) line(key string, e []float64) (*axis, error) {
	p, run, err := w.singles.walk(w.ctx, w.Problem, key, e, w.held.Step)
	if w.ctx != nil && w.ctx.Err() != nil {
		return nil, w.ctx.Err()
	}
	if err != nil || len(run.Before) <= w.held.Step || len(run.Before[w.held.Step]) == 0 {
		return nil, nil
	}
	c := w.axis(p, e)
	for _, x := range run.Before[w.held.Step] {
		y := *x
		y.Region = affine.Box(w.symbol+1, append(slices.Clone(e), 0))
		c.before = append(c.before, &y)
	}
	return c, nil
}

// walk takes the step, and those that follow where they are asked for, with the held
// quantity anywhere in a range.
func (c *axis) walk(w *window, x span, form affine.Form) (*Run, error) {
	q := *c.Problem
	network := *c.Network
	network.Symbols = append(slices.Clone(w.Network.Symbols), well.Symbol{Middle: form.C, Half: x.width() / 2})
	q.Network = &network
	step := w.Steps[w.held.Step]
	w.held.Set(&step, form)
	if c.choice != nil {
		step = step.Narrow(func(k int) (float64, float64, bool) {
			if k == w.symbol {
				return 0, 0, false
			}
			return c.choice[k], 0, true
		})
	}
	q.Steps = slices.Clone(c.Steps)
	q.Steps[w.held.Step] = step
	if q.String != nil {
		room := *q.String
		room.Network, room.Memory = q.Network, &c.memory
		q.String = &room
	}
	var begin []*walk.World
	for _, y := range c.before {
		z := y.Clone()
		z.State.Network = q.Network
		begin = append(begin, z)
	}
	to := w.held.Step + 1
	if w.held.Ahead {
		to = len(q.Steps)
	}
	return q.Walk(w.ctx, nil, Options{Budget: w.held.budget(x.width()), Quiet: true, Parts: true, Generic: true, From: w.held.Step, To: to, Begin: begin})
}
