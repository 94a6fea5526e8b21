package movement

import (
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Names are what the lines of a working call held places, joints and seals, in the
// order of the assembly; those that are left out go by their numbers, from 1.
type Names struct {
	Holds  []string `json:"holds"`
	Joints []string `json:"joints"`
	Seals  []string `json:"seals"`
}

func named(all []string, i int, kind string) string {
	if i < len(all) && all[i] != "" {
		return all[i]
	}
	return fmt.Sprintf("%s %d", kind, i+1)
}

func (n Names) hold(i int) string  { return named(n.Holds, i, "held place") }
func (n Names) joint(i int) string { return named(n.Joints, i, "joint") }
func (n Names) seal(i int) string  { return named(n.Seals, i, "seal") }

// ends are the names of a segment's ends.
func (m *MadeUp) endName(mark int, names Names) string {
	switch {
	case mark < 0:
		return "the top"
	case mark >= len(m.marks):
		return "the lower end"
	}
	k := &m.marks[mark]
	switch k.kind {
	case holdMark:
		return names.hold(k.index)
	case jointMark:
		return names.joint(k.index)
	case sealMark:
		return names.seal(k.index)
	case plugMark, hungMark:
	}
	return unit.Length(k.md).Rounded(6)
}

// segmentSteps are those of the force in a segment: what it would be with nothing
// holding the string, and what holding adds.
func (m *MadeUp) segmentSteps(l *Loading, i int, names Names) []working.Step {
	g := &l.segments[i]
	if !m.fixedAt(g.lower) {
		return nil
	}
	force := func(symbol string, f unit.Force) working.Input { return input(symbol, working.Of(f)) }
	name := m.endName(g.lower, names)
	_, to := m.reach(g)
	from, end, t := m.termsAtRest(l, to)
	n := &l.Nodes[from]
	bar := &m.bars[n.Section]
	var steps []working.Step
	where := "what a joint left"
	if from == len(l.Nodes)-1 {
		where = "the lower end"
		steps = append(steps, working.Step{
			Name: "wall force at the lower end", Symbol: "F0", Equation: "pi_*Ai - po*Ao",
			Inputs: []working.Input{input("pi_", working.Of(n.Inside)), input("Ai", working.Of(unit.Area(bar.ai))), input("po", working.Of(n.Outside)), input("Ao", working.Of(unit.Area(bar.ao)))},
			Value:  working.Of(end), Source: "pressure on the end",
		})
	}
	drag := unit.Force(0)
	if i == 0 {
		drag = m.dragged(l, &l.conditions, to)
	}
	rest := l.Nodes[to].True - unit.Force(g.force) - drag
	steps = append(steps, working.Step{
		Name: "wall force above " + name + " if nothing held it, from " + where + " up", Symbol: "Fr", Equation: "F0 + W + Fs + Fr_ + Fp + Fh + Ff + Fd",
		Inputs: []working.Input{force("F0", end), force("W", t.Weight), force("Fs", t.Shoulders), force("Fr_", t.Rings), force("Fp", t.Plugs),
			force("Fh", t.Hung), force("Ff", t.Flow), force("Fd", t.Seals)},
		Value:  working.Of(rest),
		Source: "equilibrium of the string; end, weight in air, shoulders, rings of seals and of places that hold, plugs, hung loads, flow, seal friction",
	})
	switch {
	case g.fitted:
		steps = append(steps, m.fitStep(g))
	case i == 0 && l.Top != AtHanger:
		top := l.Nodes[0].True - unit.Force(g.force)
		steps = append(steps, working.Step{
			Name: "force that the hook adds", Symbol: "f", Equation: "R - block + cap - Ft0",
			Inputs: []working.Input{force("R", l.conditions.Reading), force("block", unit.Force(m.block)), force("cap", l.Cap), force("Ft0", top)},
			Value:  working.Of(unit.Force(g.force)), Source: "weight indicator less block, more what a closed top is lifted by, less what hangs there with its drag",
		})
	case m.partedAt(g.upper):
		k := &m.marks[g.upper]
		b := &l.Nodes[k.element+1]
		steps = append(steps, working.Step{
			Name: "force below " + m.endName(g.upper, names) + ", which has parted", Symbol: "f", Equation: "-As*(pi_ - po) - Fe0",
			Inputs: []working.Input{input("As", working.Of(unit.Area(k.area))), input("pi_", working.Of(b.Inside)), input("po", working.Of(b.Outside)), force("Fe0", b.Effective-unit.Force(g.force))},
			Value:  working.Of(unit.Force(g.force)), Source: "pressures on the joint's lower half, less the effective force if nothing held it",
		})
	}
	return append(steps, working.Step{
		Name: "wall force above " + name, Symbol: "Fa", Equation: "Fr + f + D",
		Inputs: []working.Input{force("Fr", rest), force("f", unit.Force(g.force)), force("D", drag)},
		Value:  working.Of(l.Nodes[to].True), Source: "what it would be, what holding or pull adds, and drag that has come so deep",
	})
}

// termsAtRest adds up the wall force at a node with nothing held, from the lower end
// of the string, or from the uppermost joint below the node that has parted: there
// nothing holds it, and no drag of the hook's comes so deep.
func (m *MadeUp) termsAtRest(l *Loading, to int) (from int, end unit.Force, t Terms) {
	from = len(l.Nodes) - 1
	for i := range m.marks {
		if k := &m.marks[i]; k.kind == jointMark && k.element >= to && l.Joints[k.index].Parted {
			from = k.element
			break
		}
	}
	return from, l.Nodes[from].True, m.termsFrom(l, from, to)
}

// termsFrom are the terms by which the wall force grows from a node up to another;
// places that hold count as if they didn't.
func (m *MadeUp) termsFrom(l *Loading, from, to int) (t Terms) {
	c := &l.conditions
	first := &l.segments[0]
	reach := len(m.elements)
	if first.lower < len(m.marks) {
		reach = m.marks[first.lower].element
	}
	mark := len(m.marks) - 1
	for i := from - 1; i >= to; i-- {
		a, b := &l.Nodes[i], &l.Nodes[i+1]
		bar := &m.bars[a.Section]
		for mark >= 0 && m.marks[mark].element > i {
			mark--
		}
		if mark >= 0 && m.marks[mark].element == i {
			before := t.Seals
			m.addStep(&t, c, &m.marks[mark], a, b)
			if c.Top != AtHanger && i >= reach {
				t.Seals = before // what is held doesn't slide
			}
			continue
		}
		if a.Section != b.Section {
			lower := &m.bars[b.Section]
			t.Shoulders += unit.Force(float64(a.Inside)*(bar.ai-lower.ai) - float64(a.Outside)*(bar.ao-lower.ao))
			continue
		}
		t.Weight += unit.Force(bar.ws * m.elements[i].drop)
		t.Flow += unit.Force(m.lost(c.Friction, i)*bar.ai + m.lost(c.OutsideFriction, i)*bar.outerDrag)
		if i < reach {
			t.Drag += m.dragged(l, c, i) - m.dragged(l, c, i+1)
		}
	}
	return t
}

// jointStep is the wall force above a joint, from the lower end of its length up.
func (m *MadeUp) jointStep(l *Loading, mark int, names Names) []working.Step {
	for i := range l.segments {
		g := &l.segments[i]
		_, to := m.reach(g)
		at := m.marks[mark].element
		if at > to {
			continue
		}
		t := m.termsFrom(l, to, at)
		end := l.Nodes[to].True
		force := func(symbol string, f unit.Force) working.Input { return input(symbol, working.Of(f)) }
		return []working.Step{{
			Name: "wall force above " + names.joint(m.marks[mark].index) + ", from " + m.endName(g.lower, names) + " up", Symbol: "F",
			Equation: "Fa + W + Fs + Fr + Fp + Fh + Ff + Fd + D",
			Inputs: []working.Input{force("Fa", end), force("W", t.Weight), force("Fs", t.Shoulders), force("Fr", t.Rings), force("Fp", t.Plugs),
				force("Fh", t.Hung), force("Ff", t.Flow), force("Fd", t.Seals), force("D", t.Drag)},
			Value: working.Of(l.Nodes[at].True), Source: "equilibrium of the string; wall force there, weight in air, shoulders, seal rings, plugs, hung loads, flow, seal friction, drag",
		}}
	}
	return nil
}

// travelSteps are how far a seal has moved, cause by cause, and what is left of its
// way.
func (m *MadeUp) travelSteps(l *Loading, mark int, names Names) []working.Step {
	k := &m.marks[mark]
	x, seal, name := &l.Seals[k.index], &m.seals[k.index], names.seal(k.index)
	g := &l.segments[slices.IndexFunc(l.segments, func(s segment) bool { return mark < s.to })]
	var sum totals
	weighed, held := 0.0, 0.0
	for i := g.from; i <= mark; i++ {
		s := &l.spans[i]
		sum.piston += s.change.piston
		sum.buckling += s.change.buckling
		sum.ballooning += s.change.ballooning
		sum.thermal += s.change.thermal
		sum.friction += s.change.friction
		weighed += s.weighed
		held += s.held
	}
	around := unit.Length(0)
	if l.conditions.Around != nil {
		around = l.conditions.Around(seal.MD)
	}
	dl := func(symbol string, x float64) working.Input {
		if math.Abs(x) < 1e-12 { // m: what sums over the nodes are rounded to
			x = 0
		}
		return input(symbol, inches(unit.Length(x)))
	}
	steps := []working.Step{{
		Name: "travel of " + name + " since landing, down positive", Symbol: "x", Equation: "xt + dL1 + dL2 + dL3 + dL4 + dL5 + dLw + dLf - xo",
		Inputs: []working.Input{dl("xt", g.top), dl("dL1", sum.piston), dl("dL2", sum.buckling), dl("dL3", sum.ballooning), dl("dL4", sum.thermal),
			dl("dL5", sum.friction), dl("dLw", weighed), dl("dLf", held), dl("xo", float64(around))},
		Value:  inches(x.Travel),
		Source: lubinski + "; from " + m.endName(g.upper, names) + " down: its own movement, piston, buckling, ballooning, temperature, flow, weight and pull, what holds it; less what it is sealed in",
	}}
	if seal.Up != 0 && x.Engaged > 0 && (seal.Length == 0 || x.Engaged < seal.Length) {
		steps = append(steps, working.Step{
			Name: "way up that is left to " + name, Symbol: "e", Equation: "Up + x", Inputs: []working.Input{input("Up", working.Of(seal.Up)), input("x", inches(x.Travel))},
			Value: inches(x.Engaged), Source: "definition",
		})
	}
	if seal.Down != 0 {
		steps = append(steps, working.Step{
			Name: "way down that is left to " + name, Symbol: "d", Equation: "Down - x", Inputs: []working.Input{input("Down", working.Of(seal.Down)), input("x", inches(x.Travel))},
			Value: inches(x.ToShoulder), Source: "definition",
		})
	}
	return steps
}
