package sequence

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/root"
	"completion.example/valve"
)

// leg is one drive of a step from 0 to 1.
type leg struct {
	ramp int // of the step; -1 is what comes before the ramps
	// pieces is in how many parts the leg is looked at: 1 where every
	// differential between compartments is straight along it.
	pieces int
	set    func(fraction float64) error            // surface pressures, layers, squeeze
	pull   func(fraction float64) unit.Force       // weight-indicator reading; nil but for pulls
	watch  func(w *walker, fraction float64) error // called wherever the walk stands still; may be nil
}

// walker walks one step in one world.
type walker struct {
	*state
	leg      leg
	now      float64 // fraction of the leg
	events   []event
	extremes []extreme       // by action
	d        []unit.Pressure // differentials by action, where armed
	before   []unit.Pressure
	depths   []unit.Length // scratch of watchRatings
}

// extreme is the range that an action felt while it was armed.
type extreme struct {
	least, greatest unit.Pressure
	seen            bool
	waiting         valve.State // the row when the step began
}

func (e *extreme) note(d unit.Pressure) {
	if !e.seen {
		e.least, e.greatest, e.seen = d, d, true
		return
	}
	e.least, e.greatest = min(e.least, d), max(e.greatest, d)
}

// limit bounds how much may happen on one leg.
func (w *walker) limit() int { return 10 + 20*len(w.actions) }

// run walks a leg from event to event.
func (w *walker) run(l leg) error {
	w.leg, w.now = l, 0
	if len(w.before) == 0 {
		w.before = make([]unit.Pressure, len(w.actions))
	}
	for range w.limit() {
		if err := w.settle(); err != nil {
			return err
		}
		if w.now >= 1 {
			return nil
		}
		if err := w.advance(); err != nil {
			return err
		}
	}
	return w.unsettled()
}

// settle lets everything happen that is due where the network stands, and
// whatever that sets off.
func (w *walker) settle() error {
	for range w.limit() {
		if err := w.look(w.now); err != nil {
			return err
		}
		moved := false
		for i := range w.actions {
			if !w.armed[i] {
				continue
			}
			w.extremes[i].note(w.d[i])
			fired, err := w.meet(i, w.d[i], w.d[i])
			if err != nil {
				return err
			}
			if fired {
				moved = true
				break // the shape may have changed: look again
			}
		}
		if !moved {
			return w.watch()
		}
	}
	return w.unsettled()
}

func (w *walker) watch() error {
	if w.leg.watch == nil {
		return nil
	}
	return w.leg.watch(w, w.now)
}

// look puts the network at a fraction of the leg and takes the differentials.
func (w *walker) look(fraction float64) error {
	if err := w.place(fraction); err != nil {
		return err
	}
	var l *load
	for i := range w.actions {
		if !w.armed[i] {
			continue
		}
		d, err := w.feels(i, fraction, &l)
		if err != nil {
			return err
		}
		w.d[i] = d
	}
	return nil
}

// place puts the network at a fraction of the leg.
func (w *walker) place(fraction float64) error {
	if err := w.leg.set(fraction); err != nil {
		return err
	}
	return w.solve()
}

// feels is what the triggers of an action feel: a differential, or a tension
// in N. The string's load is computed once, where an action asks for it.
func (w *walker) feels(i int, fraction float64, l **load) (unit.Pressure, error) {
	a := &w.actions[i]
	if a.axial {
		if *l == nil {
			now, err := w.stringNow(fraction)
			if err != nil {
				return 0, err
			}
			*l = &now
		}
		f, err := (*l).tension(a.md)
		return unit.Pressure(f), err
	}
	return w.differential(a)
}

// stringNow is the string at a fraction of the leg.
func (w *walker) stringNow(fraction float64) (load, error) {
	if w.leg.pull != nil {
		return w.pullString(w.leg.pull(fraction))
	}
	return w.loadString()
}

// advance goes along the rest of the leg to the next crossing of a level that
// an armed action waits for, or to the end.
func (w *walker) advance() error {
	start := w.now
	copy(w.before, w.d)
	for k := 1; k <= w.leg.pieces; k++ {
		next := 1.0
		if k < w.leg.pieces {
			next = start + (1-start)*float64(k)/float64(w.leg.pieces)
		}
		if err := w.look(next); err != nil {
			return err
		}
		first, when, err := w.earliest(next)
		if err != nil {
			return err
		}
		if first >= 0 {
			return w.cross(first, when)
		}
		w.now = next
		for i := range w.actions {
			if !w.armed[i] {
				continue
			}
			w.extremes[i].note(w.d[i])
			if _, err := w.meet(i, w.before[i], w.d[i]); err != nil { // it meets nothing, but remembers how far it went
				return err
			}
		}
		if k < w.leg.pieces {
			if err := w.watch(); err != nil {
				return err
			}
		}
		copy(w.before, w.d)
	}
	return nil
}

// earliest finds the first crossing between the present place and next.
func (w *walker) earliest(next float64) (first int, when float64, err error) {
	first, when = -1, math.Inf(1)
	after := append([]unit.Pressure(nil), w.d...)
	for i := range w.actions {
		if !w.armed[i] {
			continue
		}
		level, direction, ok := w.thresholds[i].Next(w.rows[i])
		if !ok || !crosses(w.before[i], after[i], level, direction) {
			continue
		}
		x, err := w.crossing(i, next, level, after[i])
		if err != nil {
			return -1, 0, err
		}
		if x < when {
			first, when = i, x
		}
	}
	copy(w.d, after)
	return first, when, nil
}

// crosses tells whether a differential that moves from a to b meets a level.
func crosses(a, b, level unit.Pressure, d valve.Direction) bool {
	if d == valve.Falling {
		return a > level && b <= level
	}
	return a < level && b >= level
}

// crossing finds where between the present place and next the action feels the
// level.
func (w *walker) crossing(i int, next float64, level, after unit.Pressure) (float64, error) {
	if w.leg.pieces == 1 && !w.actions[i].axial {
		x := w.now + (next-w.now)*float64((level-w.before[i])/(after-w.before[i]))
		return min(max(x, w.now), next), nil
	}
	var fault error
	x, err := root.Find(func(x float64) float64 {
		var l *load
		fault = w.place(x)
		if fault != nil {
			return math.NaN()
		}
		d, err := w.feels(i, x, &l)
		if err != nil {
			fault = err
			return math.NaN()
		}
		return float64(d - level)
	}, w.now, next, 1e-9)
	if fault != nil {
		return 0, fault
	}
	if err != nil {
		return 0, fmt.Errorf("%s: %w", w.actions[i].name, err)
	}
	return x, nil
}

// cross goes to a crossing and lets the action that found it come on.
func (w *walker) cross(first int, when float64) error {
	w.now = when
	if err := w.look(when); err != nil {
		return err
	}
	level, _, _ := w.thresholds[first].Next(w.rows[first])
	for i := range w.actions {
		if w.armed[i] {
			w.extremes[i].note(w.d[i])
		}
	}
	w.extremes[first].note(level)
	_, err := w.meet(first, w.before[first], level)
	return err
}
