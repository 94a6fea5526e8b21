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
