package movement

import (
	"fmt"
	"math"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Restraint says how far the seals may move in the packer.
type Restraint int

// The restraints.
const (
	Free     Restraint = iota // seals slide both ways without end
	Limited                   // seals slide between stops: a locator above, a latch or the end of the bore
	Anchored                  // the string is fixed to the packer
)

func restraintNames() [3]string {
	return [3]string{Free: "free", Limited: "limited", Anchored: "anchored"}
}

// String returns the name of r.
func (r Restraint) String() string {
	if names := restraintNames(); r >= 0 && int(r) < len(names) {
		return names[r]
	}
	return fmt.Sprintf("Restraint(%d)", int(r))
}

// MarshalText returns the name of r.
func (r Restraint) MarshalText() ([]byte, error) {
	if r < Free || r > Anchored {
		return nil, fault.NewIn("movement", "", "restraint is %d; must be one of %s", int(r), permittedRestraints())
	}
	return []byte(r.String()), nil
}

// UnmarshalText reads a name of a restraint.
func (r *Restraint) UnmarshalText(text []byte) error {
	for k, name := range restraintNames() {
		if name == string(text) {
			*r = Restraint(k)
			return nil
		}
	}
	return fault.NewIn("movement", "", "restraint is %q; must be one of %s", text, permittedRestraints())
}

func permittedRestraints() string {
	names := restraintNames()
	return strings.Join(names[:], ", ")
}

// SealBore is the seal bore of a packer, and how far the seals of a string may move in it.
type SealBore struct {
	Bore      unit.Length `json:"bore"` // seal bore diameter
	Restraint Restraint   `json:"restraint"`
	Up        unit.Length `json:"up"` // travel from the as-set position to the stops; only where Limited
	Down      unit.Length `json:"down"`
}

// travel returns the range of movement of the seals, down positive.
func (s SealBore) travel() (up, down float64) {
	switch s.Restraint {
	case Limited:
		return -float64(s.Up), float64(s.Down)
	case Anchored:
		return 0, 0
	}
	return math.Inf(-1), math.Inf(1)
}

func (s SealBore) faults() []error {
	faults := []error{fault.Above("Seals.Bore", s.Bore, 0)}
	if s.Restraint < Free || s.Restraint > Anchored {
		faults = append(faults, fault.New("Seals.Restraint", "is %d; must be %s", int(s.Restraint), permittedRestraints()))
	}
	if s.Restraint == Limited {
		faults = append(faults, notNegative("Seals.Up", s.Up), notNegative("Seals.Down", s.Down))
	} else if s.Up != 0 || s.Down != 0 {
		faults = append(faults, fault.New("Seals.Up", "is %v, and Seals.Down %v; must be 0 where seals are %s", s.Up, s.Down, s.Restraint))
	}
	return faults
}

// notNegative reports a travel that is negative or NaN; infinite means no stop
// on that side.
func notNegative(field string, l unit.Length) error {
	if l >= 0 {
		return nil
	}
	return fault.New(field, "is %v; must be at least 0 ft", l)
}

// slackOff reports weight set down or pulled where nothing could take it.
func (s SealBore) slackOff(f unit.Force) error {
	if err := fault.Finite("SlackOff", f); err != nil {
		return err
	}
	if f > 0 && (s.Restraint == Free || s.Restraint == Limited && s.Down != 0) {
		return fault.New("SlackOff", "is %v; must be 0 where seals can move down", f)
	}
	if f < 0 && (s.Restraint == Free || s.Restraint == Limited && s.Up != 0) {
		return fault.New("SlackOff", "is %v; must be 0 where seals can move up", f)
	}
	return nil
}
