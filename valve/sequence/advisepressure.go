package sequence

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
)

// pressing is another pressure with which the step does what it is to, with all else as
// planned.
type pressing struct {
	by     float64 // change
	change func(p *Plan) (*Advice, error)
}

// pressures are the advice on other pressures by window: of what the step holds
// already, of what stands since before it, and of what it could hold as well, on what
// reaches the surface, in proportion to what is held. Their windows say all that does.
func (o *opener) pressures() ([]*Advice, error) {
	var all []pressing
	step := &o.base.Steps[o.step]
	for n := range o.programme.Steps[o.step].Windows {
		w := &o.programme.Steps[o.step].Windows[n]
		if w.Inside || !w.Open() {
			continue
		}
		all = append(all, o.other(w))
	}
	most := map[string]unit.Pressure{}
	for _, ramp := range step.Ramps {
		for name, x := range ramp {
			most[name] = max(most[name], x)
		}
	}
	var singles proof.Singles
	for _, c := range o.base.Compartments {
		if _, held := most[c.Name]; held || o.mends || !c.Surface || slices.Contains(step.Shut, c.Name) {
			continue
		}
		if stands := o.stands(c.Name); stands > 0 {
			w := Window{Compartment: c.Name, held: proof.Held{Step: o.step, Greatest: float64(WindowCap), Fine: 0.05 * float64(unit.PSI), Set: o.steady(c.Name)}}
			if err := o.window(&w, &singles); err != nil {
				return nil, err
			}
			if w.Open() {
				all = append(all, o.instead(c.Name, stands, gridded(w.Intervals, stands, stands)))
			}
			continue
		}
		for _, with := range sortedKeys(most) {
			if most[with] == 0 {
				continue
			}
			w := Window{Compartment: c.Name, held: proof.Held{Step: o.step, Greatest: float64(WindowCap), Fine: 0.05 * float64(unit.PSI),
				Set: o.beside(c.Name, with, most[with])}}
			if err := o.window(&w, &singles); err != nil {
				return nil, err
			}
			if w.Open() {
				all = append(all, o.more(c.Name, with, most[with], gridded(w.Intervals, 0, most[with])))
			}
		}
	}
	inOrder(all, func(a, b pressing) int { return cmp.Compare(a.by, b.by) })
	found := make([]*Advice, len(o.empty))
	for _, x := range all {
		for n := range o.empty {
			if found[n] != nil {
				continue
			}
			a, err := o.made(x.change, n)
			if err != nil {
				return nil, err
			}
			found[n] = a
		}
	}
	return found, nil
}

// stands is the pressure that is held on a compartment since before the step, with the
// nominal values.
func (o *opener) stands(name string) unit.Pressure {
	i := o.by.compartment[name]
	if o.step >= len(o.standstills) || len(o.standstills[o.step]) == 0 {
		return 0
	}
	s := o.standstills[o.step][0].world.State
	if !s.Surface[i] {
		return 0
	}
	return nothing(unit.Pressure(s.Applied[i].F.C))
}

// steady sets another pressure where one is held since before the step.
func (o *opener) steady(name string) func(s *walk.Step, to affine.Form) {
	return func(s *walk.Step, to affine.Form) {
		s.Ramps = slices.Clone(s.Ramps)
		s.Ramps[0] = append(slices.Clone(s.Ramps[0]), walk.Move{Compartment: o.by.compartment[name], To: to.Plus(o.gauge)})
	}
}

// instead is another pressure in place of one that is held since before the step.
func (o *opener) instead(name string, stands, to unit.Pressure) pressing {
	step := &o.base.Steps[o.step]
	return pressing{math.Abs(float64(to - stands)), func(p *Plan) (*Advice, error) {
		a := &Advice{Kind: ChangePressure, Does: fmt.Sprintf("%s on “%s” in place of the %s that it stands at", to.Rounded(digits), name, stands.Rounded(digits))}
		e, err := o.add(p, step, 0, name, inUnitOf(to, stands))
		a.Edits = []Edit{e}
		return a, err
	}}
}

// add writes one more pressure into a ramp.
func (o *opener) add(p *Plan, step *Step, ramp int, name, text string) (Edit, error) {
	held := map[string]string{name: text}
	for other, x := range step.Ramps[ramp] {
		held[other] = x.String()
	}
	all, err := json.Marshal(held)
	if err != nil {
		return Edit{}, err
	}
	return p.Set(fmt.Sprintf("steps.%s.ramps[%d]", step.Name, ramp), string(all))
}

// beside sets a pressure in every ramp in which another is held, in proportion to it.
func (o *opener) beside(name, with string, greatest unit.Pressure) func(s *walk.Step, to affine.Form) {
	step := &o.base.Steps[o.step]
	return func(s *walk.Step, to affine.Form) {
		s.Ramps = slices.Clone(s.Ramps)
		for m := range s.Ramps {
			at, ok := step.Ramps[m][with]
			if !ok {
				continue
			}
			f := to.Times(float64(at) / float64(greatest))
			if at > 0 {
				f = f.Plus(o.gauge)
			}
			s.Ramps[m] = append(slices.Clone(s.Ramps[m]), walk.Move{Compartment: o.by.compartment[name], To: f})
		}
	}
}

