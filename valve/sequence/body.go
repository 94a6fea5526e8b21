package sequence

import (
	"slices"

	"completion.example/hydrostatics/unit"
)

// body returns the compartments joined to one through open ports, and the
// number of those ports.
func (s *state) body(i int) (members []int, ports int) {
	members = []int{i}
	for k := 0; k < len(members); k++ {
		for p, port := range s.ports {
			if !s.open[p] {
				continue
			}
			switch members[k] {
			case port.a:
				ports++
				if !slices.Contains(members, port.b) {
					members = append(members, port.b)
				}
			case port.b:
				ports++
				if !slices.Contains(members, port.a) {
					members = append(members, port.a)
				}
			}
		}
	}
	return members, ports / 2
}

// flow is fluid that moves because two things fix one body's pressure.
type flow struct {
	kind         Flow
	from, to     string        // formation or compartment
	differential unit.Pressure // from less to, at the depth of the formation or at surface
}

// flowTolerance is the difference between two fixed pressures that counts as
// none: less than any gauge on a rig can show.
const flowTolerance = 0.5 * unit.PSI

// solve gives every compartment its pressure in the present shape of the
// network. What fixes a body is, first, a surface pressure (the plan's first
// where there are several), else a formation, else nothing: then it keeps its
// pressure.
func (s *state) solve() error {
	for i := range s.visited {
		s.visited[i] = false
	}
	for i := range s.compartments {
		if s.surface[i] && !s.visited[i] {
			s.top[i] = s.applied[i]
			if err := s.spread(i); err != nil {
				return err
			}
		}
	}
	for i, c := range s.compartments {
		if c.formation >= 0 && !s.visited[i] {
			p, err := s.carry(i, s.plan.Formations[c.formation].Pressure, s.formationTVD[c.formation], c.top)
			if err != nil {
				return err
			}
			s.top[i] = p
			if err := s.spread(i); err != nil {
				return err
			}
		}
	}
	for i := range s.compartments {
		if !s.visited[i] {
			if err := s.trapped(i); err != nil {
				return err
			}
		}
	}
	return nil
}

// spread carries the pressure of compartment i through its open ports.
func (s *state) spread(i int) error {
	s.order = append(s.order[:0], i)
	s.visited[i] = true
	for k := 0; k < len(s.order); k++ {
		for p, port := range s.ports {
			if !s.open[p] {
				continue
			}
			next := -1
			switch s.order[k] {
			case port.a:
				next = port.b
			case port.b:
				next = port.a
			}
			if next < 0 || s.visited[next] {
				continue
			}
			q, err := s.at(s.order[k], port.tvd)
			if err != nil {
				return err
			}
			if s.top[next], err = s.carry(next, q, port.tvd, s.compartments[next].top); err != nil {
				return err
			}
			s.visited[next] = true
			s.order = append(s.order, next)
		}
	}
	return nil
}

// trapped settles a body that nothing fixes. Bodies that have just met share
// their pressures by volume, as equal fluids in rigid walls would.
func (s *state) trapped(i int) error {
	before := s.top[i]
	members, _ := s.body(i)
	var own []unit.Pressure
	for _, m := range members {
		own = append(own, s.top[m])
	}
	if err := s.spread(i); err != nil {
		return err
	}
	var shift, weight float64
	for k, m := range members {
		// how far m stood above what i alone would make of it
		shift += s.compartments[m].weight * float64(own[k]-s.top[m])
		weight += s.compartments[m].weight
	}
	if shift == 0 {
		return nil
	}
	s.top[i] = before + unit.Pressure(shift/weight)
	for _, m := range members {
		s.visited[m] = false
	}
	return s.spread(i)
}

// flows finds the bodies whose pressure is fixed more than once.
func (s *state) flows() ([]flow, error) {
	var found []flow
	for i, c := range s.compartments {
		name := s.plan.Compartments[i].Name
		if s.surface[i] {
			if d := s.top[i] - s.applied[i]; d > flowTolerance {
				// What stands here by its columns is more than the applied pressure holds.
				found = append(found, flow{Circulation, s.fixedBy(i), name, d})
			} else if d < -flowTolerance {
				found = append(found, flow{Circulation, name, s.fixedBy(i), -d})
			}
		}
		if c.formation < 0 {
			continue
		}
		f := s.plan.Formations[c.formation]
		p, err := s.at(i, s.formationTVD[c.formation])
		if err != nil {
			return nil, err
		}
		if d := f.Pressure - p; d > flowTolerance {
			found = append(found, flow{FlowIn, f.Name, s.fixedBy(i), d})
		} else if d < -flowTolerance {
			found = append(found, flow{FlowOut, s.fixedBy(i), f.Name, -d})
		}
	}
	return found, nil
}

// fixedBy names what fixes the pressure of the body of compartment i.
func (s *state) fixedBy(i int) string {
	members, _ := s.body(i)
	slices.Sort(members)
	for _, m := range members {
		if s.surface[m] {
			return s.plan.Compartments[m].Name
		}
	}
	for _, m := range members {
		if f := s.compartments[m].formation; f >= 0 {
			return s.plan.Formations[f].Name
		}
	}
	return s.plan.Compartments[i].Name
}
