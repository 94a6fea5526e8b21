package unit

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit/fault"
)

// Scalar is any quantity that is a plain number in SI: all but Temperature.
type Scalar interface {
	~float64
	fmt.Stringer
	encoding.TextMarshaler
	Rounded(digits int) string
}

// Band is a quantity with a tolerance: no less than Least, no more than
// Greatest, and by design Nominal. The zero value is exactly zero.
//
// As text it is one of
//
//	3000 psi
//	2850 psi .. 3150 psi             (nominal in the middle)
//	2850 psi .. 3000 psi .. 3150 psi
//	3000 psi +/- 5 %                 (± is read too)
//	3000 psi +/- 150 psi
//
// What isn't written, an end of a tolerance or the middle, is rounded to 15
// digits in the unit of the value before it.
type Band[Q Scalar] struct {
	Least, Nominal, Greatest Q
}

// Exactly returns the band of a value without tolerance.
func Exactly[Q Scalar](q Q) Band[Q] { return Band[Q]{q, q, q} }

// Within returns q with a relative tolerance, such as 0.05 for ±5 %.
func Within[Q Scalar](q Q, fraction float64) Band[Q] {
	d := Q(math.Abs(float64(q) * fraction))
	return Band[Q]{q - d, q, q + d}
}

// Validate reports what is wrong with b: a value that isn't finite, or ends that
// are out of order.
func (b Band[Q]) Validate() error {
	for _, q := range [...]Q{b.Least, b.Nominal, b.Greatest} {
		if math.IsNaN(float64(q)) || math.IsInf(float64(q), 0) {
			return fault.Fault{Err: fmt.Errorf("is a band that holds %v; must be finite", q)}
		}
	}
	if b.Least > b.Nominal || b.Nominal > b.Greatest {
		return fault.Fault{Err: fmt.Errorf("is %v .. %v .. %v, out of order; must run from least over nominal to greatest", b.Least, b.Nominal, b.Greatest)}
	}
	return nil
}

// Contains tells whether q lies in b, ends included.
func (b Band[Q]) Contains(q Q) bool { return b.Least <= q && q <= b.Greatest }

// Exact tells whether b has no width.
func (b Band[Q]) Exact() bool { return b.Least == b.Greatest }

// Shift returns b moved by d.
func (b Band[Q]) Shift(d Q) Band[Q] { return Band[Q]{b.Least + d, b.Nominal + d, b.Greatest + d} }

// Times returns b scaled by k; a negative k turns the ends round.
func (b Band[Q]) Times(k float64) Band[Q] {
	s := Band[Q]{Q(float64(b.Least) * k), Q(float64(b.Nominal) * k), Q(float64(b.Greatest) * k)}
	if k < 0 {
		s.Least, s.Greatest = s.Greatest, s.Least
	}
	return s
}

// String writes b without loss.
func (b Band[Q]) String() string {
	if b.Exact() && b.Least == b.Nominal {
		return b.Nominal.String()
	}
	return b.Least.String() + " .. " + b.Nominal.String() + " .. " + b.Greatest.String()
}

// Rounded writes b for people.
func (b Band[Q]) Rounded(digits int) string {
	if b.Exact() && b.Least == b.Nominal {
		return b.Nominal.Rounded(digits)
	}
	return b.Least.Rounded(digits) + " .. " + b.Nominal.Rounded(digits) + " .. " + b.Greatest.Rounded(digits)
}

// MarshalText writes b without loss.
func (b Band[Q]) MarshalText() ([]byte, error) {
	if err := b.Validate(); err != nil {
		return nil, err
	}
	return []byte(b.String()), nil
}

// UnmarshalText reads one of the forms in the type's doc.
func (b *Band[Q]) UnmarshalText(text []byte) error {
	s := strings.ReplaceAll(string(text), "±", "+/-")
	if value, tolerance, found := strings.Cut(s, "+/-"); found {
		return b.readTolerance(value, tolerance)
	}
	parts := strings.Split(s, "..")
	var q [3]Q
	var errs []error
	for i, p := range parts {
		if i == 3 {
			return fmt.Errorf("unit: cannot read %q as a band: more than three values", s)
		}
		errs = append(errs, read(p, &q[i]))
	}
	if err := errors.Join(errs...); err != nil {
		return err
	}
	var r Band[Q]
	switch len(parts) {
	case 1:
		r = Exactly(q[0])
	case 2:
		r = Band[Q]{q[0], q[0] + (q[1]-q[0])/2, q[1]}
		if q[0] != 0 {
			number, unit := split(parts[0])
			r.Nominal = typed(number, unit, float64(r.Nominal/q[0]), r.Nominal)
		}
	default:
		r = Band[Q]{q[0], q[1], q[2]}
	}
	if err := r.Validate(); err != nil {
		return err
	}
	*b = r
	return nil
}

func (b *Band[Q]) readTolerance(value, tolerance string) error {
	var q, d Q
	if err := read(value, &q); err != nil {
		return err
	}
	if absolute(tolerance) || absolute(value) && strings.Contains(tolerance, "%") {
		return fmt.Errorf("unit: cannot read %q as a tolerance of %q: a part of an absolute pressure is no part of a gauge one, and a difference is neither; write both in gauge units", strings.TrimSpace(tolerance), strings.TrimSpace(value))
	}
	if percent, found := strings.CutSuffix(strings.TrimSpace(tolerance), "%"); found {
		v, err := strconv.ParseFloat(strings.TrimSpace(percent), 64)
		if err != nil || !(v >= 0 && v <= 100) {
			return fmt.Errorf("unit: cannot read %q as a tolerance: write 0 %% to 100 %%", tolerance)
		}
		d = Q(math.Abs(float64(q)) * v / 100)
	} else if err := read(tolerance, &d); err != nil {
		return err
	}
	if d < 0 {
		return fmt.Errorf("unit: tolerance %v is negative", d)
	}
	r := Band[Q]{q - d, q, q + d}
	if q != 0 {
		number, unit := split(value)
		r.Least = typed(number, unit, 1-float64(d/q), r.Least)
		r.Greatest = typed(number, unit, 1+float64(d/q), r.Greatest)
	}
	if err := r.Validate(); err != nil {
		return err
	}
	*b = r
	return nil
}

// typed returns k times a number as if it had been typed with its unit, so that
// 4300 psi + 5 % is 4515 psi to the bit and prints so; near is the same but for
// rounding, and is kept where the number is a size such as 2-7/8.
func typed[Q Scalar](number, unit string, k float64, near Q) Q {
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return near
	}
	var q Q
	if read(strconv.FormatFloat(v*k, 'g', typedDigits, 64)+" "+unit, &q) != nil || math.Abs(float64(q-near)) > 1e-14*math.Abs(float64(near)) {
		return near
	}
	return q
}

// typedDigits are the decimal digits that every float64 has for certain.
const typedDigits = 15

// read is q's own UnmarshalText: every Scalar of this package has one on its
// pointer, which a type constraint can't say without a second parameter.
func read[Q Scalar](text string, q *Q) error {
	u, ok := any(q).(encoding.TextUnmarshaler)
	if !ok {
		return fmt.Errorf("unit: %T can't be read from text", *q)
	}
	return u.UnmarshalText([]byte(strings.TrimSpace(text)))
}

// Values returns least, nominal and greatest, for printing.
func (b Band[Q]) Values() [3]any { return [3]any{b.Least, b.Nominal, b.Greatest} }
