package well

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/root"
	"completion.example/valve/sequence/internal/affine"
)

// Fallen is the error of a column that has fallen, where what follows isn't modelled.
type Fallen struct{ Compartment, Why string }

func (e Fallen) Error() string { return fmt.Sprintf("level in %q: %s", e.Compartment, e.Why) }

func (s *State) fallen(i int, format string, args ...any) error {
	return Fallen{s.Compartments[i].Name, fmt.Sprintf(format, args...)}
}

// A column that has fallen is one whose top pressure, as its fluid would make it up to
// the compartment's top, is below nothing: what is less than nothing is air. The
// compartment stays what it was, a surface that fixes its body, with that pressure in
// place of what is applied; so everything under the level is straight in what it was
// straight in. Between which two depths the level lies is certain in a world: there
// pressure is nothing at the upper one and at all above it.

// Low is the depth of a compartment, in Depths, between which and the next the level
// of its column lies; -1: it is full.
func (s *State) Low(i int) int {
	if s.low == nil {
		return -1
	}
	return s.low[i]
}

// SetLow says so.
func (s *State) SetLow(i, at int) {
	if s.low == nil {
		s.low = make([]int, len(s.Compartments))
		for k := range s.low {
			s.low[k] = -1
		}
	}
	s.low[i] = at
}

// anyLow is a compartment of a body whose column has fallen, or -1.
func (s *State) anyLow(body []int) int {
	for _, m := range body {
		if s.Low(m) >= 0 {
			return m
		}
	}
	return -1
}

// Full makes it an error if the column of any of a body has fallen.
func (s *State) Full(body []int, doing string) error {
	if m := s.anyLow(body); m >= 0 {
		return s.fallen(m, "%s isn't modelled while its column has fallen; fill it first", doing)
	}
	return nil
}

// Gauge is the pressure at the top of a compartment: what is applied where it is open.
func (s *State) Gauge(i int) affine.Line {
	switch {
	case s.Low(i) >= 0:
		return affine.Line{}
	case s.Surface[i]:
		return s.Applied[i]
	}
	return s.Top[i]
}

// Edge is the pressure that the top of a compartment would have with the level at one
// of its depths.
func (s *State) Edge(i, depth int) affine.Form { return s.columns[i].drops[depth].Times(-1) }

// Carried is the pressure that the top of a compartment, which is open, would have for
// the formation that it is joined to to carry its column: below nothing it falls. It is
// false where no formation is joined to it. One fluid must stand on the way.
func (s *State) Carried(i int) (top affine.Form, ok bool, err error) {
	faces := []int{}
	for _, m := range s.Body(i) {
		if m != i && s.Surface[m] {
			return top, false, s.fallen(i, "it falls beside %q, which is open at surface, too; shut that in, or what joins them", s.Compartments[m].Name)
		}
		if s.Compartments[m].Formation >= 0 {
			faces = append(faces, m)
		}
	}
	if len(faces) == 0 {
		return top, false, nil
	}
	if len(faces) > 1 {
		return top, false, s.fallen(i, "it falls into more than one formation (%q, %q); how it parts between them isn't modelled", s.Compartments[faces[0]].Name, s.Compartments[faces[1]].Name)
	}
	ports, err := s.route(i, faces[0])
	if err != nil {
		var e Unpumped
		if errors.As(err, &e) {
			err = s.fallen(i, "%s", e.Why)
		}
		return top, false, err
	}
	// From the formation up.
	at, depth := faces[0], s.Compartments[faces[0]].FormationAt
	p := affine.Flat(s.Formations[s.Compartments[at].Formation].Pressure)
	fluid := -1
	for n := len(ports); n >= 0; n-- {
		there, next, under := 0, -1, 0
		if n > 0 {
			x := s.Ports[ports[n-1]]
			there, next, under = x.AtA, x.B, x.AtB
			if x.B == at {
				there, next, under = x.AtB, x.A, x.AtA
			}
		}
		if err := s.alone(at, depth, there, &fluid); err != nil {
			return top, false, err
		}
		if p, err = s.carry(at, p, depth, there); err != nil {
			return top, false, err
		}
		at, depth = next, under
	}
	return p.F, true, nil
}

