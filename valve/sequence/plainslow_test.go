package sequence_test

import (
	"fmt"
	"math"
	"time"

	"completion.example/valve/sequence"
)

func (w *plainWalk) slowOnes() bool {
	for i := range w.actions {
		if w.actions[i].delay > 0 {
			return true
		}
	}
	return false
}

func seconds(text string) float64 {
	d, _ := time.ParseDuration(text)
	return d.Seconds()
}

// tested is how long tests are held at a moment of a step.
func tested(step *sequence.Step, at sequence.Moment) float64 {
	sum := 0.0
	for _, t := range step.Tests {
		if t.Moment == at {
			sum += seconds(t.Hold)
		}
	}
	return sum
}

// comesOn lets the time pass that a step takes before anything is done in it.
func (w *plainWalk) comesOn(k int, step *sequence.Step) error {
	if k == 0 || step.Takes == "" {
		return w.unhurried()
	}
	return w.wait(seconds(step.Takes))
}

// wait lets time pass where the well stands: what has been at its level for its delay
// moves.
func (w *plainWalk) wait(hold float64) error {
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

// slowGaps is by how much what is slow is beyond its level where the well stands; other
// actions are far from it.
func (w *plainWalk) slowGaps() []float64 {
	if w.takes == 0 {
		return nil
	}
	all := make([]float64, len(w.actions))
	for i := range all {
		all[i] = -1e9
		if w.actions[i].delay > 0 && w.s.armed[i] {
			w.felts[i] = w.s.felt(&w.actions[i])
			all[i] = w.beyond(i)
		}
	}
	return all
}

// since is where, between two looks, what is slow came to its level: the first of them where
// it was there, and beyond both where it isn't at the second or doesn't come there.
func since(now, next, before, after float64) float64 {
	switch {
	case before >= -plainTolerance:
		return now
	case after < -plainTolerance:
		return math.Inf(1)
	}
	return now + (next-now)*before/(before-after)
}

// ripening is what slow action has been at its level for its delay first, between two looks
// between which pressures are straight, and where; -1: none.
func (w *plainWalk) ripening(now, next float64, before []float64) (action int, place float64) {
	action, place = -1, math.Inf(1)
	if w.takes == 0 {
		return action, place
	}
	after := w.slowGaps()
	for i := range before {
		a := &w.actions[i]
		from := since(now, next, before[i], after[i])
		if a.delay == 0 || !w.s.armed[i] || math.IsInf(from, 1) {
			continue
		}
		stood := 0.0
		if from == now {
			stood = w.stood[i]
		}
		x := from + (a.delay-stood)/w.takes
		if math.Abs(x-1)*w.takes < 0.05 {
			w.r.close = true
		}
		gap := before[i] + (after[i]-before[i])*(x-now)/(next-now)
		if x <= next && math.Abs(gap) < 1e-4 {
			w.r.close = true // it leaves just then
		}
		if x > next || gap < -plainTolerance {
			continue
		}
		if math.Abs(x-place) < 1e-9 {
			w.r.close = true
		}
		if x < place {
			action, place = i, max(x, now)
		}
	}
	return action, place
}

// timeGoes counts the time from one look to another.
func (w *plainWalk) timeGoes(now, next float64, before []float64) {
	if w.takes == 0 {
		return
	}
	for i, after := range w.slowGaps() {
		if w.actions[i].delay == 0 {
			continue
		}
		from := since(now, next, before[i], after)
		switch {
		case after < -plainTolerance:
			w.stood[i] = 0
		case from == now:
			w.stood[i] += (next - now) * w.takes
		default:
			w.stood[i] = (next - from) * w.takes
		}
	}
}

// timeStops counts anew for what has moved, or isn't at its level any more.
func (w *plainWalk) timeStops() {
	if w.takes == 0 {
		return
	}
	for i, after := range w.slowGaps() {
		if w.actions[i].delay > 0 && (w.ripe[i] || after < -plainTolerance) {
			w.stood[i], w.ripe[i] = 0, false
		}
	}
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

// slower is slow with steps that take their time, from which pressures aren't bled back,
// and with tests that are held.
func (m *plainMaker) slower() {
	m.slow()
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		if m.chance(0.7) {
			s.Takes = []string{"1m", "3m", "7m"}[m.random.IntN(3)]
		}
		if n := len(s.Ramps); n > 1 && k < len(m.plan.Steps)-1 && m.chance(0.6) {
			s.Ramps, s.Hold = s.Ramps[:n-1], s.Hold[:n-1]
		}
	}
}

// slowPumps is slow with delays of the length of what is pumped.
func (m *plainMaker) slowPumps() {
	m.slower()
	for d := range m.plan.Devices {
		for a := range m.plan.Devices[d].Actions {
			if x := &m.plan.Devices[d].Actions[a]; x.Delay != "" && m.chance(0.8) {
				x.Delay = fmt.Sprintf("%dm", 1+int(m.between(0, 9)*m.between(0, 9)))
			}
		}
	}
}

// heldTests holds tests at the start or the end of their steps.
func (m *plainMaker) heldTests(*plainResult) {
	for k := range m.plan.Steps {
		for n := range m.plan.Steps[k].Tests {
			t := &m.plan.Steps[k].Tests[n]
			if t.Moment == sequence.AtStart || t.Moment == sequence.AtEnd {
				t.Hold = []string{"", "2m", "6m"}[m.random.IntN(3)]
			}
		}
	}
}
