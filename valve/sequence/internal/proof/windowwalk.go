package proof

import (
	"errors"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// unsure is a range in which a limit may be passed.
type unsure struct {
	span
	margin *judge.Margin // nil: it can't be walked
	part   judge.Part
}

// choices are some of all else with which the limit may be passed.
func (u *unsure) choices(symbol int) [][]float64 {
	if u.margin == nil {
		return nil
	}
	var all [][]float64
	if _, at := u.part.Region.Least(u.part.By); at != nil && len(u.part.By.T) > 0 {
		all = append(all, at[:symbol])
	}
	for _, at := range u.part.Region.Points() {
		if len(all) == 2 {
			break
		}
		all = append(all, at[:symbol])
	}
	return all
}

// walk walks a range once on an axis.
func (w *window) walk(c *axis, x span) (certain []Bad, again []unsure, err error) {
	w.walks++
	form := affine.Form{C: x.least + x.width()/2, T: []affine.Term{{Symbol: w.symbol, C: x.width() / 2}}}
	run, err := c.walk(w, x, form)
	w.events += run.Events
	if w.ctx != nil && w.ctx.Err() != nil {
		return nil, nil, w.ctx.Err()
	}
	if err != nil || run.Open != nil {
		var unstated well.Unstated
		if errors.As(err, &unstated) {
			return []Bad{{Least: x.least, Greatest: x.greatest}}, nil, nil
		}
		return nil, []unsure{{span: x}}, nil
	}
	for _, m := range run.Judge.Passed() {
		for _, part := range m.Regions {
			all, sure := w.take(x, form, m, part)
			if sure != nil {
				certain = append(certain, Bad{Least: sure.least, Greatest: sure.greatest, Margin: m})
			}
			for _, y := range all {
				again = append(again, unsure{y, m, part})
			}
		}
	}
	return certain, again, nil
}

// take is where a part of the box lies on the axis of the held quantity: where for
// certain, and where it may.
func (w *window) take(x span, form affine.Form, m *judge.Margin, part judge.Part) (again []span, sure *span) {
	low, high, ok := w.bounds(part.Region, part.By, form, m, 0)
	if !ok {
		return nil, nil
	}
	tight := part.Region.Tight()
	if grain := 1e-9 * x.width(); high < low+grain {
		// Only an edge of what fails for another reason, unless nothing lies beyond it.
		if tight != nil && !tight.Wide() && low <= w.held.Least+grain {
			return nil, &span{w.held.Least, w.held.Least}
		}
		return nil, nil
	}
	low, high = max(low, x.least), min(high, x.greatest)
	if tight != nil && !tight.Wide() {
		if a, b, ok := w.bounds(tight, part.By, form, m, 2*part.By.R); ok && b >= a {
			sure = &span{max(a, x.least), min(b, x.greatest)}
		}
	}
	if sure == nil || sure.greatest <= sure.least {
		return []span{{low, high}}, nil
	}
	for _, edge := range [2]span{{low, sure.least}, {sure.greatest, high}} {
		if edge.width() > 0 {
			again = append(again, edge)
		}
	}
	return again, sure
}

// bounds are the least and the greatest of the held quantity in the part of a region
// in which a margin, with more taken off, is below nought.
func (w *window) bounds(r *affine.Region, by, form affine.Form, m *judge.Margin, more float64) (low, high float64, ok bool) {
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
