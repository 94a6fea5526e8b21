package sequence

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Rest is the plan that goes on after a step: its beginning is how the step leaves
// the well, in all choices of the values, and its steps are those that follow. After
// the last step it has one in which nothing is done.
//
// Where the ways that the programme may go leave a pressure at different places, its
// band covers all of them, and what it depends on is given up: the rest is then proved
// for more than can be, never for less. A state that can't be written so is an error.
func (p *Plan) Rest(ctx context.Context, step string) (*Plan, error) {
	if p == nil {
		return nil, errNoPlan
	}
	i := slices.IndexFunc(p.Steps, func(s Step) bool { return s.Name == step })
	if i < 0 {
		var names []string
		for _, s := range p.Steps {
			names = append(names, s.Name)
		}
		return nil, fmt.Errorf("sequence: the plan has no step %q; there are %q", step, names)
	}
	if p.holdsGas() {
		return nil, errors.New("sequence: the plan holds gas, whose mass the state after a step can't give yet")
	}
	if slices.ContainsFunc(p.Steps[:i+1], func(s Step) bool { return s.Otherwise != nil }) {
		return nil, fmt.Errorf("sequence: the state after step %q depends on which way its branches went: take the plan as it went, without them", step)
	}
	b, err := p.stateAfter(ctx, i)
	if err != nil {
		return nil, fmt.Errorf("sequence: the state after step %q: %w", step, err)
	}
	q := p.Clone()
	q.Begin = b
	q.Steps = q.Steps[i+1:]
	if len(q.Steps) == 0 {
		q.Steps = []Step{{Name: "as it stands"}}
	}
	if _, err := q.compiled(); err != nil {
		return nil, fmt.Errorf("sequence: the state after step %q: %w", step, err)
	}
	return q, nil
}

// stateAfter is how a step leaves the well.
func (p *Plan) stateAfter(ctx context.Context, i int) (*Begin, error) {
	c, err := p.compiled()
	if err != nil {
		return nil, err
	}
	run, err := c.Walk(ctx, affine.Box(len(c.Network.Symbols), c.Nominal()), proof.Options{To: i + 1, Quiet: true})
	switch {
	case err != nil:
		return nil, err
	case run.Open != nil:
		return nil, run.Open
	case len(run.Last) == 0:
		return nil, fmt.Errorf("the plan is left in step %q: with no values does it do what it intends", p.Steps[run.Died].Name)
	}
	l := &leaving{compiled: c, worlds: run.Last, begin: &Begin{After: fmt.Sprintf("step %q of %q", p.Steps[i].Name, p.Name)}}
	return l.begin, l.write(i)
}

// leaving writes the state in which worlds are left.
type leaving struct {
	*compiled
	worlds []*walk.World
	begin  *Begin
}

func (l *leaving) write(step int) error {
	b, s := l.begin, l.worlds[0].State
	if len(l.names) > 0 {
		b.Temperature = l.names[s.Temperature]
	}
	if err := l.happened(); err != nil {
		return err
	}
	for i := range l.Network.Actions {
		l.progress(i)
	}
	if len(l.worlds) == 1 {
		b.If = l.conditions(l.worlds[0].Region.Rows())
	}
	if err := l.surfaces(step); err != nil {
		return err
	}
	for f, x := range l.Network.Formations {
		if !slices.ContainsFunc(l.worlds, func(w *walk.World) bool { return !w.Live[f] }) {
			b.Flowed = append(b.Flowed, x.Name)
		}
	}
	if s.HoldsGas() {
		return errors.New("gas stands in the well: a beginning with its mass and its level can't be written yet")
	}
	b.Layers = map[string][]Layer{}
	for i := range s.Compartments {
		if layers := l.column(s, i); !slices.Equal(layers, l.ownLayers(i)) {
			b.Layers[s.Compartments[i].Name] = layers
		}
	}
	l.trapped()
	return l.string()
}

