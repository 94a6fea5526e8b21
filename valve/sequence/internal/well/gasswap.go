package well

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
)

// gasGain is Gain in a compartment with gas, or that gets it.
func (s *State) gasGain(i, now int, from, to Depth) (affine.Form, error) {
	top := s.Compartments[i].Depths[0]
	through := func(p affine.Line, a, b Depth) (affine.Line, error) {
		if s.columns[i].gas {
			return s.between(i, p, a, b)
		}
		return s.under(i, p, a, b)
	}
	p, err := through(s.Top[i], top, from)
	if err != nil {
		return affine.Form{}, err
	}
	gain := func(p affine.Line) (affine.Form, error) {
		before, err := through(p, from, to)
		if err != nil {
			return affine.Form{}, err
		}
		after, err := s.gain(now, p, from.TVD, to.TVD)
		return after.F.Minus(before.F), err
	}
	g, err := gain(p)
	if err != nil || s.leads(i) {
		return g, err
	}
	// The piece feels its own gain where the body is fixed somewhere else.
	most := math.Max(math.Abs(g.Least()), math.Abs(g.Greatest()))
	off := 0.0
	for _, side := range [2]float64{-most, most} {
		h, err := gain(p.PlusForm(affine.Const(side)))
		if err != nil {
			return affine.Form{}, err
		}
		off = math.Max(off, h.Minus(g).Radius()+math.Abs(h.C-g.C))
	}
	return g.Widen(1.25 * off), nil
}

// leads tells whether what is applied at the top of a compartment is all that fixes
// its pressure.
func (s *State) leads(i int) bool {
	if !s.Surface[i] || s.SecondReference(i).With >= 0 {
		return false
	}
	for _, m := range s.seconds {
		if m.With == i && s.Surface[m.Of] {
			return false
		}
	}
	return true
}

// Sweep makes a compartment ready for a swap, and says why one with gas can't be done.
// Where gas ends that has moved, its layers end too: in between where it may, where
// that isn't certain.
func (s *State) Sweep(i, now int, from, to Depth, up bool) error {
	if err := s.Full([]int{i}, "a displacement"); err != nil {
		return err
	}
	c, isGas := s.columns[i], s.Fluids[now].Gas()
	if !c.gas && !isGas {
		return nil
	}
	if !s.Surface[i] {
		return s.gassy(i, "it is shut in at the top; a displacement wants that open: a ramp on it in a step before opens it")
	}
	top := s.Compartments[i].Depths[0].MD
	lo, hi := top, top
	if c.gas {
		lo, hi = s.gas[i].Level.Between(0)
	}
	switch {
	case isGas && up:
		return s.gassy(i, "gas that rises through liquid isn't modelled; let it come from above")
	case isGas && from.MD > lo:
		return s.gassy(i, "it would stand under liquid from %s down; begin where the gas above it ends, or at the top", unit.Length(from.MD).Rounded(5))
	case isGas && c.gas && now != c.layers[0].Fluid:
		return s.gassy(i, "one gas on another isn't modelled; swap the first out with a liquid")
	case c.gas && !isGas && from.MD < hi && !up:
		return s.gassy(i, `liquid would stand on it; write "up": true and let it leave at the top`)
	case c.gas && !isGas && from.MD < hi && to.MD < hi:
		return s.gassy(i, "liquid would stand in it; sweep down to where the gas ends, at %s", unit.Length(hi).Rounded(6))
	}
	if !c.gas || !s.gas[i].Moved {
		return nil
	}
	g := s.gas[i]
	layers := append([]Layer(nil), c.layers...)
	layers[0].Bottom = Depth{hi, s.tvd(i, hi)}
	s.columns[i] = s.column(i, layers)
	s.gas[i] = g
	if lo == hi {
		s.gas[i].Moved = false
	}
	return nil
}

// stiffPieces is into how many pieces a displacement is cut that changes how a trapped body
// shares its pressure: each is taken as it is in its middle, which leaves a millionth or so.
const stiffPieces = 40

// Cut are the depths at which a swap through a compartment is cut for its gas, and for how
// it shares the pressure of a trapped body.
func (s *State) Cut(i int) []Depth {
	var all []Depth
	if s.stiff(i) {
		d := s.Compartments[i].Depths
		top, bottom := d[0].MD, d[len(d)-1].MD
		for n := 1; n < stiffPieces; n++ {
			md := top + (bottom-top)*float64(n)/stiffPieces
			all = append(all, Depth{md, s.tvd(i, md)})
		}
	}
	if s.columns[i].gas && s.gas[i].Moved {
		lo, hi := s.gas[i].Level.Between(0)
		all = append(all, Depth{lo, s.tvd(i, lo)}, Depth{hi, s.tvd(i, hi)})
	}
	return all
}

// Fills tells whether a fluid stands all along a piece of a compartment already.
func (s *State) Fills(i, fluid int, from Depth) bool {
	if s.columns[i].gas && s.gas[i].Moved {
		if lo, hi := s.gas[i].Level.Between(0); from.MD >= lo && from.MD < hi {
			return false
		}
	}
	return s.columns[i].fluidAt(from.MD) == fluid
}

// Swept gives a compartment the layers that it has after a piece was swept.
func (s *State) Swept(i, now int, layers []Layer, from, to Depth) error {
	old := s.gas[i]
	s.SetLayers(i, layers)
	if !s.columns[i].gas || !old.Moved {
		return nil
	}
	lo, hi := old.Level.Between(0)
	if from.MD >= hi && layers[0].Bottom.MD == hi {
		s.gas[i] = old // the gas was left alone
		return nil
	}
	// A level that is only known to lie in a range is pushed up, or down, no further
	// than the piece.
	push := func(md float64) float64 { return math.Min(md, from.MD) }
	if s.Fluids[now].Gas() {
		push = func(md float64) float64 { return math.Max(md, to.MD) }
	}
	if push(lo) == push(hi) {
		return nil
	}
	out, err := affine.Enclose([]affine.Input{{Line: old.Level, Step: stepDepth}}, 0, true,
		func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			y[0] = push(x[0])
			return y, nil
		})
	s.gas[i] = old
	s.gas[i].Level = out[0]
	return err
}
