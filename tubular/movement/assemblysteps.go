package movement

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Steps are the lines of a loading's working, as one would check them with a
// pencil: the force balance from the lower end of what the top carries to the
// hanger or the weight indicator, from the lower end of the string to every place
// that ends a length of it, then every held place, joint and seal, then the lengths
// and the limit that is used most. The places are named by their numbers, from 1.
func (m *MadeUp) Steps(l *Loading) []working.Step { return m.StepsNamed(l, Names{}) }

// StepsNamed is Steps with the places called by their names. A loading that this
// string didn't make has none.
func (m *MadeUp) StepsNamed(l *Loading, names Names) []working.Step {
	if m.loaded(l) != nil {
		return nil
	}
	const balance = "equilibrium of the string"
	force := func(symbol string, f unit.Force) working.Input { return input(symbol, working.Of(f)) }
	t := m.Terms(l)
	steps := []working.Step{{
		Name: fmt.Sprintf("wall force at the top, from %s up", t.From.Rounded(6)), Symbol: "Ft", Equation: "Fe + W + Fs + Fr + Fp + Fh + Ff + Fd + D",
		Inputs: []working.Input{force("Fe", t.End), force("W", t.Weight), force("Fs", t.Shoulders), force("Fr", t.Rings), force("Fp", t.Plugs),
			force("Fh", t.Hung), force("Ff", t.Flow), force("Fd", t.Seals), force("D", t.Drag)},
		Value: working.Of(l.HangerLoad), Source: balance + "; end, weight in air, shoulders, seal rings, plugs, hung loads, flow, seal friction, drag",
	}}
	if l.Top == AtHanger {
		if m.hangerArea > 0 {
			steps = append(steps, working.Step{
				Name: "upward load at the hanger", Symbol: "L", Equation: "po*(Ah - Ao) - Ft",
				Inputs: []working.Input{input("po", working.Of(l.Nodes[0].Outside)), input("Ah", working.Of(unit.Area(m.hangerArea))), input("Ao", working.Of(unit.Area(m.topAo))), force("Ft", l.HangerLoad)},
				Value:  working.Of(l.Lift), Source: "balance of the hanger",
			})
		}
	} else {
		steps = append(steps, working.Step{
			Name: "weight indicator", Symbol: "R", Equation: "Ft - cap + block",
			Inputs: []working.Input{force("Ft", l.HangerLoad), force("cap", l.Cap), force("block", unit.Force(m.block))},
			Value:  working.Of(l.Reading), Source: balance + "; a closed top is lifted by pi*Ai",
		})
	}
	for i := range l.segments {
		steps = append(steps, m.segmentSteps(l, i, names)...)
	}
	for i := range m.marks {
		steps = append(steps, m.markSteps(l, i, names)...)
	}
	mv := l.Movement
	steps = append(steps, working.Step{
		Name: "movement of the lower end since landing", Symbol: "x", Equation: "x0 + dL1 + dL2 + dL3 + dL4 + dL5 + dLh",
		Inputs: []working.Input{input("x0", inches(l.TopMoved)), input("dL1", inches(mv.Piston)), input("dL2", inches(mv.Buckling)), input("dL3", inches(mv.Ballooning)),
			input("dL4", inches(mv.Thermal)), input("dL5", inches(mv.Friction)), input("dLh", inches(l.Held))},
		Value: inches(l.EndMoved), Source: lubinski + "; top, piston, buckling, ballooning, temperature, flow, and what holding and pull add",
	}, working.Step{
		Name: "buckled length", Symbol: "Lb", Equation: "Lh + Ls",
		Inputs: []working.Input{input("Lh", working.Of(l.HelicalLength)), input("Ls", working.Of(l.BuckledLength-l.HelicalLength))},
		Value:  working.Of(l.BuckledLength), Source: "sum over the string: helical and sinusoidal",
	})
	return append(steps, m.useSteps(l)...)
}

// fitStep is the force that keeps the length between two places that hold.
func (m *MadeUp) fitStep(g *segment) working.Step {
	at := func(mark int) unit.Length {
		if mark < 0 {
			return m.hanger
		}
		return unit.Length(m.marks[mark].md)
	}
	dl := func(symbol string, x float64) working.Input {
		if math.Abs(x) < 1e-12 { // m: what sums over the nodes are rounded to
			x = 0
		}
		return input(symbol, inches(unit.Length(x)))
	}
	return working.Step{
		Name: fmt.Sprintf("force that keeps the length from %s to %s", at(g.upper).Rounded(6), at(g.lower).Rounded(6)), Symbol: "f",
		Equation: "(xb - xt - (dL1 + dL2 + dL3 + dL4 + dL5 + dLw))/C",
		Inputs: []working.Input{dl("xb", g.bottom), dl("xt", g.top), dl("dL1", g.change.piston), dl("dL2", g.squeezed), dl("dL3", g.change.ballooning),
			dl("dL4", g.change.thermal), dl("dL5", g.change.friction), dl("dLw", g.weighed), input("C", compliance(g.compliance))},
		Value:  working.Of(unit.Force(g.force)),
		Source: "Hooke; " + lubinski + "; ends where they are held, less piston, buckling, ballooning, temperature, flow, and weight that came or went, with C = L/(E*As)",
	}
}

