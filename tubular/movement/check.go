package movement

import (
	"errors"
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

// ErrTooLarge says that finite inputs gave a result that isn't finite.
var ErrTooLarge = errors.New("movement: inputs so large that the result overflows")

// bounded reports results that overflowed.
func bounded(m Movement, s SlackOff, seals unit.Length, forces ...unit.Force) error {
	sum := float64(m.Total()) + float64(s.Total()) + float64(seals)
	for _, f := range forces {
		sum += float64(f)
	}
	if !isFinite(sum) {
		return ErrTooLarge
	}
	return nil
}

func isFinite(x float64) bool { return x-x == 0 }