// ownLayers is what the plan's own list puts into a compartment.
func (l *leaving) ownLayers(i int) []Layer {
	c := l.plan.Compartments[i]
	if c.Fluid != "" {
		return []Layer{{c.Fluid, c.BottomMD}}
	}
	return c.Layers
}

func (l *leaving) column(s *well.State, i int) []Layer {
	var all []Layer
	for _, x := range s.Layers(i) {
		all = append(all, Layer{l.plan.Fluids[x.Fluid].Name, unit.Length(x.Bottom.MD)})
	}
	return all
}

// happened writes what has happened, in the order of the last time of each, so that
// it leaves the devices as they are.
func (l *leaving) happened() error {
	last := func(w *walk.World) []int {
		var all []int // the last first
		add := func(a int) {
			if w.Times[a] > 0 && !slices.Contains(all, a) {
				all = append(all, a)
			}
		}
		for t := w.Trail; t != nil; t = t.Before {
			if t.Complete && t.Action >= 0 {
				add(l.Network.Actions[t.Action].Of)
			}
		}
		if l.Begin != nil {
			for k := len(l.Begin.May) - 1; k >= 0; k-- {
				if w.Begun&(1<<k) != 0 {
					add(l.Begin.May[k])
				}
			}
			for k := len(l.Begin.Happened) - 1; k >= 0; k-- {
				add(l.Begin.Happened[k])
			}
		}
		slices.Reverse(all)
		return all
	}
	base := last(l.worlds[0])
	var all, may []int
	for _, a := range base {
		if slices.ContainsFunc(l.worlds, func(w *walk.World) bool { return w.Times[a] == 0 }) {
			may = append(may, a)
		} else {
			all = append(all, a)
		}
	}
	for _, w := range l.worlds[1:] {
		for _, a := range last(w) {
			if !slices.Contains(all, a) && !slices.Contains(may, a) {
				may = append(may, a)
			}
		}
	}
	name := func(list []int) []string {
		var names []string
		for _, a := range list {
			names = append(names, l.Network.Actions[a].Name)
		}
		return names
	}
	if len(may) > mostMay {
		return fmt.Errorf("it isn't certain which of %q have happened: too many to go on from", name(may))
	}
	l.begin.Happened, l.begin.May = name(all), name(may)
	return l.stands(all, may)
}

// stands finds the ports that stand otherwise than what has happened makes them, and
// holds the armed actions against it.
func (l *leaving) stands(all, may []int) error {
	for k, w := range l.worlds {
		open, armed := l.runIn()
		for _, a := range append(slices.Clone(all), may...) {
			if w.Times[a] > 0 {
				l.effect(a, open, armed)
			}
		}
		if !slices.Equal(armed, w.State.Armed) {
			return fmt.Errorf("it isn't certain in which state %q are", l.uncertain(armed, w.State.Armed))
		}
		for p, is := range w.State.Open {
			name := l.Network.Ports[p].Name
			switch {
			case is == open[p]:
			case is && !slices.Contains(l.begin.Open, name):
				l.begin.Open = append(l.begin.Open, name)
			case !is && !slices.Contains(l.begin.Shut, name):
				l.begin.Shut = append(l.begin.Shut, name)
			}
			if k > 0 && is != l.worlds[0].State.Open[p] && (slices.Contains(l.begin.Open, name) || slices.Contains(l.begin.Shut, name)) {
				return fmt.Errorf("it isn't certain whether %q is open", name)
			}
		}
	}
	return nil
}

// runIn is how ports and devices are by the plan's own lists.
func (l *leaving) runIn() (open, armed []bool) {
	for _, p := range l.plan.Ports {
		open = append(open, p.Open)
	}
	for i := range l.Network.Actions {
		armed = append(armed, !l.plan.action(l.Network.Actions[i].Name).Disarmed)
	}
	return open, armed
}

