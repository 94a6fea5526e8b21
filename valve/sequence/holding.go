package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
)

// Holding is the packer's holding envelope and what it is held against: the
// pressure below minus above, and the string's pull.
type Holding struct {
	Below    string         `json:"below"` // compartments
	Above    string         `json:"above"`
	Depth    unit.Length    `json:"depth"`
	Envelope packer.Polygon `json:"envelope"`
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
	v.depth("holding.depth", h.Depth)
	for field, name := range map[string]string{"below": h.Below, "above": h.Above} {
		if v.compartment("holding."+field, name) {
			v.within("holding.depth", h.Depth, name)
		}
	}
	_, err := h.Envelope.Envelope()
	v.faultIf("holding.envelope", err)
}

func (c *compiler) holding() {
	if h := c.plan.Holding; h != nil {
		e, err := h.Envelope.Envelope()
		c.check("holding.envelope", err)
		c.envelope, c.holdingTVD = e, c.tvd("holding.depth", h.Depth)
	}
}

// holdingResults holds the packer's load against its envelope in every world
// that looks at the string.
func (c *checker) holdingResults(step *Step, r *StepResult) error {
	h := c.plan.Holding
	if h == nil {
		return nil
	}
	for n, w := range c.alive() {
		for _, k := range w.trace.stands {
			if k.load == nil || !k.load.held {
				continue
			}
			below, err := k.state.at(c.byName.compartment[h.Below], c.holdingTVD)
			if err != nil {
				return err
			}
			above, err := k.state.at(c.byName.compartment[h.Above], c.holdingTVD)
			if err != nil {
				return err
			}
			m := c.envelope.Margin(packer.Load{Differential: below - above, Axial: k.load.packer})
			if n == 0 {
				r.Holding = append(r.Holding, HoldingResult{k.label, below - above, k.load.packer, m.Used, m.Limit})
			}
			if m.Used <= 1 || c.said(HoldingOff, step, "packer") {
				continue
			}
			c.find(Finding{
				Kind: HoldingOff, Step: step.Name, Device: "packer", World: w.words,
				Says: fmt.Sprintf("its load is outside its holding envelope (%s)", k.label),
				Numbers: fmt.Sprintf("%s from below with %s of pull by the string: %.0f %% of the way to the limit %q",
					psi(below-above), k.load.packer.Rounded(digits), 100*m.Used, m.Limit),
				Cure: "less differential, less pull, or a packer that holds more",
			})
		}
	}
	return nil
}