// markSteps are those of one held place, joint or seal.
func (m *MadeUp) markSteps(l *Loading, i int, names Names) []working.Step {
	k := &m.marks[i]
	a, b := &l.Nodes[k.element], &l.Nodes[k.element+1]
	force := func(symbol string, f unit.Force) working.Input { return input(symbol, working.Of(f)) }
	press := func(symbol string, p unit.Pressure) working.Input { return input(symbol, working.Of(p)) }
	area := func(symbol string, x float64) working.Input { return input(symbol, working.Of(unit.Area(x))) }
	switch k.kind {
	case holdMark:
		h, name := &l.Holds[k.index], names.hold(k.index)
		if h.Lost {
			return nil
		}
		steps := []working.Step{{
			Name: "effective force above " + name, Symbol: "Fe", Equation: "F - pi_*Ai + po*Ao",
			Inputs: []working.Input{force("F", h.WallAbove), press("pi_", a.Inside), area("Ai", m.bars[a.Section].ai), press("po", a.Outside), area("Ao", m.bars[a.Section].ao)},
			Value:  working.Of(h.EffectiveAbove), Source: lubinski,
		}}
		if !h.Held {
			return steps
		}
		steps = append(steps, working.Step{
			Name: "load on " + name + ", up positive", Symbol: "P", Equation: "Fa - Fb + pb*(Ap - Aob) - pa*(Ap - Aoa)",
			Inputs: []working.Input{force("Fa", h.WallAbove), force("Fb", h.WallBelow), press("pb", h.Below), press("pa", h.Above),
				area("Ap", k.area), area("Aob", m.bars[b.Section].ao), area("Aoa", m.bars[a.Section].ao)},
			Value: working.Of(h.Load), Source: "balance of the string at the place",
		})
		if d := m.holds[k.index].Casing; d > 0 {
			steps = append(steps, working.Step{
				Name: name + " on the casing, up positive", Symbol: "C", Equation: "P + (pb - pa)*(Ac - Ap)",
				Inputs: []working.Input{force("P", h.Load), press("pb", h.Below), press("pa", h.Above), area("Ac", disc(d)), area("Ap", k.area)},
				Value:  working.Of(h.Casing), Source: "balance of the packer",
			})
		}
		return steps
	case jointMark:
		j := &l.Joints[k.index]
		if j.Parted || j.Lost {
			return nil
		}
		return append(m.jointStep(l, i, names), []working.Step{{
			Name: "effective force above " + names.joint(k.index), Symbol: "Fe", Equation: "F - pi_*Ai + po*Ao",
			Inputs: []working.Input{force("F", j.Wall), press("pi_", j.Inside), area("Ai", m.bars[a.Section].ai), press("po", j.Outside), area("Ao", m.bars[a.Section].ao)},
			Value:  working.Of(j.Effective), Source: lubinski,
		}, {
			Name: "balance of " + names.joint(k.index) + ", positive where it parts", Symbol: "P", Equation: "Fe + (pi_ - po)*As",
			Inputs: []working.Input{force("Fe", j.Effective), press("pi_", j.Inside), press("po", j.Outside), area("As", k.area)},
			Value:  working.Of(j.Balance), Source: "balance of the joint's upper half",
		}}...)
	case sealMark:
		s := &l.Seals[k.index]
		if s.Lost {
			return nil
		}
		return append([]working.Step{{
			Name: "ring of " + names.seal(k.index) + ", up positive", Symbol: "Fr", Equation: "pb*(Ap - Aob) - pa*(Ap - Aoa)",
			Inputs: []working.Input{press("pb", s.Below), press("pa", s.Above), area("Ap", k.area), area("Aob", m.bars[b.Section].ao), area("Aoa", m.bars[a.Section].ao)},
			Value:  working.Of(s.Ring), Source: "pressure on an area",
		}}, m.travelSteps(l, i, names)...)
	case plugMark, hungMark:
	}
	return nil
}

// compliance is a lengthening per force, written in the trade's units.
func compliance(perForce float64) working.Value {
	return working.In(unit.Length(perForce), unit.Inch/unit.Length(unit.PoundForce), "in/lbf")
}
