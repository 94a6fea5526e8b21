package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/tubular"
)

// useSteps are the lines of the limit that is used most, where it is: the load, the
// strength with wear and heat taken off, and the share.
func (m *MadeUp) useSteps(l *Loading) []working.Step {
	g := l.Limits.Governing()
	if g.Usage == 0 {
		return nil
	}
	n := m.used(l, g)
	if n == nil {
		return nil
	}
	left, err := m.sections[n.Section].Pipe.Less(m.sections[n.Section].Wear)
	if err != nil {
		return nil
	}
	var steps []working.Step
	h := 1.0
	at := " at " + n.MD.Rounded(6)
	if d := m.deratings[n.Section]; d != nil && n.Temperature.Kelvin() != 0 {
		if h, err = d.Factor(n.Temperature); err != nil {
			return nil
		}
		steps = append(steps, working.Step{
			Name: "yield strength left when hot" + at, Symbol: "h", Equation: "min(1, 1 - r*(T - T0))",
			Inputs: []working.Input{input("r", working.Of(d.Rate)), input("T", working.Temperature(n.Temperature)), input("T0", working.Temperature(d.From))},
			Value:  working.Number(h), Source: "derating as given",
		})
	}
	load := tubular.Load{Axial: n.True, Inside: n.Inside, Outside: n.Outside, Curvature: n.Curvature}
	num := func(symbol string, x float64) working.Input { return input(symbol, working.Number(x)) }
	press := func(symbol string, p unit.Pressure) working.Input { return input(symbol, working.Of(p)) }
	share := func(name, equation, source string, inputs ...working.Input) []working.Step {
		return append(steps, working.Step{Name: name + at, Symbol: "u", Equation: equation, Inputs: inputs, Value: working.Number(g.Usage), Source: source})
	}
	yield := press("Y", left.Material.Yield)
	switch g.Limit {
	case tubular.AxialLimit:
		return share("use of the body in tension and compression", "k*(abs(F)/As + E*abs(κ)*D/2)/(Y*h)", "API Bul 5C3 (1985), 2.1; beam bending",
			num("k", m.design.Axial), input("F", working.Of(n.True)), input("As", working.Of(left.SteelArea())), press("E", left.Material.Young),
			input("κ", working.Of(n.Curvature)), input("D", working.Of(left.OD)), yield, num("h", h))
	case tubular.BurstLimit:
		return share("use of the internal yield", "k*(pin - pout)/(pB*h)", "API Bul 5C3 (1985), 3.1.1",
			num("k", m.design.Burst), press("pin", n.Inside), press("pout", n.Outside), press("pB", left.InternalYield()), num("h", h))
	case tubular.CollapseLimit:
		hot := m.bodies[n.Section].Derated(h)
		σ := unit.Pressure(float64(n.True)/float64(left.SteelArea()) + float64(left.Material.Young)*math.Abs(float64(n.Curvature))*float64(left.OD)/2)
		steps = append(steps, working.Step{
			Name: "axial stress of the stretched side" + at, Symbol: "σ", Equation: "F/As + E*abs(κ)*D/2",
			Inputs: []working.Input{input("F", working.Of(n.True)), input("As", working.Of(left.SteelArea())), press("E", left.Material.Young),
				input("κ", working.Of(n.Curvature)), input("D", working.Of(left.OD))},
			Value: working.Of(σ), Source: "beam bending",
		})
		return share("use of the collapse resistance under that stress", "k*(pout - pin)/pc", "API TR 5C3 (2008), Addendum 2015",
			num("k", m.design.Collapse), press("pout", n.Outside), press("pin", n.Inside), press("pc", hot.Collapse(σ, n.Inside)))
	case tubular.TriaxialLimit:
		s := left.Stresses(load)
		steps = append(steps, s.Steps()...)
		return share("use of the yield strength by von Mises stress", "k*σv/(Y*h)", "von Mises 1913",
			num("k", m.design.Triaxial), press("σv", s.VonMises()), yield, num("h", h))
	case tubular.ConnectionLimit:
		return append(steps, m.connectionStep(n, g, h, at))
	}
	return nil
}

// used is the node that uses a limit as much as is told.
func (m *MadeUp) used(l *Loading, g Governing) *Node {
	for i := range l.Nodes {
		n := &l.Nodes[i]
		if n.MD != g.MD || m.between(i) {
			continue
		}
		u := [...]float64{n.Usage.Burst, n.Usage.Collapse, n.Usage.Axial, n.Usage.Triaxial, m.connects(n)}
		if g.Limit >= 0 && int(g.Limit) < len(u) && u[g.Limit] == g.Usage {
			return n
		}
	}
	return nil
}

// connects is how much of its connection a node uses.
func (m *MadeUp) connects(n *Node) float64 {
	h := 1.0
	if d := m.deratings[n.Section]; d != nil && n.Temperature.Kelvin() != 0 {
		h, _ = d.Factor(n.Temperature) // was checked when it was loaded
	}
	load := tubular.Load{Axial: n.True, Inside: n.Inside, Outside: n.Outside, Curvature: n.Curvature}
	return m.connections[n.Section].Usage(load, m.design, n.Usage.Triaxial, h)
}

// connectionStep is the rating of the connection that is used most. A rating that isn't known divides by nought, and
// one against the other way of loading is negative: neither is the use that governs.
func (m *MadeUp) connectionStep(n *Node, g Governing, h float64, at string) working.Step {
	c := &m.connections[n.Section]
	num := func(symbol string, x float64) working.Input { return input(symbol, working.Number(x)) }
	press := func(symbol string, p unit.Pressure) working.Input { return input(symbol, working.Of(p)) }
	force := func(symbol string, f unit.Force) working.Input { return input(symbol, working.Of(f)) }
	s := working.Step{Symbol: "u", Value: working.Number(g.Usage), Source: c.Source}
	if s.Source == "" {
		s.Source = "rating as given"
	}
	f, dp, d := float64(n.True), float64(n.Inside-n.Outside), &m.design
	is := func(x float64) bool { return math.Abs(x-g.Usage) <= 1e-9*g.Usage }
	switch {
	case is(d.Axial * f / float64(c.Tension) / h):
		s.Name, s.Equation = "use of the connection in tension"+at, "k*F/(T*h)"
		s.Inputs = []working.Input{num("k", d.Axial), force("F", n.True), force("T", c.Tension), num("h", h)}
	case is(-d.Axial * f / float64(c.Compression) / h):
		s.Name, s.Equation = "use of the connection in compression"+at, "-k*F/(C*h)"
		s.Inputs = []working.Input{num("k", d.Axial), force("F", n.True), force("C", c.Compression), num("h", h)}
	case is(d.Burst * dp / float64(c.Inside) / h):
		s.Name, s.Equation = "use of the connection by internal pressure"+at, "k*(pin - pout)/(pr*h)"
		s.Inputs = []working.Input{num("k", d.Burst), press("pin", n.Inside), press("pout", n.Outside), press("pr", c.Inside), num("h", h)}
	case is(-d.Collapse * dp / float64(c.Outside) / h):
		s.Name, s.Equation = "use of the connection by external pressure"+at, "k*(pout - pin)/(pr*h)"
		s.Inputs = []working.Input{num("k", d.Collapse), press("pout", n.Outside), press("pin", n.Inside), press("pr", c.Outside), num("h", h)}
	default:
		s.Name, s.Equation = "use of the connection's share of the triaxial limit"+at, "ub/q"
		s.Inputs = []working.Input{num("ub", n.Usage.Triaxial), num("q", c.Triaxial)}
	}
	return s
}
