package assembly

import "slices"

// Conduit is a length of a space between two pipes, or in one.
type Conduit struct {
	Bottom           float64
	Outer, OuterWall float64 // inside diameter of what is around it, and its wall; no wall: open hole
	Inner, InnerWall float64 // outside diameter of the pipe within, and its wall; zero: none
}

// Bores are those of a space, from the top down; none where gravel fills a part of it.
func (l *Layout) Bores(s *Space) []Conduit {
	var all []Conduit
	turns := l.turns(s.Top, s.Bottom)
	for k, a := range turns[:len(turns)-1] {
		z := a + (turns[k+1]-a)/2
		b := Conduit{Bottom: turns[k+1]}
		if s.Around < 0 {
			p := l.Strings[l.Innermost()].pieceAt(z).Pipe
			b.Outer, b.OuterWall = p.ID, (p.OD-p.ID)/2
		} else {
			b.Outer, b.OuterWall = l.surrounds(s.Around, z)
			if x := &l.Strings[s.Around]; x.covers(z) {
				p := x.pieceAt(z)
				if p.Porosity > 0 {
					return nil
				}
				b.Inner, b.InnerWall = p.Pipe.OD, (p.Pipe.OD-p.Pipe.ID)/2
			}
		}
		if n := len(all); n > 0 {
			if above := all[n-1]; above.Outer == b.Outer && above.OuterWall == b.OuterWall && above.Inner == b.Inner && above.InnerWall == b.InnerWall {
				all[n-1].Bottom = b.Bottom
				continue
			}
		}
		all = append(all, b)
	}
	return all
}

// surrounds is the diameter of what surrounds string i just below a depth, and its wall.
func (l *Layout) surrounds(i int, z float64) (id, thick float64) {
	for j := i - 1; j >= 0; j-- {
		if s := &l.Strings[j]; s.covers(z) {
			p := s.pieceAt(z).Pipe
			return p.ID, (p.OD - p.ID) / 2
		}
	}
	c := l.casingAt(z)
	switch {
	case c == nil:
		return 0, 0
	case c.OD == 0:
		return c.ID, 0
	}
	return c.ID, (c.OD - c.ID) / 2
}

// turns are two depths and those between them at which a pipe ends.
func (l *Layout) turns(top, bottom float64) []float64 {
	turns := []float64{top, bottom}
	add := func(z float64) {
		if top < z && z < bottom {
			turns = append(turns, z)
		}
	}
	for k := range l.Strings {
		for n := range l.Strings[k].Pieces {
			add(l.Strings[k].Pieces[n].Top)
			add(l.Strings[k].Pieces[n].Bottom)
		}
	}
	for _, c := range l.Well.Casing {
		add(c.Top)
		add(c.Bottom)
	}
	slices.Sort(turns)
	return slices.Compact(turns)
}
