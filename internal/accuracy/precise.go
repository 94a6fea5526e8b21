package accuracy

import "math/big"

// digits are the binary digits that references are worked with.
const digits = 200

// A number is worked with all digits.
type number struct{ f *big.Float }

// exact is a float64 as it is.
func exact[T ~float64](x T) number {
	return number{new(big.Float).SetPrec(digits).SetFloat64(float64(x))}
}

// decimal is a number as it is written, which a float64 may not be.
func decimal(text string) number {
	f, _, err := big.ParseFloat(text, 10, digits, big.ToNearestEven)
	if err != nil {
		panic("accuracy: " + err.Error())
	}
	return number{f}
}

func blank() *big.Float { return new(big.Float).SetPrec(digits) }

func (a number) plus(b number) number  { return number{blank().Add(a.f, b.f)} }
func (a number) minus(b number) number { return number{blank().Sub(a.f, b.f)} }
func (a number) times(b number) number { return number{blank().Mul(a.f, b.f)} }
func (a number) over(b number) number  { return number{blank().Quo(a.f, b.f)} }
func (a number) negative() number      { return number{blank().Neg(a.f)} }
func (a number) abs() number           { return number{blank().Abs(a.f)} }
func (a number) squared() number       { return a.times(a) }
func (a number) root() number          { return number{blank().Sqrt(a.f)} }
func (a number) below(b number) bool   { return a.f.Cmp(b.f) < 0 }
func (a number) float() float64        { x, _ := a.f.Float64(); return x }

// power is a whole power.
func (a number) power(n int) number {
	r := exact(1.0)
	for range n {
		r = r.times(a)
	}
	return r
}

// scaled is a·2ⁿ.
func (a number) scaled(n int) number { return number{blank().SetMantExp(a.f, n)} }

// small tells whether a term of a series no longer counts.
func (a number) small() bool { return a.f.Sign() == 0 || a.f.MantExp(nil) < -digits-20 }

// exp is eˣ: the series of x/2ᵏ, squared k times.
func (a number) exp() number {
	k := max(0, a.f.MantExp(nil)) + 16
	x := a.scaled(-k)
	sum, term := exact(1.0), exact(1.0)
	for n := 1; ; n++ {
		term = term.times(x).over(exact(float64(n)))
		if term.small() {
			break
		}
		sum = sum.plus(term)
	}
	for range k {
		sum = sum.squared()
	}
	return sum
}

// halfLog is atanh z = ½ ln((1+z)/(1-z)) of a z up to ⅓.
func halfLog(z number) number {
	z2, term, sum := z.squared(), z, z
	for n := 3; ; n += 2 {
		term = term.times(z2)
		if term.small() {
			return sum
		}
		sum = sum.plus(term.over(exact(float64(n))))
	}
}

var ln2 = halfLog(exact(1.0).over(exact(3.0))).scaled(1)

// log is the natural logarithm, of a positive number.
func (a number) log() number {
	m := blank()
	e := a.f.MantExp(m)
	one := exact(1.0)
	z := number{m}.minus(one).over(number{m}.plus(one))
	return halfLog(z).scaled(1).plus(ln2.times(exact(float64(e))))
}

// pow is aᵇ of a positive a.
func (a number) pow(b number) number { return a.log().times(b).exp() }

// atan is the arc's tangent of a number from 0: halved until it is small.
func (a number) atan() number {
	one, k := exact(1.0), 0
	for !a.below(exact(0.05)) {
		a = a.over(one.plus(one.plus(a.squared()).root()))
		k++
	}
	x2, term, sum, sign := a.squared(), a, a, 1.0
	for n := 3; ; n += 2 {
		term = term.times(x2)
		if term.small() {
			return sum.scaled(k)
		}
		sign = -sign
		sum = sum.plus(term.over(exact(sign * float64(n))))
	}
}

// sincos are sine and cosine of an angle up to a few turns.
func (a number) sincos() (sin, cos number) {
	sin, cos = a, exact(1.0)
	term := a
	for n := 2; ; n++ {
		term = term.times(a).over(exact(float64(n)))
		if term.small() {
			return sin, cos
		}
		switch n % 4 {
		case 0:
			cos = cos.plus(term)
		case 1:
			sin = sin.plus(term)
		case 2:
			cos = cos.minus(term)
		case 3:
			sin = sin.minus(term)
		}
	}
}

// π to 100 digits.
var pi = decimal("3.141592653589793238462643383279502884197169399375105820974944592307816406286208998628034825342117068")

// refined is the root of f near x, by secants from a relative step of 1e-8.
func refined(x number, f func(number) number) number {
	a, b := x, x.times(decimal("1.00000001"))
	fa, fb := f(a), f(b)
	for range 12 {
		if fb.minus(fa).f.Sign() == 0 {
			break
		}
		c := b.minus(fb.times(b.minus(a)).over(fb.minus(fa)))
		a, fa = b, fb
		if b, fb = c, f(c); fb.f.Sign() == 0 || b.minus(a).over(b).small() {
			break
		}
	}
	return b
}
