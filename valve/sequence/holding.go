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

// holdingLoad is the packer's load where a step stands still; false where
// nothing holds the string or the plan has no envelope.
func (c *checker) holdingLoad(k *stand) (packer.Load, bool, error) {
	h := c.plan.Holding
	if h == nil || k.load == nil || !k.load.held {
		return packer.Load{}, false, nil
	}
	below, err := k.state.at(c.byName.compartment[h.Below], c.holdingTVD)
	if err != nil {
		return packer.Load{}, false, err
	}
	above, err := k.state.at(c.byName.compartment[h.Above], c.holdingTVD)
	return packer.Load{Differential: below - above, Axial: k.load.packer}, true, err
}

// holdingResults holds the packer's load against its envelope in every world
// that looks at the string.
func (c *checker) holdingResults(step *Step, r *StepResult) error {
	for n, w := range c.alive() {
		for i := range w.trace.stands {
			k := &w.trace.stands[i]
			l, held, err := c.holdingLoad(k)
			if err != nil {
				return err
			}
			if !held {
				continue
			}
			m := c.envelope.Margin(l)
			if n == 0 {
				r.Holding = append(r.Holding, HoldingResult{k.label, l.Differential, l.Axial, m.Used, m.Limit})
			}
			if m.Used <= 1 || c.said(HoldingOff, step, "packer") {
				continue
			}
			cure := "" // the step's window says it
			if len(step.Ramps) == 0 {
				cure = "less differential, less pull, or a packer that holds more"
			}
			c.find(Finding{
				Kind: HoldingOff, Step: step.Name, Device: "packer", World: w.words,
				Says: fmt.Sprintf("its load is outside its holding envelope (%s)", k.label),
				Numbers: fmt.Sprintf("%s from below with %s of pull by the string: %.0f %% of the way to the limit %q",
					psi(l.Differential), l.Axial.Rounded(digits), 100*m.Used, m.Limit),
				Cure: cure,
			})
		}
	}
	return nil
}
