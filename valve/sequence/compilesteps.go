package sequence

import (
	"fmt"
	"maps"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

func (c *compiler) steps() {
	n := c.Network
	for _, s := range c.plan.Steps {
		x := walk.Step{Name: s.Name, Temperature: -1, Lands: s.Lands && c.plan.String != nil, On: c.plan.own(s.On).of, Keeps: c.plan.OuterString != nil && s.On == OnString, Expect: make([][]int, n.Devices)}
		if s.Temperature != "" {
			x.Temperature = slices.Index(c.names, s.Temperature)
		}
		for _, name := range s.Shut {
			x.Shut = append(x.Shut, c.by.compartment[name])
		}
		for _, w := range s.Displace {
			x.Displacements = append(x.Displacements, walk.Displacement{Compartment: c.by.compartment[w.Compartment], Fluid: c.fluid(w.Fluid),
				From: c.depth(w.FromMD), To: c.depth(w.ToMD), Up: w.Up})
		}
		for _, h := range s.Hold {
			x.Holds = append(x.Holds, duration(h).Seconds())
		}
		x.Rise = float64(s.rise(c.plan)) / 60
		x.Takes = duration(s.Takes).Seconds()
		x.Tested, x.TestedAnywhere = s.tested()
		x.Pumps = c.pumps(s)
		if produce := s.Produce; produce != nil {
			compiled := c.compiled
			x.Flow = func(s *well.State) (*well.Flowed, error) { return compiled.flowing(s, produce) }
		}
		for _, ramp := range s.Ramps {
			var moves []walk.Move
			for _, name := range slices.Sorted(maps.Keys(ramp)) {
				moves = append(moves, walk.Move{Compartment: c.by.compartment[name], To: c.applied(ramp[name])})
			}
			x.Ramps = append(x.Ramps, moves)
		}
		if len(s.PressureChange) > 0 {
			x.RaiseTrapped = map[int]float64{}
			for name, d := range s.PressureChange {
				x.RaiseTrapped[c.by.compartment[name]] = float64(d)
			}
		}
		if len(s.VolumeChange) > 0 {
			x.Press = map[int]float64{}
			for name, v := range s.VolumeChange {
				x.Press[c.by.compartment[name]] = float64(v)
			}
		}
		for _, f := range s.Pull {
			x.Pulls = append(x.Pulls, affine.Const(float64(f)))
		}
		for _, name := range s.Expect {
			a := c.by.action[name]
			d := n.Actions[a].Device
			x.Expect[d] = append(x.Expect[d], a)
		}
		g := c.goals(&s)
		c.acts(&s, &x, &g)
		c.Steps = append(c.Steps, x)
		c.Limits.Steps = append(c.Limits.Steps, g)
	}
	c.flows()
	for i := range c.Steps {
		next := []int{i + 1}
		if c.Flow != nil {
			next = []int{c.Flow[i].Next, c.Flow[i].Fail}
		}
		x := &c.Steps[i]
		x.Last = next[0] >= len(c.Steps)
		x.Timed = !x.Last && !slices.ContainsFunc(next, func(n int) bool { return n >= 0 && n < len(c.Steps) && c.Steps[n].Takes <= 0 })
	}
	for i := range c.Steps {
		if len(c.Steps[i].Not) == 0 {
			continue
		}
		for _, all := range c.Steps[i].Expect {
			for _, a := range all {
				n.Actions[a].Watched = true // it isn't a matter of its own row alone
			}
		}
	}
}

// applied is what is really applied where the gauge shows a pressure.
func (c *compiler) applied(p unit.Pressure) affine.Form {
	f := affine.Const(float64(p))
	if p > 0 {
		f = f.Plus(c.forms["rules.gauge"])
	}
	return f
}

func (c *compiler) goals(s *Step) judge.Goals {
	g := judge.Goals{Produces: s.Produce != nil, Inflow: slices.Contains(s.Allow, FlowIn), Loss: slices.Contains(s.Allow, FlowOut),
		Circle: slices.Contains(s.Allow, Circulation)}
	last := s.lastStandstill()
	g.Last = last
	for k, t := range s.Tests {
		d := c.depth(t.MD)
		in, out := c.by.compartment[t.Inside], c.by.compartment[t.Outside]
		x := judge.Test{Inside: in, Outside: out, AtIn: c.at(in, d), AtOut: c.at(out, d), Standstill: -1,
			Least: float64(t.Differential.Least), Greatest: float64(t.Differential.Greatest)}
		switch t.Moment {
		case AtStart:
			x.Standstill = 0
		case AtEnd:
			x.Standstill = last
		default:
			x.Furthest = true
		}
		x.Decline = t.Decline
		for name := range t.Warms {
			if x.Warms == nil {
				x.Warms = map[int]affine.Form{}
			}
			x.Warms[c.by.compartment[name]] = c.forms[fmt.Sprintf("steps.%s.tests[%d].warms.%s", s.Name, k, name)]
		}
		g.Tests = append(g.Tests, x)
	}
	for _, b := range s.Balance {
		i, f := c.by.compartment[b.Compartment], c.by.formation[b.Formation]
		x := judge.Balance{Compartment: i, At: c.at(i, c.Network.Formations[f].Depth), Formation: f, Standstill: last,
			Least: float64(b.Overbalance.Least), Greatest: float64(b.Overbalance.Greatest)}
		switch b.Moment {
		case AtStart:
			x.Standstill = 0
		case AtPeak:
			x.Standstill = 1
		}
		g.Balances = append(g.Balances, x)
	}
	return g
}