func (l *leaving) effect(i int, open, armed []bool) {
	a := &l.Network.Actions[i]
	armed[i] = false
	for _, j := range a.With {
		armed[j] = false
	}
	for _, j := range a.Disarms {
		armed[j] = false
	}
	for _, p := range a.Opens {
		open[p] = true
	}
	for _, p := range a.Closes {
		open[p] = false
	}
	for _, j := range a.Arms {
		armed[j] = true
	}
}

func (l *leaving) uncertain(a, b []bool) []string {
	var names []string
	for i := range a {
		if d := l.plan.Devices[l.Network.Actions[i].Device].Name; a[i] != b[i] && !slices.Contains(names, d) {
			names = append(names, d)
		}
	}
	return names
}

// progress writes how far a row has come, in any of the worlds.
func (l *leaving) progress(i int) {
	if len(l.Network.Actions[i].With) > 0 {
		return
	}
	var all []RowAt
	for _, w := range l.worlds {
		if !w.State.Armed[i] {
			continue
		}
		for _, p := range w.Rows[i] {
			r := RowAt{Met: p.Links, Counted: p.Count, Rearms: p.Out}
			if len(l.worlds) == 1 {
				r.If = l.conditions(p.Rows)
			}
			if !slices.ContainsFunc(all, func(x RowAt) bool { return x.Met == r.Met && x.Counted == r.Counted && x.Rearms == r.Rearms }) {
				all = append(all, r)
			}
		}
	}
	if len(all) == 0 || len(all) == 1 && all[0].Met == 0 && all[0].Counted == 0 && len(all[0].If) == 0 {
		return
	}
	if l.begin.Progress == nil {
		l.begin.Progress = map[string][]RowAt{}
	}
	l.begin.Progress[l.Network.Actions[i].Name] = all
}

// conditions writes what must not be negative; those that depend on what has no name
// are left out: then the state stands for more.
func (l *leaving) conditions(rows []affine.Form) []*Stated {
	var all []*Stated
	for _, f := range rows {
		s := l.stated(func(*walk.World) affine.Form { return f })
		if s.Pressure.Exact() {
			all = append(all, s)
		}
	}
	return all
}

// surfaces writes what is shut in and what is applied.
func (l *leaving) surfaces(step int) error {
	b := l.begin
	b.Applied = map[string]unit.Pressure{}
	if l.plan.Begin != nil {
		maps.Copy(b.Applied, l.plan.Begin.Applied)
	}
	for _, s := range l.plan.Steps[:step+1] {
		for _, a := range s.Do {
			if a.Vent != "" {
				b.Applied[a.Vent] = 0
			}
		}
		for _, r := range s.Ramps {
			maps.Copy(b.Applied, r)
		}
	}
	for i, c := range l.plan.Compartments {
		if !c.Surface {
			continue
		}
		if !l.worlds[0].State.Surface[i] {
			b.ShutIn = append(b.ShutIn, c.Name)
			delete(b.Applied, c.Name)
		}
		planned := affine.Const(float64(b.Applied[c.Name]))
		if b.Applied[c.Name] > 0 {
			planned = planned.Plus(l.gauge)
		}
		for _, w := range l.worlds {
			if w.State.Surface[i] != l.worlds[0].State.Surface[i] || w.State.Surface[i] && !w.State.Applied[i].F.Same(planned, 1) {
				return fmt.Errorf("what is applied on %q isn't what a ramp brought it to", c.Name)
			}
		}
	}
	maps.DeleteFunc(b.Applied, func(_ string, p unit.Pressure) bool { return p == 0 })
	return nil
}

// trapped writes the pressures of the bodies that nothing fixes in some world: of the
// compartment with the first name in each.
func (l *leaving) trapped() {
	l.begin.Trapped = map[string]*Stated{}
	wanted := map[int]bool{}
	for _, w := range l.worlds {
		s := w.State
		for i := range s.Compartments {
			first := true
			for _, m := range s.Body(i) {
				first = first && !s.Surface[m] && s.Compartments[m].Formation < 0 && s.Compartments[m].Name >= s.Compartments[i].Name
			}
			if first {
				wanted[i] = true
			}
		}
	}
	for i := range wanted {
		l.begin.Trapped[l.Network.Compartments[i].Name] = l.stated(func(w *walk.World) affine.Form { return w.State.Top[i].F })
	}
}

