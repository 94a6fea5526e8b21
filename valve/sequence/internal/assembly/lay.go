package assembly

import (
	"slices"

	"completion.example/internal/fault"
)

// Layout is the well laid out.
type Layout struct {
	Well    *Well
	Strings []String // as in the well: the innermost is the last
	Spaces  []Space
	Floor   float64 // where casing or hole ends
}

// Lay lays the well out. Say writes a depth or length in metres for errors.
func Lay(w *Well, say func(float64) string) (*Layout, error) {
	f := fault.Faults{}
	l := &Layout{Well: w}
	for i, c := range w.Casing {
		if !(c.Bottom > c.Top) {
			f.New(c.Path+".bottom", "is %s; it must be below its top at %s", say(c.Bottom), say(c.Top))
		}
		if i > 0 && c.Top > l.Floor+near {
			f.New(c.Path, "%s begins at %s, but %s (%s) ends at %s: a gap of %s", c.Name, say(c.Top), w.Casing[i-1].Path, w.Casing[i-1].Name, say(l.Floor), say(c.Top-l.Floor))
		}
		l.Floor = max(l.Floor, c.Bottom)
	}
	for i := range w.Strings {
		if len(w.Strings[i].Pieces) > 0 {
			l.Strings = append(l.Strings, place(&w.Strings[i], w.Snap, say, &f))
		} else {
			f.New(w.Strings[i].Path+".tally", "is empty")
		}
	}
	if len(w.Casing) == 0 || len(l.Strings) == 0 || f.Any() {
		return nil, f.Err()
	}
	for i := range l.Strings {
		l.nest(i, say, &f)
	}
	if f.Any() {
		return nil, f.Err()
	}
	l.divide(say, &f)
	if err := f.Err(); err != nil {
		return nil, err
	}
	return l, nil
}

// casingAt is the innermost casing at a depth: of those that meet there the one
// below.
func (l *Layout) casingAt(z float64) *Casing {
	for i := len(l.Well.Casing) - 1; i >= 0; i-- {
		if c := &l.Well.Casing[i]; c.Top <= z && z < c.Bottom {
			return c
		}
	}
	for i := len(l.Well.Casing) - 1; i >= 0; i-- { // the floor
		if c := &l.Well.Casing[i]; c.Top <= z && z <= c.Bottom {
			return c
		}
	}
	return nil
}

// Hole is the diameter of what surrounds string i just below a depth.
func (l *Layout) Hole(i int, z float64) float64 {
	id, _ := l.surrounds(i, z)
	return id
}

// end is where the space around string i ends.
func (l *Layout) end(i int) float64 {
	if i == 0 {
		return l.Floor
	}
	return l.Strings[i-1].Bottom
}

// nest checks that a string goes into what surrounds it, and that its seals find
// their bore.
func (l *Layout) nest(i int, say length, f *fault.Faults) {
	s := &l.Strings[i]
	last := s.Pieces[len(s.Pieces)-1]
	if s.Bottom > l.end(i)+near {
		if i > 0 {
			outer := &l.Strings[i-1]
			f.New(last.Path, "%s ends at %s, but %s, in which it stands, ends at %s (%s)", last.Name, say(s.Bottom), outer.Name, say(outer.Bottom), outer.Pieces[len(outer.Pieces)-1].Path)
		} else {
			f.New(last.Path, "%s ends at %s, but casing and hole end at %s (%s)", last.Name, say(s.Bottom), say(l.Floor), l.deepest().Path)
		}
	}
	if !(s.Bottom > s.Top) {
		f.New(s.Path, "has no length")
	}
	for k := range s.Pieces {
		p := &s.Pieces[k]
		if p.Pipe == (Pipe{}) {
			f.New(p.Path, "%s has no pipe above it to take the diameters of; give it one", p.Name)
			return
		}
		l.passes(i, p, say, f)
		if p.Seals != 0 {
			l.received(i, p, say, f)
		}
		if p.Cuts == Bore {
			l.unblocked(i, p, say, f)
		}
	}
}

func (l *Layout) deepest() *Casing {
	c := &l.Well.Casing[0]
	for i := range l.Well.Casing {
		if l.Well.Casing[i].Bottom >= c.Bottom {
			c = &l.Well.Casing[i]
		}
	}
	return c
}

// fit is what two diameters may differ by and still be the same: 0.02 in.
const fit = 0.02 * 0.0254

// passes checks that a piece has gone through all that surrounds it down to where
// it stands.
func (l *Layout) passes(i int, p *Placed, say length, f *fault.Faults) {
	wide := p.outside()
	for j := range l.Strings[:i] {
		o := &l.Strings[j]
		for k := range o.Pieces {
			if q := &o.Pieces[k]; q.Top < p.Bottom && wide > q.pass()+fit {
				f.New(p.Path, "%s of %s outside doesn't go through %s (%s) of %s inside", p.Name, diameter(wide), q.Path, q.Name, diameter(q.pass()))
				return
			}
		}
	}
	for k := range l.Well.Casing {
		if c := &l.Well.Casing[k]; c.Top < p.Bottom && wide > c.ID+fit {
			f.New(p.Path, "%s of %s outside doesn't go through %s (%s) of %s inside", p.Name, diameter(wide), c.Path, c.Name, diameter(c.ID))
			return
		}
	}
	if h := l.Hole(i, p.Top); h > 0 && p.Pipe.OD >= h {
		f.New(p.Path, "%s of %s outside leaves no room in the %s around it at %s", p.Name, diameter(p.Pipe.OD), diameter(h), say(p.Top))
	}
}

// received checks that seals stand in a bore of their own diameter.
func (l *Layout) received(i int, p *Placed, say length, f *fault.Faults) {
	for j := i - 1; j >= 0; j-- {
		o := &l.Strings[j]
		if p.At < o.Top-near || p.At > o.Bottom+near {
			continue
		}
		var at *Placed
		for k := range o.Pieces {
			q := &o.Pieces[k]
			if q.Top-near <= p.At && p.At <= q.Bottom+near && (at == nil || q.Polished != 0) {
				at = q
			}
		}
		switch {
		case at == nil:
		case at.Polished == 0:
			f.New(p.Path, "%s: it seals in a bore of %s at %s, but %s (%s) has no polished bore there", p.Name, diameter(p.Seals), say(p.At), at.Path, at.Name)
		case at.Polished > p.Seals+fit || at.Polished < p.Seals-fit:
			f.New(p.Path+".bore", "is %s, but the bore of %s (%s), in which it stands at %s, is %s", diameter(p.Seals), at.Path, at.Name, say(p.At), diameter(at.Polished))
		}
		return
	}
	f.New(p.Path, "%s stands at %s, where there is no string around with a bore for it", p.Name, say(p.At))
}

// unblocked checks that nothing runs through what closes a bore.
func (l *Layout) unblocked(i int, p *Placed, say length, f *fault.Faults) {
	for j := i + 1; j < len(l.Strings); j++ {
		in := &l.Strings[j]
		if k := slices.IndexFunc(in.Pieces, func(q Placed) bool { return q.Bottom > p.At+near }); k >= 0 {
			f.New(p.Path, "%s closes the bore at %s, but %s runs through it down to %s (%s); if it is in the wall, say \"in\": \"wall\"",
				p.Name, say(p.At), in.Name, say(in.Bottom), in.Pieces[k].Path)
			return
		}
	}
}
