package stringload

import (
	"errors"
	"math"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

var (
	errNotLanded = errors.New("the string hasn't landed")
	errHeld      = errors.New("the string can't land: it is held at its packer")
)

// Axial is the balance of an action's joint along a leg. It is taken at the
// beginning, halfway and at the end; what isn't straight between widens it.
func (r *Room) Axial(w *walk.World, action int, length affine.Form, pulling *affine.Line) (affine.Line, error) {
	of := r.which(action)
	n0 := r.begins(of) + r.one(of).feltAt(&r.Network.Actions[action])
	var f [3]affine.Form
	places := [3]float64{0, 0.5, 1}
	for n, x := range places {
		got, moves, err := r.along(w, affine.Const(x*w.State.Span), pulling)
		if err != nil {
			return affine.Line{}, err
		}
		if f[n] = got[n0]; w.State.Span == 0 || !moves {
			return affine.Flat(f[n]), nil
		}
	}
	span := w.State.Span
	slope := (f[2].C - f[0].C) / span
	line := f[0].Plus(f[2].Shift(-slope * span)).Times(0.5)
	bend := math.Abs(f[1].C - (f[0].C+f[2].C)/2)
	turn := f[2].Shift(-slope*span).Minus(f[0]).Radius() / 2 // inputs count otherwise at the end than at the beginning
	if off := 1.2*bend + turn; off > 1e-6*(1+math.Abs(line.C)) {
		line = line.Widen(off)
	}
	if math.Abs(slope*span) < 1e-3 {
		slope = 0
	}
	return affine.Line{F: line, S: slope}, nil
}

// Weight is what the weight indicator shows when it takes over what the hanger
// carries.
func (r *Room) Weight(w *walk.World) (affine.Form, error) {
	got, err := r.enclose(w, affine.Form{}, nil)
	if err != nil {
		return affine.Form{}, err
	}
	own := r.one(w.On)
	return got[r.begins(w.On)+own.topAt()].Shift(own.Block), nil
}
