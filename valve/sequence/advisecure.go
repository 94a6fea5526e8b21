package sequence

import (
	"fmt"
	"slices"

	"completion.example/tubular/catalogue"
)

// mostCures is how many of what mends a step are tried on the windows behind it.
const mostCures = 3

// cure is what mends a step: a change that opens its windows with a value in them, or
// another value where they are open.
type cure struct {
	advice Advice // with the value among its edits
	step   int
	result *Programme // of the whole plan with it, once it is asked for
}

// cures are what mends a step.
func (k *checker) cures(i int) []*cure {
	var all []*cure
	name := k.plan.Steps[i].Name
	add := func(w *Window, a Advice, to Level) {
		p := k.plan.Clone()
		if p.take(a.Edits) != nil {
			return
		}
		if to.si != w.Planned.si {
			held, err := p.hold(name, w, to)
			if err != nil {
				return
			}
			a.Edits = append(slices.Clone(a.Edits), held...)
			if a.Does != "" {
				a.Does += ", and "
			}
			a.Does += inPlace(w, to)
		}
		a.Step = i + 1
		if len(all) < mostCures && !slices.ContainsFunc(all, func(c *cure) bool { return slices.Equal(c.advice.Edits, a.Edits) }) {
			all = append(all, &cure{advice: a, step: i})
		}
	}
	for n := range k.programme.Steps[i].Windows {
		w := &k.programme.Steps[i].Windows[n]
		for _, a := range w.Opens {
			if a.Step == 0 {
				add(w, a, a.Value)
			}
		}
		if w.Open() && !w.Inside {
			add(w, Advice{Kind: adviceOf(w)}, handy(w))
		}
	}
	return all
}

// cured gives the windows of a step what mends an earlier one and opens them, too; left
// are those that it doesn't open.
func (k *checker) cured(i int, empty []*Window, cures []*cure) (left []*Window, err error) {
	name := k.plan.Steps[i].Name
	for _, w := range empty {
		for _, c := range cures {
			a, err := k.opens(c, name, w)
			if err != nil {
				return nil, err
			}
			if a != nil {
				w.Advised, w.Opens = true, append(w.Opens, *a)
			}
		}
		if len(w.Opens) == 0 {
			left = append(left, w)
		}
	}
	return left, nil
}

// opens is what mends an earlier step as an advice for a window behind it; nil: it
// doesn't open it.
func (k *checker) opens(c *cure, step string, was *Window) (*Advice, error) {
	pipes, err := catalogue.Standard()
	if err != nil {
		return nil, err
	}
	if c.result == nil {
		c.result = &Programme{}
		p, err := k.writable(pipes)
		if err != nil {
			return nil, err
		}
		if err := p.take(c.advice.Edits); err != nil {
			return nil, fmt.Errorf("sequence: what mends step %d: %w", c.step+1, err)
		}
		r, err := Check(k.ctx, p, Options{Only: NoAdvice, Budget: k.options.Budget, Workers: k.options.Workers})
		if k.ctx.Err() != nil {
			return nil, k.ctx.Err()
		}
		if err == nil {
			c.result = r
		}
	}
	for i := range c.result.Steps {
		s := &c.result.Steps[i]
		if s.Name != step {
			continue
		}
		for n := range s.Windows {
			w := &s.Windows[n]
			if w.Ramp != was.Ramp || !w.covers(was.Compartment) || !w.wideEnough() {
				continue
			}
			a := c.advice
			a.Window, a.Value = w.Intervals, nearest(w.Intervals, was.Planned)
			a.ends(c.result)
			return &a, nil
		}
	}
	return nil, nil
}

// wideEnough tells whether a window counts as open in an advice.
func (w *Window) wideEnough() bool {
	wide := adviceWidth(w.Planned.Axial())
	return w.Open() && (w.Inside || slices.ContainsFunc(w.Intervals, func(x Interval) bool { return x.Greatest.si-x.Least.si >= wide }))
}
