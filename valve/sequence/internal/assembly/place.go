package assembly

import (
	"math"

	"completion.example/internal/fault"
)

// Cut is what a piece divides.
type Cut int

// The cuts.
const (
	Nothing Cut = iota
	Around      // the space around its string
	Bore        // the bore of its string
)

// Pipe are the diameters of a body.
type Pipe struct{ OD, ID float64 }

// Piece is one line of a tally. Zero depths and lengths are not given.
type Piece struct {
	Path, Name          string // where it is written, and what it is
	Top, Bottom, Length float64
	At                  float64 // where it acts; its top if not given
	Pipe                Pipe    // zero: that of the piece above
	OD                  float64 // the greatest, where it isn't the pipe's
	Cuts                Cut
	Below               string  // what the space under its cut is called
	Seals               float64 // diameter of the bore that it seals in
	Polished            float64 // diameter of the bore that seals find in it
	Porosity            float64 // of gravel around it; zero: none
}

// Tally is a string, from the top down.
type Tally struct {
	Path, Name, Inside, Around string
	Top                        float64
	Pieces                     []Piece
}

// Casing is a length of casing, liner or open hole.
type Casing struct {
	Path, Name          string
	Top, Bottom, OD, ID float64 // no OD: open hole
}

// Well is the casing, each length inside those before it, and the strings, each
// inside those before it.
type Well struct {
	Casing  []Casing
	Strings []Tally
	// Snap gives a depth that was added up the value that a person writes for it.
	Snap func(float64) float64
}

// near is what two depths may differ by to be the same: a millimetre.
const near = 1e-3

func same(a, b float64) bool { return math.Abs(a-b) <= near }

// Placed is a piece where it stands.
type Placed struct {
	*Piece
	Top, Bottom, At float64
	Pipe            Pipe
}

// String is a string where it stands.
type String struct {
	*Tally
	Pieces []Placed
	Bottom float64
}

// length writes metres for an error; the caller puts the reader's unit to it.
type length func(float64) string

// place puts the pieces of a string one under the other.
func place(t *Tally, snap func(float64) float64, say length, f *fault.Faults) String {
	s := String{Tally: t, Bottom: t.Top}
	before, where := t.Path+".top", "the top of "+t.Name
	for i := range t.Pieces {
		p := &t.Pieces[i]
		x := Placed{Piece: p, Top: s.Bottom, Pipe: p.Pipe}
		if x.Pipe == (Pipe{}) && i > 0 {
			x.Pipe = s.Pieces[i-1].Pipe
		}
		top := p.Top
		if top == 0 && p.Bottom != 0 && p.Length != 0 {
			top = snap(p.Bottom - p.Length)
		}
		switch {
		case top == 0:
		case top > s.Bottom+near:
			f.New(p.Path, "%s begins at %s, but %s (%s) ends at %s: a gap of %s", p.Name, say(top), before, where, say(s.Bottom), say(top-s.Bottom))
			x.Top = top
		case top < s.Bottom-near:
			f.New(p.Path, "%s begins at %s, but %s (%s) ends at %s: they overlap by %s", p.Name, say(top), before, where, say(s.Bottom), say(s.Bottom-top))
		}
		x.Bottom = x.Top
		switch {
		case p.Bottom != 0:
			x.Bottom = p.Bottom
		case p.Length != 0:
			x.Bottom = snap(x.Top + p.Length)
		}
		if x.Bottom < x.Top-near {
			f.New(p.Path, "%s ends at %s, but %s (%s) ends at %s: it has no room", p.Name, say(x.Bottom), before, where, say(x.Top))
			x.Bottom = x.Top
		}
		if p.Bottom != 0 && p.Top != 0 && p.Length != 0 && !same(p.Bottom-p.Top, p.Length) {
			f.New(p.Path+".length", "is %s; from %s to %s are %s", say(p.Length), say(p.Top), say(p.Bottom), say(p.Bottom-p.Top))
		}
		x.At = x.Top
		if p.At != 0 {
			x.At = p.At
			if p.At < x.Top-near || p.At > x.Bottom+near {
				f.New(p.Path+".at", "is %s; %s reaches from %s to %s", say(p.At), p.Name, say(x.Top), say(x.Bottom))
				x.At = x.Top
			}
		}
		s.Pieces = append(s.Pieces, x)
		s.Bottom = x.Bottom
		before, where = p.Path, p.Name
	}
	return s
}

// covers tells whether the string stands at a depth.
func (s *String) covers(z float64) bool { return s.Top <= z && z < s.Bottom }

// pieceAt is the piece at a depth: of those that meet there the one below.
func (s *String) pieceAt(z float64) *Placed {
	var found *Placed
	for i := range s.Pieces {
		if p := &s.Pieces[i]; p.Top <= z && z <= p.Bottom {
			found = p
		}
	}
	return found
}

// pass is the diameter that goes through a piece.
func (p *Placed) pass() float64 {
	if p.Polished != 0 {
		return min(p.Polished, p.Pipe.ID)
	}
	return p.Pipe.ID
}

// outside is the greatest outside diameter of a piece.
func (p *Placed) outside() float64 { return max(p.Pipe.OD, p.Piece.OD, p.Seals) }
