package well

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// same is the difference of two pressures that counts as none: rounding.
const same = 1e-3 // Pa

// Unstated is the error of two trapped bodies that meet while nobody knows how
// large they are.
type Unstated struct{ Compartments []string }

func (e Unstated) Error() string {
	return fmt.Sprintf("%q are trapped and meet: each wants a capacity, so that their pressures can be shared by volume", e.Compartments)
}

// notTrapped is the error of raising what isn't trapped.
type notTrapped struct{ Compartment, Fixed string }

func (e notTrapped) Error() string {
	return fmt.Sprintf("%q can't be squeezed: %s fixes its pressure", e.Compartment, e.Fixed)
}

// Body returns the compartments joined to one through open ports.
func (s *State) Body(i int) []int {
	for k := range s.visited {
		s.visited[k] = false
	}
	return slices.Clone(s.reach(i))
}

// reach walks the body of i, which it marks.
func (s *State) reach(i int) []int {
	s.order = append(s.order[:0], i)
	s.visited[i] = true
	for k := 0; k < len(s.order); k++ {
		for _, p := range s.around[s.order[k]] {
			if !s.Open[p] {
				continue
			}
			next := s.Ports[p].A + s.Ports[p].B - s.order[k]
			if !s.visited[next] {
				s.visited[next] = true
				s.order = append(s.order, next)
			}
		}
	}
	return s.order
}

// Solve gives every compartment its pressure in the present shape of the network,
// from the place x of the leg on. What fixes a body is a surface pressure, else a
// formation, else nothing: then it keeps its pressure. Where several surface
// pressures, or several formations and no surface pressure, fix one body, fluid
// flows from one to the other, and the pressure lies between what each would make
// of it: where, is a symbol of its own.
func (s *State) Solve(x affine.Form) error { return s.SolveSome(x, nil) }

// SolveSome solves the bodies of some compartments only.
func (s *State) SolveSome(x affine.Form, some []int) error {
	for i := range s.visited {
		s.visited[i] = false
	}
	if some == nil {
		defer func() { s.stirred = false }()
		for i := range s.Compartments {
			if err := s.solveOf(x, i); err != nil {
				return err
			}
		}
		return nil
	}
	for _, i := range some {
		if err := s.solveOf(x, i); err != nil {
			return err
		}
	}
	return nil
}

// solveOf solves the body of a compartment that hasn't been visited.
func (s *State) solveOf(x affine.Form, i int) error {
	if s.visited[i] {
		return nil
	}
	s.members = append(s.members[:0], s.reach(i)...)
	return s.solveBody(x, s.members)
}

func (s *State) solveBody(x affine.Form, members []int) error {
	var surfaces, formations []int
	fixed := false
	s.seconds = slices.DeleteFunc(s.seconds, func(m SecondReference) bool { return slices.Contains(members, m.Of) })
	for _, m := range members {
		fixed = fixed || s.Surface[m] || s.Compartments[m].Formation >= 0
		if s.Surface[m] {
			surfaces = append(surfaces, m)
		}
		if s.Compartments[m].Formation >= 0 {
			formations = append(formations, m)
		}
	}
	if fixed {
		key := uint64(0)
		for _, m := range members {
			key += mark(m)
		}
		for _, m := range members {
			s.body[m] = key // what is cut off together stays together
		}
	}
	if m := s.anyLow(members); m >= 0 {
		if len(surfaces) > 1 {
			return s.fallen(m, "%q and %q are joined while both are open at surface; that isn't modelled with a column that has fallen", s.Compartments[surfaces[0]].Name, s.Compartments[surfaces[1]].Name)
		}
		if err := s.above(m); err != nil {
			return err
		}
	}
	switch {
	case len(surfaces) > 0:
		if err := s.mix(members, surfaces, func(m int) (affine.Line, error) { return s.Applied[m], nil }); err != nil {
			return err
		}
		return s.holdAgainstFormations(surfaces[0], formations)
	case len(formations) > 0:
		return s.mix(members, formations, func(m int) (affine.Line, error) {
			k := &s.Compartments[m]
			p := affine.Flat(s.Formations[k.Formation].Pressure)
			if s.inject != nil {
				p = p.Plus(s.inject[k.Formation])
			}
			if s.gas[m].Closed {
				err := s.lift(m, k.FormationAt, p)
				return s.Top[m], err
			}
			return s.carry(m, p, k.FormationAt, 0)
		})
	}
	return s.trapped(x, members)
}

// mix lets one or several references fix a body.
func (s *State) mix(members, references []int, top func(m int) (affine.Line, error)) error {
	if len(references) > 1 { // the order of the file is nobody's order
		slices.SortStableFunc(references, func(a, b int) int {
			return cmp.Compare(s.Compartments[a].Name, s.Compartments[b].Name)
		})
	}
	base := references[0]
	p, err := top(base)
	if err != nil {
		return err
	}
	if err := s.spread(base, p, members); err != nil {
		return err
	}
	for _, r := range references[1:] {
		p, err := top(r)
		if err != nil {
			return err
		}
		excess := s.Top[r].Minus(p)
		s.keepSecond(SecondReference{Of: r, With: base, Excess: excess})
		if excess.Same(affine.Line{}, same) {
			continue
		}
		for _, m := range members {
			if s.gas[m].Closed {
				return s.gassy(m, "two pressures that differ fix its body (%q and %q); that isn't modelled with gas shut in: shut one of them in, or what joins them, before", s.Compartments[base].Name, s.Compartments[r].Name)
			}
		}
		// Everything moves towards the second by the share, from 0 to 1, of the
		// difference.
		before := make([]affine.Line, len(members))
		for k, m := range members {
			before[k] = s.Top[m]
		}
		if err := s.spread(r, p, members); err != nil {
			return err
		}
		share := affine.Within(0, 1)
		if symbol, ok := s.shares[[2]int{base, r}]; ok {
			share = affine.Form{C: 0.5, T: []affine.Term{{Symbol: symbol, C: 0.5}}}
			if fixed, ok := s.sharesFixed[symbol]; ok {
				share = fixed
			}
		}
		for k, m := range members {
			d := s.Top[m].Minus(before[k])
			f := before[k].F.Plus(affine.Mul(d.F, share))
			s.Top[m] = affine.Line{F: f, S: before[k].S + d.S*share.C, D: before[k].D + d.D + math.Abs(d.S)*share.Radius()}
		}
	}
	return nil
}

