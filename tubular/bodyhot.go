package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// Derated returns the body with a share of its yield strength, as Derating.Factor
// gives it for a temperature: the same as preparing Pipe.At, quicker. A share of 1
// changes nothing.
//
//	Y(T) = k·Y
//
// Range: a share above 0, to 1; it isn't checked.
//
// Source: every rating in terms of the yield strength, see Pipe.Prepare.
func (b *Body) Derated(share float64) Body {
	hot := *b
	if share == 1 {
		return hot
	}
	hot.perYield /= share
	hot.yieldPSI *= share
	hot.perBurst /= share
	hot.collapse = float64(unit.PSI) * hot.slender.pressure(hot.yieldPSI)
	return hot
}

// UsageBent is Usage with the tension of bending in the collapse as well: the
// stress of the outer fibre on the stretched side takes the place of Fa/As.
//
//	collapse   f (po - pi) / collapse(Fa/As + E κ ro, pi)
//
// A ring that is stretched on one side collapses later than one that is stretched
// all around, so that this is on the safe side.
//
// Range: as Usage.
//
// Source: as Usage; common practice for the bending.
func (b *Body) UsageBent(l Load, f DesignFactors) Usage {
	return b.usage(l, f, float64(l.Axial)*b.perSteel+b.young*math.Abs(float64(l.Curvature))*b.ro)
}
