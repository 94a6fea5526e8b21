package sequence

import "slices"

// unknown lists the devices whose state isn't certain after a step: the worlds
// don't agree on what they have done, or on how far their triggers have come.
// A device that has left the plan in some world stays in doubt.
func (c *checker) unknown(r *StepResult) {
	r.Unknown = []string{}
	for i, d := range c.plan.Devices {
		for k := range c.actions {
			if c.actions[k].device == i && c.inDoubt(k) {
				r.Unknown = append(r.Unknown, d.Name)
				break
			}
		}
	}
}

func (c *checker) inDoubt(action int) bool {
	type standing struct {
		armed        bool
		links, count int
	}
	var first *standing
	for _, w := range c.worlds {
		if slices.Contains(w.doubt, action) {
			return true
		}
		if w.lost {
			continue
		}
		s := standing{armed: w.state.armed[action]}
		if s.armed {
			s.links, _ = w.state.rows[action].Links()
			s.count, _ = w.state.rows[action].Counted()
		}
		if first == nil {
			first = &s
		} else if *first != s {
			return true
		}
	}
	return false
}
