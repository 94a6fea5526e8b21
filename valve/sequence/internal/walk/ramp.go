package walk

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// ramp moves surface pressures together from where they stand. What was shut in
// opens at the pressure that it has. s is the way of the leading one.
func (k *Walker) ramp(w *World, moves []Move) ([]*World, error) {
	w = w.Clone()
	s := w.State
	lead, far, unsure := -1, -1.0, false
	travel := make([]affine.Form, len(moves))
	for i, m := range moves {
		if !s.Surface[m.Compartment] {
			s.Reopen(m.Compartment)
		}
		travel[i] = m.To.Minus(s.Applied[m.Compartment].F)
		if travel[i].Same(affine.Form{}, equal) {
			continue // it stays where it is
		}
		// The best to lead is sure of its direction, and goes far.
		least, _ := w.Region.Least(travel[i])
		greatest := w.Region.Greatest(travel[i])
		sure := max(least, -greatest, 0)
		if sure > far || sure == far && travel[i].Radius() > travel[lead].Radius() {
			lead, far = i, sure
		}
	}
	if lead < 0 {
		return k.rampWay(w, moves, travel, affine.Form{})
	}
	unsure = far <= 0
	if unsure && len(moves) > 1 {
		for i := range moves {
			if i != lead && !travel[i].Same(affine.Form{}, equal) && !travel[i].Same(travel[lead], equal) && !travel[i].Same(travel[lead].Times(-1), equal) {
				return nil, ErrEnclosed
			}
		}
	}
	return w.ways(travel[lead], func(part *World, _ float64, length affine.Form) ([]*World, error) {
		return k.rampWay(part, moves, travel, length)
	})
}

// rampWay walks a ramp in one piece, or in several where gas feels it: what it makes
// of gas isn't straight.
func (k *Walker) rampWay(w *World, moves []Move, travel []affine.Form, length affine.Form) ([]*World, error) {
	if !w.State.HoldsGas() || length.Same(affine.Form{}, equal) {
		return k.rampPiece(w, moves, travel, length)
	}
	from := make([]affine.Form, len(moves))
	for i, m := range moves {
		from[i] = w.State.Applied[m.Compartment].F
	}
	defer func() { k.ahead = affine.Form{} }()
	worlds := []*World{w}
	for at := 0.0; at < 1 && len(worlds) > 0; {
		next := k.cut(worlds[0], moves, from, travel, at)
		share := next - at
		piece, short := make([]Move, len(moves)), make([]affine.Form, len(moves))
		for i, m := range moves {
			piece[i], short[i] = Move{m.Compartment, from[i].PlusTimes(travel[i], next)}, travel[i].Times(share)
			if next == 1 {
				piece[i] = m
			}
		}
		k.ahead = length.Times(1 - next)
		all, err := each(worlds, func(x *World) ([]*World, error) { return k.rampPiece(x, piece, short, length.Times(share)) })
		if err != nil {
			return nil, err
		}
		worlds, at = merge(all), next
	}
	return worlds, nil
}

// mostPiece is how far a piece goes at most, in Pa: 250 psi; and mostShare by what
// share of itself the pressure of gas changes on it that is shut in.
const (
	mostPiece = 250 * 6894.757293168361
	mostShare = 0.1
)

// cut is where the next piece of a ramp ends, as a share of it.
func (k *Walker) cut(w *World, moves []Move, from, travel []affine.Form, at float64) float64 {
	fine := float64(max(k.Fine, 1))
	far := 0.0
	for _, t := range travel {
		far = max(far, abs(t.C)+t.Radius())
	}
	step := min(1-at, mostPiece/fine/max(far, 1))
	for range 8 {
		s := w.State.Clone()
		for i, m := range moves {
			s.Applied[m.Compartment] = affine.Flat(affine.Const(from[i].C + travel[i].C*(at+step)))
		}
		s.Span = 0
		if s.Solve(affine.Form{}) == nil && s.Stiffest(w.State) <= mostShare/fine {
			break
		}
		step /= 2
	}
	if at+step > 1-1e-9 {
		return 1
	}
	return at + step
}

func (k *Walker) rampPiece(w *World, moves []Move, travel []affine.Form, length affine.Form) ([]*World, error) {
	s := w.State
	most := max(w.Region.Greatest(length), 0)
	loose := false // the ways of some are only enclosed
	for i, m := range moves {
		slope, apart := ratio(w.Region, travel[i], length)
		a := s.Applied[m.Compartment].F
		s.Applied[m.Compartment] = affine.Line{F: a, S: slope, D: apart}
		loose = loose || apart > 0
	}
	s.Span = most
	k.loose = loose
	k.ends = func(s *well.State) {
		for _, m := range moves {
			s.Applied[m.Compartment] = affine.Flat(m.To)
		}
	}
	out, err := k.leg(w, length, false)
	k.loose = false
	for _, x := range out {
		for _, m := range moves { // exactly where it was brought to
			x.State.Applied[m.Compartment] = affine.Flat(m.To)
		}
		if err == nil {
			err = x.State.Solve(affine.Form{})
		}
		if err == nil && loose {
			err = k.whole(x)
		}
	}
	return out, err
}

// whole shows the observer everything where a world stands.
func (k *Walker) whole(w *World) error {
	if k.silent {
		return nil
	}
	p := k.place
	p.Action = -1
	for l := range k.ties {
		p.Limits = append(p.Limits, l)
	}
	return k.Observer.Moment(w, p)
}

// ratio is how far one goes while the leading one goes a unit, and how far off
// that may be.
func ratio(r *affine.Region, travel, length affine.Form) (slope, apart float64) {
	switch {
	case travel.Same(affine.Form{}, equal):
		return 0, 0
	case travel.Same(length, equal):
		return 1, 0
	case travel.Same(length.Times(-1), equal):
		return -1, 0
	}
	if length.C != 0 {
		slope = travel.C / length.C
		if travel.Same(length.Times(slope), equal) {
			return slope, 0
		}
	}
	bound := func(f affine.Form) (least, greatest float64) {
		least, _ = r.Least(f)
		return least, r.Greatest(f)
	}
	least, greatest := bound(length)
	low, high := bound(travel)
	least = max(least, equal)
	a, b := low/least, low/greatest
	c, d := high/least, high/greatest
	low, high = min(a, b, c, d), max(a, b, c, d)
	return low + (high-low)/2, (high - low) / 2
}

func abs(x float64) float64 { return max(x, -x) }