// alone makes sure that one fluid of constant density stands between two depths of a
// compartment, the same as in those before it.
func (s *State) alone(i, from, to int, fluid *int) error {
	k, c := &s.Compartments[i], s.columns[i]
	if !c.uniform {
		return s.fallen(i, "a fluid in it feels pressure or temperature; a column that falls wants one of constant density")
	}
	if from > to {
		from, to = to, from
	}
	for d := from; d < to; d++ {
		a, b := k.Depths[d].MD, math.Nextafter(k.Depths[d+1].MD, 0)
		for _, md := range [2]float64{a, b} {
			f := c.fluidAt(md)
			if *fluid >= 0 && f != *fluid {
				return s.fallen(i, "both %q and %q stand between surface and the formation; how their front moves as they fall isn't modelled: displace one by the other first",
					s.Fluids[*fluid].Name, s.Fluids[f].Name)
			}
			*fluid = f
		}
	}
	return nil
}

// Falls makes sure that the level of a compartment may come to lie under one of its
// depths.
func (s *State) Falls(i, depth int) error {
	d := s.Compartments[i].Depths
	if depth >= len(d)-1 {
		return s.fallen(i, "it falls out of the compartment's lower end at %s; the formation doesn't carry so much", unit.Length(d[depth].MD).Rounded(5))
	}
	if d[depth+1].TVD < d[depth].TVD {
		return s.fallen(i, "it falls past the low point of the hole at %s; that isn't modelled", unit.Length(d[depth].MD).Rounded(5))
	}
	return nil
}

// above makes sure that nothing joins what has fallen with others above its level.
func (s *State) above(i int) error {
	for _, p := range s.around[i] {
		x := &s.Ports[p]
		at := x.AtA
		if x.B == i {
			at = x.AtB
		}
		if s.Open[p] && at <= s.low[i] {
			return s.fallen(i, "it lies under %q, which is open at %s: air would get in there, which isn't modelled; shut it first", x.Name, unit.Length(s.Compartments[i].Depths[at].MD).Rounded(5))
		}
	}
	return nil
}

// levelOf is the measured depth at which a compartment's gas, or the air over its
// column, ends.
func (s *State) levelOf(i int) affine.Line {
	low := s.Low(i)
	if low < 0 {
		return s.gas[i].Level
	}
	d := s.Compartments[i].Depths
	density := s.Fluids[s.columns[i].fluidAt(d[low].MD)].Density
	out, err := affine.Enclose([]affine.Input{{Line: s.Top[i], Step: stepPressure}, {Line: affine.Flat(density), Step: stepDensity}}, s.Span, true,
		func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			y[0] = s.md(i, low, d[0].TVD-x[0]/(x[1]*Gravity))
			return y, nil
		})
	if err != nil { // somewhere between
		return affine.Flat(affine.Within(d[low].MD, d[low+1].MD))
	}
	return out[0]
}

// md is the measured depth at a true vertical one, after one of a compartment's depths
// and before the next.
func (s *State) md(i, after int, tvd float64) float64 {
	a, b := s.Compartments[i].Depths[after], s.Compartments[i].Depths[after+1]
	switch {
	case tvd <= a.TVD:
		return a.MD
	case tvd >= b.TVD:
		return b.MD
	}
	md, err := root.Find(func(md float64) float64 { return s.tvd(i, md) - tvd }, a.MD, b.MD, 1e-9)
	if err != nil {
		return a.MD + (b.MD-a.MD)*(tvd-a.TVD)/(b.TVD-a.TVD)
	}
	return md
}

// levelBetween is what that lies between along the leg.
func (s *State) levelBetween(i int) (least, greatest float64) {
	lo, hi := s.levelOf(i).Between(s.Span)
	if low := s.Low(i); low >= 0 {
		d := s.Compartments[i].Depths
		lo, hi = max(lo, d[low].MD), min(hi, d[low+1].MD)
	}
	return lo, hi
}

// LevelTop is the pressure that the top of a compartment would have with the level of its
// column at a measured depth.
func (s *State) LevelTop(i int, md affine.Form) (affine.Form, error) {
	top := s.Compartments[i].Depths[0].TVD
	deep, err := affine.Enclose([]affine.Input{{Line: affine.Flat(md), Step: stepDepth}}, 0, true, func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
		y[0] = s.tvd(i, x[0]) - top
		return y, nil
	})
	return affine.Mul(deep[0].F, s.Fluids[s.columns[i].layers[0].Fluid].Density.Times(-Gravity)), err
}

// LevelAt is the measured depth of the level of a column that has fallen, at the
// middles of all that isn't certain.
func (s *State) LevelAt(i int) float64 { return s.levelOf(i).F.C }

// Bent is by how much the pressure between the two depths about a level may be less
// than straight: a quarter of what the fluid makes of their distance.
func (s *State) Bent(i int) float64 {
	low := s.Low(i)
	if low < 0 {
		return 0
	}
	c := s.columns[i]
	return c.drops[low+1].Minus(c.drops[low]).Greatest() / 4
}
