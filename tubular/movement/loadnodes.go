package movement

import (
	"fmt"

	"completion.example/tubular"
)

// finishAll fills in what follows from the forces at the nodes.
func (m *MadeUp) finishAll(l *Loading) error {
	for k := range l.segments {
		g := &l.segments[k]
		if g.lost {
			continue
		}
		from, to := m.reach(g)
		for i := from; i <= to; i++ {
			n := &l.Nodes[i]
			m.bend(n, &m.elements[m.own[i]], m.across(l.Nodes, i))
			if i > from && m.elements[i-1].length > 0 {
				b, h := m.measure(l.Nodes, i-1)
				l.BuckledLength += b
				l.HelicalLength += h
			}
			if m.between(i) {
				continue
			}
			if err := m.rateNode(l, n); err != nil {
				return err
			}
			u := &n.Usage
			if !isFinite(float64(n.True+n.Effective+n.Onset) + float64(n.Contact) + float64(n.Bending) + u.Burst + u.Collapse + u.Axial + u.Triaxial) {
				return ErrTooLarge
			}
		}
	}
	return nil
}

// between tells whether node i has no pipe on either side: between two steps at
// one depth, or below one at the lower end.
func (m *MadeUp) between(i int) bool {
	return (i == 0 || m.elements[i-1].length == 0) && (i == len(m.elements) || m.elements[i].length == 0)
}

// rateNode fills in how much of each limit a node uses.
func (m *MadeUp) rateNode(l *Loading, n *Node) error {
	yield, k := 1.0, n.Section
	load := tubular.Load{Axial: n.True, Inside: n.Inside, Outside: n.Outside, Curvature: n.Curvature}
	if d := m.deratings[k]; d != nil && n.Temperature.Kelvin() != 0 {
		var err error
		if yield, err = d.Factor(n.Temperature); err != nil {
			return fmt.Errorf("movement: at %s: %w", n.MD.Rounded(6), err)
		}
	}
	n.Usage = tubular.Usage{}
	if m.rated[k] {
		if yield < 1 {
			hot := m.bodies[k].Derated(yield)
			n.Usage = hot.UsageBent(load, m.design)
		} else {
			n.Usage = m.bodies[k].UsageBent(load, m.design)
		}
	}
	l.Limits.Burst.take(n.MD, tubular.BurstLimit, n.Usage.Burst)
	l.Limits.Collapse.take(n.MD, tubular.CollapseLimit, n.Usage.Collapse)
	l.Limits.Axial.take(n.MD, tubular.AxialLimit, n.Usage.Axial)
	l.Limits.Triaxial.take(n.MD, tubular.TriaxialLimit, n.Usage.Triaxial)
	if m.connected[k] {
		l.Limits.Connection.take(n.MD, tubular.ConnectionLimit, m.connections[k].Usage(load, m.design, n.Usage.Triaxial, yield))
	}
	return nil
}
