package well

import (
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
)

// Gravity is standard gravity in m/s².
const Gravity = 9.80665

// column is the fluid of a compartment: its layers, and what pressure they make
// from the top to each of its depths. It never changes once it is made.
type column struct {
	layers  []Layer
	drops   []affine.Form // by depth of the compartment
	uniform bool          // no layer feels pressure or temperature
	corners []int         // depths between which its pressure is straight in TVD
	gas     bool          // it begins with gas
}

func (n *Network) column(i int, layers []Layer) *column {
	c := &column{layers: layers, uniform: true}
	for _, l := range layers {
		c.uniform = c.uniform && n.Fluids[l.Fluid].Columns == nil && !n.Fluids[l.Fluid].Gas()
	}
	c.gas = n.Fluids[layers[0].Fluid].Gas()
	k := &n.Compartments[i]
	for d, at := range k.Depths {
		corner := !c.uniform || d == 0 || d == len(k.Depths)-1
		for _, l := range layers {
			corner = corner || l.Bottom.MD == at.MD
		}
		if corner {
			c.corners = append(c.corners, d)
		}
	}
	if !c.uniform {
		return c
	}
	sum := affine.Form{}
	c.drops = make([]affine.Form, len(k.Depths))
	for x := range k.pieces(layers) {
		sum = sum.PlusTimes(n.Fluids[x.fluid].Density, Gravity*(x.to.TVD-x.from.TVD))
		c.drops[x.depth] = sum
	}
	return c
}

// fluidAt is the fluid just below a depth.
func (c *column) fluidAt(md float64) int {
	for _, l := range c.layers {
		if md < l.Bottom.MD {
			return l.Fluid
		}
	}
	return c.layers[len(c.layers)-1].Fluid
}

// Front is a swap on its way: in one piece of a compartment, between two depths
// with nothing between them, one fluid takes the place of another. s is the
// pressure by which the piece gains or loses.
type Front struct {
	Compartment int // -1: none
	Beyond      float64
	Sign        float64
	Gives       float64 // by how much more it gives halfway than before, in m³/Pa
}

