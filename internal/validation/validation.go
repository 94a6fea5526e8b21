// Package validation runs the published cases through the public API, for the
// tests and for examples/validation alike.
package validation

import (
	"errors"
	"fmt"
	"math"

	"completion.example/internal/published"
)

// Evaluator computes one quantity from a case's inputs by the public API. It
// returns a quantity, a unit.Temperature or a float64.
type Evaluator func(in *published.Inputs) (any, error)

// Suite is a file of cases with an evaluator for every quantity in it.
type Suite struct {
	File       string
	Quantities map[string]Evaluator
}

// Outcome is a case that was run.
type Outcome struct {
	published.Case
	published.Comparison
	Err error
}

// OK tells whether the case was computed and met its tolerance; a misprint must
// be computed and missed.
func (o Outcome) OK() bool { return o.Err == nil && o.Met() != (o.Status == published.Misprint) }

// Fault says what is wrong with an outcome that isn't OK: the row, its inputs, what
// came out and what was wanted.
func (o Outcome) Fault() string {
	switch {
	case o.OK():
		return ""
	case o.Err != nil:
		return fmt.Sprintf("%v: want %s: %v (%s)", o.Case, o.Printed, o.Err, o.Reference())
	case o.Status == published.Misprint:
		return fmt.Sprintf("%v: %v: the source's figure is marked as a misprint, and is met (%s)", o.Case, o.Comparison, o.Reference())
	}
	return fmt.Sprintf("%v: %v, off by %.2g (%s)", o.Case, o.Comparison, math.Abs(o.Got-o.Want), o.Reference())
}

// Reference is the source with the place in it.
func (o Outcome) Reference() string {
	if o.Where == "" {
		return o.Source
	}
	return o.Source + ", " + o.Where
}

// Run runs every case of s. A case without an evaluator is an error.
func (s Suite) Run() ([]Outcome, error) {
	cases, err := published.Read(s.File)
	if err != nil {
		return nil, err
	}
	var faults []error
	used := map[string]bool{}
	outcomes := make([]Outcome, 0, len(cases))
	for _, c := range cases {
		evaluate, ok := s.Quantities[c.Quantity]
		if !ok {
			faults = append(faults, fmt.Errorf("validation: %v: no evaluator for this quantity", c))
			continue
		}
		used[c.Quantity] = true
		outcomes = append(outcomes, run(c, evaluate))
	}
	for quantity := range s.Quantities {
		if !used[quantity] {
			faults = append(faults, fmt.Errorf("validation: %s has no case of %q", s.File, quantity))
		}
	}
	return outcomes, errors.Join(faults...)
}

func run(c published.Case, evaluate Evaluator) Outcome {
	o := Outcome{Case: c}
	in := published.NewInputs(c.Inputs)
	got, err := evaluate(in)
	// A fault in reading explains any fault of the computation that follows.
	if o.Err = in.Err(); o.Err != nil {
		return o
	}
	if o.Err = err; o.Err != nil {
		return o
	}
	o.Comparison, o.Err = c.Compare(got)
	return o
}
