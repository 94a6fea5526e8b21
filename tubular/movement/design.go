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

// rate prepares the sections that have a yield strength.
func (l *Landed) rate() error {
	l.bodies, l.rated = make([]tubular.Body, len(l.sections)), make([]bool, len(l.sections))
	var faults []error
	for k, s := range l.sections {
		if s.Pipe.Material.Yield == 0 {
			continue
		}
		body, err := s.Pipe.Prepare()
		if err != nil {
			faults = append(faults, fmt.Errorf("movement: Sections[%d]: %w", k, err))
		}
		l.bodies[k], l.rated[k] = body, true
	}
	return errors.Join(faults...)
}

// use fills in how much of each limit a node uses.
func (l *Landed) use(c *Case, n *Node) {
	if !l.rated[n.Section] {
		n.Usage = tubular.Usage{}
		return
	}
	n.Usage = l.bodies[n.Section].Usage(tubular.Load{Axial: n.True, Inside: n.Inside, Outside: n.Outside, Curvature: n.Curvature}, l.design)
	if joint := l.bars[n.Section].joint; joint > 0 && n.True > 0 {
		n.Usage.Axial = max(n.Usage.Axial, l.design.Axial*float64(n.True)/joint)
	}
	if limit, most := n.Usage.Governing(); most > c.Governing.Usage {
		c.Governing = Governing{MD: n.MD, Limit: limit, Usage: most}
	}
}
