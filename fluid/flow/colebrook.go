package flow

import "math"

// Colebrook returns Darcy's friction factor of turbulent Newtonian flow in a
// pipe of relative roughness ε/D by Colebrook and White's law,
//
//	1/√f = -2 log10( (ε/D)/3.7 + 2.51/(Re √f) )
//
// solved to 1e-12: a start from a coarse logarithm and two Halley steps. Range: Re 4e3
// to 1e8, ε/D 0 to 0.05. Against experiments with commercial pipe the law is
// good to about 5 to 10 % (White, Fluid Mechanics: Moody's chart ±15 %). Below
// the range it is a number without meaning; NaN where Re isn't above 100 or ε/D
// is negative.
//
// Source: Colebrook, J. Inst. Civil Engineers 11 (1939) 133, Eq. 10.
func Colebrook(reynolds, relativeRoughness float64) float64 {
	if !(reynolds > 100 && relativeRoughness >= 0 && relativeRoughness <= 1) {
		return math.NaN()
	}
	const k = 2 / math.Ln10
	a, b := relativeRoughness*(1/3.7), 2.51/reynolds
	// Solve F(x) = x + k ln(a + b x) = 0 for x = 1/√f, which lies between 3.5
	// and 13 over the range. With t = a + b x, F' = 1 + k b/t and
	// F'' = -k b²/t². Halley's error is some 1e-4 of its step cubed: the second
	// step leaves less than 1e-14.
	x := -k * coarse(a+8*b)
	x = -k * coarse(a+b*x)
	for range 2 {
		t := a + b*x
		f := x + k*math.Log(t)
		d := t + k*b
		x -= f * d * t / (d*d + f*k*b*b/2)
	}
	return 1 / (x * x)
}

// coarse returns ln t to 0.03: the exponent and fraction bits of a float64 are
// its logarithm to base 2, but for the bend between the powers.
func coarse(t float64) float64 {
	return (float64(math.Float64bits(t))*0x1p-52 - 1022.957) * math.Ln2
}
