package sequence_test

import (
	"math"
	"slices"

	"completion.example/valve/sequence"
)

// byHand does the acts of a step. What can't be done is a failure, and isn't done.
func (w *plainWalk) byHand(step *sequence.Step) error {
	for n := range step.Do {
		a := &step.Do[n]
		if a.Drain != "" || a.Fill != "" {
			if err := w.unhurried(); err != nil {
				return err
			}
			level := w.drain
			if a.Fill != "" {
				level = w.fill
			}
			if err := level(a.Drain + a.Fill); err != nil {
				return err
			}
			if err := w.unhurried(); err != nil {
				return err
			}
			continue
		}
		if a.Vent != "" && w.s.fallen[w.comp(a.Vent)] {
			continue
		}
		if a.Vent != "" {
			if err := w.run(w.ramp(map[string]pressure{a.Vent: 0}), nil); err != nil {
				return err
			}
			continue
		}
		clear := true
		for _, name := range a.Through {
			clear = clear && w.s.open[w.port(name)]
		}
		port, wanted := "", false
		switch {
		case a.Drop != "":
			port, wanted = a.Drop, false
		case a.Pull != "":
			port, wanted = a.Pull, true
		case a.Open != "":
			port, wanted = a.Open, true
		case a.Close != "":
			port, wanted = a.Close, false
		}
		name, i := port, -1
		if port == "" {
			name = a.Shift + a.Turn
			i = w.action(name)
		}
		if !clear || i >= 0 && !w.anyArmed(i) && !w.stuck[i] || i < 0 && w.s.open[w.port(port)] == wanted {
			w.fail(sequence.ByHand, name, -1)
			continue
		}
		w.r.across[w.step][n] = []float64{} // it is done
		opens := []int{}
		if i >= 0 {
			opens = w.actions[i].opens
		} else if wanted {
			opens = append(opens, w.port(port))
		}
		for _, p := range opens {
			x := w.ports[p]
			d := math.Abs(w.s.at(x.a, x.depth) - w.s.at(x.b, x.depth))
			w.r.across[w.step][n] = append(w.r.across[w.step][n], d)
			switch {
			case a.AtMost > 0:
				w.fail(sequence.ByHand, name, a.AtMost.In(psi)-d)
			case a.Pull != "":
				w.fail(sequence.ByHand, name, 0.5-d)
			}
		}
		if i >= 0 {
			if w.expects(i) {
				w.fired = append(w.fired, name)
			}
			w.effects(i)
		} else {
			if x := w.ports[w.port(port)]; wanted && !w.solver.fixed(w.s, x.a) && !w.solver.fixed(w.s, x.b) {
				w.r.met = true
			}
			w.s.open[w.port(port)] = wanted
		}
		if err := w.run(func(float64) {}, nil); err != nil {
			return err
		}
	}
	return nil
}

func (w *plainWalk) anyArmed(first int) bool {
	return slices.Contains(w.s.armed[first:first+w.actions[first].conditions], true)
}

// expects tells whether an action is the next that the step expects of its device.
func (w *plainWalk) expects(i int) bool {
	n, device := 0, w.actions[i].device
	for _, name := range w.fired {
		if w.actions[w.action(name)].device == device {
			n++
		}
	}
	for _, name := range w.plan.Steps[w.step].Expect {
		if k := w.action(name); w.actions[k].device == device {
			if n == 0 {
				return k == i
			}
			n--
		}
	}
	return false
}
