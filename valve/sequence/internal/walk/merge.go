package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// equal is how near two pressures are one: rounding, in Pa.
const equal = 1e-4

// Merge makes worlds one that stand alike.
func Merge(worlds []*World) []*World { return merge(worlds) }

// merge makes worlds one that stand alike, with the conditions that they share:
// whatever is then shown of the one holds for both.
func merge(worlds []*World) []*World {
	if len(worlds) < 2 {
		return worlds
	}
	var kept []*World
	bySign := map[uint64][]*World{}
next:
	for _, w := range worlds {
		sign := w.signature()
		for _, k := range bySign[sign] {
			if !alike(k, w) {
				continue
			}
			k.join(w)
			continue next
		}
		bySign[sign] = append(bySign[sign], w)
		kept = append(kept, w)
	}
	return kept
}

// join makes a world stand for another, too, that stands alike.
func (k *World) join(w *World) {
	for i := range k.Rows {
		k.Rows[i] = both(k, w, i)
	}
	for i := range k.Live {
		k.Dry[i] = dry(k, w, i)
		k.Live[i] = k.Live[i] && w.Live[i]
	}
	k.Region = k.Region.Common(w.Region)
}

// standsAlike tells whether two worlds stand alike but for how often things have
// happened.
func standsAlike(a, b *World) bool {
	s, t := a.State, b.State
	if !slices.Equal(s.Open, t.Open) || !slices.Equal(s.Armed, t.Armed) {
		return false
	}
	if !s.SameGas(t, equal) {
		return false
	}
	for i := range s.Top {
		if !s.Top[i].Same(t.Top[i], equal) || s.Low(i) != t.Low(i) {
			return false
		}
	}
	for i := range a.Rows {
		if !slices.EqualFunc(a.Rows[i], b.Rows[i], Progress.is) {
			return false
		}
	}
	return true
}

// signature is equal for worlds that may be alike.
func (w *World) signature() uint64 {
	h := uint64(14695981039346656037)
	bit := func(b bool) {
		if b {
			h ^= 1
		}
		h *= 1099511628211
	}
	for _, b := range w.State.Open {
		bit(b)
	}
	for _, b := range w.State.Armed {
		bit(b)
	}
	for _, b := range w.State.Surface {
		bit(b)
	}
	for _, n := range w.Came {
		h = (h ^ uint64(n)) * 1099511628211
	}
	for _, n := range w.Times {
		h = (h ^ uint64(n)) * 1099511628211
	}
	return h
}

func alike(a, b *World) bool {
	s, t := a.State, b.State
	if !slices.Equal(s.Open, t.Open) || !slices.Equal(s.Armed, t.Armed) || !slices.Equal(s.Surface, t.Surface) ||
		!slices.Equal(a.Stuck, b.Stuck) || !slices.Equal(a.just, b.just) || !slices.Equal(a.Came, b.Came) || !slices.Equal(a.Times, b.Times) || s.Temperature != t.Temperature {
		return false
	}
	if !slices.EqualFunc(a.Seen, b.Seen, func(x, y Seen) bool { return x.Index == y.Index && x.F.Same(y.F, equal) }) {
		return false
	}
	if s.String != nil && s.String != t.String && !s.String.Same(t.String) {
		return false
	}
	if !s.SameGas(t, equal) || !sameTimes(a, b) {
		return false
	}
	for i := range s.Top {
		if !s.Top[i].Same(t.Top[i], equal) || !s.Applied[i].Same(t.Applied[i], equal) {
			return false
		}
		if s.Low(i) != t.Low(i) || !sameLayers(s.Layers(i), t.Layers(i)) {
			return false
		}
	}
	return true
}

func sameLayers(a, b []well.Layer) bool { return slices.Equal(a, b) }

// both are the alternatives of an action's progress in either of two worlds, each
// with the conditions that it has in both.
func both(a, b *World, i int) []Progress {
	if len(a.Rows[i]) == 1 && len(b.Rows[i]) == 1 && a.Rows[i][0].is(b.Rows[i][0]) {
		p := a.Rows[i][0]
		p.Wide = len(p.Rows) > 0 || len(b.Rows[i][0].Rows) > 0
		p.Rows = nil
		return []Progress{p}
	}
	var all []Progress
	add := func(x, y *World) {
		for _, p := range x.Rows[i] {
			if slices.ContainsFunc(all, p.is) {
				continue
			}
			region := x.In(p)
			if region == nil {
				continue
			}
			for _, q := range y.Rows[i] {
				if !p.is(q) {
					continue
				}
				if other := y.In(q); other != nil {
					region = region.Common(other)
				}
			}
			p.under(region)
			all = append(all, p)
		}
	}
	add(a, b)
	add(b, a)
	return all
}

// dry are the conditions under which a formation hasn't flowed in either of two
// worlds.
func dry(a, b *World, i int) []affine.Form {
	switch {
	case a.Live[i]:
		return b.Dry[i]
	case b.Live[i]:
		return a.Dry[i]
	}
	var common []affine.Form
	for _, x := range a.Dry[i] {
		if slices.ContainsFunc(b.Dry[i], func(y affine.Form) bool { return x.Same(y, 0) }) {
			common = append(common, x)
		}
	}
	return common
}

// join adds an alternative to others of a world: the same progress under either of
// two conditions is one under what they have in common.
func join(r *affine.Region, all []Progress, p Progress) []Progress {
	for i, q := range all {
		if !q.is(p) {
			continue
		}
		x, y := q.in(r), p.in(r)
		if x == nil || y == nil {
			if x == nil {
				all = slices.Clone(all)
				all[i] = p
			}
			return all
		}
		all = slices.Clone(all)
		all[i].under(x.Common(y))
		return all
	}
	return append(slices.Clip(all), p)
}

// under gives an alternative the conditions of a region. What these were loosened
// by isn't kept.
func (p *Progress) under(r *affine.Region) { p.Rows, p.Wide = r.Rows(), r.Wide() || r.Enclosed() }

// each takes every one of some worlds further: all that come of them.
func each(worlds []*World, further func(w *World) ([]*World, error)) ([]*World, error) {
	var all []*World
	for _, w := range worlds {
		out, err := further(w)
		if err != nil {
			return nil, err
		}
		all = append(all, out...)
	}
	return all, nil
}