// other is another pressure, or pull, in place of one that is planned.
func (o *opener) other(w *Window) pressing {
	to := handy(w)
	return pressing{math.Abs(to.si - w.Planned.si), func(p *Plan) (*Advice, error) {
		a := &Advice{Kind: adviceOf(w), Does: inPlace(w, to)}
		var err error
		a.Edits, err = p.hold(o.base.Steps[o.step].Name, w, to)
		return a, err
	}}
}

// adviceOf is the kind of advice that another value for a window is.
func adviceOf(w *Window) AdviceKind {
	if w.Planned.Axial() {
		return ChangePull
	}
	return ChangePressure
}

// handy is that value of an open window that is nearest to the planned one: of a
// pressure in whole steps.
func handy(w *Window) Level {
	if w.Planned.Axial() {
		return nearest(w.Intervals, w.Planned)
	}
	planned, _ := w.Planned.Pressure()
	return PressureLevel(gridded(w.Intervals, planned, planned))
}

// inPlace says that another value is held in place of the planned one.
func inPlace(w *Window, to Level) string {
	if w.Planned.Axial() {
		return fmt.Sprintf("%s for %s in place of %s", to.Rounded(digits), w.name(), w.Planned.Rounded(digits))
	}
	return fmt.Sprintf("%s on “%s” in place of %s", to.Rounded(digits), w.name(), w.Planned.Rounded(digits))
}

// hold writes another value for a window into a plan's step.
func (p *Plan) hold(step string, w *Window, to Level) ([]Edit, error) {
	i := slices.IndexFunc(p.Steps, func(s Step) bool { return s.Name == step })
	if i < 0 {
		return nil, fmt.Errorf("sequence: no step %q", step)
	}
	if w.Planned.Axial() {
		f, _ := to.Force()
		e, err := p.Set(fmt.Sprintf("steps.%s.pull[%d]", step, w.Ramp-1), f.Rounded(8))
		return []Edit{e}, err
	}
	planned, _ := w.Planned.Pressure()
	x, _ := to.Pressure()
	var all []Edit
	for m, ramp := range slices.Clone(p.Steps[i].Ramps) {
		for _, name := range sortedKeys(ramp) {
			if ramp[name] != planned || !w.covers(name) {
				continue
			}
			e, err := p.Set(fmt.Sprintf("steps.%s.ramps[%d].%s", step, m, name), inUnitOf(x, planned))
			if err != nil {
				return nil, err
			}
			all = append(all, e)
		}
	}
	return all, nil
}

// more is a pressure on another compartment, in proportion to one that is held.
func (o *opener) more(name, with string, greatest, to unit.Pressure) pressing {
	step := &o.base.Steps[o.step]
	return pressing{float64(to), func(p *Plan) (*Advice, error) {
		a := &Advice{Kind: ChangePressure, Does: fmt.Sprintf("%s on “%s” as well, while “%s” is at %s", to.Rounded(digits), name, with, greatest.Rounded(digits))}
		for m, ramp := range step.Ramps {
			at, ok := ramp[with]
			if !ok {
				continue
			}
			e, err := o.add(p, step, m, name, inUnitOf(unit.Pressure(float64(to)*float64(at)/float64(greatest)), greatest))
			if err != nil {
				return nil, err
			}
			a.Edits = append(a.Edits, e)
		}
		return a, nil
	}}
}

// bars tells whether a pressure is written in whole bars and not in psi.
func bars(like unit.Pressure) bool {
	return whole(float64(like), float64(unit.Bar)) && !whole(float64(like), float64(10*unit.PSI))
}

// gridded is the pressure in some intervals that is the least change of another, in
// whole steps of 10 psi, or of 1 bar where that is what one like it is whole in, if an
// interval is that wide.
func gridded(all []Interval, from, like unit.Pressure) unit.Pressure {
	step := float64(10 * unit.PSI)
	if bars(like) {
		step = float64(unit.Bar)
	}
	x := nearest(all, PressureLevel(from)).si
	for _, i := range all {
		if x < i.Least.si || x > i.Greatest.si {
			continue
		}
		n := (x - float64(from)) / step
		if n > 0 {
			n = math.Ceil(n - 1e-6)
		} else {
			n = math.Floor(n + 1e-6)
		}
		if y := float64(from) + n*step; i.Least.si <= y && y <= i.Greatest.si {
			return unit.Pressure(y)
		}
	}
	return unit.Pressure(x)
}

// inUnitOf writes a pressure in the unit that another is whole in.
func inUnitOf(p, like unit.Pressure) string {
	if bars(like) {
		return fmt.Sprintf("%.6g bar", p.In(unit.Bar))
	}
	return p.Rounded(8)
}
