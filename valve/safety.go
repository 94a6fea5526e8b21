package valve

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// SafetyValve is a surface-controlled subsurface safety valve: control pressure
// opens it against a spring and against whatever backs the other side of its
// piston.
//
// Differentials are control minus backing, at the valve.
type SafetyValve struct {
	Backing Backing
	Opens   unit.Band[unit.Pressure] // fully open when the differential rises to it
	Closes  unit.Band[unit.Pressure] // fully closed when it falls to it
}

// Backing is what acts on the other side of the piston.
type Backing uint8

// Kinds of backing.
const (
	TubingBacked  Backing = iota // tubing pressure at the valve; one line
	LineBacked                   // a second line from surface: the balanced kind
	AnnulusBacked                // the annulus
	Unbacked                     // a chamber at no pressure, or one whose charge is in the spring's figures
)

var backings = [...]string{"tubing", "second line", "annulus", "none"}

// String returns the backing in words.
func (b Backing) String() string {
	if int(b) < len(backings) {
		return backings[b]
	}
	return fmt.Sprintf("backing %d", uint8(b))
}

// MarshalText writes the backing as String does.
func (b Backing) MarshalText() ([]byte, error) {
	if int(b) >= len(backings) {
		return nil, fmt.Errorf("valve: no backing %d; there are %q", uint8(b), backings)
	}
	return []byte(backings[b]), nil
}

// UnmarshalText reads a backing as String writes it.
func (b *Backing) UnmarshalText(text []byte) error {
	for i, s := range backings {
		if s == string(text) {
			*b = Backing(i)
			return nil
		}
	}
	return fmt.Errorf("valve: cannot read %q as a backing; write one of %q", text, backings)
}

// Check reports what is wrong with v: an unknown backing, bands that aren't
// finite or are out of order, or a valve that closes above where it opens.
func (v SafetyValve) Check() error {
	var errs []error
	if int(v.Backing) >= len(backings) {
		errs = append(errs, fmt.Errorf("valve: no backing %d; there are %q", v.Backing, backings))
	}
	if err := v.Opens.Check(); err != nil {
		errs = append(errs, fmt.Errorf("valve: opening differential: %w", err))
	}
	if err := v.Closes.Check(); err != nil {
		errs = append(errs, fmt.Errorf("valve: closing differential: %w", err))
	}
	if errs == nil && !(v.Closes.Greatest <= v.Opens.Least) {
		errs = append(errs, fmt.Errorf("valve: closing differential goes up to %v; it must be at most the opening differential from %v",
			v.Closes.Greatest, v.Opens.Least))
	}
	return errors.Join(errs...)
}

// ControlState is a safety valve's control line in the well.
type ControlState struct {
	Depth   unit.Length              // true vertical, of the valve under the panel
	Density unit.Density             // of the liquid in the control line
	Backing unit.Band[unit.Pressure] // at the valve; zero for Unbacked
}

func (c ControlState) check() error {
	var errs []error
	if !(c.Depth >= 0 && c.Depth <= maxDepth) {
		errs = append(errs, fmt.Errorf("valve: depth is %v; it must be zero to %v", c.Depth, maxDepth))
	}
	if !(c.Density >= 0 && c.Density <= maxDensity) {
		errs = append(errs, fmt.Errorf("valve: density in the control line is %v; it must be zero to %v", c.Density, maxDensity))
	}
	if err := c.Backing.Check(); err != nil {
		errs = append(errs, fmt.Errorf("valve: backing pressure: %w", err))
	}
	return errors.Join(errs...)
}

const (
	maxDepth   = 20 * unit.Kilometre
	maxDensity = 3000 * unit.KilogramPerCubicMetre
)

// ControlPressures are the panel pressures of a safety valve. A negative closing
// pressure means that the valve stays open with the line vented: it isn't fail
// safe there.
type ControlPressures struct {
	Head   unit.Pressure            // of the control line at the valve
	Open   unit.Band[unit.Pressure] // at the panel: fully open from its greatest on
	Closed unit.Band[unit.Pressure] // at the panel: fully closed from its least down

	valve SafetyValve
	state ControlState
}

// FailSafe tells whether the valve closes for certain when its line is vented,
// in this state.
func (c ControlPressures) FailSafe() bool { return c.Closed.Least >= 0 }

// Pressures returns the panel pressures at which the valve opens and closes.
//
//	open    po + pb − ρ·g·D
//	closed  pc + pb − ρ·g·D
//
//	po, pc  opening and closing differential
//	pb      backing pressure at the valve
//	ρ, D    density in the control line, depth of the valve
//
// Errors name what is out of range. Source: balance of forces on the piston, as
// in API RP 14B.
func (v SafetyValve) Pressures(c ControlState) (ControlPressures, error) {
	if err := errors.Join(v.Check(), c.check()); err != nil {
		return ControlPressures{}, err
	}
	head := hydrostatics.Pressure(c.Density, c.Depth)
	at := func(d unit.Band[unit.Pressure]) unit.Band[unit.Pressure] {
		return unit.Band[unit.Pressure]{
			Least:    d.Least + c.Backing.Least - head,
			Nominal:  d.Nominal + c.Backing.Nominal - head,
			Greatest: d.Greatest + c.Backing.Greatest - head,
		}
	}
	return ControlPressures{Head: head, Open: at(v.Opens), Closed: at(v.Closes), valve: v, state: c}, nil
}

// KeepOpen is how far a valve is from leaving its open position while what backs
// it changes.
type KeepOpen struct {
	Differential unit.Pressure // least, over the backing's band
	FullyOpen    unit.Pressure // over the greatest opening differential; negative: may throttle
	NotClosed    unit.Pressure // over the greatest closing differential; negative: may be closed
	Backing      unit.Pressure // greatest that leaves the valve fully open

	panel, head unit.Pressure
	valve       SafetyValve
	state       ControlState
}

// KeepOpen returns the margins of a valve held open by a panel pressure, over all
// backing pressures of the state: for a tubing-backed valve the range of tubing
// pressures at the valve, flowing, shut in, stimulated.
//
//	margin          = p + ρ·g·D − pb − po,   pb and po at their greatest
//	greatest backing = p + ρ·g·D − po
//
// p is what is certainly held at the panel. Errors name what is out of range.
// Source: as for Pressures.
func (v SafetyValve) KeepOpen(panel unit.Pressure, c ControlState) (KeepOpen, error) {
	err := errors.Join(v.Check(), c.check())
	if !(panel >= 0) || math.IsInf(float64(panel), 0) {
		err = errors.Join(err, fmt.Errorf("valve: panel pressure is %v; it must be zero or more, and finite", panel))
	}
	if err != nil {
		return KeepOpen{}, err
	}
	head := hydrostatics.Pressure(c.Density, c.Depth)
	at := panel + head
	d := at - c.Backing.Greatest
	return KeepOpen{
		Differential: d,
		FullyOpen:    d - v.Opens.Greatest,
		NotClosed:    d - v.Closes.Greatest,
		Backing:      at - v.Opens.Greatest,
		panel:        panel, head: head, valve: v, state: c,
	}, nil
}
