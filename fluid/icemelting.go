package fluid

import "math"

// Triple point of water, where the melting curve of ordinary ice begins.
const (
	triplePressure    = 611.657 // Pa
	tripleTemperature = 273.16  // K
	iceTLeast         = 251.165 // K, where ice III begins
)

// meltingPressure returns the pressure, absolute Pa, at which ordinary ice melts
// at t (K):
//
//	p/611.657 Pa = 1 + Σ ai·(1 − (T/273.16 K)^bi)
//
// Range 251.165 to 273.16 K. Source: IAPWS R14-08(2011), Eq. 1.
func meltingPressure(t float64) float64 {
	theta := t / tripleTemperature
	return triplePressure * (1 +
		0.119539337e7*(1-theta*theta*theta) +
		0.808183159e5*(1-math.Pow(theta, 25.75)) +
		0.333826860e4*(1-math.Pow(theta, 103.75)))
}
