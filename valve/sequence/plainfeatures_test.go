package sequence_test

import (
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// features are what random plans have more than those of plainPlan.
var features = map[string]*feature{
	"begin": {steps: (*plainMaker).begins, levels: (*plainMaker).beginProgress},
	"acts":  {steps: (*plainMaker).acts, goals: (*plainMaker).actGoals},
}

// What plans with each feature are called holds against the plain walker, as it does
// of those without: no plan that is called proved fails in a draw.
func TestFeaturesHoldAgainstThePlainWalker(t *testing.T) {
	for name, f := range features {
		t.Run(name, func(t *testing.T) {
			var c tally
			plans := 120
			if testing.Short() {
				plans = 25
			}
			from, to := plansWanted(t, plans)
			eachPlan(from, to, func(n uint64) {
				p := plainPlanWith(4711, n, f)
				v, err := verdictOf(p)
				if err != nil {
					c.unwalked(t, p, n, err)
					return
				}
				c.holdAgainst(t, p, n, v)
			})
			t.Log(&c)
			require.Zero(t, c.wrong.Load())
			require.NotZero(t, c.proved.Load()+c.refuted.Load())
		})
	}
}

// wayTo are the ports from a compartment at surface to another; false: there are
// none.
func (m *plainMaker) wayTo(from, to string) ([]string, bool) {
	way := map[string][]string{from: {}}
	order := []string{from}
	for k := 0; k < len(order); k++ {
		if order[k] == to {
			return way[to], true
		}
		for _, p := range m.plan.Ports {
			i := slices.Index(p.Joins, order[k])
			if i < 0 {
				continue
			}
			next := p.Joins[1-i]
			if _, known := way[next]; !known {
				way[next] = append(slices.Clone(way[order[k]]), p.Name)
				order = append(order, next)
			}
		}
	}
	return nil, false
}

// acts puts acts by hand into some steps.
func (m *plainMaker) acts() {
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		for range m.random.IntN(3) {
			var a sequence.Act
			a.In = []string{"tubing", "annulus"}[m.random.IntN(2)]
			at, depth := "", unit.Length(0)
			switch n := m.random.IntN(8); {
			case n == 0:
				a = sequence.Act{Vent: a.In}
				s.Do = append(s.Do, a)
				continue
			case n < 5 && len(m.plan.Ports) > 0:
				p := m.plan.Ports[m.random.IntN(len(m.plan.Ports))]
				at, depth = p.Joins[m.random.IntN(2)], p.Depth
				if m.chance(0.5) {
					a.Drop = p.Name
				} else {
					a.Pull = p.Name
				}
			default:
				d := m.plan.Devices[m.random.IntN(len(m.plan.Devices))]
				at, depth = d.Actions[0].Inside, d.Depth
				a.Shift = d.Name + ": " + d.Actions[m.random.IntN(len(d.Actions))].Name
			}
			way, ok := m.wayTo(a.In, at)
			for _, c := range m.plan.Compartments {
				ok = ok && (c.Name != at || c.Top <= depth && depth <= c.Bottom)
			}
			if !ok || slices.Contains(way, a.Drop+a.Pull) {
				continue
			}
			a.Through = way
			a.AtMost = pounds(1)
			s.Do = append(s.Do, a)
		}
	}
}

// actGoals takes acts out that can't be done with the nominal values, most of them,
// and says what the others bear.
func (m *plainMaker) actGoals(r *plainResult) {
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		var all []sequence.Act
		for n, a := range s.Do {
			across := r.across[k][n]
			hindered := across == nil && a.Vent == ""
			if hindered && m.chance(0.9) {
				continue
			}
			a.AtMost = 0
			if most := slices.Max(append(across, 0)); most > 0 && (a.Pull == "" || m.chance(0.9)) {
				a.AtMost = pounds(most * (1 + m.room()))
			}
			all = append(all, a)
		}
		s.Do = all
	}
}
