package tubular

import "completion.example/hydrostatics/unit"

// Collapse returns the least outside minus inside pressure that collapses the
// pipe under an axial stress and an inside pressure, by the addendum of 2015: see
// Pipe.CollapseUnderLoad. Below a remaining yield strength of 24,000 psi, where
// API gives nothing and the pipe is near its axial yield, it goes down to zero in
// proportion to it: this library's own continuation.
//
//	pc = collapse of a pipe of EquivalentYield(Y, σa + pi)
//
// Range: any stress and pressure: zero from the yield strength on, and
// compression earns nothing.
//
// Source: Pipe.CollapseUnderLoad.
func (b *Body) Collapse(axialStress, inside unit.Pressure) unit.Pressure {
	s := float64(axialStress + inside)
	if s <= 0 {
		return unit.Pressure(b.collapse)
	}
	const least = float64(leastYield / unit.PSI)
	left, share := b.yieldPSI*yieldLeft(s*b.perYield), unit.PSI
	if left < least {
		left, share = least, unit.Pressure(left/least)*unit.PSI
	}
	return share * unit.Pressure(b.slender.pressure(left))
}

// slender is one slenderness, prepared for the collapse of many yield strengths:
// CollapseCurve the other way round.
type slender struct {
	x, perX float64
	yield   float64 // collapse of the yield regime over the yield strength
	elastic float64 // psi
}

func slenderness(x float64) slender {
	return slender{x: x, perX: 1 / x, yield: 2 * (x - 1) / (x * x), elastic: elasticCollapse.In(unit.PSI) / (x * (x - 1) * (x - 1))}
}

// pressure is CollapseCurve.Pressure, of a yield strength in psi. Neighbouring
// formulas meet where one regime gives way to the next, so that comparing them
// tells which governs, and the limits needn't be known; only the elastic curve is
// touched, not crossed.
func (c *slender) pressure(Y float64) float64 {
	A, B, C := collapseCoefficients(Y)
	plastic := Y*(A*c.perX-B) - C
	if thick := c.yield * Y; thick <= plastic {
		return thick
	}
	if 3*B*c.x > 2*A+B {
		return c.elastic
	}
	return max(plastic, transitionProduct(A, B)*(A*c.perX-B))
}
