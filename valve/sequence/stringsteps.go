package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/well"
)

// Steps show how every figure of the string comes about where a step stands still:
// the force balance from end to end, what holding adds, what each place, joint and
// seal bears, how far the seals have travelled and why, what is left of the limit
// that is used most. The values are those of the same loaded string as the figures.
func (x *StringAt) Steps() []working.Step {
	if x == nil || x.made == nil {
		return nil
	}
	l, err := x.loaded()
	if err != nil {
		return nil // it was loaded before
	}
	return x.made.steps(l, x)
}

// stringMade is a string with the names of what is on it.
type stringMade struct {
	plan  *String
	up    *movement.MadeUp
	bore  unit.Area // of its top, that a closed one is lifted by
	names movement.Names
}

// stringsMade are the plan's strings, as package stringload numbers them.
func (c *compiled) stringsMade() (all [2]*stringMade) {
	if c.String == nil {
		return all
	}
	for _, s := range c.plan.strings() {
		room := c.room(s.of)
		m := &stringMade{plan: s.String, up: room.Up, bore: unit.Area(room.TopBore)}
		for _, p := range c.plan.places(s.on()) {
			m.names.Holds = append(m.names.Holds, p.Name)
		}
		for i := range c.Network.Actions {
			if a := &c.Network.Actions[i]; a.Axial && a.Feels == well.OfJoint && c.plan.Devices[a.Device].On == s.on() {
				m.names.Joints = append(m.names.Joints, "“"+a.Name+"”")
			}
		}
		for n, seal := range m.plan.seals() {
			m.names.Seals = append(m.names.Seals, seal.name(n))
		}
		all[s.of] = m
	}
	return all
}

// steps are the lines of a loaded string, with what only the programme tells: what the
// weight indicator would show.
func (m *stringMade) steps(l *movement.Loading, x *StringAt) []working.Step {
	s := m.plan
	steps := m.up.StepsNamed(l, m.names)
	if l.Top != movement.AtHanger {
		return steps
	}
	if s.HangerSeal == 0 {
		steps = append(steps, working.Step{
			Name: "upward load at the hanger", Symbol: "L", Equation: "max(-Ft, 0*Ft)", Inputs: []working.Input{{Symbol: "Ft", Value: working.Of(l.HangerLoad)}},
			Value: working.Of(x.Lift), Source: "balance of the hanger; the hanger's seal isn't given",
		})
	}
	cap := unit.Force(0)
	if s.Top == TopClosed {
		cap = unit.Force(l.Nodes[0].Inside) * unit.Force(m.bore)
	}
	return append(steps, working.Step{
		Name: "weight indicator, if it took over from the hanger", Symbol: "R", Equation: "Ft + block - cap",
		Inputs: []working.Input{{Symbol: "Ft", Value: working.Of(l.HangerLoad)}, {Symbol: "block", Value: working.Of(s.Block)}, {Symbol: "cap", Value: working.Of(cap)}},
		Value:  working.Of(x.Reading), Source: "equilibrium of the string; a closed top is lifted by pi*Ai",
	})
}
