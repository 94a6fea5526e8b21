package flow

import (
	"fmt"

	"completion.example/internal/fault"
)

// Regime is the way a fluid moves. The zero value is at rest.
type Regime int

// The regimes of flow.
const (
	FlowStatic Regime = iota
	FlowLaminar
	FlowTransitional
	FlowTurbulent
)

var regimeNames = [...]string{"at rest", "laminar", "transitional", "turbulent"}

func (r Regime) String() string {
	if r < 0 || int(r) >= len(regimeNames) {
		return fmt.Sprintf("Regime(%d)", int(r))
	}
	return regimeNames[r]
}

// MarshalText writes the regime's name.
func (r Regime) MarshalText() ([]byte, error) {
	if r < 0 || int(r) >= len(regimeNames) {
		return nil, fault.NewIn("flow", "", "regime is %v; must be a known one", r)
	}
	return []byte(r.String()), nil
}

// UnmarshalText reads the regime's name.
func (r *Regime) UnmarshalText(text []byte) error {
	for i, name := range regimeNames {
		if string(text) == name {
			*r = Regime(i)
			return nil
		}
	}
	return fault.NewIn("flow", "", "regime is %q; must be one of %q", text, regimeNames)
}
