package sequence_test

import (
	"os"
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// features are what random plans have more than those of plainPlan.
var features = map[string]*feature{
	"begin":      {steps: (*plainMaker).begins, levels: (*plainMaker).beginProgress},
	"conditions": {levels: (*plainMaker).conditions},
	"areas":      {levels: (*plainMaker).areas},
	"branches":   {goals: (*plainMaker).branches, more: (*plainMaker).branchGoals},
	"levels":     {devices: (*plainMaker).oneFluid, steps: (*plainMaker).drains},
	"begun low":  {devices: (*plainMaker).oneFluid, steps: (*plainMaker).beginsLow, levels: (*plainMaker).beginProgress},
	"slower":     {levels: (*plainMaker).slower, goals: (*plainMaker).heldTests},
	"slow":       {levels: (*plainMaker).slow},
	"walls":      {devices: (*plainMaker).walls, steps: (*plainMaker).warms, levels: (*plainMaker).strokes, goals: (*plainMaker).holds},
	"string":     {devices: (*plainMaker).hang, steps: (*plainMaker).stringSteps, levels: (*plainMaker).stringLevels},
	"strings":    {devices: (*plainMaker).nest, steps: (*plainMaker).nestSteps, levels: (*plainMaker).stringLevels},
	"fished":     {devices: (*plainMaker).hangRubbing, steps: (*plainMaker).fishSteps, levels: (*plainMaker).fishLevels},
	"fished in":  {devices: (*plainMaker).nestRubbing, steps: (*plainMaker).fishNestSteps, levels: (*plainMaker).fishLevels},
	"flows":      {devices: (*plainMaker).sands, steps: (*plainMaker).flowSteps, goals: (*plainMaker).flowGoals, dull: (*plainResult).still},
	"outflows":   {devices: (*plainMaker).sands, steps: (*plainMaker).outflowSteps, goals: (*plainMaker).flowGoals, dull: (*plainResult).still},
	"rings":      {devices: (*plainMaker).rings},
	"acts":       {steps: (*plainMaker).acts, goals: (*plainMaker).actGoals},
}

// What plans with each feature are called holds against the plain walker, as it does
// of those without: no plan that is called proved fails in a draw.
func TestFeaturesHoldAgainstThePlainWalker(t *testing.T) {
	for name, f := range features {
		t.Run(name, func(t *testing.T) {
			var c tally
			plans := long.Size(2, 12)
			c.draws = long.Size(60, c.draws)
			switch name { // a string is slow to load plainly
			case "string", "fished":
				plans = 2
			case "strings", "fished in":
				long.Skip(t, "two strings")
				plans = 1
				if os.Getenv("SEQUENCE_PLANS") == "" {
					c.draws = 20
				}
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

// rings joins compartments that are joined already by further ports, mostly in a well of one
// fluid, and lets devices move them.
func (m *plainMaker) rings() {
	if m.chance(0.7) {
		for i := range m.plan.Compartments {
			c := &m.plan.Compartments[i]
			c.Fluid, c.Layers = m.plan.Fluids[0].Name, nil
		}
	}
	for i := range m.group {
		for j := range i {
			if m.group[i] != m.group[j] || !m.chance(0.6) {
				continue
			}
			m.join(i, j)
			p := &m.plan.Ports[len(m.plan.Ports)-1]
			p.Open = p.Open || m.chance(0.3)
			d := &m.plan.Devices[m.random.IntN(len(m.plan.Devices))]
			a := &d.Actions[m.random.IntN(len(d.Actions))]
			switch {
			case slices.Contains(a.Opens, p.Name) || slices.Contains(a.Closes, p.Name) || !m.chance(0.6):
			case p.Open:
				a.Closes = append(a.Closes, p.Name)
			default:
				a.Opens = append(a.Opens, p.Name)
			}
		}
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
				at, depth = p.Joins[m.random.IntN(2)], p.MD
				if m.chance(0.5) {
					a.Drop = p.Name
				} else {
					a.Pull = p.Name
				}
			default:
				d := m.plan.Devices[m.random.IntN(len(m.plan.Devices))]
				at, depth = d.Actions[0].Inside, d.MD
				a.Shift = d.Name + ": " + d.Actions[m.random.IntN(len(d.Actions))].Name
			}
			way, ok := m.wayTo(a.In, at)
			for _, c := range m.plan.Compartments {
				ok = ok && (c.Name != at || c.TopMD <= depth && depth <= c.BottomMD)
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

// conditions makes actions wait for all or any of several triggers, and lets some
// lock others.
func (m *plainMaker) conditions() {
	for d := range m.plan.Devices {
		x := &m.plan.Devices[d]
		if len(x.Actions) > 1 && m.chance(0.3) {
			if other := x.Actions[1].Name; !slices.Contains(x.Actions[0].Arms, other) {
				x.Actions[0].Disarms = []string{other}
			}
		}
		for k := range x.Actions {
			if !m.chance(0.4) {
				continue
			}
			a := &x.Actions[k]
			list := []sequence.Condition{{Inside: a.Inside, Outside: a.Outside, Chamber: a.Chamber, Triggers: a.Triggers}}
			for range 1 + m.random.IntN(2) {
				c := sequence.Condition{Inside: a.Inside, Outside: a.Outside, Chamber: a.Chamber}
				t := sequence.Trigger{Direction: a.Triggers[0].Direction, Threshold: exactly(m.round(1 + a.Triggers[0].Threshold.Nominal.In(psi)*m.between(0.4, 1.1)))}
				if m.chance(0.5) { // another compartment
					var here []string
					for _, o := range m.plan.Compartments {
						if o.TopMD <= x.MD && x.MD <= o.BottomMD {
							here = append(here, o.Name)
						}
					}
					none := pressure(0)
					c.Inside, c.Outside, c.Chamber = here[m.random.IntN(len(here))], "", &none
					t = sequence.Trigger{Threshold: exactly(m.round(9*psiPerFootPpg*x.MD.In(foot) + m.between(-800, 2500)))}
					if m.chance(0.3) {
						t.Direction = valve.Falling
					}
				}
				c.Triggers = []sequence.Trigger{t}
				list = append(list, c)
			}
			m.random.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
			a.Inside, a.Outside, a.Chamber, a.Triggers = "", "", nil, nil
			if m.chance(0.6) {
				a.All = list
			} else {
				a.Any = list
			}
		}
	}
}

// areas puts pistons with several areas, a spring and seals in place of differentials.
func (m *plainMaker) areas() {
	for d := range m.plan.Devices {
		x := &m.plan.Devices[d]
		for k := range x.Actions {
			a := &x.Actions[k]
			if a.Outside == "" || len(a.Triggers) > 1 || !m.chance(0.6) {
				continue
			}
			area := func() unit.Area { return unit.Area(m.between(1, 4)) * unit.SquareInch }
			first := area()
			y := &sequence.Areas{On: []sequence.Pressed{{Compartment: a.Inside, Area: first}, {Compartment: a.Outside, Area: -first}}}
			if m.chance(0.5) {
				y.On[1].Area = -area()
			}
			for _, o := range m.plan.Compartments {
				if o.Name != a.Inside && o.Name != a.Outside && o.TopMD <= x.MD && x.MD <= o.BottomMD && m.chance(0.4) {
					y.On = append(y.On, sequence.Pressed{Compartment: o.Name, Area: area() * unit.Area(m.between(-1, 1))})
					break
				}
			}
			t := a.Triggers[0]
			level := t.Threshold.Nominal.In(psi)
			for _, p := range y.On { // as much as columns of 9 lb/gal make of it
				level += p.Area.In(unit.SquareInch) / first.In(unit.SquareInch) * 9 * psiPerFootPpg * x.MD.In(foot)
			}
			force := max(level, 20) * first.In(unit.SquareInch)
			share := m.between(0.05, 0.5)
			y.Spring, y.Friction = unit.Exactly(unit.Force(force*(1-share))*unit.PoundForce), unit.Exactly(unit.Force(force*share)*unit.PoundForce)
			a.Inside, a.Outside, a.Areas = "", "", y
			a.Triggers = []sequence.Trigger{{Direction: t.Direction, Count: t.Count}}
		}
	}
}
