package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

// TestResult is a test of a barrier.
type TestResult struct {
	Barrier      string                   `json:"barrier"`
	Side         string                   `json:"side"`
	Inside       unit.Pressure            `json:"inside"`
	Outside      unit.Pressure            `json:"outside"`
	Differential unit.Pressure            `json:"differential"`
	Goal         unit.Band[unit.Pressure] `json:"goal"`
	Hold         string                   `json:"hold,omitempty"`
	Floor        unit.Pressure            `json:"floor"` // differential that must still stand at the end of the hold
	Criterion    string                   `json:"criterion,omitempty"`
	OK           bool                     `json:"ok"`
}

// tests holds every test of a step against its goal.
func (c *checker) tests(step *Step, r *StepResult) error {
	for _, t := range step.Tests {
		out := TestResult{Barrier: t.Barrier, Side: t.Side, Goal: t.Differential, Hold: t.Hold, Criterion: t.Criterion, OK: true}
		for n, w := range c.alive() {
			if w.trace.stands == nil {
				continue
			}
			k := w.trace.stand(t.moment())
			d, in, outside, err := c.testDifferential(k, t)
			if err != nil {
				return err
			}
			if n == 0 {
				out.Differential, out.Inside, out.Outside = d, in, outside
			}
			if t.Differential.Contains(d) {
				continue
			}
			out.OK = false
			if c.said(TestOff, step, t.Barrier) {
				continue
			}
			c.find(Finding{
				Kind: TestOff, Step: step.Name, Device: t.Barrier, World: w.words,
				Says: fmt.Sprintf("the test from %s does not see its differential (%s)", t.Side, k.label),
				Numbers: fmt.Sprintf("%s in %q less %s in %q is %s; wanted %s to %s", psi(in), t.Inside, psi(outside), t.Outside,
					psi(d), psi(t.Differential.Least), psi(t.Differential.Greatest)),
				Cure: c.testCure(step, k, t),
			})
		}
		out.Floor = out.Differential * unit.Pressure(1-t.Decline)
		if out.OK {
			c.tested[t.Barrier] = append(c.tested[t.Barrier], t.Side)
		}
		r.Tests = append(r.Tests, out)
	}
	return nil
}

func (c *checker) testDifferential(k *stand, t Test) (d, in, out unit.Pressure, err error) {
	tvd, err := c.path.TVD(t.Depth)
	if err != nil {
		return 0, 0, 0, err
	}
	if in, err = k.state.at(c.byName.compartment[t.Inside], tvd); err != nil {
		return 0, 0, 0, err
	}
	out, err = k.state.at(c.byName.compartment[t.Outside], tvd)
	return in - out, in, out, err
}

// testCure names a side that nothing holds or vents; empty where a surface
// pressure may mend the test.
func (c *checker) testCure(step *Step, k *stand, t Test) string {
	for _, name := range []string{t.Inside, t.Outside} {
		i := c.byName.compartment[name]
		members, _ := k.state.body(i)
		fixed := false
		for _, m := range members {
			fixed = fixed || k.state.surface[m] || c.compartments[m].formation >= 0
		}
		if fixed {
			continue
		}
		for p, port := range c.ports {
			if (port.a == i || port.b == i) && !k.state.open[p] {
				return fmt.Sprintf("%q is trapped: open %q, or another port of it, and vent it before the test", name, c.plan.Ports[p].Name)
			}
		}
		return fmt.Sprintf("%q is trapped and has no port to vent it", name)
	}
	if len(step.Ramps) > 0 {
		return "" // the step's window says it
	}
	return "change the surface pressure by what is missing"
}
