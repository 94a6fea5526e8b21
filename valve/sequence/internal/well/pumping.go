package well

import (
	"fmt"
	"math"
	"slices"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
)

// Bore is the section of a compartment down to a depth.
type Bore struct {
	Bottom  float64 // MD
	Conduit flow.Conduit
}

// Pump is what is pumped through the well: from the top of a compartment through open
// ports to the top of another, or into the formation behind it.
type Pump struct {
	Into, To  int // compartments
	Formation int // behind To; -1: it returns at surface
	Rate      float64
	Fluid     int // -1: what stands in the well goes round
	Volume    float64
	Injection float64 // Pa above its own pressure that the formation takes at the rate
}

// Unpumped is the error of pumping what isn't modelled.
type Unpumped struct{ Why string }

func (e Unpumped) Error() string { return "pump: " + e.Why }

func unpumped(format string, args ...any) error { return Unpumped{fmt.Sprintf(format, args...)} }

type gradientKey struct {
	fluid   int
	conduit flow.Conduit
	rate    float64
}

// Way finds the way of what is pumped: there must be just one.
func (s *State) Way(p Pump) (*Way, error) {
	if err := s.Full(append(s.Body(p.Into), p.To), "pumping"); err != nil {
		return nil, err
	}
	w := &Way{pump: p, layers: map[int][]Layer{}, gradients: map[gradientKey]affine.Form{}}
	ports, err := s.route(p.Into, p.To)
	if err != nil {
		return nil, err
	}
	if p.Formation >= 0 {
		for _, m := range s.Body(p.Into) {
			if f := s.Compartments[m].Formation; f >= 0 && f != p.Formation {
				return nil, unpumped("%q is open beside %q; how a rate parts between them isn't modelled", s.Formations[f].Name, s.Formations[p.Formation].Name)
			}
		}
	}
	at, from := p.Into, 0
	for _, port := range ports {
		x := s.Ports[port]
		here, there, next := x.AtA, x.AtB, x.B
		if x.B == at {
			here, there, next = x.AtB, x.AtA, x.A
		}
		w.hops = append(w.hops, hop{compartment: at, from: from, to: here})
		at, from = next, there
	}
	last := 0
	if p.Formation >= 0 {
		last = s.Compartments[at].FormationAt
	}
	w.hops = append(w.hops, hop{compartment: at, from: from, to: last})
	for n := range w.hops {
		if err := s.measure(w, &w.hops[n]); err != nil {
			return nil, err
		}
	}
	slices.Sort(w.stations)
	w.stations = slices.Compact(w.stations)
	return w, nil
}

// gradient of friction of a fluid in a conduit, in Pa/m, at any of its densities.
func (s *State) friction(w *Way, fluid int, c flow.Conduit, rate float64) (affine.Form, error) {
	if rate == 0 {
		return affine.Form{}, nil
	}
	key := gradientKey{fluid, c, rate}
	if f, ok := w.gradients[key]; ok {
		return f, nil
	}
	x := &s.Fluids[fluid]
	if x.Rheology == nil {
		return affine.Form{}, unpumped("fluid %q has no viscosity, so that its friction isn't known", x.Name)
	}
	at := func(density float64) (float64, error) {
		r, err := flow.Stream{Conduit: c, Rheology: *x.Rheology, Density: unit.Density(density), Rate: unit.FlowRate(rate)}.Friction()
		return float64(r.Gradient), err
	}
	g, err := at(x.Density.C)
	if err != nil {
		return affine.Form{}, err
	}
	f := affine.Const(g)
	if x.Density.Radius() > 0 {
		low, e1 := at(x.Density.Least())
		high, e2 := at(x.Density.Greatest())
		if e1 != nil || e2 != nil {
			return f, first(e1, e2)
		}
		f = affine.Within(math.Min(g, math.Min(low, high)), math.Max(g, math.Max(low, high)))
	}
	w.gradients[key] = f
	return f, nil
}

// Profile is what a compartment's column and its friction make from its top to each of
// its depths.
type Profile []affine.Form

