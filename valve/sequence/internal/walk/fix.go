package walk

import "slices"

// Fix is the step with numbers in the place of some symbols.
func (s Step) Fix(value func(symbol int) (float64, bool)) Step {
	s.Ramps = slices.Clone(s.Ramps)
	for i := range s.Ramps {
		s.Ramps[i] = slices.Clone(s.Ramps[i])
		for k := range s.Ramps[i] {
			s.Ramps[i][k].To = s.Ramps[i][k].To.Fix(value)
		}
	}
	s.Pulls = slices.Clone(s.Pulls)
	for i := range s.Pulls {
		s.Pulls[i] = s.Pulls[i].Fix(value)
	}
	return s
}
