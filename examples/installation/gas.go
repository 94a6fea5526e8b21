package main

import (
	"fmt"

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
		text += "; " + u.of(g.In) + " let in, " + surfaceConditions
	case g.In < 0:
		text += "; " + u.of(-g.In) + " let out, " + surfaceConditions
	}
	return text
}

// surfaceConditions are what volumes of gas are counted at.
const surfaceConditions = "counted at 60 degF and 14.696 psia"
