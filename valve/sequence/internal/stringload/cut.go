package stringload

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// crooked is how far, in N, a force at depth may lie off the straight line between
// the ends of a piece of a pull: 50 lbf, less than any weight indicator shows. What is
// off is enclosed.
const crooked = 50 * float64(unit.PoundForce)

// finest is the shortest piece that a pull is cut into for its straightness: a tube
// that snaps into a helix makes a step that no cutting straightens.
const finest = 2000 * float64(unit.PoundForce)

// Cut tells how far from a reading a pull has to be cut: where what is slacked off
// first arrives at depth, and where drag along the path bends what does.
func (r *Room) Cut(w *walk.World, from affine.Form, sign float64, length affine.Form) (affine.Form, bool, error) {
	s, ok := w.State.String.(*standing)
	if !ok {
		return affine.Form{}, false, errNotLanded
	}
	own := r.one(w.On)
	turn := s.turn(w.On)
	down := turn != nil && turn.place != upwards && turn.place != sliding
	if !down && own.Hole == nil {
		return affine.Form{}, false, nil
	}
	p, err := r.profileOf(w.State, affine.Form{})
	if err != nil {
		return affine.Form{}, false, err
	}
	if down {
		kink, err := r.kink(s, turn, p, reading{from, w.On})
		if err != nil {
			return affine.Form{}, false, err
		}
		if kink.Greatest() > float64(unit.PoundForce) {
			return kink, true, nil
		}
		if err := r.Slides(w, from); err != nil {
			return affine.Form{}, false, err
		}
	}
	if own.Hole == nil {
		return affine.Form{}, false, nil
	}
	return r.straight(s, p, reading{from, w.On}, sign, length.Greatest())
}

// kink is how far from a reading the way down stops being one on which nothing arrives
// at depth. Negative where it has.
func (r *Room) kink(s, turn *standing, p *profile, from reading) (affine.Form, error) {
	c := r.middle()
	l := r.hooking()
	if err := r.load(l, s, p, &from, c, nil); err != nil {
		return affine.Form{}, err
	}
	own := r.one(from.of)
	gone := turn.pull.Minus(from.Form)
	if own.Hole == nil {
		free, end := part(l, from.of).Free, float64(own.Up.Terms(part(l, from.of)).From)
		f := own.Drag
		for _, x := range own.Seals {
			if x.MD < end || free && x.MD == end { // at its lower end, where nothing holds it
				f = f.Plus(x.Friction)
			}
		}
		if turn.place == downFromPull {
			f = f.Times(2)
		}
		return f.Minus(gone), nil
	}
	// Along a path it depends on the forces: with every input in the middle. Elsewhere
	// the leg is cut near it, and what isn't straight is enclosed.
	now, err := r.standingAt(s, c)
	if err != nil {
		return affine.Form{}, err
	}
	both := [2]float64{}
	for i, m := range [2]drag.Motion{drag.Pulled, drag.RunIn} {
		all := r.conditions(p, c.e, nil)
		x := &all[from.of]
		x.Top, x.Reading = movement.OnHookOpen, unit.Force(from.At(c.e))
		if own.Closed {
			x.Top = movement.OnHookClosed
		}
		load := r.loader(now, all, from.of)
		if err := own.taken(x, load, m, c); err != nil {
			return affine.Form{}, err
		}
		if both[i], err = own.total(*x, load); err != nil {
			return affine.Form{}, err
		}
	}
	if turn.place == downFromHanger {
		both[0] = 0
	}
	return affine.Const(both[0] - both[1] - gone.At(c.e)), nil
}

// straight is how far the forces at depth are straight in the reading.
func (r *Room) straight(s *standing, p *profile, from reading, sign, most float64) (affine.Form, bool, error) {
	at := func(x float64) ([]float64, error) {
		both := r.scratch()
		if err := r.load(both, s, p, &reading{from.Shift(sign * x), from.of}, r.middle(), nil); err != nil {
			return nil, err
		}
		var all []float64
		for of := range r.strings() {
			l := part(both, of)
			for i := range l.Joints {
				all = append(all, float64(l.Joints[i].Balance))
			}
			for i := range l.Holds {
				all = append(all, float64(l.Holds[i].Load))
			}
		}
		return all, nil
	}
	begin, err := at(0)
	if err != nil {
		return affine.Form{}, false, err
	}
	first := most
	if r.Memory != nil && r.Memory.piece > 0 {
		first = math.Min(most, 4*r.Memory.piece) // what comes next is seldom much straighter
	}
	for piece := first; ; piece /= 2 {
		end, err := at(piece)
		if err != nil {
			return affine.Form{}, false, err
		}
		off := 0.0
		for _, share := range [3]float64{0.5, 0.25, 0.75} {
			if off > crooked {
				break
			}
			between, err := at(share * piece)
			if err != nil {
				return affine.Form{}, false, err
			}
			for i := range between {
				off = math.Max(off, math.Abs(between[i]-begin[i]-share*(end[i]-begin[i])))
			}
		}
		if off <= crooked || piece <= 2*finest {
			if r.Memory != nil {
				r.Memory.piece = piece
			}
			return affine.Const(piece), piece < most, nil
		}
	}
}
