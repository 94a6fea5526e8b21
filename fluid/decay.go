package fluid

import "math"

// decay returns exp(−x) for 0 ≤ x ≤ 10 to 1e-14, in half the time of math.Exp,
// whose long chain of dependent operations would dominate a Z factor.
//
//	exp(−x) = 2^k·exp(r),  k = −x/ln 2 rounded,  r = −x − k·ln 2,  |r| ≤ ln 2/2
//
// exp(r) is Taylor's series to r¹¹, summed in pairs.
func decay(x float64) float64 {
	const (
		rounder  = 1<<52 + 1<<51 // adding it rounds to a whole number, left in the last bits
		exponent = 52            // position of the exponent in the bits of a float64
		one      = 1023 << exponent
	)
	shifted := x*-math.Log2E + rounder
	r := (shifted-rounder)*-math.Ln2 - x
	r2 := r * r
	r4 := r2 * r2
	p := ((1 + r) + r2*(1.0/2+r*(1.0/6))) + r4*((1.0/24+r*(1.0/120))+r2*(1.0/720+r*(1.0/5040))+
		r4*((1.0/40320+r*(1.0/362880))+r2*(1.0/3628800+r*(1.0/39916800))))
	return p * math.Float64frombits(one+math.Float64bits(shifted)<<exponent)
}
