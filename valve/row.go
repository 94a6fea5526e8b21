package valve

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Row is triggers on one differential that must fire one after the other: each
// is armed by the one before. "Unlocks above A, opens when bled below B" is a
// row of two.
type Row []Trigger

// TriggerState is how far a trigger or a row has come. It is a plain value; its zero
// value is a device as it was run. A state belongs to the trigger or row that
// returned it.
//
// It holds the two extreme devices of the bands: the earliest has all
// thresholds at the near end, the latest at the far end. As a real device meets
// no threshold before the earliest and none after the latest, it lies between
// them.
type TriggerState struct {
	earliest, latest progress
	lowest, highest  unit.Pressure
	seen             bool
	exact            bool // all ramps so far had no deviation
}

// progress is where one device with known thresholds stands.
type progress struct {
	links   int  // triggers of the row that have fired
	counted int  // times the present trigger was met
	out     bool // the present trigger was met and hasn't re-armed
}

// Condition is what is known about a trigger or a row.
type Condition uint8

// Conditions.
const (
	Armed   Condition = iota // no device of the band has fired
	Unknown                  // the band was entered but not passed
	Fired                    // every device of the band has fired
)

// String returns "armed", "unknown" or "fired".
func (c Condition) String() string {
	switch c {
	case Armed:
		return "armed"
	case Unknown:
		return "unknown"
	case Fired:
		return "fired"
	}
	return fmt.Sprintf("condition %d", uint8(c))
}

// Firing is what a ramp does to a trigger or a row.
type Firing uint8

// Verdicts.
const (
	CannotFire   Firing = iota // no device of the band fires
	MayFire                    // some do and some don't
	MustFire                   // every device of the band has fired at the end, and not all had before
	MayHaveFired               // some fired before and some didn't; this ramp fires none
	AlreadyFired               // every device of the band had fired before
)

// String returns the verdict in words.
func (v Firing) String() string {
	switch v {
	case CannotFire:
		return "cannot fire"
	case MayFire:
		return "may fire"
	case MustFire:
		return "must fire"
	case MayHaveFired:
		return "may have fired before"
	case AlreadyFired:
		return "already fired"
	}
	return fmt.Sprintf("verdict %d", uint8(v))
}

// Outcome is the result of a ramp.
type Outcome struct {
	Verdict Firing       `json:"verdict"`
	State   TriggerState `json:"state"`  // afterwards
	Margin  Margin       `json:"margin"` // of the ramp's extreme, to the trigger that the latest device waited for at the start
}

// Validate reports what is wrong with a row: none in it, or a trigger that is
// itself wrong.
func (r Row) Validate() error {
	if len(r) == 0 {
		return fault.NewIn(scope, "", "row is empty; must be one trigger or more")
	}
	f := fault.In(scope)
	for i, t := range r {
		f.AtIndex("", i, t.Validate())
	}
	return f.Err()
}

// Ramp walks the differential from one value to another, without turning back
// on the way, and says whether the last trigger of the row fires. It is pure
// and allocates nothing. r must have passed Check; a differential of NaN ends
// in MayFire.
//
// MayHaveFired is exact for a single trigger that isn't counted. For a longer
// row that was unknown before, MayFire may also mean that it fired before.
func (r Row) Ramp(s TriggerState, from, to unit.Pressure) Outcome {
	return r.RampWithin(s, from, to, unit.Band[unit.Pressure]{})
}

// RampWithin is Ramp where the differential isn't known exactly: somewhere in
// the deviation, by the same amount all along the ramp, it is more than from and
// to say (Least is negative or zero, Greatest positive or zero).
//
// The earliest device gets the end of the deviation that moves it, the latest
// the end that doesn't, at each threshold anew.
//
//	Δp' = Δp + deviation, at the end that counts
//
// Range: any pressures, and triggers that Validate takes; nothing is checked
// here.
//
// Source: Ramp.
func (r Row) RampWithin(s TriggerState, from, to unit.Pressure, deviation unit.Band[unit.Pressure]) Outcome {
	var o Outcome
	up, down := deviation.Greatest, -deviation.Least
	if len(r) > 0 {
		t := r[min(s.latest.links, len(r)-1)]
		o.Margin = t.MarginOf(t.Extreme(from, to))
		if t.Direction == Falling {
			o.Margin.Near += down
			o.Margin.Far -= up
		} else {
			o.Margin.Near += up
			o.Margin.Far -= down
		}
	}
	before := conditionOf(s, len(r))
	low, high, exact := min(from, to)-down, max(from, to)+up, up == 0 && down == 0
	idle := before == Unknown && r.idle(s, low, high, exact)
	s.earliest = r.walk(s.earliest, from, to, up, down, true)
	s.latest = r.walk(s.latest, from, to, -down, -up, false)
	s.note(low, high, exact)
	o.State = s
	switch after := conditionOf(s, len(r)); {
	case before == Fired:
		o.Verdict = AlreadyFired
	case after == Fired:
		o.Verdict = MustFire
	case after == Unknown && idle:
		o.Verdict = MayHaveFired
	case after == Unknown:
		o.Verdict = MayFire
	}
	return o
}

