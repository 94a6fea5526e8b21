package well

import (
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
