package walk

import (
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Begin is how a programme finds the well, where that isn't as its things were run.
// The network's own start has the ports and the armed actions that this makes.
type Begin struct {
	Temperature int
	ShutIn      []int
	Applied     map[int]affine.Form // by compartment; else nothing is applied
	Stated      []bool              // by compartment: its trapped pressure
	Happened    []int               // actions
	May         []int               // each may have happened after these, or not
	Rows        map[int][]Progress  // by action: where its row isn't at its beginning
	If          []affine.Form       // conditions
	Stood       map[int]affine.Form // by action: for how long a slow one has been at its level, s
	Live        []int               // formations whose inflow has been part of the plan
	String      []Moment            // what was done to the string; none: it lands
	// Fallen is by compartment the pressure that the top of a column that has fallen would
	// have; Levels the measured depth of the others, and that at which gas ends where its
	// layers don't say it.
	Fallen, Levels map[int]affine.Form
}

// Moment is something that was done to the string.
type Moment struct {
	Action      int // or -1: it landed
	On          int // the string that landed or was pulled, where there are two
	Temperature int
	Top         map[int]affine.Form // by compartment
	Layers      map[int][]well.Layer
	Pull        *affine.Form // the weight indicator, where it hung on the hook

	Fallen, Levels map[int]affine.Form // as those of the beginning
}

// Past is what was done to the string in a world, last first.
type Past struct {
	Before *Past
	Action int         // or -1: it landed
	On     int         // the string that landed or was pulled
	State  *well.State // of that moment
	Pull   *affine.Form
	Moving bool // a front moved through a compartment
}

// remember keeps what was done to the string. Once it has landed nothing counts that
// was done before, but where another one is around it.
func (w *World) remember(action int, x affine.Form, pulling *affine.Line) {
	p := &Past{Before: w.Past, Action: action, On: w.On, State: w.State.Clone(), Moving: w.State.Front.Compartment >= 0}
	if action < 0 && !w.keeps {
		p.Before = nil
	}
	if pulling != nil {
		f := pulling.At(x)
		p.Pull = &f
	}
	p.State.EndLeg(x)
	w.Past = p
}

// Starts are the worlds before the first step: one for each choice of what may have
// happened.
func Starts(n *well.Network, region *affine.Region, b *Begin, room StringRoom) ([]*World, error) {
	w, err := Start(n, region)
	if err != nil {
		return nil, err
	}
	if b == nil {
		if room != nil {
			w.remember(-1, affine.Form{}, nil)
			err = room.Land(w)
		}
		return []*World{w}, err
	}
	if region = region.And(b.If); region == nil {
		return nil, nil // with no such values does the well stand so
	}
	var all []*World
	for choice := range 1 << len(b.May) {
		parts, err := b.lowered(b.world(n, region, choice))
		if err != nil {
			return nil, err
		}
		for _, w := range parts {
			if err := b.settle(w, room); err != nil {
				return nil, err
			}
		}
		all = append(all, parts...)
	}
	return all, nil
}

// world is the well with one choice of what may have happened.
func (b *Begin) world(n *well.Network, region *affine.Region, choice int) *World {
	w := start(n, region)
	s := w.State
	w.Begun = choice
	s.SetTemperature(b.Temperature)
	for _, i := range b.ShutIn {
		s.Surface[i] = false
	}
	for i, f := range b.Applied {
		s.Applied[i] = affine.Flat(f)
	}
	for _, a := range b.Happened {
		w.Times[a] = 1
	}
	for a, rows := range b.Rows {
		w.Rows[a] = nil
		for _, p := range rows {
			if region.And(p.Rows) != nil {
				w.Rows[a] = append(w.Rows[a], p)
			}
		}
	}
	if len(b.Stood) > 0 {
		w.Stood, w.level = make([]affine.Form, len(n.Actions)), make([]bool, len(n.Actions))
		for a, t := range b.Stood {
			w.Stood[a], w.level[a] = t, true
		}
	}
	for _, f := range b.Live {
		w.Live[f] = true
	}
	for k, i := range b.May {
		if choice&(1<<k) != 0 {
			w.happens(i)
		}
	}
	for i, f := range b.Levels {
		s.SetGasEnd(i, f)
	}
	return w
}

// settle gives a world its pressures, shuts in the gas that is, and does again what was
// done to the string.
func (b *Begin) settle(w *World, room StringRoom) error {
	s := w.State
	for i := range s.Compartments {
		if b.Stated[i] {
			if err := b.spread(s, i); err != nil {
				return err
			}
		}
	}
	if err := s.Solve(affine.Form{}); err != nil {
		return err
	}
	if err := s.Close(); err != nil {
		return err
	}
	if err := s.GasReaches(); err != nil {
		return err
	}
	return b.string(w, room)
}

// spread carries a trapped pressure that is stated through its body, where it is the
// only one in it.
func (b *Begin) spread(s *well.State, i int) error {
	members := s.Body(i)
	for _, m := range members {
		if m != i && b.Stated[m] || s.Surface[m] || s.Compartments[m].Formation >= 0 {
			return nil
		}
	}
	return s.Spread(i)
}

// string does again what was done to the string, as the well stood then.
func (b *Begin) string(w *World, room StringRoom) error {
	if room == nil {
		return nil
	}
	if len(b.String) == 0 {
		w.remember(-1, affine.Form{}, nil)
		return room.Land(w)
	}
	then := w.Clone()
	for n, m := range b.String {
		then.On, then.keeps = m.On, n > 0
		s := then.State
		s.SetTemperature(m.Temperature)
		for i, layers := range m.Layers {
			s.SetLayers(i, layers)
		}
		for i, f := range m.Top {
			s.Top[i] = affine.Flat(f)
			if s.Low(i) >= 0 {
				s.SetLow(i, -1)
			}
		}
		for i, f := range m.Levels {
			s.SetGasEnd(i, f)
		}
		tops, err := tops(s, m.Fallen, m.Levels)
		if err != nil {
			return err
		}
		for i, f := range tops {
			at, err := lies(w, s, i, f)
			if err != nil {
				return err
			}
			s.SetLow(i, at)
			if s.Top[i] = affine.Flat(f); at < 0 {
				s.Top[i] = affine.Line{}
			}
		}
		var pulling *affine.Line
		if m.Pull != nil {
			pulling = &affine.Line{F: *m.Pull}
		}
		then.remember(m.Action, affine.Form{}, pulling)
		if m.Action < 0 {
			err = room.Land(then)
		} else {
			err = room.Move(then, m.Action, affine.Form{}, pulling)
		}
		if err != nil {
			return err
		}
	}
	w.State.String, w.Past = then.State.String, then.Past
	return nil
}

// Narrow is the beginning with some symbols narrowed.
func (b *Begin) Narrow(part affine.Part) *Begin {
	if b == nil {
		return nil
	}
	f := *b
	f.Applied = narrowed(b.Applied, part)
	f.Fallen, f.Levels = narrowed(b.Fallen, part), narrowed(b.Levels, part)
	f.If = narrowedAll(b.If, part)
	f.Rows = map[int][]Progress{}
	for a, rows := range b.Rows {
		for _, p := range rows {
			p.Rows = narrowedAll(p.Rows, part)
			f.Rows[a] = append(f.Rows[a], p)
		}
	}
	f.String = slices.Clone(b.String)
	for i := range f.String {
		m := &f.String[i]
		m.Top = narrowed(m.Top, part)
		m.Fallen, m.Levels = narrowed(m.Fallen, part), narrowed(m.Levels, part)
		if m.Pull != nil {
			p := m.Pull.Narrow(part)
			m.Pull = &p
		}
	}
	return &f
}

func narrowedAll(all []affine.Form, part affine.Part) []affine.Form {
	var f []affine.Form
	for _, x := range all {
		f = append(f, x.Narrow(part))
	}
	return f
}

func narrowed(all map[int]affine.Form, part affine.Part) map[int]affine.Form {
	f := map[int]affine.Form{}
	for i, x := range all {
		f[i] = x.Narrow(part)
	}
	return f
}
