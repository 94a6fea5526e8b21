package well

import (
	"math"

	"completion.example/valve/sequence/internal/affine"
)

// LevelMoves tells whether the gas of a compartment, or the air over a column that has
// fallen, may end where nothing else stands: its level has moved or may move.
func (s *State) LevelMoves(i int) bool {
	return i >= 0 && (s.columns[i].gas && (s.gas[i].Closed || s.gas[i].Moved) || s.Low(i) >= 0)
}

// Bracket are the depths of a compartment between which the level of another's gas
// lies along the leg; false where it doesn't reach so far.
func (s *State) Bracket(i, gassy int) (above, below int, ok bool) {
	if low := s.Low(i); i == gassy && low >= 0 {
		return low, low + 1, true
	}
	lo, hi := s.levelBetween(gassy)
	d := s.Compartments[i].Depths
	above, below = -1, -1
	for k := range d {
		if d[k].MD <= lo {
			above = k
		}
		if d[k].MD >= hi && below < 0 {
			below = k
		}
	}
	if above < 0 && hi >= d[0].MD {
		above = 0
	}
	if below < 0 && lo <= d[len(d)-1].MD {
		below = len(d) - 1
	}
	return above, below, above >= 0 && below >= 0 && above < below
}

// AtLevel is the pressure of a compartment at the level of another's gas, or of its
// own, which must lie between two of its depths.
func (s *State) AtLevel(i, gassy, above, below int) (affine.Line, error) {
	if i == gassy && s.Low(i) >= 0 {
		return affine.Line{}, nil
	}
	g, level := &s.gas[gassy], s.levelOf(gassy)
	d := s.Compartments[i].Depths
	a, b := d[above], d[below]
	lo, hi := s.levelBetween(gassy)
	inside := a.MD <= lo && hi <= b.MD
	switch {
	case i == gassy && inside && g.Anchor >= 0:
		return g.Foot, nil
	case i == gassy && inside:
		gas := s.Fluids[s.columns[i].layers[0].Fluid].Gases[s.Temperature]
		top := d[0].TVD
		out, err := affine.Enclose([]affine.Input{{Line: s.Top[i], Step: stepPressure}, {Line: s.heat(), Step: stepHeat}, {Line: level, Step: stepDepth}}, s.Span, false,
			func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
				y[0], err = gas.carry(x[0], top, s.tvd(i, x[2]), x[1])
				return y, err
			})
		return out[0], err
	}
	if first := s.columns[i].layers[0]; s.Low(i) >= 0 && hi <= first.Bottom.MD { // it has fallen, too
		out, err := affine.Enclose([]affine.Input{{Line: s.Top[i], Step: stepPressure}, {Line: level, Step: stepDepth}, {Line: affine.Flat(s.Fluids[first.Fluid].Density), Step: stepDensity}}, s.Span, true,
			func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
				y[0] = max(x[0]+x[2]*Gravity*(s.tvd(i, x[1])-d[0].TVD), 0)
				return y, nil
			})
		return out[0], err
	}
	upper, err := s.At(i, above)
	if err != nil {
		return upper, err
	}
	fluid := s.columns[i].fluidAt(a.MD)
	f := &s.Fluids[fluid]
	if inside && !s.LevelMoves(i) && !f.Gas() && f.Columns == nil && s.columns[i].fluidAt(math.Nextafter(b.MD, 0)) == fluid {
		out, err := affine.Enclose([]affine.Input{{Line: level, Step: stepDepth}}, s.Span, true,
			func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
				y[0] = s.tvd(i, x[0]) - a.TVD
				return y, nil
			})
		more := out[0]
		return affine.Line{F: upper.F.Plus(affine.Mul(more.F, f.Density.Times(Gravity))), S: upper.S + more.S*f.Density.C*Gravity,
			D: upper.D + (math.Abs(more.D)*(f.Density.C+f.Density.Radius())+math.Abs(more.S)*f.Density.Radius())*Gravity}, err
	}
	// Somewhere between the two depths.
	lower, err := s.At(i, below)
	if err != nil {
		return upper, err
	}
	mid, half := upper.Plus(lower).Times(0.5), lower.Minus(upper).Times(0.5)
	p, q := half.Between(s.Span)
	return affine.Line{F: mid.F.Widen(math.Max(math.Abs(p), math.Abs(q))), S: mid.S, D: mid.D}, nil
}

// ShareAt is where between two depths of a compartment the level of another's gas lies,
// by true vertical depth from 0 to 1.
func (s *State) ShareAt(i, gassy, above, below int) (affine.Line, error) {
	a, b := s.Compartments[i].Depths[above], s.Compartments[i].Depths[below]
	if b.TVD == a.TVD {
		return affine.Flat(affine.Within(0, 1)), nil
	}
	out, err := affine.Enclose([]affine.Input{{Line: s.levelOf(gassy), Step: stepDepth}}, s.Span, true,
		func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			y[0] = min(max((s.tvd(i, x[0])-a.TVD)/(b.TVD-a.TVD), 0), 1)
			return y, nil
		})
	return out[0], err
}

// SetGasEnd says where the gas of a compartment ends, which its layers don't say.
func (s *State) SetGasEnd(i int, md affine.Form) {
	if s.columns[i].gas {
		s.gas[i] = capOfGas{Level: affine.Flat(md), Moved: true, Anchor: -1}
		s.stirred = true
	}
}

// GasReaches makes it an error if gas that is shut in reaches a port that is open.
func (s *State) GasReaches() error {
	for i := range s.gas {
		if s.gas[i].Closed {
			if err := s.reaches(i); err != nil {
				return err
			}
		}
	}
	return nil
}

// GasMoved tells whether the gas of a compartment may end where its layers don't say so.
func (s *State) GasMoved(i int) bool { return s.columns[i].gas && s.gas[i].Moved }

// GasOnTop tells whether a compartment begins with gas.
func (s *State) GasOnTop(i int) bool { return s.columns[i].gas }
