package movement

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

// Governing is where the string is used most in a case.
type Governing struct {
	MD    unit.Length
	Limit tubular.Limit
	Usage float64 // 1 is the limit, with the design factor in it
}

// DesignFactor returns the factor that is really there, for the design factor
// asked for: asked / Usage. It is infinite where nothing is used.
func (g Governing) DesignFactor(asked float64) float64 { return asked / g.Usage }

// rate prepares the sections that have a yield strength, and all connections.
func (l *line) rate() error {
	l.connections = make([]tubular.Connection, len(l.sections))
	for k := range l.sections {
		l.connections[k] = l.sections[k].connection()
	}
	l.bodies, l.rated = make([]tubular.Body, len(l.sections)), make([]bool, len(l.sections))
	var faults []error
	for k, s := range l.sections {
		if s.Pipe.Material.Yield == 0 {
			continue
		}
		left, err := s.Pipe.Less(s.Wear)
		if err != nil {
			faults = append(faults, fmt.Errorf("movement: Sections[%d].Wear: %w", k, err))
			continue
		}
		body, err := left.Prepare()
		if err != nil {
			faults = append(faults, fmt.Errorf("movement: Sections[%d]: %w", k, err))
		}
		l.bodies[k], l.rated[k] = body, true
	}
	return errors.Join(faults...)
}

// use fills in how much of each limit of the body a node uses, and looks at its
// connections.
func (l *Landed) use(c *Case, n *Node) {
	load := tubular.Load{Axial: n.True, Inside: n.Inside, Outside: n.Outside, Curvature: n.Curvature}
	n.Usage = tubular.Usage{}
	if l.rated[n.Section] {
		n.Usage = l.bodies[n.Section].UsageBent(load, l.design)
	}
	if limit, most := n.Usage.Governing(); most > c.Governing.Usage {
		c.Governing = Governing{MD: n.MD, Limit: limit, Usage: most}
	}
	if most := l.connections[n.Section].Usage(load, l.design, n.Usage.Triaxial, 1); most > c.Governing.Usage {
		c.Governing = Governing{MD: n.MD, Limit: tubular.ConnectionLimit, Usage: most}
	}
}
