package walk

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Pumped is the well at a moment of pumping.
type Pumped struct {
	World        *World
	Step, Number int // which pump of the step
	Volume, Rate float64
	Way          *well.Way
}

// pumpLength is the length of the legs of a pump: nothing but a number of the size of
// pressures.
const pumpLength = 1e6

// rateSteps are the pieces in which a rate comes up and goes down.
const rateSteps = 6

// pump pumps through the well, once columns on its way that have fallen are full: what is
// pumped into is shut for anything else, the rate comes up, the fluids move, the rate goes
// down, and the pump stands at the pressure that the columns leave it with.
func (k *Walker) pump(w *World, p well.Pump, number int) ([]*World, error) {
	full, err := k.filled(w, []int{p.Into, p.To})
	if err != nil {
		return nil, err
	}
	return each(full, func(x *World) ([]*World, error) { return k.pumpFull(x, p, number) })
}

func (k *Walker) pumpFull(w *World, p well.Pump, number int) ([]*World, error) {
	w = w.Clone()
	s := w.State
	if p.Formation < 0 && !s.Surface[p.To] {
		return nil, well.Unpumped{Why: "\"" + s.Compartments[p.To].Name + "\" is shut in at the top; nothing can return there"}
	}
	s.Surface[p.Into] = false
	if err := s.Close(); err != nil {
		return nil, err
	}
	begun, err := k.leg(w, affine.Form{}, true)
	if err != nil {
		return nil, err
	}
	var done []*World
	for _, x := range begun {
		out, err := k.pumpWay(x, p, number)
		if err != nil {
			return nil, err
		}
		done = append(done, out...)
	}
	return done, nil
}

// pumped is how far a pump has come.
type pumped struct{ volume, rate float64 }

func (k *Walker) pumpWay(w *World, p well.Pump, number int) ([]*World, error) {
	way, err := w.State.Way(p)
	if err != nil {
		return nil, err
	}
	var turns []pumped
	pieces := rateSteps * max(k.Fine, 1)
	for n := range pieces + 1 {
		turns = append(turns, pumped{0, p.Rate * (float64(n) / float64(pieces))})
	}
	end := 0.0
	for _, v := range way.Cuts()[min(1, len(way.Cuts())):] {
		turns = append(turns, pumped{v, p.Rate})
		end = v
	}
	for n := pieces - 1; n >= 0; n-- {
		turns = append(turns, pumped{end, p.Rate * float64(n) / float64(pieces)})
	}
	worlds := []*World{w}
	for n := 1; n < len(turns); n++ {
		next, err := each(worlds, func(x *World) ([]*World, error) { return k.drift(x, way, p, turns[n-1], turns[n]) })
		if err != nil {
			return nil, err
		}
		if worlds, err = k.pumpedFor(merge(next), turns, n, p.Rate); err != nil {
			return nil, err
		}
		for _, x := range worlds {
			if k.Pumps != nil && n >= pieces && turns[n].rate == p.Rate {
				k.Pumps(Pumped{x, k.place.Step, number, turns[n].volume, turns[n].rate, way})
			}
		}
	}
	for _, x := range worlds {
		_, layers, err := x.State.Flowing(way, end, 0)
		if err != nil {
			return nil, err
		}
		x.State.Rest(layers)
		if err := x.State.Solve(affine.Form{}); err != nil {
			return nil, err
		}
		x.State.Reopen(p.Into)
		if err := x.State.Solve(affine.Form{}); err != nil {
			return nil, err
		}
		if err := k.whole(x); err != nil {
			return nil, err
		}
	}
	return worlds, nil
}

// pumpedFor lets the time pass that a pump takes from one turn to the next.
func (k *Walker) pumpedFor(worlds []*World, turns []pumped, n int, rate float64) ([]*World, error) {
	if !k.slow() {
		return worlds, nil
	}
	took := (turns[n].volume - turns[n-1].volume) / rate
	t := standing{before: span{took, took}} // what moves before the next turn moves on the way there
	return k.standAll(worlds, func(*World) standing { return t })
}

// drift goes from one moment of pumping to another.
func (k *Walker) drift(w *World, way *well.Way, p well.Pump, from, to pumped) ([]*World, error) {
	w = w.Clone()
	s := w.State
	a, _, err := s.Flowing(way, from.volume, from.rate)
	if err != nil {
		return nil, err
	}
	b, _, err := s.Flowing(way, to.volume, to.rate)
	if err != nil {
		return nil, err
	}
	between := map[float64]map[int]well.Profile{}
	for _, share := range [3]float64{0.25, 0.5, 0.75} {
		x, _, err := s.Flowing(way, from.volume+(to.volume-from.volume)*share, from.rate+(to.rate-from.rate)*share)
		if err != nil {
			return nil, err
		}
		between[share] = x
	}
	s.Drift(a, b, between, pumpLength)
	ends := func(s *well.State) {
		s.Still(b)
		if p.Formation >= 0 {
			s.Inject(p.Formation, affine.Flat(affine.Const(p.Injection*to.rate/p.Rate)))
		}
	}
	if p.Formation >= 0 {
		at, then := p.Injection*from.rate/p.Rate, p.Injection*to.rate/p.Rate
		s.Inject(p.Formation, affine.Line{F: affine.Const(at), S: (then - at) / pumpLength})
	}
	k.seconds = 0
	if to.volume > from.volume {
		k.seconds = (to.volume - from.volume) / to.rate
	}
	worlds, err := k.ripening(w, pumpLength, k.seconds)
	if err != nil {
		return nil, err
	}
	return each(worlds, func(x *World) ([]*World, error) {
		out, err := k.enclosedLeg(x, ends, func(x *World) error {
			if other, err := x.State.Way(p); err != nil || !way.Along(other) {
				return well.Unpumped{Why: "its way changes while it is pumped; that isn't modelled"}
			}
			return nil
		})
		for _, y := range out {
			y.due = nil
		}
		return out, err
	})
}

// enclosedLeg walks a leg along which pressures are only enclosed: ends brings them to
// where they certainly are at its end, and what stands so is checked and shown.
func (k *Walker) enclosedLeg(w *World, ends func(*well.State), check func(*World) error) ([]*World, error) {
	k.loose, k.ends = true, ends
	out, err := k.leg(w, affine.Const(pumpLength), false)
	k.loose, k.ends = false, nil
	if err != nil {
		return nil, err
	}
	for _, x := range out {
		ends(x.State)
		if err := check(x); err != nil {
			return nil, err
		}
		if err := x.State.Solve(affine.Form{}); err != nil {
			return nil, err
		}
		if err := k.balanced(x); err != nil {
			return nil, err
		}
		if err := k.whole(x); err != nil {
			return nil, err
		}
	}
	return out, nil
}
