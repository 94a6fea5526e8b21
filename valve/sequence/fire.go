package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// event is an action that happened, or its row coming on by one link or count.
type event struct {
	action       int
	ramp         int
	complete     bool          // the whole row has fired
	links, count int           // how far the row has come
	differential unit.Pressure // at that moment; tension in N where the action is axial
	surface      []unit.Pressure
	pull         unit.Force
	across       []Across // of each port that it opens
}

// meet advances an action's row by a move of its differential and tells
// whether the whole row has fired.
func (w *walker) meet(i int, from, to unit.Pressure) (fired bool, err error) {
	links, _ := w.rows[i].Links()
	count, _ := w.rows[i].Counted()
	o := w.thresholds[i].Ramp(w.rows[i], from, to)
	w.rows[i] = o.State
	e := event{action: i, ramp: w.leg.ramp, differential: to}
	e.links, _ = o.State.Links()
	e.count, _ = o.State.Counted()
	if e.links == links && e.count == count {
		return false, nil
	}
	e.complete = w.thresholds[i].Condition(o.State) == valve.Fired
	e.surface = append(e.surface, w.applied...)
	if w.leg.pull != nil {
		e.pull = w.leg.pull(w.now)
	}
	if e.complete {
		if e.across, err = w.across(w.actions[i].opens); err != nil {
			return false, err
		}
	}
	w.events = append(w.events, e)
	if e.complete {
		err = w.fire(i)
	}
	return e.complete, err
}

// across returns the differentials over ports.
func (s *state) across(ports []int) ([]Across, error) {
	var all []Across
	for _, p := range ports {
		port := s.ports[p]
		a, err := s.at(port.a, port.tvd)
		if err != nil {
			return nil, err
		}
		b, err := s.at(port.b, port.tvd)
		if err != nil {
			return nil, err
		}
		x := Across{s.plan.Ports[p].Name, s.plan.Compartments[port.a].Name, s.plan.Compartments[port.b].Name, nothing(a - b)}
		if x.Differential < 0 {
			x.From, x.To, x.Differential = x.To, x.From, -x.Differential
		}
		all = append(all, x)
	}
	return all, nil
}

// fire does what an action does.
func (w *walker) fire(i int) error {
	a := &w.actions[i]
	w.armed[i] = false
	w.completed = append(w.completed, i)
	var err error
	if a.holds && w.hold.held == nil {
		err = w.takeHold() // as things stand, before ports close
	}
	if a.releases {
		w.letGo()
	}
	for _, p := range a.opens {
		w.open[p] = true
	}
	for _, p := range a.closes {
		w.open[p] = false
	}
	for _, k := range a.arms {
		w.armed[k] = true
		w.rows[k] = valve.State{}
	}
	return err
}
