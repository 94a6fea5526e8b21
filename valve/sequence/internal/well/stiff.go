package well

import (
	"fmt"
	"math"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
)

// Wall is how the walls of a compartment give way, down to a depth.
type Wall struct {
	Bottom     float64 // MD
	Area       float64 // of the space, m²
	Compliance float64 // growth of the space by pressure in it, 1/Pa
	Expansion  float64 // growth of the space by warming, 1/K
}

// notKnown is the error of a trapped compartment whose stiffness isn't known in full.
type notKnown struct{ Compartment, Why string }

func (e notKnown) Error() string { return fmt.Sprintf("trapped %q: %s", e.Compartment, e.Why) }

// stretch is a length of one compartment with one fluid and one wall.
type stretch struct {
	fluid    *Fluid
	wall     *Wall
	from, to float64 // MD
}

func (s *State) stretches(i int) []stretch {
	k := &s.Compartments[i]
	var all []stretch
	at, w := k.Depths[0].MD, 0
	for _, l := range s.columns[i].layers {
		for at < l.Bottom.MD && w < len(k.Walls) {
			next := math.Min(l.Bottom.MD, k.Walls[w].Bottom)
			all = append(all, stretch{&s.Fluids[l.Fluid], &k.Walls[w], at, next})
			if at = next; at >= k.Walls[w].Bottom {
				w++
			}
		}
	}
	return all
}

// gives is the volume that a pressure makes room for in a compartment, in m³/Pa: of its
// fluids and its walls. It is false where that isn't known.
//
//	V·(c + C)
func (s *State) gives(i int) (float64, bool) {
	if s.Compartments[i].Walls == nil {
		return 0, false
	}
	sum := 0.0
	for _, x := range s.stretches(i) {
		c := s.compression(i, x)
		if c <= 0 {
			return 0, false
		}
		sum += x.wall.Area * (x.to - x.from) * (c + x.wall.Compliance)
	}
	if s.Front.Compartment == i {
		sum += s.Front.Gives
	}
	return sum, true
}

// stiff tells whether a compartment shares a body that nothing fixes by what fluids and
// walls give: then a displacement in it changes how it shares as it goes.
func (s *State) stiff(i int) bool {
	members := s.Body(i)
	if s.Compartments[i].Walls == nil || len(members) < 2 {
		return false
	}
	for _, m := range members {
		if s.Surface[m] || s.Compartments[m].Formation >= 0 {
			return false
		}
	}
	return true
}

// Halfway is by how much more a compartment gives in the middle of a displacement than
// before it.
func (s *State) Halfway(i int, layers []Layer) float64 {
	if s.Compartments[i].Walls == nil {
		return 0
	}
	before, known := s.gives(i)
	after := s.Clone()
	after.SetLayers(i, layers)
	then, also := after.gives(i)
	if !known || !also {
		return 0
	}
	return (then - before) / 2
}

// give is that of a body; false where it isn't known of all of it.
func (s *State) give(members []int) (sum float64, ok bool) {
	for _, m := range members {
		g, ok := s.gives(m)
		if !ok {
			return 0, false
		}
		sum += g
	}
	return sum, true
}

// warmPiece is the longest stretch over which warming is taken as a parabola, in m.
const warmPiece = 75.0

// warmed is what the contents of a compartment grow by more than the space does, from
// one temperature to another.
//
//	∫ A·(α - β)·(T' - T) dz
func (s *State) warmed(i, to int) (affine.Form, error) {
	var sum, per float64
	for _, x := range s.stretches(i) {
		if x.fluid.Expansion <= 0 {
			return affine.Form{}, notKnown{s.Compartments[i].Name, fmt.Sprintf("it is heated or cooled between known walls: %q wants its thermal expansion", x.fluid.Name)}
		}
		more := x.wall.Area * (x.fluid.Expansion - x.wall.Expansion)
		per += more * (x.to - x.from)
		n := math.Ceil((x.to - x.from) / warmPiece)
		h := (x.to - x.from) / n
		for k := range int(n) { // the mean by Simpson's rule
			a := x.from + float64(k)*h
			d := func(md float64) float64 {
				tvd := unit.Length(s.tvd(i, md))
				return float64(s.Temperatures[to].At(tvd).Sub(s.Temperatures[s.Temperature].At(tvd)))
			}
			sum += more * h / 6 * (d(a) + 4*d(a+h/2) + d(a+h))
		}
	}
	return affine.Const(sum).PlusTimes(s.Heat[to].Minus(s.Heat[s.Temperature]), per), nil
}

