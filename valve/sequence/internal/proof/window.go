package proof

import (
	"context"
	"errors"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Held is a quantity of one step that is to be varied: a surface pressure, or the
// reading of a pull.
type Held struct {
	Step            int
	Set             func(s *walk.Step, to affine.Form)
	Least, Greatest float64
	Planned         float64
	Fine            float64 // what is narrower isn't parted further
	Rest            bool    // the steps that follow have to keep their limits, too
}

// Bad is a range of a held quantity in which a limit is passed, or isn't known to be
// kept.
type Bad struct {
	Least, Greatest float64
	Margin          *judge.Margin // nil: it can't be walked
}

// Window finds where a held quantity fails, with all else as planned: it becomes a
// symbol, and the parts of the box in which a limit of its step is passed are seen
// from its axis. Nothing is assumed of how failing depends on it. Parts that are
// only enclosed are walked again in themselves, until they are narrow.
func (p *Problem) Window(ctx context.Context, before []*walk.World, h Held) ([]Bad, error) {
	w := window{Problem: p, ctx: ctx, held: h, before: before}
	w.network = *p.Network
	w.symbol = len(p.Network.Symbols)
	w.network.Symbols = append(slices.Clone(p.Network.Symbols), well.Symbol{})
	// The widest first: what is left when the work is at its end is narrow.
	work := [][2]float64{{h.Least, h.Greatest}}
	for len(work) > 0 {
		n := 0
		for i, x := range work {
			if x[1]-x[0] > work[n][1]-work[n][0] {
				n = i
			}
		}
		x := work[n]
		work = slices.Delete(work, n, n+1)
		if w.covered(x) {
			continue
		}
		if w.walks >= mostWalks || w.events >= mostEvents {
			w.bad = append(w.bad, Bad{x[0], x[1], nil})
			continue
		}
		again, err := w.between(x[0], x[1])
		if err != nil {
			return nil, err
		}
		for _, y := range join(again) {
			mid := y[0] + (y[1]-y[0])/2
			work = append(work, [2]float64{y[0], mid}, [2]float64{mid, y[1]})
		}
	}
	return w.bad, nil
}

// covered tells whether a range fails for another reason already.
func (w *window) covered(x [2]float64) bool {
	for _, bad := range w.bad {
		if bad.Least <= x[0] && x[1] <= bad.Greatest {
			return true
		}
	}
	return false
}

type window struct {
	*Problem
	ctx     context.Context
	held    Held
	before  []*walk.World
	network well.Network
	symbol  int
	bad     []Bad
	walks   int
	events  int
}

// What bounds the work on one window: walks, and places of them.
const (
	mostWalks  = 3000
	mostEvents = 20000
)

// budget is how many places one of them may take: where there are more orders than
// that, the range is parted first, and the sooner the wider it is.
func (h *Held) budget(width float64) int {
	switch whole := h.Greatest - h.Least; {
	case width > whole/5:
		return 100
	case width > whole/40:
		return 250
	}
	return 600
}

// between walks a range once. What comes back is to be looked at again.
func (w *window) between(a, b float64) (again [][2]float64, err error) {
	middle, half := a+(b-a)/2, (b-a)/2
	w.walks++
	form := affine.Form{C: middle, T: []affine.Term{{Symbol: w.symbol, C: half}}}
	if half == 0 {
		form.T = nil
	}
	q := *w.Problem
	q.Network = &w.network
	q.Steps = slices.Clone(w.Steps)
	step := q.Steps[w.held.Step]
	w.held.Set(&step, form)
	q.Steps[w.held.Step] = step
	if q.String != nil {
		room := *q.String
		room.Network = q.Network
		q.String = &room
	}
	q.Network.Symbols[w.symbol] = well.Symbol{Middle: middle, Half: half}
	var begin []*walk.World
	for _, x := range w.before {
		y := x.Clone()
		y.State.Network = q.Network
		planned := 0.0
		if half > 0 {
			planned = min(max((w.held.Planned-middle)/half, -1), 1)
		}
		y.Region = x.Region.Extend(planned, -1, 1)
		begin = append(begin, y)
	}
	to := w.held.Step + 1
	if w.held.Rest {
		to = len(q.Steps)
	}
	run, err := q.Walk(w.ctx, nil, Options{Budget: w.held.budget(b - a), Quiet: true, Parts: true, From: w.held.Step, To: to, Begin: begin})
	w.events += run.Events
	if w.ctx != nil && w.ctx.Err() != nil {
		return nil, w.ctx.Err()
	}
	if err != nil || run.Open != nil {
		var unstated well.Unstated
		if errors.As(err, &unstated) || b-a <= w.held.Fine {
			w.bad = append(w.bad, Bad{a, b, nil})
			return nil, nil
		}
		return [][2]float64{{a, b}}, nil
	}
	for _, m := range run.Judge.Passed() {
		for _, part := range m.Regions {
			w.take(&again, a, b, form, m, part)
		}
	}
	return again, nil
}

// take keeps where a part of the box lies on the axis of the held quantity: for
// certain, and, to be looked at again, where it may.
func (w *window) take(again *[][2]float64, a, b float64, form affine.Form, m *judge.Margin, part judge.Part) {
	low, high, ok := w.span(part.Region, part.By, form, m, 0)
	if !ok || high < low+1e-9*(b-a) && b > a {
		return // or only an edge of what fails for another reason
	}
	low, high = max(low, a), min(high, b)
	if part.By.R == 0 && !part.Region.Loose() && !part.Region.Wide() || high-low <= w.held.Fine {
		w.bad = append(w.bad, Bad{low, high, m})
		return
	}
	l, h := high, high // nothing is certain
	if tight := part.Region.Tight(); tight != nil && !tight.Wide() {
		if x, y, ok := w.span(tight, part.By, form, m, 2*part.By.R); ok && y >= x {
			l, h = max(x, a), min(y, b)
			w.bad = append(w.bad, Bad{l, h, m})
		}
	}
	for _, edge := range [2][2]float64{{low, l}, {h, high}} {
		switch {
		case edge[1]-edge[0] <= 0:
		case edge[1]-edge[0] <= w.held.Fine:
			w.bad = append(w.bad, Bad{edge[0], edge[1], m})
		default:
			*again = append(*again, edge)
		}
	}
}

// span is the least and the greatest of the held quantity in the part of a region
// in which a margin, with more taken off, is below nought.
func (w *window) span(r *affine.Region, by, form affine.Form, m *judge.Margin, more float64) (low, high float64, ok bool) {
	if !m.Kind.Events() && m.Kind != judge.Unwalkable {
		if r = r.With(by.Shift(more).Times(-1).Shift(-walk.Reach)); r == nil {
			return 0, 0, false
		}
	}
	return bound(r, form), -bound(r, form.Times(-1)), true
}

func bound(r *affine.Region, f affine.Form) float64 {
	b, _ := r.Least(f)
	return b
}

func join(ranges [][2]float64) [][2]float64 {
	slices.SortFunc(ranges, func(a, b [2]float64) int {
		if a[0] < b[0] {
			return -1
		}
		return 1
	})
	var all [][2]float64
	for _, r := range ranges {
		if n := len(all); n > 0 && r[0] <= all[n-1][1] {
			all[n-1][1] = max(all[n-1][1], r[1])
			continue
		}
		all = append(all, r)
	}
	return all
}
