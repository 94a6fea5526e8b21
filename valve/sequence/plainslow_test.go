package sequence_test

import (
	"fmt"
	"time"

	"completion.example/valve/sequence"
)

// holdAfter lets the time pass for which a step holds after a ramp: what has been at its
// level for its delay moves.
func (w *plainWalk) holdAfter(step *sequence.Step, n int) error {
	hold := 0.0
	if n < len(step.Hold) && step.Hold[n] != "" {
		d, _ := time.ParseDuration(step.Hold[n])
		hold = d.Seconds()
	}
	some := false
	for i := range w.actions {
		if w.actions[i].delay == 0 {
			continue
		}
		if !w.s.armed[i] || !w.reached(i) {
			w.stood[i] = 0
			continue
		}
		w.stood[i] += hold
		w.ripe[i] = w.stood[i] >= w.actions[i].delay
		some = some || w.ripe[i]
	}
	if !some {
		return nil
	}
	err := w.run(func(float64) {}, nil)
	for i := range w.ripe {
		if w.ripe[i] {
			w.stood[i] = 0
		}
		w.ripe[i] = false
	}
	return err
}

// reached tells whether an action is at its level.
func (w *plainWalk) reached(i int) bool {
	w.felts[i] = w.s.felt(&w.actions[i])
	by := w.beyond(i)
	if w.hair(by) {
		w.r.close = true
	}
	return by >= -plainTolerance
}

// unhurried makes it a fault if something slow is at its level where no time is counted.
func (w *plainWalk) unhurried() error {
	for i := range w.actions {
		if w.actions[i].delay > 0 {
			if w.s.armed[i] && w.reached(i) {
				return fmt.Errorf("%q stands at its level", w.actions[i].name)
			}
			w.stood[i] = 0
		}
	}
	return nil
}

// slow gives some actions a delay, and holds after ramps; pressures are changed so fast
// that ramps take no time.
func (m *plainMaker) slow() {
	p := m.plan
	p.Rules.Rise = pounds(1e5)
	for d := range p.Devices {
		for a := range p.Devices[d].Actions {
			if x := &p.Devices[d].Actions[a]; len(x.Triggers) == 1 && x.Triggers[0].Count <= 1 && m.chance(0.4) {
				x.Delay = fmt.Sprintf("%dm30s", 1+m.random.IntN(6))
			}
		}
	}
	for k := range p.Steps {
		s := &p.Steps[k]
		s.PressureChange = nil
		for range s.Ramps {
			s.Hold = append(s.Hold, []string{"", "2m", "5m", "8m"}[m.random.IntN(4)])
		}
		if len(s.Ramps) > 0 && m.chance(0.7) { // back, so that nothing is left at its level
			s.Ramps, s.Hold = append(s.Ramps, map[string]pressure{"tubing": 0, "annulus": 0}), append(s.Hold, "")
		}
	}
}