// holdAgainstFormations holds what the surface makes of a body against the formations in
// it.
func (s *State) holdAgainstFormations(surface int, formations []int) error {
	for _, m := range formations {
		k := &s.Compartments[m]
		p, err := s.At(m, k.FormationAt)
		if err != nil {
			return err
		}
		excess := p.PlusForm(s.Formations[k.Formation].Pressure.Times(-1))
		s.keepSecond(SecondReference{Of: m, With: surface, Excess: excess})
	}
	return nil
}

// spread carries the pressure at the top of compartment i through the body.
func (s *State) spread(i int, top affine.Line, members []int) error {
	for _, m := range members {
		s.visited[m] = false
	}
	order := append(s.order[:0], i)
	s.visited[i] = true
	s.Top[i] = top
	for k := 0; k < len(order); k++ {
		from := order[k]
		for _, p := range s.around[from] {
			if !s.Open[p] {
				continue
			}
			port := &s.Ports[p]
			next, at, there := port.B, port.AtA, port.AtB
			if from == port.B {
				next, at, there = port.A, port.AtB, port.AtA
			}
			if s.visited[next] {
				continue
			}
			q, err := s.At(from, at)
			if err != nil {
				return err
			}
			if s.jumps != nil {
				if from == port.A {
					q = q.Plus(s.jumps[p])
				} else {
					q = q.Plus(s.jumps[p].Times(-1))
				}
			}
			if s.gas[next].Closed {
				err = s.lift(next, there, q)
			} else {
				s.Top[next], err = s.carry(next, q, there, 0)
			}
			if err != nil {
				return err
			}
			s.visited[next] = true
			order = append(order, next)
		}
	}
	s.order = order
	return nil
}

// trapped settles a body that nothing fixes: it has the pressure of the moment,
// and what has just met shares it by volume, as equal fluids in rigid walls would, or by
// what fluids and walls give where that is known of all of it.
func (s *State) trapped(x affine.Form, members []int) error {
	for _, m := range members {
		if s.gas[m].Closed {
			return s.stay(x, members)
		}
	}
	total, known := 0.0, true
	give, stiff := s.give(members)
	key, together := uint64(0), true
	for _, m := range members {
		total += s.Compartments[m].Volume
		known = known && (s.Compartments[m].Volume > 0 || stiff)
		key += mark(m)
	}
	own := make([]affine.Line, len(members))
	for k, m := range members {
		own[k] = affine.Flat(s.Top[m].At(x))
		together = together && s.body[m] == s.body[members[0]]
	}
	slope, err := s.rise(members, total, known, give, stiff)
	if err != nil {
		return err
	}
	i := members[0]
	top := own[0]
	still := together && s.Front.Compartment < 0 && !s.stirred
	if !still {
		if err := s.spread(i, top, members); err != nil {
			return err
		}
		apart := false
		for k, m := range members {
			apart = apart || !own[k].Same(s.Top[m], same)
		}
		if apart && !known && !together {
			return s.unstated(members)
		}
		for k, m := range members {
			weight := 1 / float64(len(members))
			if stiff {
				of, _ := s.gives(m)
				weight = of / give
			} else if known {
				weight = s.Compartments[m].Volume / total
			}
			if apart {
				top = top.Plus(own[k].Minus(s.Top[m]).Times(weight))
			}
		}
		still = !apart
	}
	for _, m := range members {
		s.body[m] = key
	}
	if slope != 0 {
		// The squeeze begins to count for this body here.
		top = affine.Line{F: top.F.PlusTimes(x, -slope), S: top.S + slope, D: top.D}
	} else if still {
		for k, m := range members {
			s.Top[m] = own[k]
		}
		return nil
	}
	return s.spread(i, top, members)
}

// mark is the number of a compartment in the sum that tells bodies apart.
func mark(m int) uint64 {
	x := uint64(m+1) * 0x9e3779b97f4a7c15
	x ^= x >> 29
	return x*0xbf58476d1ce4e5b9 | 1
}

func (s *State) unstated(members []int) error {
	e := Unstated{}
	for _, m := range members {
		if s.Compartments[m].Volume <= 0 {
			e.Compartments = append(e.Compartments, s.Compartments[m].Name)
		}
	}
	slices.Sort(e.Compartments)
	return e
}

// rise is by how much a body rises per unit of s.
func (s *State) rise(members []int, total float64, known bool, give float64, stiff bool) (float64, error) {
	slope := 0.0
	if s.Rate == nil {
		return 0, nil
	}
	for _, m := range members {
		if s.Rate[m] == 0 {
			continue
		}
		switch {
		case len(members) == s.Begun[m] && !known:
			slope += s.Rate[m] // the body is as it was
		case !known:
			return 0, s.unstated(members)
		case stiff && s.gave[m] > 0:
			slope += s.Rate[m] * s.gave[m] / give
		default:
			slope += s.Rate[m] * s.volume[m] / total
		}
	}
	return slope, nil
}
