package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
)

// BalanceResult is the overbalance of a compartment against a formation:
// positive where the well is heavier.
type BalanceResult struct {
	Compartment string                    `json:"compartment"`
	Formation   string                    `json:"formation"`
	Point       string                    `json:"point"`
	Well        unit.Pressure             `json:"well"` // at the formation's depth
	Pore        unit.Pressure             `json:"pore"`
	Overbalance unit.Pressure             `json:"overbalance"`
	Goal        *unit.Band[unit.Pressure] `json:"goal,omitempty"`
	OK          bool                      `json:"ok"`
}

// overbalance of compartment i against formation f where a step stands still.
func (c *checker) overbalance(k *stand, i, f int) (unit.Pressure, error) {
	p, err := k.state.at(i, c.formationTVD[f])
	return p - c.plan.Formations[f].Pressure, err
}

// balanceOf is the result for compartment i and formation f.
func (c *checker) balanceOf(k *stand, i, f int) (BalanceResult, error) {
	d, err := c.overbalance(k, i, f)
	pore := c.plan.Formations[f].Pressure
	return BalanceResult{Compartment: c.plan.Compartments[i].Name, Formation: c.plan.Formations[f].Name, Point: k.label,
		Well: d + pore, Pore: pore, Overbalance: d, OK: true}, err
}

// balance reports the plan's goals, and the face of every formation.
func (c *checker) balance(step *Step, r *StepResult) error {
	for _, b := range step.Balance {
		i, f := c.byName.compartment[b.Compartment], c.byName.formation[b.Formation]
		out, err := c.balanceOf(c.worlds[0].trace.stand(b.Moment), i, f)
		if err != nil {
			return err
		}
		out.Goal = &b.Overbalance
		for _, w := range c.alive() {
			if w.trace.stands == nil {
				continue
			}
			k := w.trace.stand(b.Moment)
			d, err := c.overbalance(k, i, f)
			if err != nil {
				return err
			}
			if b.Overbalance.Contains(d) {
				continue
			}
			out.OK = false
			if c.said(BalanceOff, step, b.Formation) {
				continue
			}
			c.find(Finding{
				Kind: BalanceOff, Step: step.Name, Device: b.Formation, World: w.words,
				Says:    fmt.Sprintf("%q is not balanced against it as planned (%s)", b.Compartment, k.label),
				Numbers: fmt.Sprintf("%s; planned %s to %s", balanceWords(d), balanceWords(b.Overbalance.Least), balanceWords(b.Overbalance.Greatest)),
				Cure:    c.balanceCure(k, i, d, b.Overbalance),
			})
		}
		r.Balance = append(r.Balance, out)
	}
	c.faces(r)
	return nil
}

// faces reports the compartment that stands open to each formation at the end.
func (c *checker) faces(r *StepResult) {
	k := c.worlds[0].trace.stand(AtEnd)
	for f, i := range c.face {
		if i < 0 {
			continue
		}
		members, _ := k.state.body(i)
		if !slices.ContainsFunc(members, func(m int) bool { return k.state.surface[m] }) {
			continue // the formation itself fixes the pressure
		}
		for _, m := range members {
			x := c.compartments[m]
			if m == i || r.balanced(c.plan.Compartments[m].Name, c.plan.Formations[f].Name) || !(x.top <= c.formationTVD[f] && c.formationTVD[f] <= x.bottom) {
				continue
			}
			if b, err := c.balanceOf(k, m, f); err == nil {
				r.Balance = append(r.Balance, b)
			}
		}
	}
}

// balanced tells whether a balance stands in the result already.
func (r *StepResult) balanced(compartment, formation string) bool {
	return slices.ContainsFunc(r.Balance, func(b BalanceResult) bool { return b.Compartment == compartment && b.Formation == formation })
}

func balanceWords(d unit.Pressure) string {
	if d < 0 {
		return psi(-d) + " underbalance"
	}
	return psi(d) + " overbalance"
}

// balanceCure says what surface pressure brings the balance into its band, or
// that none can because it would have to be below zero.
func (c *checker) balanceCure(k *stand, i int, d unit.Pressure, goal unit.Band[unit.Pressure]) string {
	members, _ := k.state.body(i)
	slices.Sort(members)
	for _, m := range members {
		if !k.state.surface[m] {
			continue
		}
		name, now := c.plan.Compartments[m].Name, k.state.applied[m]
		least, greatest := now+goal.Least-d, now+goal.Greatest-d
		if greatest < 0 {
			return fmt.Sprintf("no surface pressure does it: %q would need %s; a lighter fluid is wanted", name, psi(greatest))
		}
		return fmt.Sprintf("hold %s to %s on %q", psi(max(least, 0)), psi(greatest), name)
	}
	return "nothing at surface fixes this compartment's pressure; its fluid has to change"
}

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
