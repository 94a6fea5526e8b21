package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/tubular/movement"
)

// Steps show how every figure of the string comes about where a step stands still:
// the force balance from end to end, what holding adds, what each place, joint and
// seal bears, how far the seals have travelled and why, what is left of the limit
// that is used most. The values are those of the same loaded string as the figures.
func (x *StringAt) Steps() []working.Step {
	if x == nil {
		return nil
	}
	return x.working
}

// stringWorking are the lines of a loaded string, with what only the programme
// tells: what the weight indicator would show.
func (k *checker) stringWorking(l *movement.Loading, x *StringAt) []working.Step {
	s := k.plan.String
	var names movement.Names
	for _, p := range k.plan.places() {
		names.Holds = append(names.Holds, p.Name)
	}
	for _, a := range k.Network.Actions {
		if a.Axial {
			names.Joints = append(names.Joints, "“"+a.Name+"”")
		}
	}
	for n, seal := range s.seals() {
		names.Seals = append(names.Seals, seal.name(n))
	}
	steps := k.String.Up.StepsNamed(l, names)
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
		cap = unit.Force(l.Nodes[0].Inside) * unit.Force(k.String.TopBore)
	}
	return append(steps, working.Step{
		Name: "weight indicator, if it took over from the hanger", Symbol: "R", Equation: "Ft + block - cap",
		Inputs: []working.Input{{Symbol: "Ft", Value: working.Of(l.HangerLoad)}, {Symbol: "block", Value: working.Of(s.Block)}, {Symbol: "cap", Value: working.Of(cap)}},
		Value:  working.Of(x.Reading), Source: "equilibrium of the string; a closed top is lifted by pi*Ai",
	})
}