// Flowing are the profiles on the way once a volume has been pumped, at a rate, and
// the layers that make them.
func (s *State) Flowing(w *Way, volume, rate float64) (map[int]Profile, map[int][]Layer, error) {
	train := w.after(volume)
	profiles, all := map[int]Profile{}, map[int][]Layer{}
	for n := range w.hops {
		h := &w.hops[n]
		layers := s.layersOf(w, h, train)
		all[h.compartment] = layers
		k := &s.Compartments[h.compartment]
		lo, hi := k.Depths[h.from].MD, k.Depths[h.to].MD
		sign := -1.0 // down the hole pressure falls by friction, against the flow it grows
		if lo > hi {
			lo, hi, sign = hi, lo, 1
		}
		p := make(Profile, len(k.Depths))
		sum := affine.Form{}
		for x := range k.pieces(layers) {
			sum = sum.PlusTimes(s.Fluids[x.fluid].Density, Gravity*(x.to.TVD-x.from.TVD))
			if mid := (x.from.MD + x.to.MD) / 2; lo < mid && mid < hi {
				f, err := s.friction(w, x.fluid, k.bore(mid).Conduit, rate)
				if err != nil {
					return nil, nil, fmt.Errorf("pump: %q: %w", k.Name, err)
				}
				sum = sum.PlusTimes(f, sign*(x.to.MD-x.from.MD))
			}
			p[x.depth] = sum
		}
		profiles[h.compartment] = p
	}
	return profiles, all, nil
}

// Drift lets what columns and friction make go from one set of profiles to another
// along a leg from nought to span; between are some on the way, by how far.
func (s *State) Drift(from, to map[int]Profile, between map[float64]map[int]Profile, span float64) {
	s.Span = span
	s.profiles = make([][]affine.Line, len(s.Compartments))
	for i, a := range from {
		b := to[i]
		lines := make([]affine.Line, len(a))
		for d := range a {
			diff := b[d].Minus(a[d])
			off := 0.0
			for share, mid := range between {
				bend := mid[i][d].Minus(a[d].PlusTimes(diff, share))
				off = math.Max(off, math.Max(math.Abs(bend.Greatest()), math.Abs(bend.Least())))
			}
			lines[d] = affine.Line{F: a[d].Widen(1.25 * off), S: diff.C / span, D: diff.Radius() / span}
		}
		s.profiles[i] = lines
	}
}

// Still ends the drift: profiles stand.
func (s *State) Still(at map[int]Profile) {
	s.profiles = make([][]affine.Line, len(s.Compartments))
	for i, p := range at {
		lines := make([]affine.Line, len(p))
		for d := range p {
			lines[d] = affine.Flat(p[d])
		}
		s.profiles[i] = lines
	}
	s.Span = 0
	s.stirred = true
}

// Rest ends pumping: columns stand as layers, without friction.
func (s *State) Rest(layers map[int][]Layer) {
	s.profiles, s.inject = nil, nil
	for i, l := range layers {
		s.SetLayers(i, l)
	}
}

// Inject is by how much a formation takes more than its own pressure, along the leg.
func (s *State) Inject(f int, more affine.Line) {
	s.inject = make([]affine.Line, len(s.Formations))
	s.inject[f] = more
}

// pumping tells whether something is pumped through a compartment.
func (s *State) pumping(i int) bool { return s.profiles != nil && s.profiles[i] != nil }

// flowingGradient is the pressure that a metre of true vertical depth makes at a depth
// while something is pumped past it: between what lies above it and what lies below.
func (s *State) flowingGradient(i, depth int) affine.Form {
	d, p := s.Compartments[i].Depths, s.profiles[i]
	var least, most float64
	seen := false
	for _, pair := range [2][2]int{{depth - 1, depth}, {depth, depth + 1}} {
		a, b := pair[0], pair[1]
		if a < 0 || b >= len(d) || d[b].TVD == d[a].TVD {
			continue
		}
		x := p[b].Minus(p[a])
		lo, hi := x.Between(s.Span)
		lo, hi = lo/(d[b].TVD-d[a].TVD), hi/(d[b].TVD-d[a].TVD)
		if lo > hi {
			lo, hi = hi, lo
		}
		if !seen {
			least, most, seen = lo, hi, true
		}
		least, most = math.Min(least, lo), math.Max(most, hi)
	}
	return affine.Within(least, most)
}
