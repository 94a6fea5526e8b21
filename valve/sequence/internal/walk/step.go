package walk

import (
	"fmt"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Step is what a person does, put together.
type Step struct {
	Name        string
	Temperature int // index; -1: as before
	Shut        []int
	Swaps       []Swap
	Acts        []Act // by hand, before the ramps
	Ramps       [][]Move
	Squeeze     map[int]float64
	Pulls       []affine.Form
	Lands       bool
	Expect      [][]int // by device, in their order
	Not         []int   // actions that it expects and whose devices may be stuck: those worlds go another way
}

// Move is a surface pressure that is brought to another.
type Move struct {
	Compartment int
	To          affine.Form
}

// Swap replaces the fluid of a compartment between two depths.
type Swap struct {
	Compartment, Fluid int
	From, To           well.Depth
	Up                 bool
}

// drive is one thing that is done in a step.
type drive struct {
	number int
	label  string
	run    func(w *World) ([]*World, error)
	stand  int // the number of the place where the step then stands still, or -1
}

// drives are what a step does, in its order.
func (k *Walker) drives(step *Step) []drive {
	all := []drive{{number: -1, label: "start", stand: -1, run: k.rest}}
	for _, sw := range step.Swaps {
		all = append(all, drive{number: -1, label: "swap", stand: -1, run: func(w *World) ([]*World, error) { return k.swap(w, sw) }})
	}
	for i := range step.Acts {
		all = append(all, drive{number: -1, label: fmt.Sprintf("by hand %d", i+1), stand: -1, run: func(w *World) ([]*World, error) { return k.hand(w, i) }})
	}
	stand := 0
	all[len(all)-1].stand = stand
	add := func(label string, run func(w *World) ([]*World, error)) {
		stand++
		all = append(all, drive{number: stand - 1, label: label, stand: stand, run: run})
	}
	for i, moves := range step.Ramps {
		add(fmt.Sprintf("ramp %d", i+1), func(w *World) ([]*World, error) { return k.ramp(w, moves) })
	}
	if len(step.Squeeze) > 0 {
		add("squeeze", k.squeeze)
	}
	for i := range step.Pulls {
		add(fmt.Sprintf("pull %d", i+1), func(w *World) ([]*World, error) { return k.pull(w, i) })
	}
	if step.Lands {
		last := &all[len(all)-1]
		before := last.run
		last.run = func(w *World) ([]*World, error) {
			out, err := before(w)
			for _, x := range out {
				if err == nil {
					err = k.land(x)
				}
			}
			return out, err
		}
	}
	return all
}

// rest is the beginning of a step: what is shut in and the temperature change at
// once, and what is due happens.
func (k *Walker) rest(w *World) ([]*World, error) {
	w = w.Clone()
	fresh := k.place.Step == 0 || len(k.step.Shut) > 0 || w.freed
	w.freed = false
	if t := k.step.Temperature; t >= 0 && t != w.State.Temperature {
		w.State.SetTemperature(t)
		fresh = true
	}
	for _, i := range k.step.Shut {
		w.State.Surface[i] = false
	}
	return k.leg(w, affine.Form{}, fresh)
}

// ramp moves surface pressures together from where they stand. What was shut in
// opens at the pressure that it has. s is the way of the leading one.
func (k *Walker) ramp(w *World, moves []Move) ([]*World, error) {
	w = w.Clone()
	s := w.State
	lead, far, unsure := -1, -1.0, false
	travel := make([]affine.Form, len(moves))
	for i, m := range moves {
		if !s.Surface[m.Compartment] {
			s.Surface[m.Compartment] = true
			s.Applied[m.Compartment] = s.Top[m.Compartment]
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
	var all []*World
	for _, sign := range [2]float64{1, -1} {
		length := travel[lead].Times(sign)
		part := w.within(w.Region.With(length))
		if part == nil || sign < 0 && length.Greatest() <= 0 {
			continue
		}
		out, err := k.rampWay(part, moves, travel, length)
		if err != nil {
			return nil, err
		}
		all = append(all, out...)
	}
	return all, nil
}

func (k *Walker) rampWay(w *World, moves []Move, travel []affine.Form, length affine.Form) ([]*World, error) {
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
	k.loose, k.moves = loose, moves
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

// squeeze raises trapped compartments by heat or volume: s goes from 0 to 1 in
// ten thousand parts, so that slopes are of the size of other legs'.
func (k *Walker) squeeze(w *World) ([]*World, error) {
	const length = 1e6
	w = w.Clone()
	by := map[int]float64{}
	for i, d := range k.step.Squeeze {
		by[i] = d / length
	}
	if err := w.State.Squeeze(by); err != nil {
		return nil, err
	}
	w.State.Span = length
	return k.leg(w, affine.Const(length), false)
}
