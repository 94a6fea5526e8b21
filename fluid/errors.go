package fluid

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// ErrOutsideRange is what every *RangeError is, for errors.Is.
var ErrOutsideRange = errors.New("fluid: outside the published range")

// ErrNoData says that nothing published here answers the question.
var ErrNoData = errors.New("fluid: no published data")

// RangeError says which input lies outside the range of a correlation. It stands
// in a fault with the input as its path.
type RangeError struct {
	Of              string // the fluid or correlation
	Quantity        string // the input
	Value           string // what was given, with its unit
	Least, Greatest string // what is permitted, with units; none where any positive value will do
}

func (e *RangeError) Error() string {
	if e.Greatest == "" {
		_, in, _ := strings.Cut(e.Value, " ")
		return fmt.Sprintf("is %s; must be above 0 %s for %s", e.Value, in, e.Of)
	}
	return fmt.Sprintf("is %s; must be from %s to %s for %s", e.Value, e.Least, e.Greatest, e.Of)
}

// Is makes errors.Is(err, ErrOutsideRange) true.
func (e *RangeError) Is(target error) bool { return target == ErrOutsideRange }

// quantity is what a range error needs to print an input.
type quantity interface{ Rounded(digits int) string }

// inRange is the fault that a range error is.
func inRange(e *RangeError) error { return fault.Join(scope, fault.At(e.Quantity, e)) }

// scope stands before every fault of this package.
const scope = "fluid"

// errorDigits is enough to see on which side of a limit a value lies.
const errorDigits = 6

func outside(of, name string, value, least, greatest quantity) error {
	return inRange(&RangeError{
		Of: of, Quantity: name, Value: value.Rounded(errorDigits),
		Least: least.Rounded(errorDigits), Greatest: greatest.Rounded(errorDigits),
	})
}

// number prints a quantity that has no unit.
type number float64

func (n number) Rounded(digits int) string { return unit.Significant(float64(n), digits) }

// degAPI prints a gravity.
type degAPI float64

func (g degAPI) Rounded(digits int) string { return unit.Significant(float64(g), digits) + " degAPI" }

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
	return fault.Join(scope, faults...)
}

// positive reports a quantity that isn't a positive finite number.
func positive(of, name string, value quantity, x float64) error {
	if x > 0 && x <= math.MaxFloat64 {
		return nil
	}
	return inRange(&RangeError{Of: of, Quantity: name, Value: value.Rounded(errorDigits)})
}
