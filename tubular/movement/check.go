package movement

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// above reports a quantity that isn't a finite number greater than low.
func above[Q unit.Scalar](field string, q, low Q) error {
	if f := float64(q); f > float64(low) && !math.IsInf(f, 0) {
		return nil
	}
	return fmt.Errorf("movement: %s = %s, permitted above %s", field, q.Rounded(6), low.Rounded(6))
}

// atLeast reports a quantity that isn't a finite number from low upwards.
func atLeast[Q unit.Scalar](field string, q, low Q) error {
	if f := float64(q); f >= float64(low) && !math.IsInf(f, 0) {
		return nil
	}
	return fmt.Errorf("movement: %s = %s, permitted from %s upwards", field, q.Rounded(6), low.Rounded(6))
}

// finite reports a quantity that is NaN or infinite.
func finite[Q unit.Scalar](field string, q Q) error {
	if f := float64(q); !math.IsNaN(f) && !math.IsInf(f, 0) {
		return nil
	}
	return fmt.Errorf("movement: %s = %s, permitted any finite value", field, q.Rounded(6))
}
