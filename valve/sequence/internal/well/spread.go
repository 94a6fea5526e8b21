package well

// Spread carries the pressure at the top of a compartment through its body, which
// nothing fixes, as if it had been one for long.
func (s *State) Spread(i int) error {
	members := s.Body(i)
	key := uint64(0)
	for _, m := range members {
		key += mark(m)
	}
	for _, m := range members {
		s.body[m] = key
	}
	return s.spread(i, s.Top[i], members)
}
