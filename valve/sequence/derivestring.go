package sequence

import (
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/controlline"
)

// string is the innermost string, whose movement and loads are checked, and that around
// it, where the plan has a place for it.
func (d *deriver) string() {
	n := d.Innermost()
	d.out.String = d.made(n, "the innermost string")
	if d.outer(n - 1) {
		d.out.OuterString = d.made(n-1, "the string around the innermost")
	}
}

// made is a string of the tally.
func (d *deriver) made(n int, what string) *String {
	s, t := &d.Strings[n], &d.a.Strings[n]
	x := &String{Inside: s.Inside, HangerMD: unit.Length(s.Top), Note: what + "; what has no pipe of its own is taken as the pipe above it"}
	switch {
	case n != d.Innermost():
		x.Inside = d.space(n+1, s.Top)
	case x.Inside == "":
		x.Inside = s.Name
	}
	for _, p := range d.Spaces {
		if p.Around == n && p.Top < s.Bottom {
			x.Around = append(x.Around, p.Name)
		}
	}
	below := d.At(n, s.Bottom)
	x.Below = d.Spaces[below].Name
	d.sections(n, x)
	x.HeldMD = x.Sections[len(x.Sections)-1].BottomMD
	for k, p := range s.Pieces {
		piece := &t.Pieces[k]
		switch {
		case piece.Kind == PackerPiece && len(piece.Sets) > 0 && !piece.Free:
			x.HeldMD = unit.Length(p.At)
			if piece.Envelope != nil && d.out.Holding == nil {
				d.out.Holding = &Holding{Below: d.space(n, p.At), Above: d.above(n, p.At), MD: unit.Length(p.At), Envelope: *piece.Envelope,
					Note: "the envelope of " + p.Name}
			}
		case piece.Kind == SealStack:
			x.Seals = append(x.Seals, Seal{Name: p.Name, MD: unit.Length(p.At), Bore: piece.Bore, Up: piece.Up, Down: piece.Down})
		}
	}
	if len(x.Seals) == 0 {
		last := s.Pieces[len(s.Pieces)-1]
		end := unit.Length(s.Bottom)
		x.Seals = []Seal{{Name: "free end", MD: end, Bore: unit.Length(last.Pipe.OD), Up: end - x.HangerMD, Down: end - x.HangerMD}}
		x.Note += "; it has no seals: its lower end moves freely, which is a seal of the pipe's own diameter"
	}
	return x
}

// sections are the pipes of a string, each in one hole.
func (d *deriver) sections(n int, x *String) {
	s, t := &d.Strings[n], &d.a.Strings[n]
	turns := []float64{s.Bottom}
	for k := range d.Strings {
		for _, p := range d.Strings[k].Pieces {
			turns = append(turns, p.Top, p.Bottom)
		}
	}
	for _, c := range d.a.Casing {
		turns = append(turns, float64(c.Top), float64(c.Bottom))
	}
	slices.Sort(turns)
	turns = slices.Compact(turns)
	at := s.Top
	for _, z := range turns {
		if z <= at || z > s.Bottom {
			continue
		}
		mid := at + (z-at)/2
		now := StringSection{BottomMD: unit.Length(z), Hole: unit.Length(d.Hole(n, mid))}
		for k, p := range s.Pieces {
			if p.Top > mid {
				break
			}
			if t.Pieces[k].Pipe != nil {
				now.Pipe, now.Joint = *t.Pieces[k].Pipe, t.Pieces[k].Joint
			}
		}
		if m := len(x.Sections); m > 0 && now.Pipe == x.Sections[m-1].Pipe && now.Hole == x.Sections[m-1].Hole && now.Joint == x.Sections[m-1].Joint {
			x.Sections[m-1].BottomMD = now.BottomMD
		} else {
			x.Sections = append(x.Sections, now)
		}
		at = z
	}
}

// ratings are what casing, outer strings, devices and lines bear.
func (d *deriver) ratings() {
	for i, c := range d.a.Casing {
		if c.Pipe == nil || c.Behind == "" {
			continue
		}
		name := c.name()
		if c.Name == "" {
			if before := "casing " + c.Pipe.Size.String(); d.rated(before) { // as it was called before
				name = before
			}
		}
		d.along(name, d.outermost(i), Rating{Pipe: c.Pipe, Background: c.Behind, Factor: d.factor(c.Factor)},
			fmt.Sprintf("the catalogue's ratings of %s; behind it %s from surface", c.name(), c.Behind))
	}
	for i := range d.Strings {
		if i != d.Innermost() {
			d.walls(i)
		}
		for k := range d.Strings[i].Pieces {
			p, x := &d.Strings[i].Pieces[k], &d.a.Strings[i].Pieces[k]
			r := Rating{Name: p.Name, FromMD: unit.Length(p.At), ToMD: unit.Length(p.At), Burst: x.Rated, Collapse: x.Rated, Factor: d.factor(x.Factor)}
			if x.Rated.Greatest == 0 {
				r.Burst, r.Collapse = x.Burst, x.Collapse
			}
			if r.Burst.Greatest == 0 && r.Collapse.Greatest == 0 {
				continue
			}
			r.Inside, r.Outside = d.sensedBetween(i, p, x)
			r.Note = fmt.Sprintf("%s at %s less %s", r.Inside, d.text(r.FromMD), r.Outside)
			if r.Inside != r.Outside {
				d.out.Ratings = append(d.out.Ratings, r)
			}
		}
	}
	for _, l := range d.a.Lines {
		for _, name := range l.Names {
			r := Rating{Inside: name, Burst: l.Burst, Collapse: l.Collapse, Factor: d.factor(l.Factor)}
			if l.Yield != 0 {
				wall, err := l.ratings()
				if err != nil {
					continue // writtenLines has said why
				}
				r.Burst, r.Collapse, r.Note = unit.Exactly(wall.Working), unit.Exactly(wall.Collapse), wall.Beyond
			} else if l.Burst.Greatest == 0 && l.Collapse.Greatest == 0 {
				continue
			}
			d.clamped(r)
		}
	}
}

