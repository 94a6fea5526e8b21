package well

import (
	"fmt"
	"math"

	"completion.example/valve/sequence/internal/affine"
)

// Flowed is a well while its zones produce: what stands in each compartment on the way
// makes from its top to its depths, and by how much pressure falls at ports that are
// chokes.
type Flowed struct {
	Root     int
	Surface  affine.Form // at the top of the root
	Profiles map[int]Profile
	Jumps    map[int]affine.Form // by port: its side B less its side A
	Same     func(s *State) bool // whether the same zones would flow in another state
}

// Resting are the profiles of some compartments as they are.
func (s *State) Resting(of map[int]Profile) (map[int]Profile, error) {
	at := map[int]Profile{}
	for i := range of {
		p := make(Profile, len(s.Compartments[i].Depths))
		for d := range p {
			x, err := s.At(i, d)
			if err != nil {
				return nil, err
			}
			p[d] = x.F.Minus(s.Top[i].F)
		}
		at[i] = p
	}
	return at, nil
}

// Choke lets pressures fall at ports: from a share of the jumps to another along a leg
// from nought to span, which is 0 where they stand.
func (s *State) Choke(jumps map[int]affine.Form, from, to, span float64) {
	s.jumps = nil
	if len(jumps) == 0 {
		return
	}
	s.jumps = make([]affine.Line, len(s.Ports))
	for p, f := range jumps {
		l := affine.Flat(f.Times(from))
		if span > 0 {
			l.S = f.C * (to - from) / span
			l.D = f.Radius() * math.Abs(to-from) / span
		}
		s.jumps[p] = l
	}
}

// StopFlow ends what flows: columns stand as they are, without friction and chokes.
func (s *State) StopFlow() {
	s.profiles, s.jumps = nil, nil
	s.stirred = true
}

// partedFlow is the error of zones that could flow to surface by two ways.
type partedFlow struct{ Root, Other, Ports string }

func (e partedFlow) Error() string {
	return fmt.Sprintf("zones flow through %q while %q stands open at surface too, joined to it by %s: how flow parts between them isn't modelled. "+
		"Shut %q in (\"shut\"), or what joins them, in a step before; of lift gas write no open port but an action that feels %q less %q where it comes in, and what it makes of the string's weight in the step's density or outflow",
		e.Root, e.Other, e.Ports, e.Other, e.Other, e.Root)
}

// FlowsOneWay makes sure that no other compartment of a body is open at surface.
func (s *State) FlowsOneWay(root int) error {
	body := s.Body(root)
	for _, m := range body {
		if m == root || !s.Surface[m] {
			continue
		}
		e := partedFlow{Root: s.Compartments[root].Name, Other: s.Compartments[m].Name}
		for n, p := range s.portsTo(m, root) {
			if n > 0 {
				e.Ports += ", "
			}
			e.Ports += fmt.Sprintf("%q", s.Ports[p].Name)
		}
		return e
	}
	return nil
}

// portsTo are open ports from a compartment to another of its body.
func (s *State) portsTo(from, to int) []int {
	by := map[int]int{to: -1}
	order := []int{to}
	for k := 0; k < len(order); k++ {
		for _, p := range s.around[order[k]] {
			next := s.Ports[p].A + s.Ports[p].B - order[k]
			if _, seen := by[next]; s.Open[p] && !seen {
				by[next] = p
				order = append(order, next)
			}
		}
	}
	var way []int
	for at := from; by[at] >= 0; at = s.Ports[by[at]].A + s.Ports[by[at]].B - at {
		way = append(way, by[at])
	}
	return way
}
