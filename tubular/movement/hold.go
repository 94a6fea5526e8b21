package movement

import (
	"errors"
	"fmt"
	"math"

	"completion.example/internal/root"
)

// ErrNoRest says that no packer force holds the seals at their stop: the
// string's length doesn't answer to the force as an elastic string's does.
var ErrNoRest = errors.New("movement: no packer force holds the seals at the stop")

// hold finds where the seals come to rest between the stops. free is where they
// would go without them. change is where an added axial force at the lower end
// takes them, and the slope of that over the force.
// It is free at zero and rises with the force at least as fast as Hooke's law
// says: compliance is that slope. So the force of the unbuckled string brackets
// the answer. Where buckling in a deviated hole breaks that rule the bracket is
// widened, and if it still doesn't hold an error says so.
func hold(free float64, change func(force float64) (motion, slope float64), up, down, compliance float64) (force, motion float64, err error) {
	stop := min(max(free, up), down)
	if stop == free {
		return 0, free, nil
	}
	// A little more than Hooke's force, because of rounding.
	far := (stop - free) / compliance * (1 + 1e-9)
	if f, ok := tangents(change, far, stop); ok {
		return f, stop, nil
	}
	residual := func(f float64) float64 {
		if f == 0 {
			return free - stop
		}
		x, _ := change(f)
		return x - stop
	}
	for range 20 {
		if r := residual(far); r == 0 || (r > 0) == (far > 0) {
			force, err = root.Find(residual, 0, far, math.Abs(far)*1e-13)
			return force, stop, err
		}
		far *= 2
	}
	return 0, 0, fmt.Errorf("%w: at %.6g N it is still %.3g m away", ErrNoRest, far, residual(far))
}

// tangents follows Newton's steps from no force for as long as they get nearer. A
// helix without critical load gets stiffer the more tension there is in it, so from
// the side of compression no step overshoots, and a first one from the other side
// lands there, short of far; where the pipe snakes first, or snaps into a helix,
// they may, and the bracket is left to.
func tangents(change func(force float64) (motion, slope float64), far, stop float64) (force float64, ok bool) {
	const near = 1e-12 // m, about what a sum over many nodes is rounded to
	low, high := min(0, far), max(0, far)
	f, last := 0.0, math.Inf(1)
	for range 12 {
		x, slope := change(f)
		miss := math.Abs(x - stop)
		if miss <= near {
			return f, true
		}
		if !(slope > 0) || miss > 0.7*last {
			return 0, false
		}
		last = miss
		f -= (x - stop) / slope
		if f < low || f > high {
			return 0, false
		}
	}
	return 0, false
}
