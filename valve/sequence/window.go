package sequence

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"sync"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
)

// Window is where a surface pressure, or the reading of a pull, may lie so that its
// step does just what is intended, in all choices of the other values.
type Window struct {
	Compartment string     `json:"compartment,omitempty"` // empty: a pull
	Together    []string   `json:"together,omitempty"`    // others that are held at the same pressure in the same ramps, and vary with it
	Ramp        int        `json:"ramp"`                  // or pull; counted from 1
	Planned     Level      `json:"planned"`
	Intervals   []Interval `json:"intervals"`         // all of them, from the least on; none: nothing does it
	Inside      bool       `json:"inside"`            // the planned one lies in one of them
	Ahead       bool       `json:"ahead,omitempty"`   // all steps that follow are proved in them, too
	Clash       []string   `json:"clash,omitempty"`   // where there is none: what fails, and where
	Awaits      int        `json:"awaits,omitempty"`  // the step, counted from 1, with which the plan is left before this one: until that is mended it isn't known
	Advised     bool       `json:"advised,omitempty"` // it was looked for what opens it
	Opens       []Advice   `json:"opens,omitempty"`   // the smallest single change of each kind that does; none: none was found
	held        proof.Held
	actions     []string // that clash
	wall        string   // limit that is passed whatever is held
	shut        []shutting
}

// Interval is a range in which a step is proved. Beyond its ends something fails, or it
// isn't decided, which the reason says: where gas, pumps, flow or a metered device make
// of a range only what can be enclosed, the work on one window is bounded.
type Interval struct {
	Least    Level  `json:"least"`
	Greatest Level  `json:"greatest"`
	Below    string `json:"below,omitempty"` // what fails below; empty: nothing, down to nothing
	Above    string `json:"above,omitempty"` // what fails above; empty: nothing up to the end of the search
}

// BledOff tells whether it is a pressure bled to nothing alone: no gauge is read for that,
// and what is above may be ruled out by a gauge's error.
func (x Interval) BledOff() bool { return !x.Least.axial && x.Least.si == 0 && x.Greatest.si == 0 }

// Open tells whether there is any.
func (w *Window) Open() bool { return len(w.Intervals) > 0 }

// WindowCap is where the search for the greatest pressure ends: more than a rig
// pumps.
const WindowCap = 20000 * unit.PSI

// pullCap is where the search for the greatest pull ends.
const pullCap = 1_500_000 * unit.PoundForce

// windows finds the window of every pressure that is held or bled to, and of every
// pull, of the steps that the proof came to.
func (k *checker) windows() error {
	k.progress.tell(0.4, "looking for windows")
	all, steps := k.wanted()
	faults := make([]error, len(all)+1)
	var singles proof.Singles
	if len(k.nominal.Judge.Passed()) == 0 {
		singles.Know(k.At(k.Nominal()), k.nominal, k.Nominal())
	}
	known := k.telling(steps)
	done := 0
	atOnce(len(faults), k.options.Workers, func(n int) {
		if n == 0 {
			if k.programme.Steps == nil { // nobody wanted them before
				faults[n] = k.write()
			}
			return
		}
		if faults[n] = k.ctx.Err(); faults[n] == nil {
			if faults[n] = k.window(all[n-1], &singles); faults[n] == nil {
				known(all[n-1].held.Step)
			}
		}
		k.progress.done(&done, len(all), 0.4, 0.95, "looking for windows")
	})
	err := first(faults...)
	for i := range steps {
		if err == nil {
			k.programme.Steps[i].Windows = steps[i]
		}
	}
	if err == nil {
		k.await()
	}
	return err
}

// await lists the windows of the steps that the proof didn't come to: what they are depends
// on how the step is mended with which the plan is left.
func (k *checker) await() {
	if k.out.Died < 0 {
		return
	}
	for i := k.out.Died + 1; i < len(k.programme.Steps); i++ {
		if i < len(k.out.Before) && len(k.out.Before[i]) > 0 {
			continue
		}
		windows := k.held(i)
		for n := range windows {
			windows[n].Awaits = k.out.Died + 1
			windows[n].Clash = []string{"depends on step " + strconv.Itoa(k.out.Died+1)}
		}
		k.programme.Steps[i].Windows = windows
	}
}

// wanted lists the windows that are to be found, in the order in which they are looked
// for, and by step: of the step that is wanted first, then from the last step on, as
// pulls, which stand there, take longest.
func (k *checker) wanted() (all []*Window, steps [][]Window) {
	steps = make([][]Window, len(k.plan.Steps))
	want := func(i int) {
		for n := range slices.Backward(steps[i]) {
			all = append(all, &steps[i][n])
		}
	}
	for i := range k.out.Before {
		if len(k.out.Before[i]) > 0 {
			steps[i] = k.held(i)
		}
		for n := range steps[i] {
			steps[i][n].Ahead, steps[i][n].held.Ahead = k.options.Ahead, k.options.Ahead
		}
	}
	first := k.options.First - 1
	if first >= 0 && first < len(steps) {
		want(first)
	}
	for i := len(steps) - 1; i >= 0; i-- {
		if i != first {
			want(i)
		}
	}
	return all, steps
}

