package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// Narrow is the step with some symbols narrowed.
func (s Step) Narrow(part affine.Part) Step {
	s.Ramps = slices.Clone(s.Ramps)
	for i := range s.Ramps {
		s.Ramps[i] = slices.Clone(s.Ramps[i])
		for k := range s.Ramps[i] {
			s.Ramps[i][k].To = s.Ramps[i][k].To.Narrow(part)
		}
	}
	s.Pulls = slices.Clone(s.Pulls)
	for i := range s.Pulls {
		s.Pulls[i] = s.Pulls[i].Narrow(part)
	}
	return s
}
