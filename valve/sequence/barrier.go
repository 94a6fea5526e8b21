package sequence

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// BarrierResult is a barrier at the end of a step.
type BarrierResult struct {
	Name      string   `json:"name"`
	Formation string   `json:"formation"`
	Stands    bool     `json:"stands"`
	Tested    []string `json:"tested,omitempty"` // sides from which it has been tested so far
	Lost      bool     `json:"lost"`             // it stood before this step
}

// barrierResults keeps the ledger and counts it against the plan's rule.
func (c *checker) barrierResults(step *Step, r *StepResult) {
	c.noteFlow(step)
	before := map[string]bool{}
	if n := len(c.programme.Steps); n > 0 {
		for _, b := range c.programme.Steps[n-1].Barriers {
			before[b.Name] = b.Stands
		}
	}
	standing := map[string][]string{}
	for _, b := range c.plan.Barriers {
		stands := true
		for _, w := range c.alive() {
			if w.trace.stands != nil {
				stands = stands && c.barrierStands(b, w)
			}
		}
		tested := slices.Clone(c.tested[b.Name])
		slices.Sort(tested)
		r.Barriers = append(r.Barriers, BarrierResult{Name: b.Name, Formation: b.Formation, Stands: stands,
			Tested: slices.Compact(tested), Lost: before[b.Name] && !stands})
		if stands {
			standing[b.Formation] = append(standing[b.Formation], b.Name)
		}
	}
	for _, f := range c.plan.Formations {
		if c.flowed[f.Name] {
			continue
		}
		listed := slices.ContainsFunc(c.plan.Barriers, func(b Barrier) bool { return b.Formation == f.Name })
		if n := len(standing[f.Name]); listed && n < c.plan.Rules.Barriers {
			c.find(Finding{
				Kind: BarrierLack, Step: step.Name, Device: f.Name, World: "at the end of the step",
				Says:    fmt.Sprintf("%d of %d barriers stand between the formation and surface", n, c.plan.Rules.Barriers),
				Numbers: "standing: " + cmp.Or(strings.Join(standing[f.Name], ", "), "none"),
				Cure:    "put another barrier in place, and test it, before this step",
			})
		}
	}
}

// noteFlow keeps the formations whose inflow has been part of the plan: from
// then on the count of barriers is that of a live well, which the plan's rule
// doesn't speak of.
func (c *checker) noteFlow(step *Step) {
	if slices.Contains(step.Allow, FlowIn) {
		for _, k := range c.worlds[0].trace.stands {
			for _, f := range k.flows {
				if f.kind == FlowIn {
					c.flowed[f.from] = true
				}
			}
		}
	}
	if step.Produce != nil {
		for _, z := range c.worlds[0].state.zones(step.Produce) {
			c.flowed[c.plan.Formations[z.formation].Name] = true
		}
	}
}

// barrierStands tells whether a barrier stands at the end of a step in one
// world.
func (c *checker) barrierStands(b Barrier, w *walked) bool {
	if b.Until != "" && c.happened(w, b.Until) {
		return false
	}
	switch {
	case b.Port != "":
		return !w.state.open[c.byName.port[b.Port]]
	case b.Action != "":
		return c.happened(w, b.Action)
	case b.Column == "":
		return true
	}
	d, err := c.overbalance(w.trace.stand(AtEnd), c.byName.compartment[b.Column], c.byName.formation[b.Formation])
	return err == nil && d >= 0
}

// happened tells whether an action has been completed in a world so far.
func (c *checker) happened(w *walked, name string) bool {
	return slices.Contains(w.state.completed, c.byName.action[name])
}
