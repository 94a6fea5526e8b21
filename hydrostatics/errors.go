package hydrostatics

import (
	"errors"
	"fmt"
	"math"
)

// Errors to branch on with errors.Is.
var (
	// ErrOutsidePath: a depth that the well path doesn't reach.
	ErrOutsidePath = errors.New("outside the well path")
	// ErrOutsideColumn: a depth or pressure that the column doesn't hold.
	ErrOutsideColumn = errors.New("outside the column")
	// ErrNoBalance: no level, length or pressure gives what was asked for.
	ErrNoBalance = errors.New("no balance possible")
)

// quantity is any of unit's plain quantities.
type quantity interface {
	~float64
	fmt.Stringer
}

// within reports a value that isn't finite or leaves lo to hi, ends included.
func within[Q quantity](name string, q, lo, hi Q) error {
	if q >= lo && q <= hi && !math.IsInf(float64(q), 0) {
		return nil
	}
	switch {
	case math.IsInf(float64(lo), 0) && math.IsInf(float64(hi), 0):
		return fmt.Errorf("hydrostatics: %s is %v; it must be finite", name, q)
	case math.IsInf(float64(hi), 0):
		return fmt.Errorf("hydrostatics: %s is %v; it must be finite and at least %v", name, q, lo)
	}
	return fmt.Errorf("hydrostatics: %s is %v; it must lie in %v to %v", name, q, lo, hi)
}

// finite reports a value that is NaN or infinite.
func finite[Q quantity](name string, q Q) error {
	return within(name, q, Q(math.Inf(-1)), Q(math.Inf(1)))
}

// above reports a value that isn't finite and greater than lo.
func above[Q quantity](name string, q, lo Q) error {
	if q > lo && !math.IsInf(float64(q), 0) {
		return nil
	}
	return fmt.Errorf("hydrostatics: %s is %v; it must be finite and more than %v", name, q, lo)
}
