package sequence

import "completion.example/hydrostatics/unit"

// Window is where a pressure or a pull may lie.
type Window struct {
	Compartment string        `json:"compartment"`
	Planned     unit.Pressure `json:"planned"`
}
