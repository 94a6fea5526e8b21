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

// Axial is what actions feel of the string along a leg, the balance of a joint or the
// load of a place. It is taken at the beginning, halfway and at the end; what isn't
// straight between widens it.
func (r *Room) Axial(w *walk.World, actions []int, pulling *affine.Line) ([]affine.Line, error) {
	lines := make([]affine.Line, len(actions))
	var at [3][]affine.Form
	for n, x := range [3]float64{0, 0.5, 1} {
		forms, moves, err := r.along(w, affine.Const(x*w.State.Span), pulling)
		if err != nil {
			return nil, err
		}
		if at[n] = forms; w.State.Span == 0 || !moves {
			for k, i := range actions {
				lines[k] = affine.Flat(forms[r.feltBy(i)])
			}
			return lines, nil
		}
	}
	for k, i := range actions {
		n := r.feltBy(i)
		lines[k] = through([3]affine.Form{at[0][n], at[1][n], at[2][n]}, w.State.Span)
	}
	return lines, nil
}

// feltBy is where what an axial action feels stands in what is read off the strings.
func (r *Room) feltBy(action int) int {
	of := r.which(action)
	return r.begins(of) + r.one(of).feltAt(&r.Network.Actions[action])
}

// through is the line through what stands at the beginning, halfway and at the end of a
// span, widened by what isn't straight.
func through(f [3]affine.Form, span float64) affine.Line {
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
	return affine.Line{F: line, S: slope}
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
