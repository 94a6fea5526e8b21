package unit

import (
	"math"
	"math/big"
)

// A float64 in a unit such as psi can't be met by a float64 times the unit for
// some four values in ten. Such a value is written with 18 digits or more, and
// a number of that many digits is multiplied before it is rounded.
const (
	floatDigits = 17 // no more are read as a float64 first
	mostDigits  = 40
	exactBits   = 256
)

// product returns what a number, which reads as v, is in SI.
func product(number string, v, factor float64) float64 {
	x := v * factor
	if d := figures(number); d <= floatDigits || d > mostDigits || len(number) > 2*mostDigits || !scalable(x) || !scalable(v) {
		return x
	}
	exact, _, err := big.ParseFloat(number, 10, exactBits, big.ToNearestEven)
	if err != nil {
		return x
	}
	x, _ = exact.Mul(exact, big.NewFloat(factor)).Float64()
	return x
}

// between finds the shortest decimal d, of more digits than a float64 has, for
// which d*factor rounds to x.
func between(x, factor float64) (number string, ok bool) {
	if !scalable(x) || !scalable(x/factor) {
		return "", false
	}
	exact := new(big.Float).SetPrec(exactBits).SetFloat64(x)
	exact.Quo(exact, big.NewFloat(factor))
	for digits := floatDigits + 1; digits <= floatDigits+4; digits++ {
		s := exact.Text('g', digits)
		if same(product(s, x/factor, factor), x) {
			return s, true
		}
	}
	// What comes out in few digits is read as a float64 first, and missed; a little
	// beside it, less than any rounding, it isn't.
	const k = 0x1p33 // k²/(k²-1) is 1 and a little
	exact.Mul(exact, big.NewFloat(k*k)).Quo(exact, big.NewFloat(k-1)).Quo(exact, big.NewFloat(k+1))
	s := exact.Text('g', floatDigits+5)
	return s, same(product(s, x/factor, factor), x)
}

// scalable tells whether x is far from the ends of what a float64 holds.
func scalable(x float64) bool {
	x = math.Abs(x)
	return x > 1e-290 && x < 1e290
}