// ratings are what a line's wall stands, where its yield strength is given: as
// controlline has them for a line of that wall.
func (l *ControlLine) ratings() (controlline.Ratings, error) {
	if l.Yield == 0 {
		return controlline.Ratings{}, nil
	}
	return controlline.Line{OD: l.Size, Wall: l.Wall, Yield: l.Yield}.Ratings()
}

// along writes a rating for each space that a body stands in; the first bears its
// name alone.
func (d *deriver) along(name string, parts []stretch, r Rating, note string) {
	for k, p := range parts {
		r.Name = name
		if k > 0 {
			r.Name = fmt.Sprintf("%s, %s", name, p.inside)
		}
		r.Inside, r.FromMD, r.ToMD, r.Note = p.inside, unit.Length(p.top), unit.Length(p.bottom), note
		if slices.ContainsFunc(d.out.Ratings, func(x Rating) bool { return x.Name == r.Name }) {
			r.Name = d.from(name, r.FromMD)
		}
		if p.outside != "" {
			r.Outside = p.outside
		}
		d.out.Ratings = append(d.out.Ratings, r)
	}
}

// from is the name of a body from a depth on, without a unit: a name is the same
// whatever units an output is in. Plans of before may have rated it by another.
func (d *deriver) from(name string, top unit.Length) string {
	at := d.text(top)
	if before := name + " from " + at; d.rated(before) {
		return before
	}
	number, _, _ := strings.Cut(at, " ")
	return name + " from " + number
}

// rated tells whether the plan has a rating by hand of a name, or of a part of what bears
// the name.
func (d *deriver) rated(name string) bool {
	return slices.ContainsFunc(d.plan.Ratings, func(r Rating) bool { return r.Name == name || strings.HasPrefix(r.Name, name+", ") })
}

// stretch is where the same is inside and outside of a body.
type stretch struct {
	inside, outside string
	top, bottom     float64
}

// stretches parts a body between two depths by what is inside and outside of it.
func (d *deriver) stretches(top, bottom float64, of func(z float64) (inside, outside string)) []stretch {
	turns := []float64{top, bottom}
	for _, s := range d.Spaces {
		turns = append(turns, s.Top, s.Bottom)
	}
	for i, c := range d.a.Casing {
		if i > 0 {
			turns = append(turns, float64(c.Top), float64(c.Bottom))
		}
	}
	slices.Sort(turns)
	var all []stretch
	at := top
	for _, z := range slices.Compact(turns) {
		if z <= at || z > bottom {
			continue
		}
		in, out := of(at + (z-at)/2)
		if m := len(all); m > 0 && all[m-1].inside == in && all[m-1].outside == out && all[m-1].bottom == at {
			all[m-1].bottom = z
		} else if in != "" {
			all = append(all, stretch{in, out, at, z})
		}
		at = z
	}
	return all
}

// outermost is what casing i has inside it, where no later one stands in it.
func (d *deriver) outermost(i int) []stretch {
	c := d.a.Casing[i]
	return d.stretches(float64(c.Top), float64(c.Bottom), func(z float64) (string, string) {
		for _, o := range d.a.Casing[i+1:] {
			if float64(o.Top) <= z && z < float64(o.Bottom) {
				return "", ""
			}
		}
		if k := d.Outermost(z); k >= 0 {
			return d.Spaces[k].Name, ""
		}
		return "", ""
	})
}

// walls are the ratings of the pipes of an outer string, between what is inside and
// what is around it.
func (d *deriver) walls(i int) {
	s, t := &d.Strings[i], &d.a.Strings[i]
	var pipe *Pipe
	runs := 0
	for k := 0; k < len(s.Pieces); {
		if t.Pieces[k].Pipe != nil {
			pipe = t.Pieces[k].Pipe
		}
		top, bottom := s.Pieces[k].Top, s.Pieces[k].Bottom
		for k++; k < len(s.Pieces) && (t.Pieces[k].Pipe == nil || *t.Pieces[k].Pipe == *pipe); k++ {
			bottom = s.Pieces[k].Bottom
		}
		if bottom <= top {
			continue
		}
		name := t.Name
		if runs++; runs > 1 {
			name = d.from(t.Name, unit.Length(top))
		}
		d.along(name, d.stretches(top, bottom, func(z float64) (string, string) {
			return d.space(d.Inside(i), z), d.space(i, z)
		}), Rating{Pipe: pipe, Factor: d.factor(0)}, "the catalogue's ratings of its pipe, between what is inside and around it")
	}
}

// clamped is the rating of a control line in what is around the innermost string.
func (d *deriver) clamped(r Rating) {
	name, note := r.Inside, r.Note
	bottom := 0.0
	for _, c := range d.out.Compartments {
		if c.Name == name {
			bottom = float64(c.BottomMD)
		}
	}
	n := d.Innermost()
	for k, p := range d.stretches(d.Strings[n].Top, bottom, func(z float64) (string, string) { return d.space(n, z), "" }) {
		r.Name = name
		if k > 0 {
			r.Name = fmt.Sprintf("%s, %s", name, p.inside)
		}
		r.Outside, r.FromMD, r.ToMD = p.inside, unit.Length(p.top), unit.Length(p.bottom)
		r.Note = "the line less what is around the string that it is clamped to"
		if note != "" {
			r.Note += "; " + note
		}
		d.out.Ratings = append(d.out.Ratings, r)
	}
}
