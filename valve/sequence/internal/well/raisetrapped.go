package well

// RaiseTrapped begins to raise trapped compartments, by compartment in Pa per unit of
// s, or in m³ per unit of s that are pressed in between known walls.
func (s *State) RaiseTrapped(by, press map[int]float64) error {
	n := len(s.Compartments)
	s.Rate, s.Begun, s.volume, s.gave = make([]float64, n), make([]int, n), make([]float64, n), make([]float64, n)
	for i := range n {
		d, ok := by[i]
		v, pressed := press[i]
		if !ok && !pressed {
			continue
		}
		members := s.Body(i)
		for _, m := range members {
			if s.Surface[m] {
				return notTrapped{s.Compartments[i].Name, s.Compartments[m].Name}
			}
			if f := s.Compartments[m].Formation; f >= 0 {
				return notTrapped{s.Compartments[i].Name, s.Formations[f].Name}
			}
			if s.gas[m].Closed {
				return s.gassy(m, "a squeeze of what it presses on isn't modelled: heat it by the step's temperature")
			}
			s.volume[i] += s.Compartments[m].Volume
		}
		give, known := s.give(members)
		if pressed && !known {
			return s.soft(members, "its volume is changed")
		}
		if pressed {
			d += v / give
		}
		s.Rate[i], s.Begun[i], s.gave[i] = d, len(members), give
	}
	return nil
}