// stated writes a pressure that the worlds have.
func (l *leaving) stated(of func(w *walk.World) affine.Form) *Stated {
	f := of(l.worlds[0])
	least, greatest := math.Inf(1), math.Inf(-1)
	same := true
	for _, w := range l.worlds {
		g := of(w)
		same = same && g.Same(f, 1e-3)
		low, _ := w.Region.Least(g)
		least, greatest = min(least, low), max(greatest, w.Region.Greatest(g))
	}
	nominal := f.At(l.Nominal())
	if !same {
		nominal = min(max(nominal, least), greatest)
		return &Stated{Pressure: unit.Band[unit.Pressure]{Least: unit.Pressure(least), Nominal: unit.Pressure(nominal), Greatest: unit.Pressure(greatest)}}
	}
	x := &Stated{}
	off := f.R
	for _, t := range f.T {
		k := t.Symbol
		s := &l.Network.Symbols[k]
		if s.Half == 0 || isShare(s.Path) || strings.HasPrefix(s.Path, "begin.") {
			off += math.Abs(t.C) * (1 + math.Abs(s.Nominal)) // from its nominal value, either way
			continue
		}
		to := 1.0
		if s.Nominal > 0.5 {
			to = -1
		}
		u := &l.symbols[k]
		x.With = append(x.With, Lean{Quantity: s.Path, From: u.exact(s.Middle + s.Half*s.Nominal), To: u.exact(s.Middle + s.Half*to), Change: unit.Pressure(t.C * (to - s.Nominal))})
	}
	x.Pressure = unit.Band[unit.Pressure]{Least: unit.Pressure(nominal - off), Nominal: unit.Pressure(nominal), Greatest: unit.Pressure(nominal + off)}
	return x
}

// string writes what was done to the string.
func (l *leaving) string() error {
	if l.plan.String == nil {
		return nil
	}
	var pasts [][]*walk.Past // by world, the first first
	for _, w := range l.worlds {
		var all []*walk.Past
		for p := w.Past; p != nil; p = p.Before {
			all = append(all, p)
		}
		slices.Reverse(all)
		pasts = append(pasts, all)
	}
	for n, p := range pasts[0] {
		m := StringMoment{Does: lands, Pressures: map[string]*Stated{}, Layers: map[string][]Layer{}}
		if p.Action >= 0 {
			m.Does = l.Network.Actions[p.Action].Name
		}
		if len(l.names) > 0 {
			m.Temperature = l.names[p.State.Temperature]
		}
		for _, other := range pasts {
			if len(other) != len(pasts[0]) || other[n].Action != p.Action {
				return fmt.Errorf("it isn't certain what was done to the string")
			}
			if other[n].Moving {
				return fmt.Errorf("%q was done to the string while a fluid moved", m.Does)
			}
		}
		if p.Pull != nil {
			m.Reading = unit.Force(p.Pull.At(l.Nominal()))
		}
		at := map[*walk.World]*walk.Past{}
		for k, w := range l.worlds {
			at[w] = pasts[k][n]
		}
		for _, name := range l.plan.feltByString() {
			i := l.by.compartment[name]
			m.Pressures[name] = l.stated(func(w *walk.World) affine.Form { return at[w].State.Top[i].F })
			now, ok := l.begin.Layers[name]
			if !ok {
				now = l.ownLayers(i)
			}
			if then := l.column(p.State, i); !slices.Equal(then, now) {
				m.Layers[name] = then
			}
		}
		l.begin.String = append(l.begin.String, m)
	}
	return nil
}
