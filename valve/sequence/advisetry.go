package sequence

import (
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
)

// tried is what a change of a certain size gives.
type tried struct {
	advice  *Advice      // nil: the step alone was walked
	windows [][]Interval // by window that was empty; none: it still is
	shuts   [][]shutting // what shuts each with the nominal values, where it still is
}

// smallest finds the smallest change of one kind that opens each window.
func (o *opener) smallest(c *candidate) ([]*Advice, error) {
	known := map[int]*tried{}
	opens := func(n, window int) (bool, error) {
		t, err := o.tried(c, n, known)
		return t != nil && len(t.windows[window]) > 0, err
	}
	found := make([]*Advice, len(o.empty))
	if idle, err := o.idle(c, known); idle || err != nil {
		return found, err
	}
	for w := range o.empty {
		last := 0
		for _, n := range c.sizes {
			ok, err := opens(n, w)
			if err != nil {
				return nil, err
			}
			if !ok {
				last = n
				continue
			}
			for c.part && n-last > 1 {
				mid := (n + last) / 2
				if ok, err = opens(mid, w); err != nil {
					return nil, err
				}
				if ok {
					n = mid
				} else {
					last = mid
				}
			}
			if found[w], err = o.made(func(p *Plan) (*Advice, error) { return c.change(p, n) }, w); err != nil {
				return nil, err
			}
			c.size[w] = c.weigh(n)
			break
		}
	}
	return found, nil
}

// asPlanned tells what shuts the windows of the step with the nominal values.
func (o *opener) asPlanned() error {
	t, err := o.walked(o.base.Clone(), &Advice{}, true)
	if t != nil {
		o.shuts = t.shuts
	}
	return err
}

// made is the advice of a change that opens a window, as the whole plan with the change
// written into it has it; nil: it doesn't open it there.
func (o *opener) made(change func(p *Plan) (*Advice, error), window int) (*Advice, error) {
	p := o.base.Clone()
	a, err := change(p)
	if err != nil {
		return nil, nil
	}
	t, err := o.walked(p, a, false)
	if err != nil || t == nil || len(t.windows[window]) == 0 {
		return nil, err
	}
	a.Window = t.windows[window]
	a.Value = nearest(a.Window, o.empty[window].Planned)
	return a, nil
}

// nearest is the value in some intervals that is nearest to another.
func nearest(all []Interval, to Level) Level {
	best := all[0].Least
	for _, x := range all {
		at := Level{to.axial, min(max(to.si, x.Least.si), x.Greatest.si)}
		if math.Abs(at.si-to.si) < math.Abs(best.si-to.si) {
			best = at
		}
	}
	return best
}

// tried is try, once for each size.
func (o *opener) tried(c *candidate, n int, known map[int]*tried) (*tried, error) {
	if t, ok := known[n]; ok {
		return t, nil
	}
	t, err := o.try(c, n)
	if err == nil {
		known[n] = t
	}
	return t, err
}

// try tells what a change of a certain size gives; nil: it can't be made, or something
// fails on the way to the step that hasn't failed before.
func (o *opener) try(c *candidate, n int) (*tried, error) {
	if err := o.ctx.Err(); err != nil {
		return nil, err
	}
	p := o.base.Clone()
	a, err := c.change(p, n)
	if err != nil {
		return nil, nil
	}
	return o.walked(p, a, true)
}

// walked walks a changed plan up to the step: first with its nominal values, since a
// window that isn't open with those isn't open at all. Roughly, edges are known to a
// tenth of the width that counts.
func (o *opener) walked(p *Plan, a *Advice, roughly bool) (*tried, error) {
	at := o.step + a.Places
	if p.Steps[0].flow == nil {
		p.Steps = p.Steps[:at+1]
	}
	c, err := p.compiledOf(o.pipes)
	if err != nil {
		return nil, nil
	}
	for _, nominal := range []bool{true, false} {
		k := &checker{compiled: c, ctx: o.ctx, options: Options{Budget: o.options.Budget, Workers: 1}, programme: &Programme{}}
		if nominal {
			k.compiled = c.atNominal()
		}
		t, err := o.looked(k, a, at, roughly, nominal)
		if t == nil || err != nil || !nominal || !slices.ContainsFunc(t.windows, func(x []Interval) bool { return len(x) > 0 }) {
			return t, err
		}
	}
	return nil, nil
}

