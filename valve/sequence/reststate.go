package sequence

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/stringload"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
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
	if least, most, waits := l.stood(i); waits {
		if len(all) == 0 {
			all = []RowAt{{}}
		}
		all[0].Stood, all[0].StoodMost = least, most
	}
	if len(all) == 0 || len(all) == 1 && all[0].Met == 0 && all[0].Counted == 0 && len(all[0].If) == 0 && all[0].Stood+all[0].StoodMost == "" {
		return
	}
	if l.begin.Progress == nil {
		l.begin.Progress = map[string][]RowAt{}
	}
	l.begin.Progress[l.Network.Actions[i].Name] = all
}

// stood writes for how long an action that moves with a delay has been at its level in
// the worlds in which it is, to a millisecond outwards.
func (l *leaving) stood(i int) (least, most string, waits bool) {
	low, high := math.Inf(1), 0.0
	for _, w := range l.worlds {
		if t, at := w.StoodAt(i); at {
			low, high, waits = min(low, t.Least()), max(high, t.Greatest()), true
		}
	}
	written := func(seconds float64) string {
		if !waits || seconds <= 0 {
			return ""
		}
		return (time.Duration(seconds) * time.Millisecond).String()
	}
	least, most = written(math.Floor(low*1000)), written(math.Ceil(high*1000))
	if least == most {
		most = ""
	}
	return least, most, waits && least+most != ""
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
		set, fallen := true, false
		for _, w := range l.worlds {
			if w.State.Surface[i] != l.worlds[0].State.Surface[i] {
				return fmt.Errorf("it isn't certain whether %q is shut in", c.Name)
			}
			fallen = fallen || w.State.Low(i) >= 0 // see levels
			set = set && (w.State.Low(i) >= 0 || !w.State.Surface[i] || w.State.Applied[i].F.Same(planned, 1))
		}
		if set {
			continue
		}
		if fallen {
			return fmt.Errorf("it isn't certain whether %q stands full under pressure or has fallen", c.Name)
		}
		delete(b.Applied, c.Name)
		if b.Standing == nil {
			b.Standing = map[string]*Stated{}
		}
		b.Standing[c.Name] = l.stated(func(w *walk.World) affine.Form { return w.State.Applied[i].F })
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
	b, with := l.leaning(of)
	x := &Stated{Pressure: unit.Band[unit.Pressure]{Least: unit.Pressure(b.least), Nominal: unit.Pressure(b.nominal), Greatest: unit.Pressure(b.greatest)}}
	for _, y := range with {
		x.With = append(x.With, Lean{y.quantity, y.from, y.to, unit.Pressure(y.change)})
	}
	return x
}

// levels writes where gas ends that isn't where its layers end, and down to where columns
// have fallen, in some world.
func (l *leaving) levels(of func(w *walk.World) *well.State) map[string]*StatedDepth {
	all := map[string]*StatedDepth{}
	for i, c := range l.Network.Compartments {
		some := slices.ContainsFunc(l.worlds, func(w *walk.World) bool {
			s := of(w)
			level, gas := s.GasIn(i)
			return s.Low(i) >= 0 || gas && s.GasMoved(i) && level.F.Radius() > 1e-9
		})
		if !some {
			continue
		}
		if _, gas := of(l.worlds[0]).GasIn(i); !gas {
			all[c.Name] = &StatedDepth{Lacks: l.stated(func(w *walk.World) affine.Form {
				if s := of(w); s.Low(i) >= 0 {
					return s.Top[i].F.Times(-1)
				}
				return affine.Form{}
			})}
			continue
		}
		b, with := l.leaning(func(w *walk.World) affine.Form {
			level, _ := of(w).GasIn(i)
			return level.F
		})
		x := &StatedDepth{Depth: unit.Band[unit.Length]{Least: unit.Length(max(b.least, c.Depths[0].MD)), Nominal: unit.Length(max(b.nominal, c.Depths[0].MD)), Greatest: unit.Length(b.greatest)}}
		for _, y := range with {
			x.With = append(x.With, LeanDepth{y.quantity, y.from, y.to, unit.Length(y.change)})
		}
		all[c.Name] = x
	}
	return all
}

// bounds are those of a band, in SI.
type bounds struct{ least, nominal, greatest float64 }

// leaning is what the worlds have of something, and what it moves with.
func (l *leaving) leaning(of func(w *walk.World) affine.Form) (bounds, []lean) {
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
	exactly := nominal // what is enclosed may be off in its middle
	if l.nominal != nil {
		exactly = of(l.nominal).C
	}
	if !same {
		nominal = min(max(exactly, least), greatest)
		return bounds{least, nominal, greatest}, nil
	}
	var with []lean
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
		with = append(with, lean{s.Path, u.exact(s.Middle + s.Half*s.Nominal), u.exact(s.Middle + s.Half*to), t.C * (to - s.Nominal)})
	}
	return bounds{nominal - off, min(max(exactly, nominal-off), nominal+off), nominal + off}, with
}

// string writes what was done to the string.
func (l *leaving) string() error {
	if l.plan.String == nil {
		return nil
	}
	var pasts [][]*walk.Past // by world, the first first
	for _, w := range l.worlds {
		pasts = append(pasts, pastsOf(w))
	}
	sharp := pastsOf(l.nominal)
	if len(sharp) != len(pasts[0]) {
		sharp, l.nominal = make([]*walk.Past, len(pasts[0])), nil
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
		at := map[*walk.World]*walk.Past{l.nominal: sharp[n]}
		for k, w := range l.worlds {
			at[w] = pasts[k][n]
		}
		for _, name := range l.plan.sensedByString() {
			i := l.by.compartment[name]
			m.Pressures[name] = l.stated(func(w *walk.World) affine.Form {
				if at[w].State.Low(i) >= 0 { // its level says it
					return affine.Form{}
				}
				return at[w].State.Top[i].F
			})
			now, ok := l.begin.Layers[name]
			if !ok {
				now = l.ownLayers(i)
			}
			if then := l.column(p.State, i); !slices.Equal(then, now) {
				m.Layers[name] = then
			}
		}
		if m.Levels = l.levels(func(w *walk.World) *well.State { return at[w].State }); len(m.Levels) > 0 {
			for name := range m.Levels {
				if _, felt := m.Pressures[name]; !felt {
					delete(m.Levels, name)
				}
			}
		}
		l.begin.String = append(l.begin.String, m)
	}
	return nil
}

// pastsOf is what was done to the string in a world, the first first.
func pastsOf(w *walk.World) []*walk.Past {
	if w == nil {
		return nil
	}
	var all []*walk.Past
	for p := w.Past; p != nil; p = p.Before {
		all = append(all, p)
	}
	slices.Reverse(all)
	return all
}
