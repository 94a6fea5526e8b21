package packer

import (
	"fmt"
	"math"
)

// scope is what this package's faults begin with.
const scope = "packer"

func finite[Q ~float64](q Q) bool { return !math.IsNaN(float64(q)) && !math.IsInf(float64(q), 0) }

// finiteResult turns an overflow of legal but absurd inputs into an error.
func finiteResult(what string, x ...float64) error {
	for _, v := range x {
		if !finite(v) {
			return fmt.Errorf("packer: %s overflows: the inputs are finite but too large together", what)
		}
	}
	return nil
}
