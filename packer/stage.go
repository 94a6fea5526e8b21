package packer

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// Stage is one thing that the setting mechanism does in its turn: pins that
// part, a lower slip, the element, a lock.
type Stage struct {
	Name string `json:"name"`

	// Acts is the differential at the setting piston, tubing minus reference,
	// at which the stage is over.
	Acts unit.Band[unit.Pressure] `json:"acts"`
}

// PinnedStage returns the stage of a piston that is held by shear pins.
//
//	Δp = n S k (1 ± t) / A
//
// Errors are those of valve.Pins.PressureOn. Source: definition.
func PinnedStage(name string, pins valve.Pins, piston unit.Area) (Stage, error) {
	band, err := pins.PressureOn(piston)
	if err != nil {
		return Stage{}, fmt.Errorf("packer: stage %q: %w", name, err)
	}
	return Stage{Name: name, Acts: band}, nil
}

// Outcome says whether something with a band has acted.
type Outcome uint8

// States. Unknown is what a band entered but not passed leaves behind.
const (
	NotActed Outcome = iota
	Unknown
	Acted
)

// String returns "not", "unknown" or "acted".
func (s Outcome) String() string {
	switch s {
	case NotActed:
		return "not"
	case Unknown:
		return "unknown"
	case Acted:
		return "acted"
	}
	return fmt.Sprintf("state %d", uint8(s))
}

// MarshalText writes the state's name.
func (s Outcome) MarshalText() ([]byte, error) {
	if s > Acted {
		return nil, fmt.Errorf("packer: no state %d; there are not, unknown and acted", uint8(s))
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads the state's name.
func (s *Outcome) UnmarshalText(text []byte) error {
	switch string(text) {
	case "not":
		*s = NotActed
	case "unknown":
		*s = Unknown
	case "acted":
		*s = Acted
	default:
		return fmt.Errorf("packer: cannot read %q as a state; write not, unknown or acted", text)
	}
	return nil
}

// stateOf holds what may have been reached against a rising threshold.
func stateOf[Q unit.Scalar](reached, threshold unit.Band[Q]) Outcome {
	switch {
	case reached.Least >= threshold.Greatest:
		return Acted
	case reached.Greatest >= threshold.Least:
		return Unknown
	}
	return NotActed
}
