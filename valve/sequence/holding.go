package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
)

// Holding is the packer's holding envelope and what it is held against: the
// pressure below minus above, and the string's pull.
type Holding struct {
	Note     string         `json:"note,omitzero"`
	Below    string         `json:"below,omitzero"` // compartments
	Above    string         `json:"above,omitzero"`
	MD       unit.Length    `json:"depth,omitzero"`
	Envelope packer.Polygon `json:"envelope,omitzero"`
}

// HoldingResult is the packer's load where a step stands still, the string
// being held.
type HoldingResult struct {
	Point        string        `json:"point"`
	Differential unit.Pressure `json:"differential"` // below minus above
	Axial        unit.Force    `json:"axial"`        // string on packer, up positive
	Used         float64       `json:"used"`         // share of the way to the edge; above 1 outside
	Limit        string        `json:"limit"`
}

func (v *validation) holding() {
	h := v.plan.Holding
	if h == nil {
		return
	}
	if v.plan.String == nil {
		v.fault("holding", "needs the plan's string")
	}
	v.depth("holding.depth", h.MD)
	for field, name := range map[string]string{"below": h.Below, "above": h.Above} {
		if v.compartment("holding."+field, name) {
			v.within("holding.depth", h.MD, name)
		}
	}
	_, err := h.Envelope.Envelope()
	v.faultIf("holding.envelope", err)
}
