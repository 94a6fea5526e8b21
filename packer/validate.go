package packer

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// faults gathers what is wrong with an input before anything is computed.
type faults []error

// new notes a fault of a field: "is %v; must be ...".
func (f *faults) new(path, format string, args ...any) { f.append(fault.New(path, format, args...)) }

func (f *faults) append(err error) {
	if err != nil {
		*f = append(*f, err)
	}
}

func (f *faults) err() error { return fault.Join("packer", *f...) }

// include takes over what another check found, with the field it belongs to.
func (f *faults) include(field string, err error) { f.append(fault.At(field, err)) }

func finite[Q ~float64](q Q) bool { return !math.IsNaN(float64(q)) && !math.IsInf(float64(q), 0) }

// anyValue wants a finite number.
func anyValue[Q unit.Scalar](f *faults, field string, q Q) { f.append(fault.Finite(field, q)) }

// positive wants a finite number above zero.
func positive[Q unit.Scalar](f *faults, field string, q Q) { f.append(fault.Above(field, q, 0)) }

// notNegative wants a finite number of zero or more.
func notNegative[Q unit.Scalar](f *faults, field string, q Q) { f.append(fault.AtLeast(field, q, 0)) }

// share wants a fraction from lo to hi, both included.
func share(f *faults, field string, x, lo, hi float64) { f.append(fault.Between(field, x, lo, hi)) }

// finiteResult turns an overflow of legal but absurd inputs into an error.
func finiteResult(what string, x ...float64) error {
	for _, v := range x {
		if !finite(v) {
			return fmt.Errorf("packer: %s overflows: the inputs are finite but too large together", what)
		}
	}
	return nil
}
