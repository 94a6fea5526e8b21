package fluid

import (
	"fmt"

	"completion.example/internal/fault"
)

// Salt is a salt of clear brines.
type Salt int

// The salts. Not each has data for everything: what is missing is ErrNoData.
const (
	SodiumChloride Salt = iota + 1
	PotassiumChloride
	SodiumBromide
	CalciumChloride
	MagnesiumChloride
	SodiumFormate
	PotassiumFormate
	CalciumBromide
	ZincBromide
)

var saltNames = [...]string{"no salt", "NaCl", "KCl", "NaBr", "CaCl2", "MgCl2", "sodium formate", "potassium formate", "CaBr2", "ZnBr2"}

func (s Salt) known() bool { return s > 0 && int(s) < len(saltNames) }

// String returns the name that MarshalText writes.
func (s Salt) String() string {
	if !s.known() {
		return fmt.Sprintf("salt %d", int(s))
	}
	return saltNames[s]
}

// MarshalText writes the formula, or the name of a formate.
func (s Salt) MarshalText() ([]byte, error) {
	if !s.known() {
		return nil, fault.NewIn(scope, "", "salt is %d; must be a known one", int(s))
	}
	return []byte(saltNames[s]), nil
}

// UnmarshalText reads what MarshalText writes.
func (s *Salt) UnmarshalText(text []byte) error {
	for i, name := range saltNames {
		if i > 0 && name == string(text) {
			*s = Salt(i)
			return nil
		}
	}
	return fault.NewIn(scope, "", "salt is %q; must be one of %q", text, saltNames[1:])
}
