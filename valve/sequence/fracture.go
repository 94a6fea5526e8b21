package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

// fractures holds the pressure at every formation that is open to a well
// against its fracture pressure.
func (c *checker) fractures(step *Step) error {
	for i, f := range c.plan.Formations {
		if f.Fracture == 0 || c.face[i] < 0 {
			continue
		}
		for _, w := range c.alive() {
			for _, k := range w.trace.stands {
				p, err := k.state.at(c.face[i], c.formationTVD[i])
				if err != nil {
					return err
				}
				if p <= f.Fracture || c.said(Fracture, step, f.Name) {
					continue
				}
				c.find(Finding{
					Kind: Fracture, Step: step.Name, Device: f.Name, World: w.words,
					Says:    fmt.Sprintf("the pressure at the formation passes its fracture pressure (%s)", k.label),
					Numbers: fmt.Sprintf("%s at %.0f ft; fracture pressure %s", psi(p), f.Depth.In(unit.Foot), psi(f.Fracture)),
					Cure:    fmt.Sprintf("take %s off at surface while the formation is open", psi(p-f.Fracture)),
				})
			}
		}
	}
	return nil
}
