package flow

import "math"

// Colebrook returns Darcy's friction factor of turbulent Newtonian flow in a
// pipe of relative roughness ε/D by Colebrook and White's law,
//
//	1/√f = -2 log10( (ε/D)/3.7 + 2.51/(Re √f) )
//
// solved to 1e-12 from Re 4e3 on (1e-10 from 1e3): a start from a coarse
// logarithm, then Chebyshev's step and Newton's. Range: Re 4e3 to 1e8, ε/D 0 to
// 0.05. Against experiments with commercial pipe the chart made from it is good
// to ±15 % (White, Fluid Mechanics, 6.6). Below the range it is a number
// without meaning; NaN where Re isn't above 100 (to 1e20) or ε/D
// isn't from 0 to 1.
//
// Source: Colebrook, J. Inst. Civil Engineers 11 (1939) 133, Eq. 10.
func Colebrook(reynolds, relativeRoughness float64) DarcyFactor {
	if !turbulent(reynolds, relativeRoughness) {
		return DarcyFactor(math.NaN())
	}
	const k = 2 / math.Ln10
	a, b := relativeRoughness*(1/3.7), 2.51/reynolds
	// Solve F(x) = x + k ln(a + b x) = 0 for x = 1/√f, which lies between 3.5
	// and 13 over the range. The coarse start is within 0.05 of it.
	x := -k * coarse(a+8*b)
	x = -k * coarse(a+b*x)
	x = -k * coarse(a+b*x)
	// Chebyshev's step, of third order, with t = a + b x, q = b/t,
	// F' = 1 + k q = 1/g and F'' = -k q².
	t := a + b*x
	f, q, g := x+k*math.Log(t), b/t, t/(t+k*b)
	s := -f * g
	s += s * s * k * q * q * g / 2
	// Newton's from there. Its logarithm is that of t and ln(1+y) of a y
	// below 0.01, for which the series is shorter.
	y := q * s
	f += s + k*y*(1-y*(1.0/2-y*(1.0/3-y*(1.0/4-y/5))))
	x += s - f*g*(1+k*q*g*y)
	return DarcyFactor(1 / (x * x))
}

// coarse returns ln t to 0.03: the exponent and fraction bits of a float64 are
// its logarithm to base 2, but for the bend between the powers.
func coarse(t float64) float64 {
	return (float64(math.Float64bits(t))*0x1p-52 - 1022.957) * math.Ln2
}
