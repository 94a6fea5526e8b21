package valve

import "completion.example/hydrostatics/unit"

// Next returns the level that the latest device of the row waits for, and the
// direction in which the differential must meet it: the threshold of its
// present trigger, or, between two counts, where it re-arms. ok is false once
// the row has fired.
//
// With exact thresholds (no width) this is the one level at which something
// happens next, so that an event can be found on a ramp.
func (r Row) Next(s TriggerState) (at unit.Pressure, d Direction, ok bool) {
	p := s.latest
	if p.links >= len(r) {
		return 0, Rising, false
	}
	t := r[p.links]
	if !p.out {
		return t.Far(), t.Direction, true
	}
	if t.Direction == Rising {
		return t.Rearm.Least, Falling, true
	}
	return t.Rearm.Greatest, Rising, true
}