// Warm gives trapped bodies between known walls the pressure that another temperature
// makes of theirs: what their contents grow by more than their space goes into pressure.
//
//	Δp = Σ ∫ A·(α - β)·ΔT dz / Σ V·(c + C)
//
// It is the linear form of confined.Trapped; for fluids of constant expansion and
// compressibility what it leaves out is the square of a relative change of volume. A body
// with fresh water keeps its mass by the water's own density: see heatedReal.
func (s *State) Warm(to int) error {
	seen := make([]bool, len(s.Compartments))
	for i := range s.Compartments {
		if seen[i] || s.Compartments[i].Walls == nil {
			continue
		}
		members := s.Body(i)
		trapped := true
		for _, m := range members {
			seen[m] = true
			trapped = trapped && !s.Surface[m] && s.Compartments[m].Formation < 0 && !s.gas[m].Closed
		}
		if !trapped {
			continue
		}
		give, ok := s.give(members)
		if !ok {
			return s.soft(members, "it is heated or cooled")
		}
		if s.holdsReal(members) {
			by, err := s.heatedReal(members, to)
			if err != nil {
				return err
			}
			for _, m := range members {
				s.Top[m] = affine.Flat(s.Top[m].F.Plus(by))
			}
			continue
		}
		by := affine.Form{}
		for _, m := range members {
			f, err := s.warmed(m, to)
			if err != nil {
				return err
			}
			by = by.Plus(f)
		}
		for _, m := range members {
			s.Top[m] = affine.Flat(s.Top[m].F.PlusTimes(by, 1/give))
		}
	}
	return nil
}

// soft says of which of a body the stiffness isn't known.
func (s *State) soft(members []int, doing string) error {
	for _, m := range members {
		k := &s.Compartments[m]
		if k.Walls == nil {
			return notKnown{k.Name, doing + " without known walls; give its bores walls, or leave those of what is joined to it out"}
		}
		for _, x := range s.stretches(m) {
			switch {
			case s.compression(m, x) > 0:
			case x.fluid.Real != nil:
				return notKnown{k.Name, doing + fmt.Sprintf(" between known walls: how %q gives way isn't known at its pressure and temperature there: from its boiling pressure to 100 MPa, and from 0 to 350 degC", x.fluid.Name)}
			default:
				return notKnown{k.Name, doing + fmt.Sprintf(" between known walls: %q wants a compressibility, and must not be a gas", x.fluid.Name)}
			}
		}
	}
	return nil
}

// Press lets a volume into the body of a compartment at once, where it is trapped
// between known walls; what is fixed by something else gives way.
func (s *State) Press(i int, volume float64) error {
	members := s.Body(i)
	for _, m := range members {
		if s.Surface[m] || s.Compartments[m].Formation >= 0 {
			return nil
		}
	}
	give, ok := s.give(members)
	if !ok {
		return s.soft(members, "something strokes into it")
	}
	for _, m := range members {
		s.Top[m].F = s.Top[m].F.Shift(volume / give)
	}
	return nil
}

// Held is by how much the pressure of a compartment changes while it is held, shut in,
// and what stands in some compartments warms: of the whole body that it is in.
//
//	Δp = Σ V·(α - β)·ΔT / Σ V·(c + C)
func (s *State) Held(i int, warms map[int]affine.Form) (affine.Form, error) {
	members := s.Body(i)
	by, warm := affine.Form{}, false
	for _, m := range members {
		if s.Compartments[m].Formation >= 0 {
			return affine.Form{}, nil // that holds it
		}
		f, ok := warms[m]
		if !ok {
			continue
		}
		warm = true
		for _, x := range s.stretches(m) {
			alpha, known := s.expansion(m, x)
			if !known {
				return affine.Form{}, notKnown{s.Compartments[m].Name, fmt.Sprintf("it warms or cools while a test is held: %q wants its thermal expansion", x.fluid.Name)}
			}
			by = by.PlusTimes(f, x.wall.Area*(x.to-x.from)*(alpha-x.wall.Expansion))
		}
	}
	if !warm {
		return affine.Form{}, nil
	}
	give, ok := s.give(members)
	if !ok {
		return affine.Form{}, s.soft(members, "it warms or cools while a test is held")
	}
	return by.Times(1 / give), nil
}

// Parts are the volumes of a compartment, their fluids and how their walls give way;
// nothing where that isn't known.
func (s *State) Parts(i int) confined.System {
	if _, ok := s.gives(i); !ok {
		return nil
	}
	var all confined.System
	for _, x := range s.stretches(i) {
		all = append(all, confined.Part{Name: x.fluid.Name, Volume: unit.Volume(x.wall.Area * (x.to - x.from)),
			Fluid: unit.Compressibility(s.compression(i, x)), Walls: unit.Compressibility(x.wall.Compliance)})
	}
	return all
}
