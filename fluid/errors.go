package fluid

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// ErrOutsideRange is what every *RangeError is, for errors.Is.
var ErrOutsideRange = errors.New("fluid: outside the published range")

// ErrNoData says that nothing published here answers the question.
var ErrNoData = errors.New("fluid: no published data")

// RangeError says which input lies outside the range of a correlation.
type RangeError struct {
	Of              string // the fluid or correlation
	Quantity        string // the input
	Value           string // what was given, with its unit
	Least, Greatest string // what is permitted, with units; none where any positive value will do
}

func (e *RangeError) Error() string {
	if e.Greatest == "" {
		return fmt.Sprintf("fluid: %s: %s %s is outside its range: it must be positive and finite", e.Of, e.Quantity, e.Value)
	}
	return fmt.Sprintf("fluid: %s: %s %s is outside %s to %s", e.Of, e.Quantity, e.Value, e.Least, e.Greatest)
}

// Is makes errors.Is(err, ErrOutsideRange) true.
func (e *RangeError) Is(target error) bool { return target == ErrOutsideRange }

// quantity is what a range error needs to print an input.
type quantity interface{ Rounded(digits int) string }

// errorDigits is enough to see on which side of a limit a value lies.
const errorDigits = 6

func outside(of, name string, value, least, greatest quantity) error {
	return &RangeError{
		Of: of, Quantity: name, Value: value.Rounded(errorDigits),
		Least: least.Rounded(errorDigits), Greatest: greatest.Rounded(errorDigits),
	}
}

// number prints a quantity that has no unit.
type number float64

func (n number) Rounded(digits int) string { return unit.Significant(float64(n), digits) }

// within is false for NaN.
func within(x, least, greatest float64) bool { return x >= least && x <= greatest }

// absolute turns gauge pressure, in Pa, absolute: the one place where that is
// done.
func absolute(p unit.Pressure) float64 { return float64(p + unit.Atmosphere) }

// gauge is the inverse of absolute.
func gauge(p float64) unit.Pressure { return unit.Pressure(p) - unit.Atmosphere }

// limits are a rectangle of pressure (absolute, Pa) and temperature (K).
type limits struct{ pLeast, pGreatest, tLeast, tGreatest float64 }

// check returns nil where p and t lie inside.
func (l *limits) check(of string, p, t float64) error {
	if within(t, l.tLeast, l.tGreatest) && within(p, l.pLeast, l.pGreatest) {
		return nil
	}
	var faults []error
	if !within(t, l.tLeast, l.tGreatest) {
		faults = append(faults, outside(of, "temperature", unit.Kelvin(t), unit.Kelvin(l.tLeast), unit.Kelvin(l.tGreatest)))
	}
	if !within(p, l.pLeast, l.pGreatest) {
		faults = append(faults, outside(of, "pressure", gauge(p), gauge(l.pLeast), gauge(l.pGreatest)))
	}
	return errors.Join(faults...)
}

// positive reports a quantity that isn't a positive finite number.
func positive(of, name string, value quantity, x float64) error {
	if x > 0 && x <= math.MaxFloat64 {
		return nil
	}
	return &RangeError{Of: of, Quantity: name, Value: value.Rounded(errorDigits)}
}
