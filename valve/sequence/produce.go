package sequence

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
)

// ZoneRate is what a formation gives while a step produces.
type ZoneRate struct {
	Formation string        `json:"formation"`
	Rate      unit.FlowRate `json:"rate"` // negative where it takes fluid
	Water     unit.FlowRate `json:"water"`
	Sandface  unit.Pressure `json:"sandface"`
	Tubing    unit.Pressure `json:"tubing"`
	Takes     bool          `json:"takes"`
}

// zone is a formation that flows, with the choke on its way.
type zone struct {
	formation int
	tvd       unit.Length
	choke     unit.FlowCoefficient // zero: none
}

// zones finds the formations that are joined to a compartment.
func (s *state) zones(p *Produce) []zone {
	root := s.byName.compartment[p.Compartment]
	by := map[int]int{root: -1} // the port through which each compartment was reached
	order := []int{root}
	for k := 0; k < len(order); k++ {
		for i, port := range s.ports {
			for _, pair := range [2][2]int{{port.a, port.b}, {port.b, port.a}} {
				if _, seen := by[pair[1]]; s.open[i] && pair[0] == order[k] && !seen {
					by[pair[1]] = i
					order = append(order, pair[1])
				}
			}
		}
	}
	var zs []zone
	for f, face := range s.face {
		if face < 0 || s.plan.Formations[f].Inflow == nil {
			continue
		}
		if _, reached := by[face]; !reached {
			continue
		}
		z := zone{formation: f, tvd: s.formationTVD[f]}
		for at := face; by[at] >= 0; {
			i := by[at]
			if c, ok := p.Chokes[s.plan.Ports[i].Name]; ok {
				z.choke, z.tvd = c, s.ports[i].tvd
			}
			if s.ports[i].a == at {
				at = s.ports[i].b
			} else {
				at = s.ports[i].a
			}
		}
		zs = append(zs, z)
	}
	slices.SortFunc(zs, func(a, b zone) int { return cmp.Compare(b.tvd, a.tvd) })
	return zs
}

// produce solves the zones of a step together.
func (c *checker) produce(step *Step, r *StepResult) error {
	p := step.Produce
	if p == nil {
		return nil
	}
	s := c.worlds[0].state
	zs := s.zones(p)
	if len(zs) == 0 {
		c.find(Finding{Kind: RateOff, Step: step.Name, Device: p.Compartment, World: c.worlds[0].words,
			Says: "no formation that can flow is joined to it", Numbers: "open ports: " + c.openPorts(s), Cure: "open a way to a zone before this step"})
		return nil
	}
	flow, err := s.well(p, zs).Flow()
	if err != nil {
		if errors.Is(err, production.ErrNoFlow) || errors.Is(err, production.ErrUnresolved) {
			c.find(Finding{Kind: RateOff, Step: step.Name, Device: p.Compartment, World: c.worlds[0].words,
				Says: "the zones do not flow", Numbers: err.Error(), Cure: "a lower wellhead pressure, a lighter fluid in the string, or a zone with more pressure"})
			return nil
		}
		return stepFault{step.Name, err}
	}
	seen := map[string]bool{}
	for i, z := range zs {
		name, x := c.plan.Formations[z.formation].Name, flow.Zones[i]
		seen[name] = true
		r.Zones = append(r.Zones, ZoneRate{Formation: name, Rate: x.Rate, Water: x.Water, Sandface: x.Sandface, Tubing: x.Tubing, Takes: x.Takes})
		c.rate(step, name, x.Rate)
	}
	for name := range p.Want {
		if !seen[name] {
			c.rate(step, name, 0)
		}
	}
	return nil
}

// rate holds a zone's rate against the plan.
func (c *checker) rate(step *Step, name string, q unit.FlowRate) {
	want, ok := step.Produce.Want[name]
	if ok && want.Least <= q && q <= want.Greatest {
		return
	}
	if !ok && q >= 0 {
		return
	}
	f := Finding{Kind: RateOff, Step: step.Name, Device: name, World: c.worlds[0].words,
		Says: "the zone does not give what is planned", Numbers: fmt.Sprintf("%s; wanted %s to %s", q.Rounded(4), want.Least.Rounded(4), want.Greatest.Rounded(4)),
		Cure: "another choke, another wellhead pressure, or another zone shut"}
	if q < 0 {
		f.Says, f.Numbers = "the zone takes fluid from the others", (-q).Rounded(4)+" cross over into it"
	}
	c.find(f)
}

func (c *checker) openPorts(s *state) string {
	text := ""
	for i, p := range c.plan.Ports {
		if s.open[i] {
			if text != "" {
				text += ", "
			}
			text += p.Name
		}
	}
	return cmp.Or(text, "none")
}

// well is the network of package production for the zones of a step.
func (s *state) well(p *Produce, zs []zone) production.Well {
	var w production.Well
	loss := production.Loss{At: p.Rate, Turbulent: p.Loss}
	if p.Loss == 0 {
		loss = production.Loss{}
	}
	for i, z := range zs {
		f := s.plan.Formations[z.formation]
		x := production.Zone{
			Name: f.Name, Depth: z.tvd, WaterCut: f.Inflow.WaterCut, Density: f.Inflow.Density,
			Above: production.Interval{Density: p.Density},
		}
		// The inflow's pressure counts at the formation; the network's at the
		// depth where the zone enters the string.
		x.Inflow = inflow.Liquid{Reservoir: f.Pressure - hydrostatics.Pressure(f.Inflow.Density, s.formationTVD[z.formation]-z.tvd), Index: f.Inflow.Index}
		if z.choke > 0 {
			x.Chokes = choke.Table{{Name: "set", Travel: 1, Coefficient: z.choke}}
		}
		w.Zones = append(w.Zones, x)
		if i == len(zs)-1 {
			w.Outflow = production.Tubing{Surface: p.Surface, Height: z.tvd, Density: p.Density, Loss: loss}
		}
	}
	return w
}
