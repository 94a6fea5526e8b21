package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Act is something done by hand, put together: a port that is moved, an action that
// is made to happen, or a compartment that is bled to nothing.
type Act struct {
	Port    int // or -1
	Opens   bool
	Action  int     // or -1
	Vent    int     // compartment, or -1
	Drain   int     // compartment whose column falls to where its formation carries it, or -1
	Fill    int     // compartment whose column is brought back to its top, or -1
	Through []int   // ports that must be open for what is dropped or run to come there
	Takes   float64 // in s; 0: not known
	Across  []int   // ports whose differential is judged
}

// Hindrance is what keeps an act from being done.
type Hindrance uint8

// The hindrances.
const (
	Free     Hindrance = iota
	Blocked            // a port on its way is shut
	Already            // the port stands so already
	NotArmed           // the action has happened, or what arms it hasn't
)

// hand does one act of the step, between two legs: what it changes is changed at
// once, and what then is due happens.
func (k *Walker) hand(w *World, n int) ([]*World, error) {
	a := &k.step.Acts[n]
	switch {
	case a.Vent >= 0:
		return k.raise(w, []Move{{a.Vent, affine.Form{}}})
	case a.Drain >= 0:
		return k.drain(w, a.Drain)
	case a.Fill >= 0:
		return k.fill(w, a.Fill)
	}
	w = w.Clone()
	s := w.State
	across, err := k.across(w, a)
	if err != nil {
		return nil, err
	}
	why, at := hindrance(w, a)
	p := k.place
	p.Action = a.Action
	k.Observer.Hand(w, p, n, why, at, across)
	if why != Free {
		if !k.PastUnintended {
			return nil, nil
		}
		return []*World{w}, nil // it isn't done
	}
	e := k.event(w, a.Action, affine.Form{}, affine.Form{})
	e.Complete, e.Act = true, n+1
	for i, port := range a.Across {
		e.Across = append(e.Across, Across{port, across[i]})
	}
	w.Trail = &Trail{w.Trail, e}
	if a.Port >= 0 {
		s.Open[a.Port] = a.Opens
		w.level = nil
		return k.leg(w, affine.Form{}, true)
	}
	return k.byHand(w, a.Action)
}

// byHand makes an action happen without its triggers.
func (k *Walker) byHand(w *World, i int) ([]*World, error) {
	s := w.State
	a := &s.Actions[i]
	if k.intended(w, i) {
		w.Came[a.Device]++
	}
	if err := k.change(w, i, affine.Form{}, nil); err != nil {
		return nil, err
	}
	return k.leg(w, affine.Form{}, true)
}

// hindrance tells what keeps an act from being done, and where.
func hindrance(w *World, a *Act) (Hindrance, int) {
	for _, p := range a.Through {
		if !w.State.Open[p] {
			return Blocked, p
		}
	}
	switch {
	case a.Port >= 0 && w.State.Open[a.Port] == a.Opens:
		return Already, a.Port
	case a.Action >= 0 && !armed(w.State, a.Action) && !slices.Contains(w.Stuck, a.Action):
		return NotArmed, -1
	}
	return Free, -1
}

// armed tells whether an action, or one of its conditions, is.
func armed(s *well.State, i int) bool {
	return s.Armed[i] || slices.ContainsFunc(s.Actions[i].With, func(j int) bool { return s.Armed[j] })
}

// across are the pressures of A less those of B of the ports that an act opens.
func (k *Walker) across(w *World, a *Act) ([]affine.Form, error) {
	var all []affine.Form
	s := w.State
	for _, p := range a.Across {
		port := &s.Ports[p]
		in, err := s.At(port.A, port.AtA)
		if err != nil {
			return nil, err
		}
		out, err := s.At(port.B, port.AtB)
		if err != nil {
			return nil, err
		}
		all = append(all, in.Minus(out).F)
	}
	return all, nil
}

// byHandTakes says how long an act takes: what moves a port or a device, before it does;
// what brings a level or a pressure elsewhere, while it does.
func (k *Walker) byHandTakes(d *drive, a *Act) {
	switch {
	case a.Vent >= 0 && a.Takes == 0:
		d.takes = func(w *World) span { return k.took(w, []Move{{a.Vent, affine.Form{}}}) }
	case a.Vent < 0 && a.Drain < 0 && a.Fill < 0:
		d.first = a.Takes
	case a.Takes == 0:
		d.untimed = "while a level moves"
	default:
		d.takes = func(*World) span { return span{a.Takes, a.Takes} }
	}
}
