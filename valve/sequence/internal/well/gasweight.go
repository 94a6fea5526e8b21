package well

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
)

// heat is by how much the present temperature is off.
func (s *State) heat() affine.Line {
	if s.Temperature >= len(s.Heat) {
		return affine.Line{}
	}
	return affine.Flat(s.Heat[s.Temperature])
}

// throughGas carries a pressure through gas alone.
func (s *State) throughGas(fluid int, p affine.Line, from, to float64) (affine.Line, error) {
	if from == to {
		return p, nil
	}
	g := s.Fluids[fluid].Gases[s.Temperature]
	out, err := affine.Enclose([]affine.Input{{Line: p, Step: stepPressure}, {Line: s.heat(), Step: stepHeat}}, s.Span, false,
		func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			y[0], err = g.carry(x[0], from, to, x[1])
			return y, err
		})
	return out[0], err
}

// liquid is what stands under the gas of a compartment: one liquid to its bottom.
func (s *State) liquid(i int) (int, error) {
	l := s.columns[i].layers
	if len(l) != 2 {
		return 0, s.gassy(i, "its level moves; just one liquid must stand under it (%d do): displace one by the other before it is shut in", len(l)-1)
	}
	return l[1].Fluid, nil
}

// weight is what makes a liquid heavy: its density, or of one that feels its pressure
// what that is multiplied with.
func (s *State) weight(fluid int) affine.Input {
	f := &s.Fluids[fluid]
	if f.Columns == nil {
		return affine.Input{Line: affine.Flat(f.Density), Step: stepDensity}
	}
	return affine.Input{Line: affine.Flat(f.Scale), Step: 1e-4}
}

// CarryEnds carries a pressure through the columns at both ends of what a temperature may be off.
func (f *Fluid) CarryEnds(temperature int, p, from, to float64) (cold, warm unit.Pressure, err error) {
	cold, e1 := f.Cold[temperature].Carry(unit.Pressure(p), unit.Length(from), unit.Length(to))
	warm, e2 := f.Warm[temperature].Carry(unit.Pressure(p), unit.Length(from), unit.Length(to))
	return cold, warm, first(e1, e2)
}

// pour carries a number through a liquid of a weight, at a temperature that is off by h: of one that feels it
// between the ends of that and its middle a parabola.
func (s *State) pour(fluid int, weight, p, from, to, h float64) (float64, error) {
	f := &s.Fluids[fluid]
	if f.Columns == nil {
		return p + weight*Gravity*(to-from), nil
	}
	if from == to {
		return p, nil
	}
	q, err := f.Columns[s.Temperature].Carry(unit.Pressure(p), unit.Length(from), unit.Length(to))
	if f.Warm != nil && f.Warm[s.Temperature] != nil && err == nil {
		var cold, warm unit.Pressure
		cold, warm, err = f.CarryEnds(s.Temperature, p, from, to)
		t := unit.Pressure((h - s.heatMiddle[s.Temperature]) / s.heatHalf[s.Temperature])
		q += t*(warm-cold)/2 + t*t*((warm+cold)/2-q)
	}
	return p + weight*(float64(q)-p), err
}

func (s *State) tvd(i int, md float64) float64 {
	if s.TVD != nil {
		return s.TVD(md)
	}
	d := s.Compartments[i].Depths
	for k := 1; k < len(d); k++ {
		if md <= d[k].MD {
			return d[k-1].TVD + (d[k].TVD-d[k-1].TVD)*(md-d[k-1].MD)/(d[k].MD-d[k-1].MD)
		}
	}
	return d[len(d)-1].TVD
}

// across carries a pressure from one depth of a compartment that begins with gas to
// another, with the gas's level where it is.
func (s *State) across(i int, p affine.Line, from, to int) (affine.Line, error) {
	d := s.Compartments[i].Depths
	return s.between(i, p, d[from], d[to])
}

