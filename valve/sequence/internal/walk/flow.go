package walk

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// flow lets the zones of a step produce and shuts them in again: pressures go straight
// from those at rest to those that flow, and back.
func (k *Walker) flow(w *World) ([]*World, error) {
	f, err := k.step.Flow(w.State)
	if err != nil {
		return nil, err
	}
	if f == nil {
		return []*World{w}, k.producing(w)
	}
	w = w.Clone()
	if err := w.State.Full(w.State.Body(f.Root), "production"); err != nil {
		return nil, err
	}
	if !k.PastUnintended {
		if err := w.State.FlowsOneWay(f.Root); err != nil {
			return nil, err
		}
	}
	if !w.State.Surface[f.Root] {
		w.State.Reopen(f.Root)
	}
	rest, err := w.State.Resting(f.Profiles)
	if err != nil {
		return nil, err
	}
	at := w.State.Applied[f.Root].F
	up, err := k.flowWay(w, f, rest, f.Profiles, at, f.Surface, 0, 1)
	if err != nil {
		return nil, err
	}
	var all []*World
	up = merge(up)
	if err := k.unhurried(up, "while the zones flow", takeBack+", before that"); err != nil {
		return nil, err
	}
	for _, x := range up {
		// Where something unintended has happened it is a failure already.
		if !k.PastUnintended && !f.Same(x.State) {
			return nil, ErrDiverted
		}
		if k.Flows != nil {
			k.Flows(x, k.place.Step)
		}
		if err := k.producing(x); err != nil {
			return nil, err
		}
		down, err := k.flowWay(x, f, f.Profiles, rest, f.Surface, at, 1, 0)
		if err != nil {
			return nil, err
		}
		for _, y := range down {
			y.State.StopFlow()
			if err := y.State.Solve(affine.Form{}); err != nil {
				return nil, err
			}
			if err := k.whole(y); err != nil {
				return nil, err
			}
		}
		all = append(all, down...)
	}
	return merge(all), nil
}

func (k *Walker) flowWay(w *World, f *well.Flowed, a, b map[int]well.Profile, from, to affine.Form, begin, end float64) ([]*World, error) {
	w = w.Clone()
	s := w.State
	s.Drift(a, b, nil, pumpLength)
	s.Choke(f.Jumps, begin, end, pumpLength)
	diff := to.Minus(from)
	s.Applied[f.Root] = affine.Line{F: from, S: diff.C / pumpLength, D: diff.Radius() / pumpLength}
	ends := func(s *well.State) {
		s.Still(b)
		s.Choke(f.Jumps, end, end, 0)
		s.Applied[f.Root] = affine.Flat(to)
	}
	return k.enclosedLeg(w, ends, func(*World) error { return nil })
}

// producing shows a world while its zones flow, or where none does.
func (k *Walker) producing(w *World) error {
	if k.Producing == nil {
		return nil
	}
	p := k.place
	p.Action = -1
	return k.Producing(w, p)
}
