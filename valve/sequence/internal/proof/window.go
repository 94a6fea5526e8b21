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
	if err := w.between(h.Least, h.Greatest, 0); err != nil {
		return nil, err
	}
	return w.bad, nil
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
}

// mostWalks bounds the work on one window.
const mostWalks = 400

func (w *window) between(a, b float64, depth int) error {
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
	run, err := q.Walk(w.ctx, nil, Options{Quiet: true, Parts: true, From: w.held.Step, To: w.held.Step + 1, Begin: begin})
	if w.ctx != nil && w.ctx.Err() != nil {
		return w.ctx.Err()
	}
	if err != nil || run.Open != nil {
		var unstated well.Unstated
		if errors.As(err, &unstated) || b-a <= w.held.Fine || w.walks > mostWalks {
			w.bad = append(w.bad, Bad{a, b, nil})
			return nil
		}
		return w.halves(a, b, depth)
	}
	var again [][2]float64
	for _, m := range run.Judge.Passed() {
		for _, part := range m.Regions {
			r := part.Region
			if !m.Kind.Events() {
				if r = r.With(part.By.Times(-1).Shift(-walk.Reach)); r == nil {
					continue
				}
			}
			low := max(bound(r, form), a)
			high := min(-bound(r, form.Times(-1)), b)
			if high < low+1e-9*(b-a) && b > a {
				continue // an edge of what fails for another reason
			}
			if part.By.R > 0 && high-low > w.held.Fine && w.walks+len(again) < mostWalks {
				again = append(again, [2]float64{low, high})
				continue
			}
			w.bad = append(w.bad, Bad{low, high, m})
		}
	}
	for _, x := range join(again) {
		if err := w.halves(x[0], x[1], depth); err != nil {
			return err
		}
	}
	return nil
}

func bound(r *affine.Region, f affine.Form) float64 {
	b, _ := r.Least(f)
	return b
}

func (w *window) halves(a, b float64, depth int) error {
	for _, bad := range w.bad { // it fails for another reason already
		if bad.Least <= a && b <= bad.Greatest {
			return nil
		}
	}
	mid := a + (b-a)/2
	if err := w.between(a, mid, depth+1); err != nil {
		return err
	}
	return w.between(mid, b, depth+1)
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
