package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

// result is what the nominal world shows of a step.
func (c *checker) result(step *Step) *StepResult {
	w := c.worlds[0]
	r := &StepResult{Name: step.Name, Note: step.Note, Volumes: w.trace.volumes, Pull: step.Pull}
	if step.Produce != nil {
		r.Wellhead = &step.Produce.Surface
	}
	for i := range w.trace.stands {
		r.Points = append(r.Points, c.point(&w.trace.stands[i]))
	}
	for _, e := range w.trace.events {
		r.Events = append(r.Events, c.event(w, e))
	}
	for i, p := range c.plan.Ports {
		r.Ports = append(r.Ports, PortState{p.Name, w.state.open[i]})
	}
	return r
}

func (c *checker) readings(s *state, applied []unit.Pressure) []Reading {
	var all []Reading
	for i, p := range c.plan.Compartments {
		if p.Surface {
			all = append(all, Reading{p.Name, nothing(applied[i]), !s.surface[i]})
		}
	}
	return all
}

// nothing takes the last bits off a pressure that is zero but for rounding.
func nothing(p unit.Pressure) unit.Pressure {
	if p > -0.001*unit.PSI && p < 0.001*unit.PSI {
		return 0
	}
	return p
}

func (c *checker) point(k *stand) Point {
	s := k.state
	shown := make([]unit.Pressure, len(s.top))
	for i := range shown {
		if shown[i] = s.top[i]; s.surface[i] {
			shown[i] = s.applied[i]
		}
	}
	p := Point{Label: k.label, Surface: c.readings(s, shown)}
	for _, d := range c.plan.Devices {
		tvd, _ := c.path.TVD(d.Depth) // checked with the plan
		for i, x := range c.plan.Compartments {
			if x.Top <= d.Depth && d.Depth <= x.Bottom {
				if q, err := s.at(i, tvd); err == nil {
					p.Pressures = append(p.Pressures, PressureAt{d.Name, d.Depth, tvd, x.Name, q})
				}
			}
		}
	}
	for i := range c.compartments {
		for _, l := range s.layers[i] {
			for _, tvd := range []unit.Length{l.top, l.bottom} {
				if q, err := s.at(i, tvd); err == nil {
					p.Profiles = append(p.Profiles, ProfilePoint{c.plan.Compartments[i].Name, tvd, q})
				}
			}
		}
	}
	for _, f := range k.flows {
		p.Flows = append(p.Flows, FlowAt{f.kind, f.from, f.to, f.differential})
	}
	if l := k.load; l != nil {
		at := &StringAt{
			Held: l.held, Free: l.free, Hook: l.top + c.plan.String.Block, Tension: l.atHeld, Packer: l.packer, Seals: l.seals,
			Usage: l.governing.Usage, Limit: l.governing.Limit.String(), LimitMD: l.governing.MD, Buckled: l.buckled,
		}
		for _, n := range l.upper.Nodes {
			_, usage := n.Usage.Governing()
			at.Along = append(at.Along, StringDepth{n.MD, n.True + l.more, usage})
		}
		p.String = at
	}
	return p
}

func (c *checker) event(w *walked, e event) Event {
	a := &c.actions[e.action]
	r := Event{Action: a.name, Ramp: e.ramp + 1, Surface: c.readings(w.state, e.surface), Pull: e.pull, Across: e.across}
	if a.axial {
		f := unit.Force(e.differential)
		r.Tension = &f
	} else {
		d := e.differential
		r.Differential = &d
	}
	if !e.complete {
		r.Partial = fmt.Sprintf("trigger %d of %d", min(e.links+1, len(a.row)), len(a.row))
		if e.links < len(a.row) && a.row[e.links].Count > 1 {
			r.Partial += fmt.Sprintf(", counted %d of %d", e.count, a.row[e.links].Count)
		} else if e.links > 0 {
			r.Partial = fmt.Sprintf("trigger %d of %d met", e.links, len(a.row))
		}
	}
	return r
}
