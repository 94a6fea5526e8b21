package walk

import "completion.example/valve/sequence/internal/affine"

// StringRoom knows the string: the walk asks it what axial triggers feel, and
// tells it what takes hold, lets go and parts.
type StringRoom interface {
	// Axial is what an axial action feels along the present leg, to its end;
	// pulling is the reading of the weight indicator along it, or nil.
	Axial(w *World, action int, length affine.Form, pulling *affine.Line) (affine.Line, error)
	// Move lets an action hold or release the string at a place of the leg.
	Move(w *World, action int, x affine.Form, pulling *affine.Line) error
	// Land remembers the string as it stands: movements count from here.
	Land(w *World) error
	// Weight is what the weight indicator shows when it takes over what the hanger
	// carries.
	Weight(w *World) (affine.Form, error)
}

// pull pulls the string from where the weight indicator stands to a reading.
func (k *Walker) pull(w *World, n int) ([]*World, error) {
	w = w.Clone()
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
	var all []*World
	for _, sign := range [2]float64{1, -1} {
		length := to.Minus(from).Times(sign)
		part := w.within(w.Region.With(length))
		if part == nil || sign < 0 && length.Greatest() <= 0 {
			continue
		}
		part.State.Span = max(part.Region.Greatest(length), 0)
		k.pulling = &affine.Line{F: from, S: sign}
		out, err := k.leg(part, length, true)
		k.pulling = nil
		if err != nil {
			return nil, err
		}
		all = append(all, out...)
	}
	return all, nil
}

func (k *Walker) land(w *World) error {
	if k.String == nil {
		return nil
	}
	w.remember(-1, affine.Form{}, nil)
	return k.String.Land(w)
}
