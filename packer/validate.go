package packer

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// faults gathers what is wrong with an input before anything is computed.
type faults []error

func (f *faults) add(format string, args ...any) {
	*f = append(*f, fmt.Errorf("packer: "+format, args...))
}

func (f *faults) err() error { return errors.Join(*f...) }

// include takes over what another check found, with the field it belongs to.
func (f *faults) include(field string, err error) {
	if err != nil {
		f.add("%s: %w", field, err)
	}
}

func finite[Q ~float64](q Q) bool { return !math.IsNaN(float64(q)) && !math.IsInf(float64(q), 0) }

// anyValue wants a finite number.
func anyValue[Q unit.Scalar](f *faults, field string, q Q) {
	if !finite(q) {
		f.add("%s = %v: want a finite number", field, q)
	}
}

// positive wants a finite number above zero.
func positive[Q unit.Scalar](f *faults, field string, q Q) {
	if !finite(q) || q <= 0 {
		f.add("%s = %v: want above 0", field, q)
	}
}

// notNegative wants a finite number of zero or more.
func notNegative[Q unit.Scalar](f *faults, field string, q Q) {
	if !finite(q) || q < 0 {
		f.add("%s = %v: want 0 or more", field, q)
	}
}

// share wants a fraction from lo to hi, both included.
func share(f *faults, field string, x, lo, hi float64) {
	if !(x >= lo && x <= hi) {
		f.add("%s = %v: want from %v to %v", field, x, lo, hi)
	}
}

// finiteResult turns an overflow of legal but absurd inputs into an error.
func finiteResult(what string, x ...float64) error {
	for _, v := range x {
		if !finite(v) {
			return fmt.Errorf("packer: %s overflows: the inputs are finite but too large together", what)
		}
	}
	return nil
}
