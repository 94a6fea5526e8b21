package drag

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// Capstan returns the pull that moves a weightless string around a bend.
//
//	F = F0*exp(μ*β)
//
// F0 is the tension at the far end, μ the friction factor, β the angle of the
// bend. Valid for tension.
//
// Source: Euler 1762; Eytelwein 1808.
func Capstan(far unit.Force, friction float64, bend unit.Angle) unit.Force {
	return unit.Force(float64(far) * math.Exp(friction*float64(bend)))
}

// Incline returns the change of axial force along a string in a straight
// inclined hole, from its lower to its upper end.
//
//	ΔF = w*L*(cosθ ± μ*sinθ)
//
// Plus is for a string that is pulled, minus for one that is run in. w is the
// buoyed weight per length.
//
// Range: any numbers; nothing is checked.
//
// Source: Coulomb friction on an inclined plane; Johancsik, Friesen & Dawson,
// JPT June 1984, Eq. 1 and 2 without bend.
func Incline(m Motion, weight unit.WeightPerLength, length unit.Length, inclination unit.Angle, friction float64) unit.Force {
	sin, cos := math.Sincos(float64(inclination))
	return unit.Force(float64(weight) * float64(length) * (cos + m.sign()*friction*sin))
}
