package movement

import "completion.example/hydrostatics/unit"

// settle finds the forces and positions, and which locators the string stands on.
// One after the other is taken that the string would have passed, or given up that
// it would have to pull on, until all agree: a string is so stiff against its
// locators that this ends after as many turns as there are.
func (m *MadeUp) settle(l *Loading, s Standing, c *Conditions, locators bool) error {
	for range 2*len(m.seals) + 1 {
		l.Free, l.Snapping = false, false
		m.segment(l, s)
		m.rest(l, s, c)
		if err := m.holdAll(l, s, c); err != nil {
			return err
		}
		m.place(l, s, c)
		m.loadParts(l, c)
		if !locators || !m.stand(l, c) {
			break
		}
	}
	return nil
}

// stand changes which locator the string stands on; false where none changes.
func (m *MadeUp) stand(l *Loading, c *Conditions) bool {
	const near = 1e-12 // m
	first, least := -1, unit.Length(-near)
	if l.Free && c.Reading < l.Reading {
		least = m.end // less than it weighs: the string goes down to the first of them
	}
	for i := range m.seals {
		x := &l.Seals[i]
		if !m.seals[i].Locator || x.Lost {
			continue
		}
		if l.stands[i] && x.Load > 0 {
			l.stands[i] = false
			return true
		}
		if !l.stands[i] && x.ToShoulder < least {
			first, least = i, x.ToShoulder
		}
	}
	if first >= 0 {
		l.stands[first] = true
	}
	return first >= 0
}
