package valve

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Trigger is a differential that makes something move once it has crossed a
// threshold, in one direction, a number of times.
//
// The threshold of one device is one number somewhere in the band, and stays
// so. The zero value triggers once, rising through zero.
type Trigger struct {
	Threshold unit.Band[unit.Pressure] `json:"threshold"`
	Direction Direction                `json:"direction"`

	// Count is how often the threshold must be met; zero stands for once.
	Count int `json:"count"`

	// Rearm is where the differential must come back to before the next time
	// counts. It only matters where Count is above one; the zero value stands
	// for a differential of zero.
	Rearm unit.Band[unit.Pressure] `json:"rearm"`
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
		return nil, fault.NewIn(scope, "", "direction is %d; must be one of rising and falling", uint8(d))
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
		return fault.NewIn(scope, "", "direction is %q; must be one of rising or falling", text)
	}
	return nil
}

// MaxCount is the greatest Count of a trigger.
const MaxCount = 1000

// Validate reports everything that is wrong with t: a band that isn't finite or is
// out of order, a Count outside 0 to MaxCount, or, where Count is above one, a
// Rearm band that isn't wholly on the far side of the threshold.
func (t Trigger) Validate() error {
	f := fault.In(scope)
	f.Add(fault.At("Threshold", t.Threshold.Validate()))
	if t.Direction > Falling {
		f.New("Direction", "is %d; must be rising or falling", t.Direction)
	}
	f.Add(fault.Whole("Count", t.Count, 0, MaxCount)) // 0 stands for 1
	if t.Count > 1 {
		if err := t.Rearm.Validate(); err != nil {
			f.At("Rearm", err)
		} else if t.Direction == Rising && !(t.Rearm.Greatest < t.Threshold.Least) {
			f.New("Rearm", "goes up to %v; must be below the rising threshold, which begins at %v", t.Rearm.Greatest, t.Threshold.Least)
		} else if t.Direction == Falling && !(t.Rearm.Least > t.Threshold.Greatest) {
			f.New("Rearm", "begins at %v; must be above the falling threshold, which goes up to %v", t.Rearm.Least, t.Threshold.Greatest)
		}
	}
	return f.Err()
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
	Near unit.Pressure `json:"near"`
	Far  unit.Pressure `json:"far"`
}

// MarginOf returns how far a differential goes beyond the ends of the threshold.
//
//	near = Δp − least, far = Δp − greatest; rising
//
// Range: any differential; nothing is checked.
//
// Source: definition of a threshold.
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
func (t Trigger) Ramp(s TriggerState, from, to unit.Pressure) Outcome {
	row := [1]Trigger{t}
	return Row(row[:]).Ramp(s, from, to)
}

// Condition reads a state: armed, fired, or unknown.
func (t Trigger) Condition(s TriggerState) Condition {
	return conditionOf(s, 1)
}

// scope stands before every fault of this package.
const scope = "valve"
