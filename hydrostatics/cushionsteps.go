package hydrostatics

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// LengthSteps shows the working of what Length answered, from surface down: the
// level in closed form where both densities are constant, else by mean ones.
func (c Cushion) LengthSteps(a CushionAnswer) []working.Step {
	s := c.inputs(a)
	steps := []working.Step{s.wanted(c)}
	if s.constant && a.LevelTVD > 0 {
		steps = append(steps, s.step("depth of the light fluid", "L", "(ps+rh*g*h-pw)/((rh-rl)*g)", working.Of(a.LevelTVD), s.ps, s.rh, s.h, s.pw, s.rl))
	}
	if a.LevelTVD > 0 && c.Light != nil {
		steps = append(steps, s.step("pressure where light meets heavy", "pc", "ps+rl*g*L", working.Of(a.Interface), s.ps, s.rl, s.l))
	}
	if a.LevelTVD < c.Formation.TVD {
		steps = append(steps, s.step("pressure at the formation", "p", "pc+rh*g*(h-L)", working.Of(a.Well), s.pc, s.rh, s.h, s.l))
	}
	return steps
}

// PressureSteps shows the working of what Pressure answered, from the formation
// up; where a density isn't constant, by its mean.
func (c Cushion) PressureSteps(a CushionAnswer) []working.Step {
	s := c.inputs(a)
	steps := []working.Step{s.wanted(c)}
	if a.LevelTVD < c.Formation.TVD {
		steps = append(steps, s.step("pressure where light meets heavy", "pc", "pw-rh*g*(h-L)", working.Of(a.Interface), s.pw, s.rh, s.h, s.l))
	}
	if a.LevelTVD > 0 && c.Light != nil {
		steps = append(steps, s.step("surface pressure", "ps", "pc-rl*g*L", working.Of(a.Surface), s.pc, s.rl, s.l))
	}
	return steps
}

// cushionInputs are what the steps of a cushion are made of.
type cushionInputs struct {
	ps, pc, pw, h, l, rl, rh working.Input
	constant                 bool // both densities, and they differ
}

func (c Cushion) inputs(a CushionAnswer) cushionInputs {
	light, lightConstant := unit.Density(0), true
	if c.Light != nil {
		light, lightConstant = uniform(c.Light)
	}
	heavy, heavyConstant := uniform(c.Heavy)
	constant := lightConstant && heavyConstant && heavy != light
	if !lightConstant && a.LevelTVD > 0 {
		light = Density(GradientOf(a.Interface-a.Surface, a.LevelTVD))
	}
	if below := c.Formation.TVD - a.LevelTVD; !heavyConstant && below > 0 {
		heavy = Density(GradientOf(a.Well-a.Interface, below))
	}
	return cushionInputs{
		ps: working.Input{Symbol: "ps", Value: working.Of(a.Surface)},
		pc: working.Input{Symbol: "pc", Value: working.Of(a.Interface)},
		pw: working.Input{Symbol: "pw", Value: working.Of(c.well())},
		h:  working.Input{Symbol: "h", Value: working.Of(c.Formation.TVD)},
		l:  working.Input{Symbol: "L", Value: working.Of(a.LevelTVD)},
		rl: working.Input{Symbol: "rl", Value: working.Of(light)},
		rh: working.Input{Symbol: "rh", Value: working.Of(heavy)}, constant: constant,
	}
}

func (s cushionInputs) wanted(c Cushion) working.Step {
	return s.step("pressure wanted at the formation", "pw", "pf-dp", working.Of(c.well()),
		working.Input{Symbol: "pf", Value: working.Of(c.Formation.Pressure)}, working.Input{Symbol: "dp", Value: working.Of(c.Underbalance)})
}

func (s cushionInputs) step(name, symbol, equation string, v working.Value, inputs ...working.Input) working.Step {
	return working.Step{Name: name, Symbol: symbol, Equation: equation, Inputs: inputs, Value: v, Source: "balance at the formation"}
}
