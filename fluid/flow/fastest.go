package flow

import (
	"errors"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// ErrNoSpeed says that the pipe may not be moved at all: the liquid's yield stress
// alone makes more pressure than is allowed.
var ErrNoSpeed = errors.New("flow: no speed keeps surge and swab so small")

// Speeds between which Fastest looks.
const (
	slowest = 1e-6 * unit.MetrePerSecond
	fastest = 20 * unit.MetrePerSecond
)

// Fastest returns the greatest mean speed of the pipe at which surge and swab are
// no more than allowed, whatever t.Speed is:
//
//	loss(V) = allowed
//
// The loss grows with the speed, so there is one answer; no speed that pipe is run
// at (20 m/s) makes that much is answered with that. Errors: ErrNoSpeed; faults of
// the inputs.
//
// Source: the inverse of Solve, by a bracketed root.
func (t Trip) Fastest(allowed unit.Pressure) (unit.Velocity, error) {
	if err := fault.Join("flow", fault.Between("allowed", allowed, 0, 1e9*unit.Pascal)); err != nil {
		return 0, err
	}
	var failed error
	over := func(speed float64) float64 {
		t.Speed = unit.Velocity(speed)
		s, err := t.Solve()
		if err != nil {
			failed = err
		}
		return float64(s.Loss - allowed)
	}
	low, high := over(float64(slowest)), over(float64(fastest))
	switch {
	case failed != nil:
		return 0, failed
	case low > 0:
		return 0, ErrNoSpeed
	case high <= 0:
		return fastest, nil
	}
	v, err := root.Find(over, float64(slowest), float64(fastest), 1e-9)
	return unit.Velocity(v), errors.Join(failed, err)
}
