package hydrostatics

import "math"

// Collocation at the Chebyshev points of the second kind,
//
//	xj = −cos(π·j/8), j = 0 … 8
//
// A density given at these nine points of an interval is taken for the
// polynomial through them: its integral up to each point is the product with
// collocated, and its Chebyshev series says by its last terms how well the
// polynomial fits.
//
// Source: Clenshaw and Curtis, Numerische Mathematik 2 (1960) 197; Trefethen,
// Approximation Theory and Approximation Practice, 2013, ch. 3 and 19.
const degree = 8

// chebyshev are (1 + xj)/2, the points as shares of the interval.
var chebyshev = [degree + 1]float64{
	0, 0.03806023374435663, 0.14644660940672624, 0.3086582838174551, 0.5,
	0.6913417161825449, 0.8535533905932737, 0.9619397662556434, 1,
}

// cosine is cos(π·m/8) for m = 0 … 15.
var cosine = [2 * degree]float64{
	1, 0.9238795325112867, 0.7071067811865476, 0.3826834323650898,
	0, -0.3826834323650898, -0.7071067811865476, -0.9238795325112867,
	-1, -0.9238795325112867, -0.7071067811865476, -0.3826834323650898,
	0, 0.3826834323650898, 0.7071067811865476, 0.9238795325112867,
}

// collocated[j−1][k] is the integral from −1 to xj of the polynomial that is 1
// at xk and 0 at the other points; a test derives it anew.
var collocated = [degree][degree + 1]float64{
	{0.030893885178661, 0.04914296552917835, -0.005458406338623528, 0.002406543569505158, -0.001450971759128849, 0.001038666552778624, -0.0008370436938740344, 0.0007409432715555245, -0.0003561148213389901},
	{0.002324549355662299, 0.1810149961342033, 0.1234078597980874, -0.02029900718606915, 0.01050837194132236, -0.00708961820431023, 0.005556729600329479, -0.004855211981435323, 0.002324549355662331},
	{0.02659867803464356, 0.1220051581755632, 0.3170357722907472, 0.1715760194606923, -0.02962232417938626, 0.0162282203587512, -0.01167619839783659, 0.009822563857092025, -0.004651321965356425},
	{0.007936507936507929, 0.1633086746323752, 0.2575336698802977, 0.3986194235063076, 0.1968253968253968, -0.03690156478581787, 0.02183140948478174, -0.01709002541635709, 0.007936507936507929},
	{0.02052433783837228, 0.1363960853589261, 0.2910412777629159, 0.3454896383617386, 0.4232731178301799, 0.1901418392597975, -0.0376706929256679, 0.02421349104045496, -0.01072566216162772},
	{0.01354846651735355, 0.1510738611974536, 0.2738083497647499, 0.3688074769248001, 0.3831424217094713, 0.3820168659065589, 0.1559572195669919, -0.03479634691818519, 0.01354846651735353},
	{0.01622913069435487, 0.1454777059444627, 0.2802021230589534, 0.3606791921677112, 0.3951017654099225, 0.3593113151509846, 0.2848234857037029, 0.0970756836868398, -0.01502086930564514},
	{0.01587301587301587, 0.1462186492160182, 0.2793650793650794, 0.3617178587204898, 0.3936507936507937, 0.3617178587204898, 0.2793650793650794, 0.1462186492160181, 0.01587301587301587},
}

// series returns the Chebyshev coefficients of the polynomial through v.
func series(v *[degree + 1]float64) (c [degree + 1]float64) {
	for m := range c {
		// xk = cos(π − πk/8), so Tm(xk) = cos(mπ − mkπ/8).
		s := (v[0]*cosine[(8*m)&15] + v[degree]) / 2
		for k := 1; k < degree; k++ {
			s += v[k] * cosine[(m*(8-k))&15]
		}
		c[m] = s * 2 / degree
	}
	c[0] /= 2
	c[degree] /= 2
	return c
}

// misfit estimates how much the polynomial through v leaves out of its own
// integral. The coefficients of degree 7 and 8 beside those of 5 and 6 tell how
// fast they fall (in pairs, since an even or odd density has only every other
// one); those of degree 9 and 10 are extrapolated, and the integral divides
// them by twice their degree. Four times that covers both neighbours and what
// the points make of terms that they can't tell apart.
func misfit(v *[degree + 1]float64) float64 {
	var c [4]float64 // of degree 5 to 8
	for i := range c {
		m := i + 5
		s := (v[0]*cosine[(8*m)&15] + v[degree]) / 2
		for k := 1; k < degree; k++ {
			s += v[k] * cosine[(m*(8-k))&15]
		}
		c[i] = math.Abs(s) * 2 / degree
	}
	c[3] /= 2
	before, last := max(c[0], c[1]), max(c[2], c[3])
	if last >= before {
		return last
	}
	return 4 * last * last / before / (1 - last/before) / (degree + 1)
}

// integral returns the Chebyshev coefficients of the integral from −1.
func integral(c *[degree + 1]float64) (b [degree + 2]float64) {
	b[1] = c[0] - c[2]/2
	for m := 2; m <= degree+1; m++ {
		b[m] = c[m-1] / float64(2*m)
		if m+1 <= degree {
			b[m] -= c[m+1] / float64(2*m)
		}
	}
	sign := 1.0
	for m := 1; m < len(b); m++ { // zero at −1, where Tm = (−1)^m
		b[0] += sign * b[m]
		sign = -sign
	}
	return b
}

// sum adds up a Chebyshev series at x (Clenshaw 1955).
func sum(b *[degree + 2]float64, x float64) float64 {
	var b1, b2 float64
	for m := degree + 1; m > 0; m-- {
		b1, b2 = b[m]+2*x*b1-b2, b1
	}
	return b[0] + x*b1 - b2
}
