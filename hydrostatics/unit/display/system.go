package display

import (
	"fmt"
	"strings"
)

// System is a set of units, one for each purpose. The zero value is Field.
type System struct {
	name   string
	chosen [purposes]uint8 // which of the row's choices
}

// Field returns the units of the American oilfield: ft, in, psi, bbl, lb/gal.
func Field() System { return System{} }

// SI returns the metric practice of the rig floor: m, mm, bar, m3, kg/m3, kN.
func SI() System {
	s := System{name: nameSI}
	for p := range s.chosen {
		s.chosen[p] = 1
	}
	return s
}

// Names of the systems.
const (
	nameField = "field"
	nameSI    = "si"
	namePlan  = "plan"
)

// Names are those that Named takes.
func Names() []string { return []string{nameField, nameSI, namePlan} }

// Named returns the system of a name of Names; texts are what Plan takes.
func Named(name string, texts ...string) (System, error) {
	switch name {
	case nameField:
		return Field(), nil
	case nameSI:
		return SI(), nil
	case namePlan:
		return Plan(texts...), nil
	}
	return System{}, fmt.Errorf("display: no system of units %q; there are %s", name, strings.Join(Names(), ", "))
}

// String returns the system's name: field, si or plan.
func (s System) String() string {
	if s.name == "" {
		return nameField
	}
	return s.name
}

// MarshalText writes field or si. It is an error for the units of a plan: write the
// texts that Plan took.
func (s System) MarshalText() ([]byte, error) {
	if s != Field() && s != SI() {
		return nil, fmt.Errorf("display: units of a plan have no text of their own; write the texts that Plan took")
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads field or si; an error is anything else.
func (s *System) UnmarshalText(text []byte) error {
	switch string(text) {
	case nameField:
		*s = Field()
	case nameSI:
		*s = SI()
	default:
		return fmt.Errorf("display: no system of units %q to read; must be %q or %q", text, nameField, nameSI)
	}
	return nil
}

// Unit returns the symbol of the unit that a purpose is shown in, "" for Usual.
func (s System) Unit(p Purpose) string {
	if p == Usual || p >= purposes {
		return ""
	}
	return s.choice(p).symbol
}

func (s System) choice(p Purpose) choice { return rows[p].choices[s.chosen[p]] }

// Legend lists the units of the purposes, for a line such as "Units: depth in m,
// pressure in bar".
func (s System) Legend(of ...Purpose) string {
	var parts []string
	for _, p := range of {
		if u := s.Unit(p); u != "" {
			parts = append(parts, p.String()+" in "+u)
		}
	}
	return strings.Join(parts, ", ")
}
