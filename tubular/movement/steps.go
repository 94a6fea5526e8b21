package movement

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

const (
	lubinski    = "Lubinski, Althouse & Logan 1962"
	hammerlindl = "Hammerlindl 1977, combination strings"
)

// Steps are the lines of the working, section by section from the bottom up as
// the forces build, then the packer. Lengths of change are in inches.
func (a Analysis) Steps() []working.Step {
	var steps []working.Step
	for k := len(a.Sections) - 1; k >= 0; k-- {
		mark := ""
		if len(a.Sections) > 1 {
			mark = fmt.Sprintf(", section %d", k+1)
		}
		steps = append(steps, a.Sections[k].steps(mark)...)
	}
	return append(steps, outcome(a.Movement, a.SlackOff, a.EndForce, a.PackerForce, a.TrueForce)...)
}

// Steps are the lines that add up the movement and the force at the packer.
// The terms themselves are sums over the nodes.
func (c *Case) Steps() []working.Step {
	if c == nil {
		return nil
	}
	return outcome(c.Movement, c.SlackOff, c.EndForce, c.PackerForce, c.TrueForce)
}

func outcome(m Movement, s Shortening, end, packer, total unit.Force) []working.Step {
	return []working.Step{
		{
			Name: "free movement", Symbol: "dL", Equation: "dL1 + dL2 + dL3 + dL4 + dL5",
			Inputs: []working.Input{input("dL1", inches(m.Piston)), input("dL2", inches(m.Buckling)), input("dL3", inches(m.Ballooning)), input("dL4", inches(m.Thermal)), input("dL5", inches(m.Friction))},
			Value:  inches(m.Total()), Source: lubinski + "; piston, buckling, ballooning, temperature, flow friction",
		},
		{
			Name: "seals without restraint, after slack-off", Symbol: "x", Equation: "dL - (dLs + dLb)",
			Inputs: []working.Input{input("dL", inches(m.Total())), input("dLs", inches(s.Stretch)), input("dLb", inches(s.Buckling))},
			Value:  inches(m.Total() - s.Total()), Source: lubinski,
		},
		{
			Name: "true force above the seals", Symbol: "F", Equation: "Fa + Fp",
			Inputs: []working.Input{input("Fa", working.Of(end)), input("Fp", working.Of(packer))},
			Value:  working.Of(total), Source: lubinski + "; Fp is the force that brings the seals to their stop",
		},
	}
}

func (s SectionMovement) steps(mark string) []working.Step {
	p, m := s.Section.Pipe, s.Movement
	e, as := working.Of(p.Material.Young), working.Of(p.SteelArea())
	ai, ao, l := working.Of(p.InnerArea()), working.Of(p.OuterArea()), working.Of(s.Length)
	return []working.Step{
		{
			Name: "piston effect" + mark, Symbol: "dL1", Equation: "dF*L/(E*As)",
			Inputs: []working.Input{input("dF", working.Of(s.PistonChange)), input("L", l), input("E", e), input("As", as)},
			Value:  inches(m.Piston), Source: lubinski + "; " + hammerlindl,
		},
		s.Initial.step(s, "dL2i", "buckling before"+mark),
		s.Final.step(s, "dL2f", "buckling after"+mark),
		{
			Name: "ballooning" + mark, Symbol: "dL3", Equation: "-2*nu*L*(Ai*dpi - Ao*dpo)/(E*As)",
			Inputs: []working.Input{input("nu", working.Number(p.Material.Poisson)), input("L", l), input("Ai", ai), input("dpi", working.Of(s.InsideChange)), input("Ao", ao), input("dpo", working.Of(s.OutsideChange)), input("E", e), input("As", as)},
			Value:  inches(m.Ballooning), Source: lubinski,
		},
		{
			Name: "temperature" + mark, Symbol: "dL4", Equation: "a*L*dT",
			Inputs: []working.Input{input("a", working.Of(p.Material.Expansion)), input("L", l), input("dT", working.Of(s.Warming))},
			Value:  inches(m.Thermal), Source: lubinski,
		},
		{
			Name: "flow friction" + mark, Symbol: "dL5", Equation: "(Fd + d*Ai*L/2)*L/(E*As)",
			Inputs: []working.Input{input("Fd", working.Of(s.DragBelow)), input("d", working.Of(s.FrictionChange)), input("Ai", ai), input("L", l), input("E", e), input("As", as)},
			Value:  inches(m.Friction), Source: lubinski,
		},
	}
}

// step is the buckling line for where the neutral point lies: below the
// section, in it, or above it.
func (b SectionBuckling) step(s SectionMovement, symbol, name string) working.Step {
	p := s.Section.Pipe
	step := working.Step{Name: name, Symbol: symbol, Value: inches(b.Shortening), Source: lubinski}
	r, e, i := input("r", working.Of((s.Section.Hole-p.OD)/2)), input("E", working.Of(p.Material.Young)), input("I", working.Of(p.SecondMoment()))
	ft, fb, l := input("Ft", working.Of(-b.Top)), input("Ff", working.Of(-b.Bottom)), input("L", working.Of(s.Length))
	switch {
	case b.Top >= 0 && b.Bottom >= 0:
		step.Name += ": none"
		step.Equation, step.Inputs = "0*max(Ft, Ff)", []working.Input{ft, fb}
	case b.Top < 0 && b.Bottom < 0:
		step.Name += ": whole length"
		step.Equation, step.Inputs = "-r*r*L*(Ft + Ff)/(8*E*I)", []working.Input{r, l, ft, fb, e, i}
	case b.Bottom < 0:
		w := input("w", working.In(b.Weight, unit.PoundPerInch, "lb/in"))
		step.Equation, step.Inputs = "-r*r*Ff*Ff/(8*E*I*w)", []working.Input{r, fb, e, i, w}
	default:
		w := input("w", working.In(b.Weight, unit.PoundPerInch, "lb/in"))
		step.Name += ": from the top"
		step.Equation, step.Inputs = "r*r*Ft*Ft/(8*E*I*w)", []working.Input{r, ft, e, i, w}
	}
	return step
}