// idle tells whether a ramp certainly moves nothing: it stays short of every
// threshold, or a single trigger certainly saw as much before.
func (r Row) idle(s TriggerState, low, high unit.Pressure, exact bool) bool {
	for _, t := range r {
		x := t.Extreme(low, high)
		if len(r) == 1 && t.Count <= 1 && s.seen && s.exact && exact {
			return t.Direction == Falling && x >= s.lowest || t.Direction == Rising && x <= s.highest
		}
		if !(t.MarginOf(x).Near < 0) {
			return false
		}
	}
	return true
}

func (s *TriggerState) note(low, high unit.Pressure, exact bool) {
	if s.seen {
		low, high, exact = min(low, s.lowest), max(high, s.highest), exact && s.exact
	}
	s.lowest, s.highest, s.seen, s.exact = low, high, true, exact
}

// Seen returns the range of the differential so far, deviations included; ok is
// false before the first ramp.
func (s TriggerState) Seen() (lowest, highest unit.Pressure, ok bool) {
	return s.lowest, s.highest, s.seen
}

// Condition reads a state: armed, fired, or unknown.
func (r Row) Condition(s TriggerState) Condition { return conditionOf(s, len(r)) }

// Links returns how many triggers of the row have fired: certainly, and
// possibly.
func (s TriggerState) Links() (certain, possible int) { return s.latest.links, s.earliest.links }

// Counted returns how often the trigger that the row now waits for was met, as
// the latest device and the earliest device count; they may wait for different
// triggers, see Links.
func (s TriggerState) Counted() (latest, earliest int) { return s.latest.counted, s.earliest.counted }

// Done returns the state in which the whole row has certainly fired: for a
// device that was seen to have moved.
func (r Row) Done() TriggerState {
	p := progress{links: len(r)}
	return TriggerState{earliest: p, latest: p}
}

func conditionOf(s TriggerState, n int) Condition {
	switch {
	case s.latest.links >= n:
		return Fired
	case s.earliest.links >= n:
		return Unknown
	}
	return Armed
}

// walk carries one extreme device along a ramp. Where a threshold is met on the
// way, the rest of the ramp counts for the next one. up is what the device sees
// above the stated differential while it waits for a rise, down what it sees
// below it while it waits for a fall.
func (r Row) walk(p progress, from, to, up, down unit.Pressure, early bool) progress {
	for p.links < len(r) {
		t := &r[p.links]
		band, falling := &t.Threshold, t.Direction == Falling
		if p.out {
			band, falling = &t.Rearm, !falling
		}
		// The earliest device moves at the least on the way up, and at the
		// greatest on the way down.
		at := band.Least
		if early == falling {
			at = band.Greatest
		}
		if falling {
			at += down
		} else {
			at -= up
		}
		switch {
		case met(from, at, falling, early):
		case met(to, at, falling, early):
			from = at
		default:
			return p
		}
		if p.out {
			p.out = false
			continue
		}
		p.counted++
		p.out = true
		if p.counted >= min(max(t.Count, 1), MaxCount) {
			p = progress{links: p.links + 1}
		}
	}
	return p
}

// met tells whether a differential is at a level or past it. NaN is, for the
// earliest device, and isn't, for the latest: nothing is known.
func met(d, level unit.Pressure, falling, early bool) bool {
	if falling {
		d, level = -d, -level
	}
	if early {
		return !(d < level)
	}
	return d >= level
}
