package hydrostatics

import "math"

// gentle is how far the fractions below reach: within it they are as good as the
// functions they stand for, to a last place, in a fraction of the time. A column of
// liquid is always that gentle.
const gentle = 1.0 / 16

// shrink returns (1 − e^(−x))/x, and 1 at zero: with t = tanh(x/2), which is
// Lambert's continued fraction,
//
//	1 − e^(−x) = 2·t/(1 + t),  t = y/(1 + y²/(3 + y²/(5 + y²/7))),  y = x/2
func shrink(x float64) float64 {
	if math.Abs(x) > gentle {
		return -math.Expm1(-x) / x
	}
	y := x / 2
	y2 := y * y
	n := 105 + 10*y2
	return n / (105 + y2*(45+y2) + y*n)
}

// exp returns e^x as (1 + t)/(1 − t) of the same fraction.
func exp(x float64) float64 {
	if !(math.Abs(x) <= gentle) {
		return math.Exp(x)
	}
	y := x / 2
	y2 := y * y
	n, d := y*(105+10*y2), 105+y2*(45+y2)
	return (d + n) / (d - n)
}

// swell returns −ln(1 − x)/x, and 1 at zero: Gauss's continued fraction,
//
//	−ln(1 − x) = 2·artanh z,  artanh z = z/(1 − z²/(3 − 4z²/(5 − 9z²/(7 − 16z²/9)))),  z = x/(2 − x)
//
// worked out with z's numerator and denominator, so that it divides once.
func swell(x float64) float64 {
	if math.Abs(x) > gentle {
		return -math.Log1p(-x) / x
	}
	w := 2 - x
	w2, x2 := w*w, x*x
	n := w2*(945*w2-735*x2) + 64*x2*x2
	d := w2*(945*w2-1050*x2) + 225*x2*x2
	return 2 * n / (w * d)
}