func (s *State) between(i int, p affine.Line, a, b Depth) (affine.Line, error) {
	c, g := s.columns[i], &s.gas[i]
	fluid := c.layers[0].Fluid
	lo, hi := g.Level.Between(s.Span)
	switch {
	case a.MD <= lo && b.MD <= lo:
		return s.throughGas(fluid, p, a.TVD, b.TVD)
	case !g.Moved:
		// It ends where the layers have it.
		end := c.layers[0].Bottom
		var err error
		if a.MD < end.MD {
			if p, err = s.throughGas(fluid, p, a.TVD, end.TVD); err == nil {
				p, err = s.under(i, p, end, b)
			}
			return p, err
		}
		if b.MD >= end.MD {
			return s.under(i, p, a, b)
		}
		if p, err = s.under(i, p, a, end); err != nil {
			return p, err
		}
		return s.throughGas(fluid, p, end.TVD, b.TVD)
	}
	if a.MD >= hi && b.MD >= hi {
		return s.under(i, p, a, b)
	}
	if len(c.layers) < 2 || hi > c.layers[1].Bottom.MD {
		return p, s.gassy(i, "its level has moved; a liquid must stand under it from %s on: give it one in its layers", unit.Length(hi).Rounded(5))
	}
	under := c.layers[1].Fluid
	if end := c.layers[1].Bottom; a.MD > end.MD || b.MD > end.MD {
		// Further liquids under the first: one after the other.
		var err error
		if a.MD > end.MD {
			if p, err = s.under(i, p, a, end); err == nil {
				p, err = s.between(i, p, end, b)
			}
			return p, err
		}
		if p, err = s.between(i, p, a, end); err == nil {
			p, err = s.under(i, p, end, b)
		}
		return p, err
	}
	kink := a.MD > lo && a.MD < hi || b.MD > lo && b.MD < hi
	gas := s.Fluids[fluid].Gases[s.Temperature]
	out, err := affine.Enclose([]affine.Input{{Line: p, Step: stepPressure}, {Line: s.heat(), Step: stepHeat}, {Line: g.Level, Step: stepDepth}, s.weight(under)}, s.Span, kink,
		func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			q, at, end := x[0], a.TVD, s.tvd(i, x[2])
			if a.MD < x[2] && b.MD < x[2] {
				y[0], err = gas.carry(q, at, b.TVD, x[1])
				return y, err
			}
			if a.MD >= x[2] && b.MD >= x[2] {
				y[0], err = s.pour(under, x[3], q, at, b.TVD, x[1])
				return y, err
			}
			if a.MD < x[2] {
				if q, err = gas.carry(q, at, end, x[1]); err == nil {
					y[0], err = s.pour(under, x[3], q, end, b.TVD, x[1])
				}
				return y, err
			}
			if q, err = s.pour(under, x[3], q, at, end, x[1]); err == nil {
				y[0], err = gas.carry(q, end, b.TVD, x[1])
			}
			return y, err
		})
	return out[0], err
}

// under carries a pressure through the layers under the gas.
func (s *State) under(i int, p affine.Line, from, to Depth) (affine.Line, error) {
	layers := s.columns[i].layers
	if s.columns[i].gas && s.gas[i].Moved {
		layers = layers[1:] // the first liquid begins where the level is
	}
	var err error
	if from.MD <= to.MD {
		for _, l := range layers {
			if l.Bottom.MD <= from.MD {
				continue
			}
			next := l.Bottom
			if next.MD > to.MD {
				next = to
			}
			if p, err = s.gain(l.Fluid, p, from.TVD, next.TVD); err != nil {
				return p, err
			}
			if from = next; from.MD >= to.MD {
				return p, nil
			}
		}
		return p, nil
	}
	for n := len(layers) - 1; n >= 0; n-- {
		top := to
		if n > 0 && layers[n-1].Bottom.MD > to.MD {
			top = layers[n-1].Bottom
		}
		if top.MD >= from.MD {
			continue
		}
		if p, err = s.gain(layers[n].Fluid, p, from.TVD, top.TVD); err != nil {
			return p, err
		}
		if from = top; from.MD <= to.MD {
			return p, nil
		}
	}
	return p, nil
}
