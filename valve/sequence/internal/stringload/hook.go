package stringload

import (
	"math"
	"slices"
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// Ways that the hook goes, as a turn keeps them.
const (
	upwards        = iota
	downFromHanger // nothing has rubbed yet
	downFromPull   // what rubbed on the way up is there still, until it has turned round
	sliding        // down, and all that rubs does so the other way
)

// Turn keeps where the hook turns round. Going up is the rule and isn't kept, but
// after a way down.
func (r *Room) Turn(w *walk.World, down, first bool, from affine.Form) error {
	s, ok := w.State.String.(*standing)
	if !ok {
		return errNotLanded
	}
	last := s.turn(w.On)
	way := upwards
	switch {
	case down && first:
		way = downFromHanger
	case down && last != nil && last.place != upwards:
		return nil // further down the same way
	case down:
		way = downFromPull
	case last == nil || last.place == upwards:
		return nil
	}
	line := affine.Flat(from)
	return r.next(w, turned, w.On, way, affine.Form{}, &line)
}

// Slides keeps that the string slides down from a reading on.
func (r *Room) Slides(w *walk.World, from affine.Form) error {
	s, ok := w.State.String.(*standing)
	if !ok {
		return errNotLanded
	}
	if last := s.turn(w.On); r.one(w.On).Hole != nil || last == nil || last.place == upwards || last.place == sliding {
		return nil
	}
	line := affine.Flat(from)
	return r.next(w, turned, w.On, sliding, affine.Form{}, &line)
}

// turn is the last one of a string, or nil.
func (s *standing) turn(of int) *standing {
	for ; s != nil; s = s.before {
		if s.act == turned && s.of == of {
			return s
		}
	}
	return nil
}

// hookSymbols adds the symbols that a string on the hook depends on.
func (r *Room) hookSymbols(set map[int]bool, pull *reading) {
	r = r.one(pull.of)
	add := func(f affine.Form) {
		for _, t := range f.T {
			set[t.Symbol] = true
		}
	}
	add(pull.Form)
	add(r.Drag)
	for _, f := range r.Factors {
		add(f)
	}
	for _, s := range r.Seals {
		add(s.Friction)
	}
}

// onHook puts a string on the hook: reading, and what hole and seals take on the way
// up, on the way down, or while the one turns into the other.
//
// Slacked off from a pull the string at depth first stays as it is: what the hole took
// the one way has to be given back, and is then taken the other way. With D what it
// takes on the way up, d on the way down, R the reading and R0 that of the turn,
//
//	taken = max(-d, D - (R0 - R))          from a pull
//	taken = max(-d, -(R0 - R))             from the hanger, where nothing was taken yet
func (r *Room) onHook(all *[2]movement.Conditions, now movement.Nested, s *standing, pull *reading, at corner) error {
	if pull == nil {
		return nil
	}
	own, c := r.one(pull.of), &all[pull.of]
	c.Top = movement.OnHookOpen
	if own.Closed {
		c.Top = movement.OnHookClosed
	}
	c.Reading = unit.Force(pull.At(at.e))
	load := r.loader(now, *all, pull.of)
	turn := s.turn(pull.of)
	switch {
	case turn == nil || turn.place == upwards:
		return own.taken(c, load, drag.Pulled, at)
	case turn.place == sliding:
		return own.taken(c, load, drag.RunIn, at)
	}
	up, down := *c, *c
	if err := own.taken(&up, load, drag.Pulled, at); err != nil {
		return err
	}
	if err := own.taken(&down, load, drag.RunIn, at); err != nil {
		return err
	}
	most, err := own.total(up, load)
	if err != nil {
		return err
	}
	least, err := own.total(down, load)
	if err != nil {
		return err
	}
	begin := 0.0
	if turn.place == downFromPull {
		begin = most
	}
	taken := begin - (turn.pull.At(at.e) - float64(c.Reading))
	if own.Hole != nil { // else the leg ends where it is all the other way
		taken = math.Min(most, math.Max(least, taken))
	}
	share := 1.0 // of the way up
	if most > least {
		share = (taken - least) / (most - least)
	}
	own.blend(c, &up, &down, share)
	return nil
}

// blend is between the way up and the way down.
func (r *Room) blend(c, up, down *movement.Conditions, share float64) {
	const nothing = 1e-6 // N: so that a sum of nothing still has its parts
	a, b := float64(up.Drag)*share, float64(down.Drag)*(1-share)
	c.Drag = unit.Force(a + b)
	if up.DragShare != nil || down.DragShare != nil {
		if math.Abs(a+b) < nothing {
			c.Drag = nothing
		}
		sum, of := float64(c.Drag), func(f func(unit.Length) float64, md unit.Length) float64 {
			if f == nil {
				return 0
			}
			return f(md)
		}
		c.DragShare = func(md unit.Length) float64 { return (a*of(up.DragShare, md) + b*of(down.DragShare, md)) / sum }
	}
	c.Sliding, c.SealFriction = up.Sliding, nil
	for _, f := range up.SealFriction {
		c.SealFriction = append(c.SealFriction, f*unit.Force(2*share-1))
	}
}

// total is all that hole and seals take from a reading, up positive.
func (r *Room) total(c movement.Conditions, load loader) (float64, error) {
	if len(c.SealFriction) == 0 {
		return float64(c.Drag), nil
	}
	l, err := load(c)
	if err != nil {
		return 0, err
	}
	return float64(c.Drag + r.Up.Terms(l).Seals), nil
}

// taken fills in what hole and seals take when the string moves all the way.
func (r *Room) taken(c *movement.Conditions, load loader, m drag.Motion, at corner) error {
	sign := 1.0
	c.Sliding = movement.SlidingUp
	if m == drag.RunIn {
		sign, c.Sliding = -1, movement.SlidingDown
	}
	c.SealFriction = nil
	if slices.ContainsFunc(r.Seals, func(s Seal) bool { return s.Friction.C != 0 || len(s.Friction.T) > 0 }) {
		for _, s := range r.Seals {
			c.SealFriction = append(c.SealFriction, unit.Force(s.Friction.At(at.e)))
		}
	}
	if r.Hole == nil {
		c.Drag = unit.Force(sign * r.Drag.At(at.e))
		return nil
	}
	return r.rubbed(c, load, m, at)
}

// rubbed is the drag along the path: the string loaded without any tells the force
// that it is taken from. See drag.Prepared.Along.
func (r *Room) rubbed(c *movement.Conditions, load loader, m drag.Motion, at corner) error {
	c.Drag, c.DragShare = 0, nil
	l, err := load(*c)
	if err != nil {
		return err
	}
	hole, err := r.InHole(l, at.e)
	if err != nil {
		return err
	}
	t, err := hole.Along(m, unit.Length(r.Hanger), r.Up.Terms(l).From, !l.Free, func(md unit.Length) unit.Force { f, _ := alongside(l.Nodes, md); return f })
	if err != nil {
		return err
	}
	c.Drag, c.DragShare = t.Total, t.Share
	return nil
}

// InHole is the string in its hole with the effective weights of a loading and the
// friction factors of a choice.
func (r *Room) InHole(l *movement.Loading, e []float64) (*drag.Prepared, error) {
	factors := make([]float64, len(r.Factors))
	for i, f := range r.Factors {
		factors[i] = math.Max(0, f.At(e))
	}
	return r.Hole.With(factors, func(md unit.Length) unit.WeightPerLength { _, w := alongside(l.Nodes, md); return w })
}

// alongside is the effective force and weight at a measured depth.
func alongside(nodes []movement.Node, md unit.Length) (unit.Force, unit.WeightPerLength) {
	i := sort.Search(len(nodes), func(i int) bool { return nodes[i].MD >= md })
	switch {
	case len(nodes) == 0:
		return 0, 0
	case i == len(nodes):
		return nodes[i-1].Effective, nodes[i-1].Weight
	case i == 0 || nodes[i].MD == nodes[i-1].MD:
		return nodes[i].Effective, nodes[i].Weight
	}
	a, b := &nodes[i-1], &nodes[i]
	x := float64((md - a.MD) / (b.MD - a.MD))
	return a.Effective + unit.Force(x)*(b.Effective-a.Effective), a.Weight + unit.WeightPerLength(x)*(b.Weight-a.Weight)
}

// hooking is a loading to be used again while the drag is looked for.
func (r *Room) hooking() *movement.NestedLoading { return &r.work().hook }