func inches(l unit.Length) working.Value { return working.In(l, unit.Inch, "in") }

func input(symbol string, v working.Value) working.Input {
	return working.Input{Symbol: symbol, Value: v}
}

// Steps work the loads of buckling: those of a straight inclined hole, the one of
// a curved hole, or those of a vertical one.
func (c Confined) Steps() []working.Step {
	e, i := input("E", working.Of(c.Pipe.Material.Young)), input("I", working.Of(c.Pipe.SecondMoment()))
	w, r, θ := input("w", working.In(c.Weight, unit.PoundPerFoot, "lb/ft")), input("r", working.Of(c.Clearance())), input("θ", working.Of(c.Inclination))
	first := c.Sinusoidal()
	fs := input("Fs", working.Of(first))
	switch {
	case c.Build != 0 || c.Turn != 0:
		wc := working.In(c.Contact(-first), unit.PoundPerFoot, "lb/ft")
		return []working.Step{
			{Name: "contact at the sinusoidal load", Symbol: "wc", Equation: "sqrt(pow(w*sin(θ) + Fs*b, 2) + pow(Fs*t, 2))",
				Inputs: []working.Input{w, θ, fs, input("b", working.Of(c.Build)), input("t", working.Of(c.Turn))}, Value: wc, Source: "Johancsik, Friesen & Dawson 1984"},
			{Name: "sinusoidal load, which makes that contact", Symbol: "Fs", Equation: "sqrt(4*E*I*wc/r)",
				Inputs: []working.Input{e, i, input("wc", wc), r}, Value: fs.Value, Source: "He & Kyllingstad 1995"},
		}
	case math.Sin(float64(c.Inclination)) != 0:
		return []working.Step{
			{Name: "sinusoidal load", Symbol: "Fs", Equation: "2*sqrt(E*I*abs(w*sin(θ))/r)", Inputs: []working.Input{e, i, w, θ, r}, Value: fs.Value, Source: "Dawson & Paslay 1984"},
			{Name: "helix possible", Symbol: "Fh", Equation: "sqrt(2)*Fs", Inputs: []working.Input{fs}, Value: working.Of(c.HelicalLeast()), Source: "Chen, Lin & Cheatham 1990"},
			{Name: "helix full", Symbol: "Ff", Equation: "(2*sqrt(2) - 1)*Fs", Inputs: []working.Input{fs}, Value: working.Of(c.Helical()), Source: "Wu & Juvkam-Wold 1993"},
			{Name: "helix at the latest", Symbol: "Fm", Equation: "2*sqrt(2)*Fs", Inputs: []working.Input{fs}, Value: working.Of(c.HelicalMost()), Source: "Mitchell 1999"},
		}
	}
	return []working.Step{
		{Name: "vertical hole: bends", Symbol: "Fv", Equation: "1.94*pow(E*I*w*w, 1.0/3)", Inputs: []working.Input{e, i, w}, Value: working.Of(c.VerticalSinusoidal()), Source: "Lubinski 1950"},
		{Name: "vertical hole: helix", Symbol: "Fvh", Equation: "5.55*pow(E*I*w*w, 1.0/3)", Inputs: []working.Input{e, i, w}, Value: working.Of(c.VerticalHelical()), Source: "Wu 1992"},
	}
}

// Steps work pitch, shortening, contact and bending.
func (h Helix) Steps() []working.Step {
	e, i := input("E", working.Of(h.Pipe.Material.Young)), input("I", working.Of(h.Pipe.SecondMoment()))
	f, r := input("F", working.Of(h.Compression)), input("r", working.Of((h.Hole-h.Pipe.OD)/2))
	return []working.Step{
		{Name: "pitch", Symbol: "p", Equation: "pi*sqrt(8*E*I/F)", Inputs: []working.Input{e, i, f}, Value: working.Of(h.Pitch()), Source: lubinski},
		{Name: "shortening per length", Symbol: "ε", Equation: "-r*r*F/(4*E*I)", Inputs: []working.Input{r, f, e, i}, Value: working.Number(h.Strain()), Source: lubinski},
		{Name: "contact", Symbol: "W", Equation: "r*F*F/(4*E*I)", Inputs: []working.Input{r, f, e, i}, Value: working.Of(h.Contact()), Source: "Mitchell 1986; Wu & Juvkam-Wold 1993"},
		{Name: "bending stress", Symbol: "σb", Equation: "D*r*F/(4*I)", Inputs: []working.Input{input("D", working.Of(h.Pipe.OD)), r, f, i}, Value: working.Of(h.BendingStress()), Source: lubinski},
	}
}
