package sequence

import (
	"bytes"
	"encoding/json"

	"completion.example/hydrostatics/unit"
)

// Write writes a plan as JSON that reads back to the same: its keys in their order,
// those left out that have nothing in them.
func Write(p *Plan) ([]byte, error) {
	if p == nil {
		return nil, errNoPlan
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	err := e.Encode(p)
	return out.Bytes(), err
}

// MarshalJSON leaves a trapped pressure of nothing out where surface or a formation
// fixes the pressure; anywhere else a nought says something, as nothing that is trapped
// has a pressure by default.
func (k Compartment) MarshalJSON() ([]byte, error) {
	type plain Compartment
	var x any = plain(k)
	if (k.Surface || k.Formation != "") && k.Trapped == (unit.Band[unit.Pressure]{}) {
		x = struct {
			plain
			Trapped *struct{} `json:"trapped,omitempty"` // in place of its own
		}{plain: plain(k)}
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	err := e.Encode(x)
	return out.Bytes(), err
}
