package sequence_test

import (
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// plainWalk walks one well from look to look.
type plainWalk struct {
	*plainWell
	s       *plainState
	solver  *plainSolver
	r       *plainResult
	samples int   // how many looks a leg has at least
	script  []int // which of several that are due at once comes first, choice by choice

	step, leg int
	stuck     map[int]bool    // actions whose devices don't move
	just      []string        // those that got stuck in this step
	set       func(x float64) // drives the well to a fraction of the leg
	rate      []float64       // by compartment: what a squeeze presses in over a whole leg
	base      float64         // the fraction at which own was taken
	own       []float64       // tops at that fraction
	injected  []float64
	felts     []float64
	fired     []string // in this step

	ripe   map[int]bool    // slow actions that have stood for long enough
	stood  map[int]float64 // for how long, s
	takes  float64         // s, of the present leg, where time goes on along it
	fault  error           // of a stroke
	turned int             // how often a port has opened or shut

	str, outer *plainString        // nil: the plan has none
	known      *[2]plainLoads      // of them as they stand; nil: not loaded yet
	began      map[float64]float64 // by depth where the strings meet: how far the outer one had moved when the inner one landed

	grid, before []float64 // scratch
	waits        []int
}

// plainWalkOf walks a plan at its nominal values.
func plainWalkOf(p *sequence.Plan, samples int, script []int) *plainResult {
	p, flow := plainFlat(p)
	well := newPlainWell(p)
	n := len(well.comps)
	w := &plainWalk{plainWell: well, s: well.start(), solver: newPlainSolver(well), r: &plainResult{}, samples: samples, script: script,
		rate: make([]float64, n), own: make([]float64, n), injected: make([]float64, n), felts: make([]float64, len(well.actions)), before: make([]float64, len(well.actions))}
	copy(w.own, w.s.top)
	if p.Begin != nil {
		w.beginWith(p.Begin)
	}
	w.set = func(float64) {}
	if err := w.solver.rings(well.start()); err != nil {
		w.r.fault = err
		return w.r
	}
	if well.gas != "" {
		if err := w.solver.solve(w.s, w.own, w.injected); err != nil {
			w.r.fault = err
			return w.r
		}
		well.shutIn(w.s)
		copy(w.own, w.s.top)
	}
	w.outer = newPlainString(w, p.OuterString, sequence.OnOuterString)
	if w.str = newPlainString(w, p.String, sequence.OnString); w.str != nil {
		if err := w.solver.solve(w.s, w.own, w.injected); err != nil {
			w.r.fault = err
			return w.r
		}
		w.land(sequence.OnOuterString)
		copy(w.own, w.s.top)
	}
	w.r.rates, w.r.flows = make([][]plainRate, len(p.Steps)), make([][]float64, len(p.Steps))
	w.r.flowing = make([]map[[2]string]float64, len(p.Steps))
	for _, s := range p.Steps {
		w.r.across = append(w.r.across, make([][]float64, len(s.Do)))
	}
	w.stuck, w.ripe, w.stood = map[int]bool{}, map[int]bool{}, map[int]float64{}
	for k := 0; k < len(p.Steps); {
		w.just = w.stickAt(k, flow[k].not)
		if err := w.walkStep(k); err != nil {
			w.r.fault = fmt.Errorf("step %q: %w", p.Steps[k].Name, err)
			w.fail(plainUnwalked, err.Error(), -1)
			w.r.stands = w.r.stands[:min(k, len(w.r.stands))]
			w.judgeGoals() // of the steps before
			return w.r
		}
		w.judgeEvents()
		w.r.walked = append(w.r.walked, p.Steps[k].Name)
		if k = flow[k].next; len(w.just) > 0 {
			k = flow[w.step].fail
		}
		if k >= len(p.Steps) && w.slowOnes() {
			if err := w.unhurried(); err != nil {
				w.r.fault = err
				w.fail(plainUnwalked, err.Error(), -1)
				return w.r
			}
		}
	}
	w.judgeGoals()
	return w.r
}

// walkStep does what a person does in a step, in order.
func (w *plainWalk) walkStep(k int) error {
	step := &w.plan.Steps[k]
	w.step, w.leg, w.fired = k, 0, nil
	w.begin(func(float64) {})
	if w.slowOnes() {
		if err := w.look(0); err != nil {
			return err
		}
		if err := w.comesOn(k, step); err != nil {
			return err
		}
		w.begin(func(float64) {})
	}
	if step.Temperature != "" {
		if err := w.look(0); err != nil {
			return err
		}
		w.begin(func(float64) {})
		if err := w.heat(step.Temperature); err != nil {
			return err
		}
		w.begin(func(float64) {})
	}
	if k == 0 || len(step.Shut) == 0 {
		if err := w.look(0); err != nil {
			return err
		}
		w.judge()
		if err := w.settle(); err != nil {
			return err
		}
	}
	if len(step.Shut) > 0 {
		for _, name := range step.Shut {
			if w.s.fallen[w.comp(name)] {
				return fmt.Errorf("%q is shut in while its column has fallen", name)
			}
			w.s.surface[w.comp(name)] = false
		}
		w.shutIn(w.s)
		if err := w.run(func(float64) {}, nil); err != nil {
			return err
		}
	}
	if len(step.Displace) > 0 {
		if err := w.unhurried(); err != nil {
			return err
		}
	}
	for _, x := range step.Displace {
		if w.s.fallen[w.comp(x.Compartment)] {
			return fmt.Errorf("%q is displaced while its column has fallen", x.Compartment)
		}
		set, kinks := w.swap(x)
		if err := w.run(set, kinks); err != nil {
			return err
		}
		if err := w.unhurried(); err != nil {
			return err
		}
	}
	if err := w.byHand(step); err != nil {
		return err
	}
	for _, p := range step.Pump {
		if err := w.pump(p); err != nil {
			return err
		}
	}
	if err := w.wait(tested(step, sequence.AtStart)); err != nil {
		return err
	}
	w.stand()
	for n, ramp := range step.Ramps {
		w.leg++
		ramp, err := w.filled(ramp)
		if err != nil {
			return err
		}
		if err := w.run(w.ramp(ramp), nil); err != nil {
			return err
		}
		hold := 0.0
		if n < len(step.Hold) {
			hold = seconds(step.Hold[n])
		}
		if n == len(step.Ramps)-1 && len(step.PressureChange)+len(step.VolumeChange) == 0 {
			hold += tested(step, sequence.AtEnd)
		}
		if err := w.wait(hold); err != nil {
			return err
		}
		w.stand()
	}
	if err := w.squeezes(step); err != nil {
		return err
	}
	if w.str != nil {
		if err := w.pulls(step); err != nil {
			return err
		}
	}
	if step.Produce != nil {
		if err := w.produces(step); err != nil {
			return err
		}
	}
	if w.str == nil {
		return nil
	}
	if step.Lands {
		if len(w.str.held) > 0 || step.On == sequence.OnOuterString && len(w.outer.held) > 0 {
			return fmt.Errorf("it is held")
		}
		w.land(step.On)
		stands := w.r.stands[k]
		stands[len(stands)-1].str = w.strung()
	}
	return nil
}

func (w *plainWalk) squeezes(step *sequence.Step) error {
	if len(step.PressureChange)+len(step.VolumeChange) == 0 {
		return nil
	}
	if err := w.unhurried(); err != nil {
		return err
	}
	w.leg++
	for name, v := range step.VolumeChange {
		if err := w.press(name, v.In(unit.CubicInch)); err != nil {
			return err
		}
	}
	for name, d := range step.PressureChange {
		i := w.comp(name)
		if w.solver.fixed(w.s, i) {
			return fmt.Errorf("%q can't be squeezed: something fixes its pressure", name)
		}
		w.rate[i] = d.In(psi) * w.solver.volumeOf(w.s, i)
		if w.comps[i].volume == 0 && w.comps[i].bores == nil {
			return fmt.Errorf("%q has no capacity", name)
		}
	}
	err := w.run(func(float64) {}, nil)
	clear(w.rate)
	w.stand()
	if err == nil {
		err = w.unhurried()
	}
	return err
}

func (w *plainWalk) ramp(goals map[string]pressure) func(float64) {
	type move struct {
		i        int
		from, to float64
	}
	var moves []move
	for name, p := range goals {
		i := w.comp(name)
		if !w.s.surface[i] {
			w.s.surface[i], w.s.applied[i], w.s.closed[i] = true, w.s.top[i], false
		}
		to := p.In(psi)
		if to > 0 {
			to += w.gauge
		}
		moves = append(moves, move{i, w.s.applied[i], to})
	}
	return func(x float64) {
		for _, m := range moves {
			w.s.applied[m.i] = m.from*(1-x) + m.to*x
		}
	}
}

// swap moves a front of new fluid; kinks are where it passes a depth that
// anything has.
func (w *plainWalk) swap(x sequence.Displacement) (set func(float64), kinks []float64) {
	i := w.comp(x.Compartment)
	if w.comps[i].bores != nil && !w.solver.fixed(w.s, i) && len(w.solver.members) > 1 {
		w.r.close = true // how it shares its pressure changes on the way, which is integrated coarsely here
	}
	from, to := x.FromMD.In(foot), x.ToMD.In(foot)
	old, gradient := w.s.layers[i], w.fluids[x.Fluid]
	gas := w.gas != "" && x.Fluid == w.gas
	for _, d := range w.depths {
		if f := (d - from) / (to - from); f > 0 && f < 1 {
			if x.Up {
				f = 1 - f
			}
			kinks = append(kinks, f)
		}
	}
	slices.Sort(kinks)
	return func(f float64) {
		if x.Up {
			w.s.layers[i] = plainReplace(old, plainLayer{to - (to-from)*f, to, gradient, gas, x.Fluid})
		} else {
			w.s.layers[i] = plainReplace(old, plainLayer{from, from + (to-from)*f, gradient, gas, x.Fluid})
		}
	}, kinks
}

func plainReplace(old []plainLayer, in plainLayer) []plainLayer {
	var out []plainLayer
	keep := func(l plainLayer) {
		if l.top < l.bottom {
			out = append(out, l)
		}
	}
	for _, l := range old {
		keep(plainLayer{l.top, min(l.bottom, in.top), l.gradient, l.gas, l.name})
		keep(plainLayer{max(l.top, in.bottom), l.bottom, l.gradient, l.gas, l.name})
	}
	keep(in)
	slices.SortFunc(out, func(a, b plainLayer) int { return cmpFloat(a.top, b.top) })
	return out
}

func (w *plainWalk) begin(set func(float64)) {
	w.set = set
	w.commit(0)
}

// commit takes what stands now as what the next looks start from.
func (w *plainWalk) commit(x float64) {
	copy(w.own, w.s.top)
	w.base = x
}

// look puts the well at a fraction of the leg.
func (w *plainWalk) look(x float64) error {
	w.set(x)
	w.known = nil
	for i := range w.injected {
		w.injected[i] = w.rate[i] * (x - w.base)
	}
	if err := w.solver.solve(w.s, w.own, w.injected); err != nil {
		return err
	}
	for i := range w.actions {
		if w.s.armed[i] {
			w.felts[i] = w.feels(i)
		}
	}
	return nil
}

// run walks a leg from look to look and stops wherever something is due.
func (w *plainWalk) run(set func(float64), kinks []float64) error {
	w.begin(set)
	if err := w.look(0); err != nil {
		return err
	}
	w.judge()
	if err := w.settle(); err != nil {
		return err
	}
	grid := append(w.grid[:0], kinks...)
	for k := 1; k <= w.samples; k++ {
		grid = append(grid, float64(k)/float64(w.samples))
	}
	slices.Sort(grid)
	w.grid = grid
	now, before := w.base, w.before
	for events := 0; now < 1; events++ {
		if events > 1000 {
			return fmt.Errorf("too much happens on one leg")
		}
		now = w.base
		for _, next := range grid {
			if next <= now {
				continue
			}
			for i := range before {
				before[i] = w.gap(i)
			}
			slow := w.slowGaps()
			if err := w.look(next); err != nil {
				return err
			}
			ripens, place := w.ripening(now, next, slow)
			if w.anyDue() {
				x, err := w.locate(now, next, before)
				if err != nil {
					return err
				}
				if ripens >= 0 && math.Abs(x-place) < 1e-9 {
					w.r.close = true
				}
				if x < place {
					ripens = -1
				}
				next = x
			}
			if ripens >= 0 {
				next = place
				if err := w.look(next); err != nil {
					return err
				}
				w.ripe[ripens] = true
			}
			w.timeGoes(now, next, slow)
			w.judge()
			w.nearMisses()
			now = next
			if w.anyDue() || now == 1 {
				break
			}
		}
		w.commit(now)
		if err := w.settle(); err != nil {
			return err
		}
		w.timeStops()
	}
	return w.fault
}

// locate finds the first fraction between two looks at which something is due
// and leaves the well there. before are the gaps at the first of the two.
func (w *plainWalk) locate(a, b float64, before []float64) (float64, error) {
	guess := b
	for i := range w.actions {
		if g := w.gap(i); w.s.armed[i] && g >= -plainTolerance && g > before[i] {
			guess = min(guess, a+(b-a)*max(0, -before[i])/(g-before[i]))
		}
	}
	low, high, x := a, b, guess
	for range 100 {
		if err := w.look(x); err != nil {
			return 0, err
		}
		most := -1.0
		for i := range w.actions {
			if w.s.armed[i] {
				most = max(most, w.gap(i))
			}
		}
		if most >= -plainTolerance && most <= plainExact {
			return x, nil
		}
		if most >= -plainTolerance {
			high = x
		} else {
			low = x
		}
		if high-low < 1e-14 {
			break
		}
		x = (low + high) / 2
	}
	return high, w.look(high)
}
