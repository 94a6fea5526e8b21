// Package root finds where a function of one variable passes through zero.
package root

import (
	"errors"
	"fmt"
	"math"
)

// ErrNotBracketed says that a function has one sign at both ends.
var ErrNotBracketed = errors.New("root: no change of sign between the ends")

// ErrNotANumber says that a function returned NaN.
var ErrNotANumber = errors.New("root: the function is not a number")

// maxSteps bounds the search. Bisection alone needs about 60 steps from any
// bracket that isn't many decades wide; Brent's bound is its square.
const maxSteps = 400

// Find returns x between a and b with f(x) = 0, to within tol of a true change
// of sign (and never finer than the spacing of float64 there). f(a) and f(b)
// must differ in sign or be zero; tol may be zero. It always ends.
//
// Method: Brent, Algorithms for Minimization without Derivatives (1973),
// chapter 4: inverse quadratic interpolation guarded by bisection.
func Find(f func(float64) float64, a, b, tol float64) (float64, error) {
	fa, fb := f(a), f(b)
	if math.IsNaN(fa) || math.IsNaN(fb) {
		return 0, fmt.Errorf("%w at %g or %g", ErrNotANumber, a, b)
	}
	if fa == 0 {
		return a, nil
	}
	if fb == 0 {
		return b, nil
	}
	if (fa > 0) == (fb > 0) {
		return 0, fmt.Errorf("%w: f(%g) = %g, f(%g) = %g", ErrNotBracketed, a, fa, b, fb)
	}
	c, fc := a, fa
	d := b - a
	e := d
	for range maxSteps {
		if (fb > 0) == (fc > 0) {
			c, fc = a, fa
			d = b - a
			e = d
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		near := 2*epsilon*math.Abs(b) + tol/2
		m := (c - b) / 2
		if math.Abs(m) <= near || fb == 0 {
			return b, nil
		}
		d, e = step(a, b, c, fa, fb, fc, d, e, m, near)
		a, fa = b, fb
		if math.Abs(d) > near {
			b += d
		} else {
			b += math.Copysign(near, m)
		}
		if fb = f(b); math.IsNaN(fb) {
			return 0, fmt.Errorf("%w at %g", ErrNotANumber, b)
		}
	}
	return b, nil
}

const epsilon = 0x1p-53

// step proposes Brent's next move d and remembers the one before it, e.
func step(a, b, c, fa, fb, fc, d, e, m, near float64) (float64, float64) {
	if math.Abs(e) < near || math.Abs(fa) <= math.Abs(fb) {
		return m, m
	}
	s := fb / fa
	var p, q float64
	if a == c {
		p, q = 2*m*s, 1-s
	} else {
		r, t := fb/fc, fa/fc
		p = s * (2*m*t*(t-r) - (b-a)*(r-1))
		q = (t - 1) * (r - 1) * (s - 1)
	}
	if p > 0 {
		q = -q
	}
	p = math.Abs(p)
	if 2*p < 3*m*q-math.Abs(near*q) && p < math.Abs(e*q/2) {
		return p / q, d
	}
	return m, m
}
