package proof

import (
	"context"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/stringload"
	"completion.example/valve/sequence/internal/walk"
)

// Held is a quantity of one step that is to be varied: a surface pressure, or the
// reading of a pull.
type Held struct {
	Step            int
	Set             func(s *walk.Step, to affine.Form)
	Least, Greatest float64
	Planned         float64
	Fine            float64 // what is narrower isn't parted further
	Ahead           bool    // the steps that follow have to keep their limits, too
}

// Bad is a range of a held quantity in which a limit is passed, or isn't known to be
// kept.
type Bad struct {
	Least, Greatest float64
	Margin          *judge.Margin // nil: it can't be walked
	Left            bool          // the work was at its end: it isn't decided
}

// Window finds where a held quantity fails, with all else as planned: it becomes a
// symbol, and the parts of the box in which a limit of its step is passed are seen
// from its axis. Nothing is assumed of how failing depends on it. Parts that are
// only enclosed are held against single choices of all else first, and what those
// don't show to fail is walked again in itself, until it is narrow.
func (p *Problem) Window(ctx context.Context, before []*walk.World, h Held, known *Singles) ([]Bad, error) {
	w := window{Problem: p, ctx: ctx, held: h, symbol: len(p.Network.Symbols), loose: p.enclosed(), singles: known, lines: map[string]*axis{}}
	w.all = w.wholeBox(before)
	if err := w.alongLine(p.Nominal(), span{h.Least, h.Greatest}); err != nil {
		return nil, err
	}
	work := []task{{span: span{h.Least, h.Greatest}}}
	for len(work) > 0 {
		n := next(work)
		x := work[n]
		work = slices.Delete(work, n, n+1)
		if left := w.uncovered(x.span); len(left) != 1 || left[0] != x.span {
			for _, y := range left {
				work = append(work, x.part(y))
			}
			continue
		}
		if w.spent() {
			w.leave(x.span)
			continue
		}
		if x.hope == unknown && w.walks > easy {
			if err := w.hope(&x); err != nil {
				return nil, err
			}
			if x.hope == none {
				work = append(work, x)
				continue
			}
		}
		again, err := w.look(x.span)
		if err != nil {
			return nil, err
		}
		for _, y := range again {
			mid := y.least + y.width()/2
			work = append(work, x.part(span{y.least, mid}), x.part(span{mid, y.greatest}))
		}
	}
	w.name()
	return w.bad, nil
}

// name gives a narrow range that can't be walked the limit of a range beside it.
func (w *window) name() {
	for i := range w.bad {
		x := &w.bad[i]
		if x.Margin != nil || x.Greatest-x.Least > 2*w.held.Fine {
			continue
		}
		for _, y := range w.bad {
			if y.Margin != nil && y.Least <= x.Greatest+w.held.Fine && x.Least-w.held.Fine <= y.Greatest {
				x.Margin = y.Margin
				break
			}
		}
	}
}

type window struct {
	*Problem
	ctx     context.Context
	held    Held
	symbol  int
	all     *axis
	singles *Singles
	lines   map[string]*axis // by choice of all else
	bad     []Bad
	covered []span // by the first counted of bad, apart and in order
	counted int
	doubts  [][]unsure // by look
	work    stringload.Work
	loose   bool // gas or flow is only enclosed
	walks   int
	vain    int // lines, one after the other, that have shown nothing
	events  int
}

// What bounds the work on one window: walks, places of them, and choices of all
// else that are looked along.
const (
	mostWalks  = 10000
	mostEvents = 150000
	mostLines  = 40
	mostTried  = 3  // in one range
	mostVain   = 12 // one after the other that show nothing
)

// spent tells whether the work on a window is at its end. Where gas, pumps or flow are
// only enclosed, each walk costs as much as ten of others, and what is left unsure
// doesn't become sure by parting it further.
func (w *window) spent() bool {
	walks, events := mostWalks, mostEvents
	if w.loose {
		walks, events = 200, mostEvents/25
	}
	return w.walks >= walks || w.events >= events
}

// budget is how many places one walk may take: where there are more orders than
// that, the range is parted first, and the sooner the wider it is.
func (h *Held) budget(width float64) int {
	switch whole := h.Greatest - h.Least; {
	case width > whole/5:
		return 200
	case width > whole/40:
		return 300
	}
	return 600
}

// look walks a range in all choices. What comes back is to be parted and looked at
// again.
func (w *window) look(x span) ([]span, error) {
	certain, unsure, err := w.walk(w.all, x)
	if err != nil {
		return nil, err
	}
	w.bad = append(w.bad, certain...)
	tried := 0
	for _, u := range unsure {
		for _, e := range u.choices(w.symbol) {
			if tried == mostTried || w.vain == mostVain || len(w.uncovered(u.span)) == 0 {
				break
			}
			tried++
			known := len(w.bad)
			if err := w.alongLine(e, u.span); err != nil {
				return nil, err
			}
			if len(w.bad) == known {
				w.vain++
			} else {
				w.vain = 0
			}
		}
	}
	w.doubts = append(w.doubts, unsure)
	var again []span
	for _, u := range unsure {
		for _, y := range w.uncovered(u.span) {
			if y.width() <= w.held.Fine {
				w.bad = append(w.bad, Bad{Least: y.least, Greatest: y.greatest, Margin: u.margin})
				continue
			}
			again = append(again, y)
		}
	}
	return join(again), nil
}

// leave counts a range that isn't looked at further as failing by the limits that were
// in doubt when it was seen last; where there are none it couldn't be walked.
func (w *window) leave(x span) {
	for _, seen := range slices.Backward(w.doubts) {
		known := false
		for _, u := range seen {
			if u.margin != nil && u.least < x.greatest && x.least < u.greatest {
				w.bad = append(w.bad, Bad{x.least, x.greatest, u.margin, true})
				known = true
			}
		}
		if known {
			return
		}
	}
	w.bad = append(w.bad, Bad{x.least, x.greatest, nil, true})
}

// uncovered is what is left of a range that doesn't fail for another reason already.
func (w *window) uncovered(x span) []span {
	for ; w.counted < len(w.bad); w.counted++ {
		b := w.bad[w.counted]
		w.covered = cover(w.covered, span{b.Least, b.Greatest})
	}
	var left []span
	for _, c := range w.covered[first(w.covered, x.least):] {
		if c.least >= x.greatest {
			break
		}
		if x.least < c.least {
			left = append(left, span{x.least, c.least})
		}
		x.least = max(x.least, c.greatest)
	}
	if x.least < x.greatest {
		left = append(left, x)
	}
	return left
}
