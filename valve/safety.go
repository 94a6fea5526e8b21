package valve

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// SafetyValve is a surface-controlled subsurface safety valve: control pressure
// opens it against a spring and against whatever backs the other side of its
// piston.
//
// Differentials are control minus backing, at the valve.
type SafetyValve struct {
	Backing Backing                  `json:"backing"`
	Opens   unit.Band[unit.Pressure] `json:"opens"`  // fully open when the differential rises to it
	Closes  unit.Band[unit.Pressure] `json:"closes"` // fully closed when it falls to it
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
		return nil, fault.NewIn(scope, "", "backing is %d; must be one of %q", uint8(b), backings)
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
	return fault.NewIn(scope, "", "backing is %q; must be one of %q", text, backings)
}

// Validate reports what is wrong with v: an unknown backing, bands that aren't
// finite or are out of order, or a valve that closes above where it opens.
func (v SafetyValve) Validate() error {
	f := fault.In(scope)
	f.Add(fault.Whole("Backing", int(v.Backing), 0, len(backings)-1), fault.At("Opens", v.Opens.Validate()), fault.At("Closes", v.Closes.Validate()))
	if !f.Any() && !(v.Closes.Greatest <= v.Opens.Least) {
		f.New("Closes", "goes up to %v; must be at most Opens, which begins at %v", v.Closes.Greatest, v.Opens.Least)
	}
	return f.Err()
}

// ControlState is a safety valve's control line in the well.
type ControlState struct {
	TVD     unit.Length              `json:"tvd"`     // true vertical, of the valve under the panel
	Density unit.Density             `json:"density"` // of the liquid in the control line
	Backing unit.Band[unit.Pressure] `json:"backing"` // at the valve; zero for Unbacked
}

// Validate reports everything that is wrong with c.
func (c ControlState) Validate() error {
	return fault.Join(scope, fault.Between("TVD", c.TVD, 0, maxDepth), fault.Between("Density", c.Density, 0, maxDensity),
		fault.At("Backing", c.Backing.Validate()))
}

const (
	maxDepth   = 20 * unit.Kilometre
	maxDensity = 3000 * unit.KilogramPerCubicMetre
)

// ControlPressures are the panel pressures of a safety valve. A negative closing
// pressure means that the valve stays open with the line vented: it isn't fail
// safe there.
type ControlPressures struct {
	Head   unit.Pressure            `json:"head"`   // of the control line at the valve
	Open   unit.Band[unit.Pressure] `json:"open"`   // at the panel: fully open from its greatest on
	Closed unit.Band[unit.Pressure] `json:"closed"` // at the panel: fully closed from its least down

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
	if err := fault.Join(scope, v.Validate(), fault.At("ControlState", c.Validate())); err != nil {
		return ControlPressures{}, err
	}
	head := hydrostatics.Pressure(c.Density, c.TVD)
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
	Differential unit.Pressure `json:"differential"` // least, over the backing's band
	FullyOpen    unit.Pressure `json:"fully_open"`   // over the greatest opening differential; negative: may throttle
	NotClosed    unit.Pressure `json:"not_closed"`   // over the greatest closing differential; negative: may be closed
	Backing      unit.Pressure `json:"backing"`      // greatest that leaves the valve fully open

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
	if err := fault.Join(scope, v.Validate(), fault.At("ControlState", c.Validate()), fault.AtLeast("panel", panel, 0)); err != nil {
		return KeepOpen{}, err
	}
	head := hydrostatics.Pressure(c.Density, c.TVD)
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
