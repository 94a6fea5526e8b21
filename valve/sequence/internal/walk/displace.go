package walk

import (
	"cmp"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// displace moves a front of new fluid through a compartment, piece by piece: between
// two pieces lies whatever stands, turns or changes there, so that within one the
// pressure beyond it just gains or loses, and s is by how much.
func (k *Walker) displace(w *World, sw Displacement) ([]*World, error) {
	w = w.Clone()
	if err := w.State.Sweep(sw.Compartment, sw.Fluid, sw.From, sw.To, sw.Up); err != nil {
		return nil, err
	}
	worlds := []*World{w}
	for _, cut := range cuts(w.State, sw) {
		next, err := each(worlds, func(x *World) ([]*World, error) { return k.piece(x, sw, cut[0], cut[1]) })
		if err != nil {
			return nil, err
		}
		worlds = merge(next)
		if err := k.unhurried(worlds, "while a fluid is displaced", takeBack+", before that"); err != nil {
			return nil, err
		}
	}
	return worlds, nil
}

// cuts are the pieces of a swap in the order in which they are swept.
func cuts(s *well.State, sw Displacement) [][2]well.Depth {
	depths := []well.Depth{sw.From, sw.To}
	inside := func(d well.Depth) bool { return sw.From.MD < d.MD && d.MD < sw.To.MD }
	for _, d := range s.Compartments[sw.Compartment].Depths {
		if inside(d) {
			depths = append(depths, d)
		}
	}
	for _, l := range s.Layers(sw.Compartment) {
		if inside(l.Bottom) {
			depths = append(depths, l.Bottom)
		}
	}
	for _, d := range s.Cut(sw.Compartment) {
		if inside(d) {
			depths = append(depths, d)
		}
	}
	slices.SortStableFunc(depths, func(a, b well.Depth) int { return cmp.Compare(a.MD, b.MD) })
	depths = slices.CompactFunc(depths, func(a, b well.Depth) bool { return a.MD == b.MD })
	var all [][2]well.Depth
	for i := 1; i < len(depths); i++ {
		all = append(all, [2]well.Depth{depths[i-1], depths[i]})
	}
	if sw.Up {
		slices.Reverse(all)
	}
	return all
}

// piece sweeps one piece.
func (k *Walker) piece(w *World, sw Displacement, from, to well.Depth) ([]*World, error) {
	w = w.Clone()
	s := w.State
	old := s.FluidAt(sw.Compartment, from.MD)
	layers := replace(s.Layers(sw.Compartment), sw.Fluid, s.Compartments[sw.Compartment].Depths[0].MD, from, to)
	if s.Fills(sw.Compartment, sw.Fluid, from) {
		return []*World{w}, nil
	}
	gain, err := s.Gain(sw.Compartment, old, sw.Fluid, from, to)
	if err != nil {
		return nil, err
	}
	gives := s.Halfway(sw.Compartment, layers)
	return w.ways(gain, func(part *World, sign float64, length affine.Form) ([]*World, error) {
		x := part.State
		x.Front = well.Front{Compartment: sw.Compartment, Beyond: to.MD, Sign: sign, Gives: gives}
		x.Span = max(part.Region.Greatest(length), 0)
		out, err := k.leg(part, length, false)
		if err != nil {
			return nil, err
		}
		for _, y := range out {
			if err := y.State.Swept(sw.Compartment, sw.Fluid, layers, from, to); err != nil {
				return nil, err
			}
			if err := y.State.Solve(affine.Form{}); err != nil {
				return nil, err
			}
		}
		return out, nil
	})
}

// replace returns layers with one fluid between two depths.
func replace(old []well.Layer, fluid int, top float64, from, to well.Depth) []well.Layer {
	var out []well.Layer
	add := func(fluid int, above float64, bottom well.Depth) {
		if !(bottom.MD > above) {
			return
		}
		if n := len(out); n > 0 && out[n-1].Fluid == fluid {
			out[n-1].Bottom = bottom
			return
		}
		out = append(out, well.Layer{Fluid: fluid, Bottom: bottom})
	}
	for _, l := range old {
		upper := l.Bottom
		if upper.MD > from.MD {
			upper = from
		}
		add(l.Fluid, top, upper)
		if top <= from.MD && from.MD < l.Bottom.MD {
			add(fluid, from.MD, to)
		}
		add(l.Fluid, max(top, to.MD), l.Bottom)
		top = l.Bottom.MD
	}
	return out
}
