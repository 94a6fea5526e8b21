package movement

import (
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

// Ballooning returns the change of length of a pipe by pressure on its walls
// alone: lengthening positive. Pressure inside widens and shortens the pipe.
//
//	ΔL = -2*ν*L*(Ai*Δpi - Ao*Δpo)/(E*As)
//
// Δpi and Δpo are the changes of mean pressure inside and outside over the
// length. The ends don't count here: see End.
//
// Range: any pressures and length; infinite or NaN for a pipe without wall or
// modulus.
//
// Source: Lubinski, Althouse & Logan, JPT June 1962, ΔL3, with mean pressures
// in place of surface pressures and densities; As = Ao - Ai turns their
// R = OD/ID into areas.
func Ballooning(pipe tubular.Pipe, length unit.Length, inside, outside unit.Pressure) unit.Length {
	ai, ao, as := float64(pipe.InnerArea()), float64(pipe.OuterArea()), float64(pipe.SteelArea())
	ν, e := pipe.Material.Poisson, float64(pipe.Material.Young)
	return unit.Length(-2 * ν * float64(length) * (ai*float64(inside) - ao*float64(outside)) / (e * as))
}

// FlowDrag returns the change of length by the drag of fluid that flows down
// inside a pipe whose lower end is free to move: lengthening positive.
//
//	ΔL = δ*Ai*L²/(2*E*As)
//
// δ is the pressure lost to friction per length, positive for flow down. The
// ballooning that the loss of pressure causes is not in it.
//
// Range: any length and gradient; infinite or NaN for a pipe without wall or
// modulus.
//
// Source: Lubinski, Althouse & Logan, JPT June 1962: their term
// (1 + 2ν)*δ/(2ν) in ΔL3 less its part 2ν, which is ballooning.
func FlowDrag(pipe tubular.Pipe, length unit.Length, friction unit.Gradient) unit.Length {
	l := float64(length)
	return unit.Length(float64(friction) * float64(pipe.InnerArea()) * l * l /
		(2 * float64(pipe.Material.Young) * float64(pipe.SteelArea())))
}

// HelicalShortening returns the change of length by helical buckling of a
// section of uniform pipe with a straight axis and no critical load (vertical):
// never positive.
//
//	ΔL = -r²/(4*E*I) * ∫ max(0, -Fe) ds
//
// Fe is the effective axial force, linear from its value at the top to that at
// the bottom of the section. Where the neutral point lies in the section this
// is Lubinski's -r²*Ff²/(8*E*I*w); where the whole section is buckled it is his
// formula with the factor (L*w/Ff)*(2 - L*w/Ff).
//
// Range: any forces; length and clearance from zero up, which aren't checked.
//
// Source: Lubinski, Althouse & Logan, JPT June 1962, ΔL2; Hammerlindl, JPT
// February 1977, for sections of a tapered string.
func HelicalShortening(pipe tubular.Pipe, length, clearance unit.Length, top, bottom unit.Force) unit.Length {
	r, e, i := float64(clearance), float64(pipe.Material.Young), float64(pipe.SecondMoment())
	return unit.Length(-r * r / (4 * e * i) * float64(length) * positivePart(-float64(top), -float64(bottom)))
}

// positivePart is the mean of max(0, x) where x runs straight from a to b.
func positivePart(a, b float64) float64 {
	switch {
	case a >= 0 && b >= 0:
		return (a + b) / 2
	case a <= 0 && b <= 0:
		return 0
	case a > 0:
		return a * a / (a - b) / 2
	}
	return b * b / (b - a) / 2
}

// positiveShare is the share of a length on which x is positive.
func positiveShare(a, b float64) float64 {
	switch {
	case a > 0 && b > 0:
		return 1
	case a <= 0 && b <= 0:
		return 0
	case a > 0:
		return a / (a - b)
	}
	return b / (b - a)
}
