package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/tubular"
)

// Top says how the string was held at surface while the packer was set.
type Top uint8

// Ways to hold the top of the string.
const (
	// Landed is a string in its hanger, in the slips or on a block that stands
	// still: its top doesn't move.
	Landed Top = iota
	// Compensated is a string on a hook that holds its load and lets the top
	// move, and that is landed only after the pressure is off.
	Compensated
)

// LockIn is a string, closed below, that a packer is set on with pressure.
type LockIn struct {
	Pipe    tubular.Pipe
	Length  unit.Length   // from the hanger to the packer
	Inside  unit.Pressure // applied in the tubing when the slips bite, above what stands there
	Outside unit.Pressure // applied on the annulus at the same moment
	Top     Top
}

// Locked is what a string keeps when the setting pressure is bled off.
type Locked struct {
	EndLoad    unit.Force // of the pressures on the closed end, while they are on
	Ballooning unit.Force // what the pressures on the wall are worth, as a force
	Tension    unit.Force // locked in after the bleed-off: the packer is pulled up

	Stretch unit.Length // of the free string at the moment of setting

	in LockIn
}

// Locked returns the force that stays between hanger and packer once the
// pressure that set the packer is bled off.
//
//	F(end)  = pi Ai - po Ao
//	F(ball) = -2 ν (pi Ai - po Ao)
//	F       = (1 - 2 ν) (pi Ai - po Ao)       top landed
//	ΔL      = F L / (E As)                    at the moment of setting
//
// The closed end lengthens the free string, ballooning takes a part of it back;
// the packer sets on the string so stretched, and holds it there. So pressure in
// the tubing leaves tension, which pulls the packer up with 40 % of p Ai for
// steel; pressure on the annulus would leave compression. A string on a
// compensated hook keeps none of it, because its top came down on the way.
//
// The wall stresses are Lamé's, whose sum is the same at every radius, so the
// result is exact for a thick wall. Friction on the way is left out: it keeps a
// part of the stretch from ever reaching the packer.
//
// Errors name every field out of range. Source: Hooke and Lamé; Lubinski,
// Althouse and Logan 1962 for the two terms.
func (l LockIn) Locked() (Locked, error) {
	var f faults
	f.include("LockIn.Pipe", l.Pipe.Validate())
	positive(&f, "LockIn.Length", l.Length)
	notNegative(&f, "LockIn.Inside", l.Inside)
	notNegative(&f, "LockIn.Outside", l.Outside)
	if l.Top > Compensated {
		f.add("LockIn.Top = %d: want Landed or Compensated", l.Top)
	}
	if err := f.err(); err != nil {
		return Locked{}, err
	}
	Ai, Ao := float64(l.Pipe.InnerArea()), float64(l.Pipe.OuterArea())
	E, As, ν := float64(l.Pipe.Material.Young), float64(l.Pipe.SteelArea()), l.Pipe.Material.Poisson
	end := float64(l.Inside)*Ai - float64(l.Outside)*Ao
	ball := -2 * ν * end
	r := Locked{
		EndLoad:    unit.Force(end),
		Ballooning: unit.Force(ball),
		Stretch:    unit.Length((end + ball) * float64(l.Length) / (E * As)),
		in:         l,
	}
	if l.Top == Landed {
		r.Tension = unit.Force(end + ball)
	}
	return r, finiteResult("locked-in force", end, ball, float64(r.Stretch))
}

// Steps works the result.
func (l Locked) Steps() []working.Step {
	pipe := l.in.Pipe
	steps := []working.Step{{
		Name: "end load", Symbol: "Fe", Equation: "p_i*Ai - p_o*Ao",
		Inputs: []working.Input{
			{Symbol: "p_i", Value: working.Of(l.in.Inside)}, {Symbol: "Ai", Value: working.Of(pipe.InnerArea())},
			{Symbol: "p_o", Value: working.Of(l.in.Outside)}, {Symbol: "Ao", Value: working.Of(pipe.OuterArea())},
		},
		Value: working.Of(l.EndLoad), Source: "pressure on a closed end",
	}, {
		Name: "ballooning", Symbol: "Fb", Equation: "-2*ν*Fe",
		Inputs: []working.Input{
			{Symbol: "ν", Value: working.Number(pipe.Material.Poisson)}, {Symbol: "Fe", Value: working.Of(l.EndLoad)},
		},
		Value: working.Of(l.Ballooning), Source: "Lamé; Lubinski et al. 1962",
	}, {
		Name: "stretch while setting", Symbol: "dL", Equation: "(Fe + Fb)*L/(E*As)",
		Inputs: []working.Input{
			{Symbol: "Fe", Value: working.Of(l.EndLoad)}, {Symbol: "Fb", Value: working.Of(l.Ballooning)},
			{Symbol: "L", Value: working.Of(l.in.Length)}, {Symbol: "E", Value: working.Of(pipe.Material.Young)},
			{Symbol: "As", Value: working.Of(pipe.SteelArea())},
		},
		Value: working.In(l.Stretch, unit.Inch, "in"), Source: "Hooke",
	}}
	if l.in.Top == Landed {
		steps = append(steps, working.Step{
			Name: "tension locked in", Symbol: "F", Equation: "Fe + Fb",
			Inputs: []working.Input{
				{Symbol: "Fe", Value: working.Of(l.EndLoad)}, {Symbol: "Fb", Value: working.Of(l.Ballooning)},
			},
			Value: working.Of(l.Tension), Source: "same strain before and after the bleed-off",
		})
	}
	return steps
}
