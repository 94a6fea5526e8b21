package precise

import (
	"math"
	"math/big"
)

var ofOne map[string]func(*big.Float) *big.Float

func init() {
	ofOne = map[string]func(*big.Float) *big.Float{
		"sqrt": func(x *big.Float) *big.Float { return zero().Sqrt(x) },
		"cbrt": func(x *big.Float) *big.Float { return pow(x, zero().Quo(number(1), number(3))) },
		"exp":  exp, "log": log, "sin": sin, "atan": atan,
		"log10": func(x *big.Float) *big.Float { return zero().Quo(log(x), log(number(10))) },
		"expm1": func(x *big.Float) *big.Float { return zero().Sub(exp(x), number(1)) },
		"log1p": func(x *big.Float) *big.Float { return log(zero().Add(x, number(1))) },
		"cos":   cos,
		"tan":   func(x *big.Float) *big.Float { return zero().Quo(sin(x), cos(x)) },
		"abs":   func(x *big.Float) *big.Float { return zero().Abs(x) },
	}
}

// negligible tells whether a term changes a sum no more.
func negligible(term, sum *big.Float) bool {
	return term.Sign() == 0 || sum.Sign() != 0 && term.MantExp(nil) < sum.MantExp(nil)-bits-8
}

// exp halves x until it is small, sums the series, and squares back.
func exp(x *big.Float) *big.Float {
	halvings := max(0, x.MantExp(nil)+16)
	r := zero().SetPrec(bits + 64)
	r.SetMantExp(x, -halvings)
	sum, term := number(1).SetPrec(bits+64), number(1).SetPrec(bits+64)
	for n := 1.0; n == 1 || !negligible(term, sum); n++ {
		term.Mul(term, r)
		term.Quo(term, number(n))
		sum.Add(sum, term)
	}
	for range halvings {
		sum.Mul(sum, sum)
	}
	return sum.SetPrec(bits)
}

// log is Newton's iteration on exp.
func log(x *big.Float) *big.Float {
	if x.Sign() <= 0 {
		panic("logarithm of what isn't above zero")
	}
	mantissa := zero()
	e := x.MantExp(mantissa)
	m, _ := mantissa.Float64()
	y := number(math.Log(m))
	for range 5 { // each doubles the digits
		y.Add(y, zero().Sub(zero().Mul(mantissa, exp(zero().Neg(y))), number(1)))
	}
	if e == 0 {
		return y
	}
	return y.Add(y, zero().Mul(number(float64(e)), ln2()))
}

func ln2() *big.Float { // 2·artanh(1/3)
	sum, power := zero(), zero().Quo(number(1), number(3))
	for n := 1.0; n == 1 || !negligible(power, sum); n += 2 {
		sum.Add(sum, zero().Quo(power, number(n)))
		power.Quo(power, number(9))
	}
	return sum.Mul(sum, number(2))
}

// pow is exact for small whole exponents and goes by logarithms otherwise.
func pow(x, y *big.Float) *big.Float {
	if n, acc := y.Int64(); acc == big.Exact && n >= -64 && n <= 64 {
		p := number(1)
		for range max(n, -n) {
			p.Mul(p, x)
		}
		if n < 0 {
			p.Quo(number(1), p)
		}
		return p
	}
	if x.Sign() == 0 {
		return zero()
	}
	return exp(zero().Mul(y, log(x)))
}

// pi by Machin: 16·atan(1/5) − 4·atan(1/239).
func pi() *big.Float {
	a := zero().Mul(number(16), atan(zero().Quo(number(1), number(5))))
	return a.Sub(a, zero().Mul(number(4), atan(zero().Quo(number(1), number(239)))))
}

// atan halves the angle until the series is quick.
func atan(x *big.Float) *big.Float {
	halvings := 0
	for ; x.Sign() != 0 && x.MantExp(nil) > -8; halvings++ { // tan(a/2) = t/(1 + sqrt(1 + t²))
		root := zero().Sqrt(zero().Add(number(1), zero().Mul(x, x)))
		x = zero().Quo(x, root.Add(root, number(1)))
	}
	sum, power, square := zero(), zero().Set(x), zero().Mul(x, x)
	for n := 1.0; n == 1 || !negligible(power, sum); n += 2 {
		sum.Add(sum, zero().Quo(power, number(n)))
		power.Mul(power, square)
		power.Neg(power)
	}
	return sum.SetMantExp(sum, halvings)
}

func sin(x *big.Float) *big.Float {
	return series(x, zero().Set(x), 1)
}

func cos(x *big.Float) *big.Float {
	return series(x, number(1), 0)
}

// series sums term·(1 − x²/((n+1)(n+2)) + ...), for angles of some turns.
func series(x, term *big.Float, n float64) *big.Float {
	if x.MantExp(nil) > 6 {
		panic("angle is more than ten turns")
	}
	sum, square := zero().Set(term), zero().Mul(x, x)
	for first := true; first || !negligible(term, sum) || n < 200; n += 2 {
		first = false
		term.Mul(term, square)
		term.Quo(term, number(-(n+1)*(n+2)))
		sum.Add(sum, term)
		if term.Sign() == 0 {
			break
		}
	}
	return sum
}
