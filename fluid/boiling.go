package fluid

import "math"

// boilingPressure returns the saturation pressure of water, absolute Pa, at t
// in K:
//
//	p = 1 MPa·(2C/(−B + √(B² − 4·A·C)))⁴
//	A = ϑ² + n1·ϑ + n2,  B = n3·ϑ² + n4·ϑ + n5,  C = n6·ϑ² + n7·ϑ + n8
//	ϑ = T + n9/(T − n10)
//
// Range 273.15 to 647.096 K. Source: IAPWS R7-97(2012), Eqs. 29 and 30,
// Table 34.
func boilingPressure(t float64) float64 {
	const (
		n1, n2, n3  = 0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2
		n4, n5, n6  = 0.12020824702470e5, -0.32325550322333e7, 0.14915108613530e2
		n7, n8      = -0.48232657361591e4, 0.40511340542057e6
		n9, n10     = -0.23855557567849, 0.65017534844798e3
		megapascals = 1e6
	)
	th := t + n9/(t-n10)
	a := th*th + n1*th + n2
	b := n3*th*th + n4*th + n5
	c := n6*th*th + n7*th + n8
	x := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return megapascals * x * x * x * x
}
