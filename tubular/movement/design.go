package movement

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Governing is where the string is used most in a case.
type Governing struct {
	MD    unit.Length   `json:"md"`
	Limit tubular.Limit `json:"limit"`
	Usage float64       `json:"usage"` // 1 is the limit, with the design factor in it
}

// DesignFactor returns the factor that is really there, for the design factor
// asked for: asked / Usage. It is infinite where nothing is used.
//
//	factor = asked/usage
//
// Source: definition.
func (g Governing) DesignFactor(asked float64) float64 { return asked / g.Usage }

// rate prepares the sections that have a yield strength, and all connections.
func (l *line) rate() error {
	l.connections, l.connected = make([]tubular.Connection, len(l.sections)), make([]bool, len(l.sections))
	for k := range l.sections {
		l.connections[k] = l.sections[k].connection()
		l.connected[k] = l.connections[k].Known()
	}
	l.bodies, l.rated = make([]tubular.Body, len(l.sections)), make([]bool, len(l.sections))
	faults := fault.In(scope)
	for k, s := range l.sections {
		if s.Pipe.Material.Yield == 0 {
			continue
		}
		left, err := s.Pipe.Less(s.Wear)
		if err != nil {
			faults.AtIndex("Sections", k, fault.At("Wear", err))
			continue
		}
		body, err := left.Prepare()
		faults.AtIndex("Sections", k, fault.At("Pipe", err))
		l.bodies[k], l.rated[k] = body, true
	}
	return faults.Err()
}
