package main

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/valve/sequence"
)

// gasIn says what gas stands in a compartment at the end of a step.
func (u reader) gasIn(g sequence.GasAt) string {
	text := fmt.Sprintf("no %s is left in %s", g.Fluid, g.Compartment)
	if g.Depth > 0 {
		text = fmt.Sprintf("%s in %s down to %s", g.Fluid, g.Compartment, u.of(g.Depth))
		if g.Shut {
			text += ", shut in with " + u.of(g.Pressure) + " at its top"
		}
	}
	switch {
	case g.In > 0:
		text += "; " + u.gas(g.In) + " let in, " + u.surfaceConditions()
	case g.In < 0:
		text += "; " + u.gas(-g.In) + " let out, " + u.surfaceConditions()
	}
	return text
}

// gas is a volume at surface conditions, as the trade writes it.
func (u reader) gas(v unit.Volume) string {
	if u.symbol(volume) == "bbl" {
		return fmt.Sprintf("%.4g Mscf", v.In(unit.CubicFoot)/1000)
	}
	return u.of(v)
}

// surfaceConditions are what volumes of gas are counted at: 60 degF and one standard
// atmosphere.
func (u reader) surfaceConditions() string {
	return "counted at " + u.as(unit.Fahrenheit(60), display.Temperature) + " and " + u.Significant(unit.Atmosphere, pressure, 6) + " absolute"
}

// level says where a column that has fallen stands.
func (u reader) level(l sequence.LevelAt) string {
	at := u.of(l.Depth) + " MD"
	if l.TVD != l.Depth {
		at += " (" + u.of(l.TVD) + " TVD)"
	}
	text := fmt.Sprintf("%s: level stands at %s", l.Compartment, at)
	if l.Falls {
		text = fmt.Sprintf("%s: level falls to %s", l.Compartment, at)
		if l.Lost > 0 && l.Into != "" {
			text += fmt.Sprintf("; %s of %s lost into %s", u.size(l.Lost), l.Fluid, l.Into)
		}
	}
	switch {
	case l.Filled:
		text += "; filled again"
	case l.Fill > 0:
		text += "; " + u.size(l.Fill) + " fill it to surface"
	}
	return text
}
