package sequence

import (
	"fmt"
	"maps"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// How finely a leg is looked at where its differentials aren't straight. The
// tension in the string isn't quite straight either, where the string buckles,
// but rises or falls all along a leg, so that its ends show the most of it.
const (
	piecesCompressible = 8
	piecesSwap         = 24
)

// pieces of a leg that moves surface pressures.
func (s *state) pieces() int {
	if s.uniform {
		return 1
	}
	return piecesCompressible
}

// uniform tells whether a fluid's density is the same at every pressure.
func uniform(f hydrostatics.Fluid) bool {
	u, ok := f.(hydrostatics.Uniform)
	if ok {
		_, ok = u.UniformDensity()
	}
	return ok
}

// rest is a leg in which nothing is driven: what is due happens.
func rest(ramp int) leg {
	return leg{ramp: ramp, pieces: 1, set: func(float64) error { return nil }}
}

// rampLeg moves surface pressures together from where they stand. A
// compartment that was shut in opens at the pressure it has.
func (s *state) rampLeg(ramp int, to map[string]unit.Pressure) leg {
	type move struct {
		compartment int
		from, to    unit.Pressure
	}
	var moves []move
	for _, name := range slices.Sorted(maps.Keys(to)) {
		i := s.byName.compartment[name]
		if !s.surface[i] {
			s.surface[i] = true
			s.applied[i] = s.top[i]
		}
		moves = append(moves, move{i, s.applied[i], to[name]})
	}
	return leg{ramp: ramp, pieces: s.pieces(), set: func(fraction float64) error {
		for _, m := range moves {
			s.applied[m.compartment] = m.from + (m.to-m.from)*unit.Pressure(fraction)
			if fraction == 1 {
				s.applied[m.compartment] = m.to
			}
		}
		return nil
	}}
}

// pullLeg pulls the string from one weight-indicator reading to another.
func (s *state) pullLeg(ramp int, from, to unit.Force) leg {
	return leg{ramp: ramp, pieces: 1, set: func(float64) error { return nil },
		pull: func(fraction float64) unit.Force { return from + (to-from)*unit.Force(fraction) }}
}

// squeezeLeg changes the pressure of a trapped compartment by heat or volume.
func (s *state) squeezeLeg(ramp int, by map[string]unit.Pressure) (leg, error) {
	from := map[int]unit.Pressure{}
	for _, name := range slices.Sorted(maps.Keys(by)) {
		i := s.byName.compartment[name]
		members, _ := s.body(i)
		for _, m := range members {
			if s.surface[m] || s.compartments[m].formation >= 0 {
				return leg{}, fmt.Errorf("%q can't be squeezed: %s fixes its pressure", name, s.fixedBy(i))
			}
			from[m] = s.top[m]
		}
	}
	return leg{ramp: ramp, pieces: s.pieces(), set: func(fraction float64) error {
		for m, p := range from {
			s.top[m] = p
		}
		for name, d := range by {
			members, _ := s.body(s.byName.compartment[name])
			for _, m := range members {
				if _, known := from[m]; known {
					s.top[m] = from[m] + d*unit.Pressure(fraction)
				}
			}
		}
		return nil
	}}, nil
}

// swapLeg moves a front of new fluid through a compartment.
func (s *state) swapLeg(ramp int, w Swap) (leg, error) {
	i := s.byName.compartment[w.Compartment]
	from, err := s.path.TVD(w.From)
	if err != nil {
		return leg{}, err
	}
	to, err := s.path.TVD(w.To)
	if err != nil {
		return leg{}, err
	}
	old := s.layers[i]
	return leg{ramp: ramp, pieces: piecesSwap, set: func(fraction float64) error {
		// Where the front stands by volume, so by measured depth.
		md := w.From + (w.To-w.From)*unit.Length(fraction)
		top, bottom := from, to
		if w.Up {
			md = w.To - (w.To-w.From)*unit.Length(fraction)
		}
		front, err := s.path.TVD(md)
		if err != nil {
			return err
		}
		if w.Up {
			top = min(front, to)
		} else {
			bottom = max(front, from)
		}
		s.layers[i] = replace(old, w.Fluid, top, bottom)
		s.columns[i] = nil
		return nil
	}}, nil
}

// replace returns layers with one fluid between two depths.
func replace(old []layer, fluid string, top, bottom unit.Length) []layer {
	if !(bottom > top) {
		return old
	}
	var out []layer
	add := func(l layer) {
		if !(l.bottom > l.top) {
			return
		}
		if n := len(out); n > 0 && out[n-1].fluid == l.fluid {
			out[n-1].bottom = l.bottom
			return
		}
		out = append(out, l)
	}
	for _, l := range old {
		add(layer{l.fluid, l.top, min(l.bottom, top)})
		if l.top <= top && top < l.bottom {
			add(layer{fluid, top, bottom})
		}
		add(layer{l.fluid, max(l.top, bottom), l.bottom})
	}
	return out
}
