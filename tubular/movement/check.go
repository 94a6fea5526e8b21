package movement

import (
	"errors"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// scope begins what this package reports.
const scope = "movement"

// ErrTooLarge says that finite inputs gave a result that isn't finite.
var ErrTooLarge = errors.New("movement: inputs so large that the result overflows")

// bounded reports results that overflowed.
func bounded(m Movement, s Shortening, seals unit.Length, forces ...unit.Force) error {
	known := allFinite(float64(m.Total()), float64(s.Total()), float64(seals))
	for _, f := range forces {
		known = known && isFinite(float64(f))
	}
	if !known {
		return ErrTooLarge
	}
	return nil
}

// allFinite tells whether none of them is infinite or no number.
func allFinite(xs ...float64) bool {
	for _, x := range xs {
		if !isFinite(x) {
			return false
		}
	}
	return true
}

func isFinite(x float64) bool { return x-x == 0 }

// noPlace says that a number is none of a string's places that can hold.
func noPlace(place, places int) error {
	return fault.Join(scope, fault.Whole("place", place, 0, places-1))
}

// noJoint says that a number is none of a string's joints that part.
func noJoint(joint, joints int) error {
	return fault.Join(scope, fault.Whole("joint", joint, 0, joints-1))
}
