package sequence

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/stringload"
	"completion.example/valve/sequence/internal/walk"
)

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
			for _, name := range [3]string{a.Vent, a.Drain, a.Fill} {
				if name != "" {
					b.Applied[name] = 0
				}
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
			if w.State.Low(i) >= 0 {
				return fmt.Errorf("the level of %q has fallen, which a beginning can't say yet; fill it first", c.Name)
			}
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
		if p.On == stringload.Outer {
			m.On = OnOuterString
		}
		if p.Pull != nil {
			m.Reading = unit.Force(p.Pull.At(l.Nominal()))
		}
		at := map[*walk.World]*walk.Past{}
		for k, w := range l.worlds {
			at[w] = pasts[k][n]
		}
		for _, name := range l.plan.sensedByString() {
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
