package fluid

import (
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// ParseBrine returns the brine that a text names by its system and its density at
// 70 °F, as it stands in the pits:
//
//	CaCl2 11.3 lb/gal
//
// It has the coefficients of KrookBoyce, with their range and errors; systems are
// written as System writes them.
func ParseBrine(text string) (Brine, error) {
	name, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	var system System
	rho, err := unit.Read[unit.Density](rest)
	if err := fault.Join(scope, fault.At("system", system.UnmarshalText([]byte(name))), fault.At("density", err)); err != nil {
		return Brine{}, err
	}
	return KrookBoyce(system, rho)
}