// looked looks for the windows of the step in a changed plan. With the nominal values it
// is enough to know whether there is any: half of the width that counts is parted no
// further, and what is open counts however wide it is seen.
func (o *opener) looked(k *checker, a *Advice, at int, roughly, nominal bool) (*tried, error) {
	run, err := k.Walk(o.ctx, affine.Box(len(k.Network.Symbols), k.Nominal()), proof.Options{Budget: o.options.Budget, To: at + 1})
	if o.ctx.Err() != nil {
		return nil, o.ctx.Err()
	}
	if err != nil || len(run.Before) <= at || len(run.Before[at]) == 0 {
		return nil, nil
	}
	for name := range k.failing(run) {
		if !o.known[name] && !strings.HasPrefix(name, o.base.Steps[o.step].Name+": ") {
			return nil, nil
		}
	}
	k.out = &proof.Outcome{Run: run, Failures: []proof.Failure{{}}} // so that no window is taken as open for what is planned
	t := &tried{a, make([][]Interval, len(o.empty)), make([][]shutting, len(o.empty))}
	var singles proof.Singles
	all := k.held(at)
	for n, was := range o.empty {
		i := slices.IndexFunc(all, func(w Window) bool { return w.Ramp == was.Ramp && w.covers(was.Compartment) })
		if i < 0 {
			continue
		}
		w := all[i]
		wide := adviceWidth(w.Planned.Axial())
		switch {
		case nominal:
			w.held.Fine = wide / 2
		case roughly:
			w.held.Fine = wide / 10
		}
		if err := k.window(&w, &singles); err != nil {
			return nil, err
		}
		if nominal && !w.Open() {
			if err := k.asHeld(&w); err != nil {
				return nil, err
			}
		}
		if w.wideEnough() || nominal && w.Open() {
			t.windows[n] = w.Intervals
		}
		if nominal {
			t.shuts[n] = w.shut
		}
	}
	return t, nil
}

// asHeld puts the planned value into a window that has nothing else in it, where the step
// is proved with it: what is narrower than the search parts.
func (k *checker) asHeld(w *Window) error {
	h := w.held
	h.Least, h.Greatest = math.Max(h.Planned-h.Fine/1000, 0), h.Planned+h.Fine/1000
	bad, err := k.Window(k.ctx, k.out.Before[h.Step], h, &proof.Singles{})
	if err == nil && len(bad) == 0 {
		w.Intervals, w.Inside = []Interval{{Least: w.Planned, Greatest: w.Planned}}, true
	}
	return err
}

// adviceWidth is how wide a window must be to count as open in an advice, unless the
// planned value lies in it: 50 psi, or 5,000 lbf. What is narrower nobody can hold.
func adviceWidth(axial bool) float64 {
	if axial {
		return float64(5000 * unit.PoundForce)
	}
	return float64(50 * unit.PSI)
}

func (w *Window) covers(compartment string) bool {
	return w.Compartment == compartment || slices.Contains(w.Together, compartment)
}

// failing are the limits that are passed, by step.
func (k *checker) failing(run *proof.Run) map[string]bool {
	all := map[string]bool{}
	for _, m := range run.Judge.Passed() {
		all[k.plan.Steps[m.Step].Name+": "+k.edge(m)] = true
	}
	return all
}

// whole walks the whole plan with an advice taken and its value held.
func (o *opener) whole(w *Window, a *Advice) error {
	p := o.base.Clone()
	if p.take(a.Edits) != nil {
		return nil
	}
	if _, err := p.hold(o.base.Steps[o.step].Name, w, a.Value); err != nil {
		return nil
	}
	r, err := Check(o.ctx, p, Options{Only: FindingsOnly, Budget: o.options.Budget, Workers: o.options.Workers})
	switch {
	case o.ctx.Err() != nil:
		return o.ctx.Err()
	case err != nil:
		return nil
	}
	a.ends(r)
	return nil
}

// ends tells what the whole plan comes to.
func (a *Advice) ends(r *Programme) {
	a.Proves, a.Fails = r.OK(), ""
	if !a.Proves && len(r.Findings) > 0 {
		a.Fails = r.Findings[0].Step
	}
}
