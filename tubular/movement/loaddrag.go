package movement

import "completion.example/hydrostatics/unit"

// spread finds how deep a drag is taken: see Conditions.DragShare.
func (m *MadeUp) spread(l *Loading, c *Conditions) {
	l.dragAt = float64(m.end)
	if c.Drag == 0 {
		return
	}
	first := &l.segments[0]
	if first.lower < len(m.marks) {
		l.dragAt = m.marks[first.lower].md
	}
	if !m.fixedAt(first.lower) {
		return
	}
	for i := range first.lower {
		if m.marks[i].kind == jointMark {
			l.dragAt = m.marks[i].md
			return
		}
	}
}

// share is the share of the drag that the string bears at node i.
func (m *MadeUp) share(l *Loading, c *Conditions, i int) float64 {
	if c.DragShare != nil {
		return c.DragShare(unit.Length(m.points[i].md))
	}
	return even(m.points[i].md, float64(m.hanger), l.dragAt)
}

// dragged is the drag that the string bears at node i.
func (m *MadeUp) dragged(l *Loading, c *Conditions, i int) unit.Force {
	if c.Drag == 0 {
		return 0 // nobody is asked for its share
	}
	return c.Drag * unit.Force(m.share(l, c, i))
}

// dragMid is the drag that element i bears at its middle.
func (m *MadeUp) dragMid(l *Loading, c *Conditions, i int) float64 {
	if _, to := m.reach(&l.segments[0]); i >= to {
		return 0
	}
	return float64(m.dragged(l, c, i)+m.dragged(l, c, i+1)) / 2
}

// addDrag adds the drag to the forces at rest, above where it is all taken.
func (m *MadeUp) addDrag(l *Loading, c *Conditions) {
	if c.Drag == 0 {
		return
	}
	_, to := m.reach(&l.segments[0])
	for i := 0; i <= to; i++ {
		f := m.dragged(l, c, i)
		l.Nodes[i].True += f
		l.Nodes[i].Effective += f
	}
}
