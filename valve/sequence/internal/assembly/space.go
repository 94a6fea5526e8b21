package assembly

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"completion.example/internal/fault"
)

// Space is a connected room in the hole.
type Space struct {
	Name        string
	Around      int // the string that it is around; -1: inside the innermost
	Top, Bottom float64
	Volume      float64
	Under       *Placed // what divides it from the space above; nil: nothing
}

// Area is the mean cross-section.
func (s *Space) Area() float64 { return s.Volume / (s.Bottom - s.Top) }

// Innermost is the number of the innermost string.
func (l *Layout) Innermost() int { return len(l.Strings) - 1 }

// divide finds the spaces.
func (l *Layout) divide(say length, f *fault.Faults) {
	n := l.Innermost()
	in := &l.Strings[n]
	l.Spaces = append(l.Spaces, Space{Name: in.Inside, Around: -1, Top: in.Top, Bottom: in.Bottom, Volume: l.volume(-1, in.Top, in.Bottom)})
	for i := n; i >= 0; i-- {
		top := l.Strings[i].Top
		now := Space{Name: l.Strings[i].Around, Around: i, Top: top}
		var before *Placed
		for _, c := range l.cuts(i) {
			if before != nil && same(before.At, c.At) {
				f.New(c.Path, "%s divides the space around %s at %s, as %s (%s) does", c.Name, l.Strings[i].Name, say(c.At), before.Path, before.Name)
				continue
			}
			before = c
			if c.At <= top+near || c.At >= l.end(i)-near {
				continue // at an end it divides nothing
			}
			now.Bottom = c.At
			l.Spaces = append(l.Spaces, now)
			name := c.Below
			if name == "" {
				name = "below " + c.Name
			}
			now = Space{Name: name, Around: i, Top: c.At, Under: c}
		}
		now.Bottom = l.end(i)
		l.Spaces = append(l.Spaces, now)
	}
	seen := map[string]bool{}
	for k := range l.Spaces {
		s := &l.Spaces[k]
		if s.Volume == 0 {
			s.Volume = l.volume(s.Around, s.Top, s.Bottom)
		}
		if seen[s.Name] {
			where := l.Strings[max(s.Around, 0)].Path
			if s.Under != nil {
				where = s.Under.Path + ".below"
			}
			f.New(where, "the space from %s to %s would be called %q, as another is; give it a name of its own", say(s.Top), say(s.Bottom), s.Name)
		}
		seen[s.Name] = true
	}
}

// cuts are what divides the space around string i, from the top down.
func (l *Layout) cuts(i int) []*Placed {
	var all []*Placed
	for k := range l.Strings[i].Pieces {
		if p := &l.Strings[i].Pieces[k]; p.Cuts == Around {
			all = append(all, p)
		}
	}
	if i > 0 {
		for k := range l.Strings[i-1].Pieces {
			if p := &l.Strings[i-1].Pieces[k]; p.Cuts == Bore {
				all = append(all, p)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b *Placed) int { return cmp.Compare(a.At, b.At) })
	return all
}

// ClosedAbove tells whether something seals the upper end of the space around
// string i.
func (l *Layout) ClosedAbove(i int) *Placed {
	for _, c := range l.cuts(i) {
		if c.At <= l.Strings[i].Top+near {
			return c
		}
	}
	return nil
}

// At is the number of the space around string i (-1: inside the innermost) at a
// depth: where two meet the one below.
func (l *Layout) At(i int, z float64) int {
	found := -1
	for k := range l.Spaces {
		if s := &l.Spaces[k]; s.Around == i && s.Top <= z && z <= s.Bottom {
			found = k
		}
	}
	return found
}

// Above is At, but where two meet the one above.
func (l *Layout) Above(i int, z float64) int {
	for k := range l.Spaces {
		if s := &l.Spaces[k]; s.Around == i && s.Top <= z && z <= s.Bottom {
			return k
		}
	}
	return -1
}

// Inside is what string i has inside it, as At counts spaces.
func (l *Layout) Inside(i int) int {
	if i == l.Innermost() {
		return -1
	}
	return i + 1
}

// Outermost is the space that touches casing or hole just below a depth.
func (l *Layout) Outermost(z float64) int {
	for i := range l.Strings {
		if k := l.At(i, z); k >= 0 {
			return k
		}
	}
	return -1
}

// volume of the space around string i between two depths.
func (l *Layout) volume(i int, top, bottom float64) float64 {
	turns := l.turns(top, bottom)
	sum := 0.0
	for k, a := range turns[:len(turns)-1] {
		sum += (turns[k+1] - a) * l.area(i, a+(turns[k+1]-a)/2)
	}
	return sum
}

// area of the space around string i at a depth.
func (l *Layout) area(i int, z float64) float64 {
	if i < 0 {
		return circle(l.Strings[l.Innermost()].pieceAt(z).Pipe.ID)
	}
	a := circle(l.Hole(i, z))
	s := &l.Strings[i]
	if !s.covers(z) {
		return a
	}
	p := s.pieceAt(z)
	a -= circle(p.Pipe.OD)
	if p.Porosity > 0 {
		a *= p.Porosity
	}
	return a
}

func circle(d float64) float64 { return math.Pi / 4 * d * d }

// diameter writes metres as the trade writes a diameter.
func diameter(d float64) string { return fmt.Sprintf("%.3f in (%.1f mm)", d/0.0254, d*1000) }
