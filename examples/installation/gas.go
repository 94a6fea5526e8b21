package main

import (
	"fmt"

	"completion.example/hydrostatics/unit"
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
		text += "; " + u.gas(g.In) + " let in, " + surfaceConditions
	case g.In < 0:
		text += "; " + u.gas(-g.In) + " let out, " + surfaceConditions
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

// surfaceConditions are what volumes of gas are counted at.
const surfaceConditions = "counted at 60 degF and 14.696 psia"

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
