package movement

// stop is what stops the string at a seal.
type stop int8

const (
	notStopped stop = iota
	byLocator
	byLatch
)

// settle finds the forces and positions, and which locators the string stands on
// and which latches it pulls on. One after the other is taken that the string would
// have passed, or given up that it would have to push the wrong way, until all
// agree: this ends after as many turns as there are.
func (m *MadeUp) settle(l *Loading, s Standing, c *Conditions, stops bool) error {
	for range 2*len(m.seals) + 1 {
		l.Free, l.Snapping = false, false
		m.segment(l, s)
		m.rest(l, s, c)
		if err := m.holdAll(l, s, c); err != nil {
			return err
		}
		m.place(l, s, c)
		m.loadParts(l, c)
		if !stops || !m.stopped(l, c) {
			break
		}
	}
	return nil
}

// stopped changes what stops the string where; false where nothing changes.
func (m *MadeUp) stopped(l *Loading, c *Conditions) bool {
	const near = 1e-12 // m
	first, by, least := -1, notStopped, m.end
	// On the hook with less than it weighs it goes down to the first locator, with
	// more it comes up to the first latch, however far. What a parted joint has left
	// below moves with neither.
	down, up := l.Free && c.Reading < l.Reading, l.Free && c.Reading > l.Reading
	for i := range m.marks {
		k := m.marks[i].index
		if m.marks[i].kind != sealMark || l.Seals[k].Lost {
			continue
		}
		x, seal := &l.Seals[k], &m.seals[k]
		if x.Stands && x.Load > 0 || x.Pulls && x.Load < 0 {
			l.stops[k] = notStopped
			return true
		}
		if l.stops[k] != notStopped {
			continue
		}
		falls, comes := down && i < l.segments[0].to, up && i < l.segments[0].to
		if !falls && !comes {
			least = min(least, -near)
		}
		if seal.Locator && !comes && x.ToShoulder < least {
			first, by, least = k, byLocator, x.ToShoulder
		}
		if room := seal.Up + x.Travel; seal.Latch && !falls && room < least {
			first, by, least = k, byLatch, room
		}
	}
	if first >= 0 {
		l.stops[first] = by
	}
	return first >= 0
}
