package sequence

import (
	"fmt"
	"slices"
)

// flowResults reports flow that the step does not allow.
func (c *checker) flowResults(step *Step) {
	if step.Produce != nil {
		return
	}
	for _, w := range c.alive() {
		for _, k := range w.trace.stands {
			for _, f := range k.flows {
				if slices.Contains(step.Allow, f.kind) {
					continue
				}
				what := f.from + " to " + f.to
				if c.said(FlowOff, step, what) {
					continue
				}
				c.find(Finding{
					Kind: FlowOff, Step: step.Name, Device: what, World: w.words,
					Says:    fmt.Sprintf("%s that the step does not allow (%s)", f.kind, k.label),
					Numbers: fmt.Sprintf("%s drive fluid from %s to %s", psi(f.differential), f.from, f.to),
					Cure:    c.flowCure(f),
				})
			}
		}
	}
}

func (c *checker) flowCure(f flow) string {
	switch f.kind {
	case FlowIn:
		return fmt.Sprintf("hold %s more at surface, or shut the port between them", psi(f.differential))
	case FlowOut:
		return fmt.Sprintf("hold %s less at surface, or shut the port between them", psi(f.differential))
	}
	return fmt.Sprintf("hold %s more on %q, shut it in, or shut the port between them", psi(f.differential), f.to)
}
