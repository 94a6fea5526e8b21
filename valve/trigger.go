package valve

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
)

// Trigger is a differential that makes something move once it has crossed a
// threshold, in one direction, a number of times.
//
// The threshold of one device is one number somewhere in the band, and stays
// so. The zero value triggers once, rising through zero.
type Trigger struct {
	Threshold unit.Band[unit.Pressure]
	Direction Direction

	// Count is how often the threshold must be met; zero stands for once.
	Count int

	// Rearm is where the differential must come back to before the next time
	// counts. It only matters where Count is above one; the zero value stands
	// for a differential of zero.
	Rearm unit.Band[unit.Pressure]
}

// Direction is the way a differential crosses a threshold.
type Direction uint8

// Directions.
const (
	Rising  Direction = iota // met at the threshold and above
	Falling                  // met at the threshold and below
)

// String returns "rising" or "falling".
func (d Direction) String() string {
	switch d {
	case Rising:
		return "rising"
	case Falling:
		return "falling"
	}
	return fmt.Sprintf("direction %d", uint8(d))
}

// MarshalText writes "rising" or "falling".
func (d Direction) MarshalText() ([]byte, error) {
	if d > Falling {
		return nil, fmt.Errorf("valve: no direction %d; there are rising and falling", uint8(d))
	}
	return []byte(d.String()), nil
}

// UnmarshalText reads "rising" or "falling".
func (d *Direction) UnmarshalText(text []byte) error {
	switch string(text) {
	case "rising":
		*d = Rising
	case "falling":
		*d = Falling
	default:
		return fmt.Errorf("valve: cannot read %q as a direction; write rising or falling", text)
	}
	return nil
}

// MaxCount is the greatest Count of a trigger.
const MaxCount = 1000

// Check reports everything that is wrong with t: a band that isn't finite or is
// out of order, a Count outside 0 to MaxCount, or, where Count is above one, a
// Rearm band that isn't wholly on the far side of the threshold.
func (t Trigger) Check() error {
	var errs []error
	if err := t.Threshold.Check(); err != nil {
		errs = append(errs, fmt.Errorf("valve: threshold: %w", err))
	}
	if t.Direction > Falling {
		errs = append(errs, fmt.Errorf("valve: direction is %d; it must be rising or falling", t.Direction))
	}
	if t.Count < 0 || t.Count > MaxCount {
		errs = append(errs, fmt.Errorf("valve: count of a trigger is %d; it must be 0 (stands for 1) to %d", t.Count, MaxCount))
	}
	if t.Count > 1 {
		if err := t.Rearm.Check(); err != nil {
			errs = append(errs, fmt.Errorf("valve: rearm: %w", err))
		} else if t.Direction == Rising && !(t.Rearm.Greatest < t.Threshold.Least) {
			errs = append(errs, fmt.Errorf("valve: rearm goes up to %v; with a rising threshold from %v it must be less",
				t.Rearm.Greatest, t.Threshold.Least))
		} else if t.Direction == Falling && !(t.Rearm.Least > t.Threshold.Greatest) {
			errs = append(errs, fmt.Errorf("valve: rearm begins at %v; with a falling threshold up to %v it must be more",
				t.Rearm.Least, t.Threshold.Greatest))
		}
	}
	return errors.Join(errs...)
}

// Near is the end of the threshold that is met first: short of it no device of
// the band moves.
func (t Trigger) Near() unit.Pressure {
	if t.Direction == Falling {
		return t.Threshold.Greatest
	}
	return t.Threshold.Least
}

// Far is the end of the threshold that is met last: past it every device of the
// band has moved.
func (t Trigger) Far() unit.Pressure {
	if t.Direction == Falling {
		return t.Threshold.Least
	}
	return t.Threshold.Greatest
}

// Margin is how far a differential went beyond the two ends of a threshold, in
// the direction of the trigger; negative where it stayed short.
//
// Nothing moves while Near is negative: -Near is then what is left. All have
// moved once Far is zero or positive: Far is then what there was to spare.
type Margin struct {
	Near, Far unit.Pressure
}

// MarginOf returns how far a differential goes beyond the ends of the threshold.
func (t Trigger) MarginOf(differential unit.Pressure) Margin {
	if t.Direction == Falling {
		return Margin{Near: t.Threshold.Greatest - differential, Far: t.Threshold.Least - differential}
	}
	return Margin{Near: differential - t.Threshold.Least, Far: differential - t.Threshold.Greatest}
}

// Extreme returns the end of a ramp that is furthest in the direction of the
// trigger; NaN if either is.
func (t Trigger) Extreme(from, to unit.Pressure) unit.Pressure {
	if t.Direction == Falling {
		return unit.Pressure(math.Min(float64(from), float64(to)))
	}
	return unit.Pressure(math.Max(float64(from), float64(to)))
}

// Ramp walks the differential from one value to another, without turning back
// on the way, and says whether the trigger fires.
//
// It is pure and allocates nothing. t must have passed Check. A differential of
// NaN ends in MayFire.
func (t Trigger) Ramp(s State, from, to unit.Pressure) Outcome {
	row := [1]Trigger{t}
	return Row(row[:]).Ramp(s, from, to)
}

// Condition reads a state: armed, fired, or unknown.
func (t Trigger) Condition(s State) Condition {
	return conditionOf(s, 1)
}