// Corners are the depths of a compartment between which its pressure is straight in
// the true vertical depth.
func (s *State) Corners(i int) []int {
	c := s.columns[i]
	low := s.Low(i)
	if s.Front.Compartment != i && low < 0 {
		return c.corners
	}
	all := append([]int(nil), c.corners...)
	if low >= 0 {
		all = append(all, low, low+1)
		slices.Sort(all)
		return slices.Compact(all)
	}
	for d, at := range s.Compartments[i].Depths {
		if d > 0 && at.MD >= s.Front.Beyond {
			all = append(all, d-1, d)
			break
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// carry takes a pressure through a compartment from one of its depths to another.
func (s *State) carry(i int, p affine.Line, from, to int) (affine.Line, error) {
	if from == to {
		return p, nil
	}
	c := s.columns[i]
	switch {
	case s.pumping(i):
		return p.Plus(s.profiles[i][to]).Minus(s.profiles[i][from]), nil
	case c.uniform && from == 0:
		p.F = p.F.Plus(c.drops[to])
	case c.uniform:
		p.F = p.F.Plus(c.drops[to].Minus(c.drops[from]))
	case c.gas:
		var err error
		if p, err = s.across(i, p, from, to); err != nil {
			return p, err
		}
	default:
		var err error
		if p, err = s.carryCompressible(i, p, from, to); err != nil {
			return p, err
		}
	}
	if s.Front.Compartment == i {
		k := &s.Compartments[i]
		a, b := k.Depths[from].MD >= s.Front.Beyond, k.Depths[to].MD >= s.Front.Beyond
		switch {
		case !a && b:
			p.S += s.Front.Sign
		case a && !b:
			p.S -= s.Front.Sign
		}
	}
	return p, nil
}

// carryCompressible carries a pressure through fluids whose density depends on it: between the
// least and the greatest pressure of the leg the gain is a straight line and a
// remainder.
func (s *State) carryCompressible(i int, p affine.Line, from, to int) (affine.Line, error) {
	k, c := &s.Compartments[i], s.columns[i]
	step := 1
	if to < from {
		step = -1
	}
	for d := from; d != to; d += step {
		a, b := k.Depths[d], k.Depths[d+step]
		for a != b {
			next := b
			for _, l := range c.layers { // a boundary on the way
				if l.Bottom.MD > math.Min(a.MD, b.MD) && l.Bottom.MD < math.Max(a.MD, b.MD) {
					if step > 0 && l.Bottom.MD < next.MD || step < 0 && l.Bottom.MD > next.MD {
						next = l.Bottom
					}
				}
			}
			fluid := c.fluidAt(math.Min(a.MD, next.MD))
			var err error
			if p, err = s.gain(fluid, p, a.TVD, next.TVD); err != nil {
				return p, fmt.Errorf("compartment %q: %w", k.Name, err)
			}
			a = next
		}
	}
	return p, nil
}

func (s *State) gain(fluid int, p affine.Line, from, to float64) (affine.Line, error) {
	f := &s.Fluids[fluid]
	switch {
	case f.Gas():
		return s.throughGas(fluid, p, from, to)
	case f.Columns == nil:
		p.F = p.F.PlusTimes(f.Density, Gravity*(to-from))
		return p, nil
	case from == to:
		return p, nil
	}
	col := f.Columns[s.Temperature]
	d := func(at float64) (float64, error) {
		q, err := col.Carry(unit.Pressure(at), unit.Length(from), unit.Length(to))
		return float64(q) - at, err
	}
	least, greatest := p.F.Least(), p.F.Greatest()
	least += math.Min((p.S-p.D)*s.Span, 0)
	greatest += math.Max((p.S+p.D)*s.Span, 0)
	mid := least + (greatest-least)/2
	dm, err := d(mid)
	if err != nil {
		return p, err
	}
	slope, rest := 0.0, 0.0
	if greatest-least > 100 {
		dl, e1 := d(least)
		dg, e2 := d(greatest)
		if e1 != nil || e2 != nil {
			return p, first(e1, e2)
		}
		slope = (dg - dl) / (greatest - least)
		// The gain bends one way: it lies between its secant and as far from it
		// as in the middle.
		r := dm - (dl+dg)/2
		dm = dl + slope*(mid-least) + r/2
		rest = 0.55 * math.Abs(r)
	}
	gain := affine.Const(dm - slope*mid).Widen(rest)
	if f.Warm != nil && f.Warm[s.Temperature] != nil {
		cold, warm, err := f.CarryEnds(s.Temperature, mid, from, to)
		if err != nil {
			return p, err
		}
		// The temperature's error is a form of its own: what the ends of it make.
		h := s.Heat[s.Temperature]
		c, w := float64(cold)-mid, float64(warm)-mid
		if r := s.heatHalf[s.Temperature]; r > 0 {
			per := (w - c) / (2 * r)
			gain = gain.PlusTimes(h.Shift(-s.heatMiddle[s.Temperature]), per).Widen(math.Abs((w+c)/2 - dm))
		}
	}
	if !f.Scale.Sharp() || f.Scale.C != 1 {
		gain = affine.Mul(gain.Shift(slope*mid), f.Scale).Shift(-slope * mid)
	}
	return affine.Line{F: p.F.Times(1 + slope).Plus(gain), S: p.S * (1 + slope), D: p.D * (1 + math.Abs(slope))}, nil
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// deeper is what an action would feel more if it stood deeper by what its depth may
// be off.
func (s *State) deeper(a *Action) (affine.Form, error) {
	in, err := s.gradient(a.Inside, a.AtIn)
	if err != nil {
		return in, err
	}
	if a.Outside >= 0 {
		out, err := s.gradient(a.Outside, a.AtOut)
		if err != nil {
			return out, err
		}
		in = in.Minus(out)
	}
	for _, m := range a.More {
		more, err := s.gradient(m.Compartment, m.At)
		if err != nil {
			return more, err
		}
		in = in.PlusTimes(more, m.Times)
	}
	return affine.Mul(in, a.Off), nil
}

// gradient is the pressure that a metre makes at a depth of a compartment: between
// that above and that below it where two fluids meet.
func (s *State) gradient(i, depth int) (affine.Form, error) {
	d := s.Compartments[i].Depths[depth]
	p, err := s.At(i, depth)
	if err != nil {
		return affine.Form{}, err
	}
	if s.pumping(i) {
		return s.flowingGradient(i, depth), nil
	}
	c := s.columns[i]
	away := -1.0 // m, up but at surface
	if d.TVD < 1 {
		away = 1
	}
	of := func(fluid int) (affine.Form, error) {
		q, err := s.gain(fluid, affine.Flat(affine.Const(p.F.C)), d.TVD, d.TVD+away)
		return q.F.Shift(-p.F.C).Times(away), err
	}
	under, over := c.fluidAt(d.MD), c.fluidAt(math.Nextafter(d.MD, 0))
	if c.gas {
		under, over = s.aroundLevel(i, d.MD)
	}
	below, e1 := of(under)
	above, e2 := of(over)
	if s.Low(i) >= 0 && e1 == nil { // somewhere between that of air and that of its fluid
		return below.Times(0.5).Widen(below.Greatest() / 2), nil
	}
	if below.Same(above, 1e-9) || e1 != nil || e2 != nil {
		return below, first(e1, e2)
	}
	mid := below.Plus(above).Times(0.5)
	return mid.Widen(math.Abs(below.C-above.C) / 2), nil
}

// Gain is by how much the pressure below a piece of a compartment gains on that
// above it when one fluid takes another's place.
func (s *State) Gain(i, old, now int, from, to Depth) (affine.Form, error) {
	a, b := &s.Fluids[old], &s.Fluids[now]
	if s.columns[i].gas || b.Gas() {
		return s.gasGain(i, now, from, to)
	}
	if a.Columns == nil && b.Columns == nil {
		return b.Density.Minus(a.Density).Times(Gravity * (to.TVD - from.TVD)), nil
	}
	// At the pressure that stands there now: what it changes by the swap itself
	// makes next to nothing of a piece.
	c := s.columns[i]
	alone := *s
	alone.columns = append([]*column(nil), s.columns...)
	alone.columns[i] = &column{layers: c.layers}
	p, err := alone.carryTo(i, s.Top[i], from)
	if err != nil {
		return affine.Form{}, err
	}
	before, err := alone.gain(old, p, from.TVD, to.TVD)
	if err != nil {
		return affine.Form{}, err
	}
	after, err := alone.gain(now, p, from.TVD, to.TVD)
	return after.F.Minus(before.F), err
}

// carryTo carries a pressure from the top of a compartment to any depth in it.
func (s *State) carryTo(i int, p affine.Line, to Depth) (affine.Line, error) {
	at := s.Compartments[i].Depths[0]
	for _, l := range s.columns[i].layers {
		next := l.Bottom
		if next.MD > to.MD {
			next = to
		}
		if next.MD > at.MD {
			var err error
			if p, err = s.gain(l.Fluid, p, at.TVD, next.TVD); err != nil {
				return p, err
			}
			at = next
		}
	}
	return p, nil
}
