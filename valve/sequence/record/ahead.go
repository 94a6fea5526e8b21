package record

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// tells looks ahead, along the plan as it goes on, for the first step in which
// instruments at surface show one thing if a way is the one that was, and another if
// the reported one is. Nothing: no step does.
func (d *diagnoser) tells(n, best *node) string {
	a, b := best.at, n.at
	for i := d.last + 1; i < len(d.plan.Steps); i++ {
		x, nextA, errA := d.follower.Step(d.ctx, a, i, best.still(d.plan, i))
		y, nextB, errB := d.follower.Step(d.ctx, b, i, n.still(d.plan, i))
		if errA != nil || errB != nil {
			return ""
		}
		if what := differs(x, y); what != "" && d.plan.Steps[i].Produce == nil {
			return fmt.Sprintf("step %d, %s, tells: %s", i+1, d.given.Steps[i].Name, what)
		}
		a, b = nextA, nextB
	}
	return ""
}

// Differences that any rig's gauges and tanks show.
const (
	plainPressure = 75 * unit.PSI
	plainShare    = 0.15
)

// differs says what two walks of a step show otherwise at surface; nothing where they
// look alike.
func differs(x, y *sequence.Seen) string {
	for n := range x.Legs {
		if n >= len(y.Legs) {
			return ""
		}
		a, b := &x.Legs[n], &y.Legs[n]
		for _, r := range a.To {
			p := shown(b.To, r.Compartment)
			if math.Abs(p-float64(r.Pressure)) > float64(plainPressure) {
				return fmt.Sprintf("%s shows %s, or %s if so", r.Compartment, r.Pressure.Rounded(digits), unit.Pressure(p).Rounded(digits))
			}
		}
		if w := a.Weight - b.Weight; max(w, -w) > 0.1*max(a.Weight, b.Weight) {
			return fmt.Sprintf("the weight indicator shows %s, or %s if so", a.Weight.Rounded(digits), b.Weight.Rounded(digits))
		}
		for _, t := range a.Stretches[len(a.Stretches)-1].Takes {
			u, ok := takeOf(&b.Stretches[len(b.Stretches)-1], t.Compartment)
			if !ok {
				continue
			}
			f, flows := driving(t)
			g, other := driving(u)
			flows, other = flows && f.Drive >= surelyFlows, other && g.Drive >= surelyFlows
			switch {
			case flows && !other:
				return fmt.Sprintf("%s %s %s, or none if so", f.Flow, toFrom(f.Out), f.Name)
			case other && !flows:
				return fmt.Sprintf("%s %s %s if so", g.Flow, toFrom(g.Out), g.Name)
			case !flows && math.Abs(float64(t.PerPSI-u.PerPSI)) > plainShare*float64(t.PerPSI):
				return fmt.Sprintf("%s takes %s for 100 psi, or %s if so", t.Compartment, size(100*float64(t.PerPSI)), size(100*float64(u.PerPSI)))
			}
		}
	}
	return ""
}
