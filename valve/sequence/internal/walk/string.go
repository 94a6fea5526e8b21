package walk

import "completion.example/valve/sequence/internal/affine"

// StringRoom knows the string: the walk asks it what axial triggers feel, and
// tells it what takes hold, lets go and parts.
type StringRoom interface {
	// Axial is what some axial actions feel along the present leg, to its end;
	// pulling is the reading of the weight indicator along it, or nil.
	Axial(w *World, actions []int, pulling *affine.Line) ([]affine.Line, error)
	// Move lets an action hold or release the string at a place of the leg.
	Move(w *World, action int, x affine.Form, pulling *affine.Line) error
	// Land remembers the string as it stands: movements count from here.
	Land(w *World) error
	// Weight is what the weight indicator shows when it takes over what the hanger
	// carries.
	Weight(w *World) (affine.Form, error)
	// Turn says which way the string is moved from a reading on: down when weight is
	// slacked off. first says that it has just come out of its hanger.
	Turn(w *World, down, first bool, from affine.Form) error
	// Slides says that from a reading on the string slides down: the cut is behind.
	Slides(w *World, from affine.Form) error
	// Cut tells how far from a reading a pull has to be cut, as what it does at depth
	// isn't straight beyond; false where it need not be.
	Cut(w *World, from affine.Form, sign float64, length affine.Form) (cut affine.Form, bends bool, err error)
}

// pull pulls the string from where the weight indicator stands to a reading.
func (k *Walker) pull(w *World, n int) ([]*World, error) {
	w = w.Clone()
	w.On = k.step.On
	to := k.step.Pulls[n]
	from := to
	if n > 0 {
		from = k.step.Pulls[n-1]
	} else {
		var err error
		if from, err = k.String.Weight(w); err != nil {
			return nil, err
		}
	}
	all, err := w.ways(to.Minus(from), func(part *World, sign float64, length affine.Form) ([]*World, error) {
		if err := k.String.Turn(part, sign < 0, n == 0, from); err != nil {
			return nil, err
		}
		return k.pulled(part, from, sign, length, true)
	})
	for _, x := range all {
		x.freed = true // back in its hanger it feels something else: what is due then happens as the next step begins
	}
	return all, err
}

// pulled pulls the string one way, in pieces where what it does at depth isn't
// straight.
func (k *Walker) pulled(w *World, from affine.Form, sign float64, length affine.Form, fresh bool) ([]*World, error) {
	cut, bends, err := k.String.Cut(w, from, sign, length)
	if err != nil {
		return nil, err
	}
	if !bends || cut.Least() >= length.Greatest() {
		return k.haul(w, from, sign, length, fresh)
	}
	var all []*World
	rest := length.Minus(cut)
	add := func(out []*World, err error) error {
		all = append(all, out...)
		return err
	}
	// The cut may lie behind, beyond the end, or between: each where it does.
	if part := w.within(w.Region.With(cut.Times(-1))); part != nil && cut.Least() < 0 {
		if err := k.String.Slides(part, from); err != nil {
			return nil, err
		}
		if err := add(k.haul(part, from, sign, length, fresh)); err != nil {
			return nil, err
		}
	}
	ahead := w.Region.With(cut)
	if ahead == nil {
		return all, nil
	}
	if part := w.within(ahead.With(rest.Times(-1))); part != nil && rest.Least() < 0 {
		if err := add(k.haul(part, from, sign, length, fresh)); err != nil {
			return nil, err
		}
	}
	if part := w.within(ahead.With(rest)); part != nil {
		out, err := k.haul(part, from, sign, cut, fresh)
		if err != nil {
			return nil, err
		}
		for _, x := range out {
			if err := k.String.Slides(x, from.Plus(cut.Times(sign))); err != nil {
				return nil, err
			}
			if err := add(k.pulled(x, from.Plus(cut.Times(sign)), sign, rest, false)); err != nil {
				return nil, err
			}
		}
	}
	return all, nil
}

// haul pulls the string along a leg.
func (k *Walker) haul(w *World, from affine.Form, sign float64, length affine.Form, fresh bool) ([]*World, error) {
	w.State.Span = max(w.Region.Greatest(length), 0)
	k.pulling = &affine.Line{F: from, S: sign}
	defer func() { k.pulling = nil }()
	return k.leg(w, length, fresh)
}

func (k *Walker) land(w *World) error {
	if k.String == nil {
		return nil
	}
	w.On, w.keeps = k.step.On, k.step.Keeps
	w.remember(-1, affine.Form{}, nil)
	return k.String.Land(w)
}