// telling makes what tells whoever asked of a step's windows once the last of them is known.
func (k *checker) telling(steps [][]Window) func(step int) {
	if k.options.Windows == nil {
		return func(int) {}
	}
	var mutex sync.Mutex
	left := make([]int, len(steps))
	for i := range steps {
		left[i] = len(steps[i])
	}
	return func(step int) {
		mutex.Lock()
		defer mutex.Unlock()
		if left[step]--; left[step] == 0 {
			k.options.Windows(step+1, steps[step])
		}
	}
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// held lists what is held in a step.
func (k *checker) held(i int) []Window {
	step := &k.plan.Steps[i]
	var all []Window
	for n, ramp := range step.Ramps {
		var names []string
		for name := range ramp {
			names = append(names, name)
		}
		slices.Sort(names)
		done := map[unit.Pressure]bool{}
		for _, name := range names {
			planned := ramp[name]
			if done[planned] || slices.ContainsFunc(all, func(w Window) bool {
				return w.Planned == PressureLevel(planned) && (w.Compartment == name || slices.Contains(w.Together, name))
			}) {
				continue
			}
			done[planned] = true
			w := Window{Compartment: name, Ramp: n + 1, Planned: PressureLevel(planned)}
			for _, other := range names {
				if other != name && ramp[other] == planned {
					w.Together = append(w.Together, other)
				}
			}
			w.held = proof.Held{Step: i, Least: 0, Greatest: float64(max(WindowCap, planned)), Planned: float64(planned), Fine: 0.05 * float64(unit.PSI),
				Set: k.setter(i, planned, append([]string{name}, w.Together...), k.gauge)}
			all = append(all, w)
		}
	}
	for n, f := range step.Pull {
		w := Window{Ramp: n + 1, Planned: ForceLevel(f)}
		w.held = proof.Held{Step: i, Least: 0, Greatest: float64(max(pullCap, f)), Planned: float64(f), Fine: 10 * float64(unit.PoundForce),
			Set: func(s *walk.Step, to affine.Form) {
				s.Pulls = slices.Clone(s.Pulls)
				s.Pulls[n] = to
			}}
		all = append(all, w)
	}
	return all
}

// setter gives some compartments another pressure wherever the planned one stands.
func (k *checker) setter(step int, planned unit.Pressure, names []string, gauge affine.Form) func(s *walk.Step, to affine.Form) {
	ramps := k.plan.Steps[step].Ramps
	return func(s *walk.Step, to affine.Form) {
		s.Ramps = slices.Clone(s.Ramps)
		for r := range s.Ramps {
			s.Ramps[r] = slices.Clone(s.Ramps[r])
			for m := range s.Ramps[r] {
				name := k.plan.Compartments[s.Ramps[r][m].Compartment].Name
				if slices.Contains(names, name) && ramps[r][name] == planned {
					s.Ramps[r][m].To = to.Plus(gauge)
				}
			}
		}
	}
}

// window finds the intervals of one window: what is left of the whole range.
func (k *checker) window(w *Window, singles *proof.Singles) error {
	bad, err := k.Window(k.ctx, k.out.Before[w.held.Step], w.held, singles)
	if err != nil {
		return err
	}
	// Where two limits make one edge, their names decide which is told, not rounding
	// or the order of the file.
	grid := func(x float64) float64 { return math.Round(x / (w.held.Fine / 100)) }
	inOrder(bad, func(a, b proof.Bad) int {
		return cmp.Or(cmp.Compare(grid(a.Least), grid(b.Least)), cmp.Compare(grid(b.Greatest), grid(a.Greatest)),
			cmp.Compare(k.reason(w, a), k.reason(w, b)))
	})
	axial := w.Planned.Axial()
	at, below := w.held.Least, ""
	add := func(to float64, above string) {
		if x, ok := interval(axial, at, to, below, above); ok {
			w.Intervals = append(w.Intervals, x)
			planned := w.Planned.si
			w.Inside = w.Inside || at <= planned && planned <= to
		}
	}
	for _, b := range bad {
		if b.Least > at {
			add(b.Least, k.reason(w, b))
		}
		reason, further := k.reason(w, b), grid(b.Greatest)-grid(at)
		if further > 0 || further == 0 && (below == "" || reason < below) {
			below = reason
		}
		at = max(at, b.Greatest)
	}
	if at < w.held.Greatest {
		add(w.held.Greatest, "")
	}
	w.dropCrumbs()
	k.keepPlanned(w)
	if err := k.bledOff(w); err != nil {
		return err
	}
	if !w.Open() {
		w.Clash, w.actions, w.wall, w.shut = k.clash(w, bad), k.acting(bad), k.wall(w, bad), k.shutBy(w, bad)
	}
	return nil
}

// dropCrumbs leaves out intervals that are narrower than half of what a gauge shows
// beside a wider one: an edge isn't known nearer than that.
func (w *Window) dropCrumbs() {
	const whole = float64(unit.PSI)
	if w.Planned.Axial() {
		return
	}
	width := func(x Interval) float64 { return x.Greatest.si - x.Least.si }
	var kept []Interval
	for n, x := range w.Intervals {
		crumb := false
		for _, m := range [2]int{n - 1, n + 1} {
			if m < 0 || m >= len(w.Intervals) {
				continue
			}
			y := w.Intervals[m]
			gap := max(x.Least.si-y.Greatest.si, y.Least.si-x.Greatest.si)
			crumb = crumb || width(x) < whole/2 && width(y) > width(x) && gap < 2.5*whole
		}
		if inside := x.Least.si <= w.Planned.si && w.Planned.si <= x.Greatest.si; !crumb || inside {
			kept = append(kept, x)
		}
	}
	w.Intervals = kept
}

// keepPlanned puts the planned value into the window of a step that is proved with
// it, as all before it are, where it isn't there: a pressure of nothing has no gauge error, and what is
// only enclosed may have left it out.
func (k *checker) keepPlanned(w *Window) {
	if w.Inside || k.out.Open != nil || slices.ContainsFunc(k.out.Failures, func(f proof.Failure) bool { return f.Margin == nil || w.held.Ahead || f.Step <= w.held.Step }) {
		return
	}
	w.Inside = true
	planned := w.Planned.si
	near := 2*k.gauge.Radius() + 2*float64(unit.PSI)
	for n := range w.Intervals {
		x := &w.Intervals[n]
		switch {
		case x.Least.si > planned && x.Least.si-planned <= near:
			if planned == 0 { // a little more has the gauge's error: not what lies between
				w.bleed()
				return
			}
			x.Least = w.Planned
			return
		case x.Greatest.si < planned && planned-x.Greatest.si <= near:
			x.Greatest = w.Planned
			return
		}
	}
	w.Intervals = append(w.Intervals, Interval{Least: w.Planned, Greatest: w.Planned})
	inOrder(w.Intervals, func(a, b Interval) int { return cmp.Compare(a.Least.si, b.Least.si) })
}

// bledOff puts a pressure of nothing, which no gauge has to be read for, into the window
// of a step that does with it what it is to, though readings a little above may not.
func (k *checker) bledOff(w *Window) error {
	if w.Inside || w.Planned != PressureLevel(0) || k.gauge.Radius() == 0 {
		return nil
	}
	h := w.held
	h.Greatest = h.Fine / 1000
	h.Set = k.setter(h.Step, 0, append([]string{w.Compartment}, w.Together...), affine.Form{})
	bad, err := k.Window(k.ctx, k.out.Before[h.Step], h, &proof.Singles{})
	if err != nil || len(bad) > 0 {
		return err
	}
	w.Inside = true
	w.bleed()
	return nil
}

// bleed puts nothing into a window of pressures: into its first interval, where that
// begins as near as a gauge shows, or by itself.
func (w *Window) bleed() {
	if w.Open() && w.Intervals[0].Least.si <= float64(unit.PSI)*(1+1e-9) {
		w.Intervals[0].Least, w.Intervals[0].Below = PressureLevel(0), ""
		return
	}
	x := Interval{}
	if w.Open() {
		x.Above = w.Intervals[0].Below
	}
	w.Intervals = slices.Insert(w.Intervals, 0, x)
}

// interval rounds an interval inwards to half a psi, which is finer than a gauge is read, or
// to 100 lbf, where it is wide enough.
func interval(axial bool, least, greatest float64, below, above string) (Interval, bool) {
	whole := 0.5 * float64(unit.PSI)
	if axial {
		whole = 100 * float64(unit.PoundForce)
	}
	const edge = 2 * walk.Reach
	a, b := least, greatest
	if below != "" {
		a = math.Ceil((least+edge)/whole) * whole
	}
	if above != "" {
		b = math.Floor((greatest-edge)/whole) * whole
	}
	if a > b {
		if greatest-least < 0.05*whole {
			return Interval{}, false
		}
		a, b = least+edge, greatest-edge
	}
	return Interval{level(axial, a), level(axial, b), below, above}, true
}
