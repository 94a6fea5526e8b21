// Package limit collects the faults of a calculation's inputs: every one names
// the field, the value with its unit, and what would do.
package limit

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"completion.example/hydrostatics/unit"
)

// Faults are the faults found so far in the inputs of one calculation.
type Faults struct {
	Scope string // such as "flow"
	errs  []error
}

// Add notes a fault.
func (f *Faults) Add(format string, args ...any) {
	f.errs = append(f.errs, fmt.Errorf(f.Scope+": "+format, args...))
}

// Wrap notes an error of a part, if there is one.
func (f *Faults) Wrap(part string, err error) {
	if err != nil {
		f.errs = append(f.errs, fmt.Errorf("%s: %s: %w", f.Scope, part, err))
	}
}

// Number notes a fault unless lo <= v <= hi.
func (f *Faults) Number(field string, v, lo, hi float64) {
	if !(v >= lo && v <= hi) {
		f.Add("%s is %v; it must be between %v and %v", field, v, lo, hi)
	}
}

// Seconds notes a fault unless lo <= v <= hi, all in seconds.
func (f *Faults) Seconds(field string, v, lo, hi float64) {
	if !(v >= lo && v <= hi) {
		f.Add("%s is %v s; it must be between %v s and %v s", field, v, lo, hi)
	}
}

// Temperature notes a fault unless lo <= t <= hi.
func (f *Faults) Temperature(field string, t, lo, hi unit.Temperature) {
	if k := t.Kelvin(); !(k >= lo.Kelvin() && k <= hi.Kelvin()) {
		f.Add("%s is %s; it must be between %s and %s", field, t.Rounded(digits), lo.Rounded(digits), hi.Rounded(digits))
	}
}

// Err joins all faults, or returns nil.
func (f *Faults) Err() error { return errors.Join(f.errs...) }

// Between notes a fault unless lo <= v <= hi.
func Between[Q unit.Scalar](f *Faults, field string, v, lo, hi Q) {
	if !(v >= lo && v <= hi) {
		f.Add("%s is %s; it must be between %s and %s", field, shown(v, lo, hi), lo.Rounded(digits), hi.Rounded(digits))
	}
}

// digits of a value in a message.
const digits = 6

// shown rounds v for reading, but not onto a limit that it isn't.
func shown[Q unit.Scalar](v Q, limits ...Q) string {
	s := v.Rounded(digits)
	for _, l := range limits {
		if s == l.Rounded(digits) && v != l {
			return v.String()
		}
	}
	return s
}

// Positive notes a fault unless 0 < v <= hi.
func Positive[Q unit.Scalar](f *Faults, field string, v, hi Q) {
	if !(v > 0 && v <= hi) {
		f.Add("%s is %s; it must be above zero and no more than %s", field, shown(v, hi), hi.Rounded(digits))
	}
}

// Finite tells whether v is neither NaN nor infinite.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Index names an element of a list, such as Sections[2].
func Index(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
