package sequence

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/assembly"
)

// way is what a port is, beside its place.
type way struct {
	joins [2]string
	shuts bool // a device can shut it
	valve bool // and while it is shut it is a barrier: a valve or a plug
	name  string
}

// space is the name of what is around string i (-1: in the innermost) at a depth:
// where two meet the one below.
func (d *deriver) space(i int, z float64) string {
	k := d.At(i, z)
	if k < 0 {
		return ""
	}
	return d.Spaces[k].Name
}

func (d *deriver) above(i int, z float64) string {
	k := d.Above(i, z)
	if k < 0 {
		return ""
	}
	return d.Spaces[k].Name
}

// compartments are the spaces, and what is behind perforations.
func (d *deriver) compartments() {
	inner := d.Innermost()
	for k := range d.Spaces {
		s := d.Spaces[k]
		c := Compartment{Name: s.Name, TopMD: unit.Length(s.Top), BottomMD: unit.Length(s.Bottom), Fluid: d.a.Fluid, Capacity: unit.Area(s.Area())}
		what := "inside " + d.Strings[inner].Name
		if s.Around >= 0 {
			what = "around " + d.Strings[s.Around].Name
			if s.Bottom > d.Strings[s.Around].Bottom {
				what += " and on below its lower end"
			}
		}
		c.Note = fmt.Sprintf("%s, from %s to %s", what, d.roof(s), d.floor(s))
		hung := s.Around < 0 || s.Under == nil && (s.Around == inner || s.Top == 0)
		if hung && (s.Around != inner || d.ClosedAbove(inner) == nil) {
			c.Surface = true
			c.Note += "; it goes up to surface"
			c.TopMD = 0
		}
		c.Note += "; capacity is its volume over its length, lines left out"
		d.bores(&c, &s)
		d.out.Compartments = append(d.out.Compartments, c)
	}
	for _, x := range d.a.Perforations {
		at := 0.0
		for _, f := range d.plan.Formations {
			if f.Name == x.Formation {
				at = float64(f.MD)
			}
		}
		k := d.Outermost(at)
		if k < 0 {
			d.faults.New("assembly.perforations", "formation %q at %s is open to nothing that the strings stand in", x.Formation, d.text(unit.Length(at)))
			continue
		}
		c := &d.out.Compartments[k]
		if c.Formation == "" && !c.Surface {
			c.Formation = x.Formation
			c.Note += fmt.Sprintf("; open to %s through the perforations", x.Formation)
			continue
		}
		behind := Compartment{Name: "behind " + x.Formation, TopMD: x.Top, BottomMD: x.Bottom, Fluid: d.a.Fluid, Formation: x.Formation,
			Note: fmt.Sprintf("behind the perforations of %s, since %q has its pressure from elsewhere", x.Formation, c.Name)}
		d.out.Compartments = append(d.out.Compartments, behind)
		d.port(Port{Name: "perforations of " + x.Formation, Joins: []string{c.Name, behind.Name}, MD: unit.Length(at), Open: true,
			Note: "perforations are always open"}, way{})
	}
}

func (d *deriver) roof(s assembly.Space) string {
	if s.Under != nil {
		return s.Under.Name
	}
	return "its top"
}

// floor says what a space ends at.
func (d *deriver) floor(s assembly.Space) string {
	for _, o := range d.Spaces {
		if o.Around == s.Around && o.Under != nil && o.Top == s.Bottom {
			return o.Under.Name
		}
	}
	if s.Around > 0 {
		return "the lower end of " + d.Strings[s.Around-1].Name
	}
	if s.Around < 0 {
		return "its lower end"
	}
	return "the end of casing or hole"
}

// lines are the compartments of the control lines.
func (d *deriver) lines() {
	for _, l := range d.a.Lines {
		bore := float64(l.Size - 2*l.Wall)
		for _, name := range l.Names {
			deepest, by := 0.0, ""
			for i := range d.Strings {
				for k, p := range d.Strings[i].Pieces {
					x := d.a.Strings[i].Pieces[k]
					if (x.Line == name || x.OpenLine == name || x.CloseLine == name) && p.At > deepest {
						deepest, by = p.At, p.Name
					}
				}
			}
			c := Compartment{Name: name, TopMD: 0, BottomMD: unit.Length(deepest), Fluid: l.Fluid, Surface: true,
				Capacity: unit.Area(math.Pi / 4 * bore * bore), Note: fmt.Sprintf("control line from surface to the deepest that it moves, %s; capacity of its bore", by)}
			if d.a.Walls {
				c.Bores = []Bore{{To: c.BottomMD, Outer: unit.Length(bore), OuterWall: l.Wall}}
				c.Note += "; its bore and wall"
			}
			d.out.Compartments = append(d.out.Compartments, c)
		}
	}
}

func (d *deriver) port(p Port, w way) {
	if p.Joins[0] == p.Joins[1] || p.Joins[0] == "" || p.Joins[1] == "" {
		return // it joins a space with itself
	}
	if !w.shuts && d.linked(p.Joins[0], p.Joins[1]) {
		return // what is always open joins them already: a second way adds nothing but a ring
	}
	if d.joined(p.Name) { // screens need no names
		p.Name += " at " + d.text(p.MD)
	}
	w.joins, w.name = [2]string{p.Joins[0], p.Joins[1]}, p.Name
	d.out.Ports = append(d.out.Ports, p)
	d.ways = append(d.ways, w)
}

// linked tells whether what is always open joins two compartments.
func (d *deriver) linked(a, b string) bool {
	all := map[string]bool{a: true}
	d.grow(all)
	return all[b]
}

// grow adds what is joined to compartments by what is always open.
func (d *deriver) grow(all map[string]bool) {
	for grown := true; grown; {
		grown = false
		for _, w := range d.ways {
			if a, b := all[w.joins[0]], all[w.joins[1]]; !w.shuts && a != b {
				all[w.joins[0]], all[w.joins[1]] = true, true
				grown = true
			}
		}
	}
}

// ports are what joins the spaces.
func (d *deriver) ports() {
	inner := d.Innermost()
	for i := range d.Strings {
		s := &d.Strings[i]
		var plug *assembly.Placed // that closes the innermost string
		for k := range s.Pieces {
			p, x := &s.Pieces[k], &d.a.Strings[i].Pieces[k]
			if plug != nil && x.opensInside() {
				d.faults.New(p.Path, "%s stands below %s (%s), which closes the bore: under that the pipe counts with what is around it, and nothing can be moved from inside", p.Name, plug.Path, plug.Name)
				continue
			}
			if i == inner && (x.Kind == PlugPiece || x.Kind == IsolationValve && x.In != InWall) {
				plug = p
				if d.a.Strings[i].Closed {
					d.faults.New(p.Path, "%s closes the bore, and assembly.strings[%d].closed its lower end: it would open to nothing", p.Name, i)
				}
			}
			d.pieceport(i, p, x)
		}
		if i != inner && d.ClosedAbove(i) == nil {
			d.port(Port{Name: "top of " + s.Name, Joins: []string{d.space(i+1, s.Top), d.space(i, s.Top)}, MD: unit.Length(s.Top), Open: true,
				Note: "no packer closes the upper end of " + s.Name}, way{})
		}
		if !d.a.Strings[i].Closed && plug == nil {
			d.port(Port{Name: "lower end of " + s.Name, Joins: []string{d.space(d.Inside(i), s.Bottom), d.space(i, s.Bottom)}, MD: unit.Length(s.Bottom), Open: true,
				Note: "the lower end of " + s.Name + " isn't closed"}, way{})
		}
	}
}

// opensInside tells whether a piece opens to what is inside its string, or feels it.
func (x *Piece) opensInside() bool {
	switch x.Kind {
	case SleevePiece, IsolationValve, PlugPiece, ReleasePiece, SafetyValve, ScreenPiece:
		return true
	case PackerPiece:
		return len(x.Sets) > 0
	case PipeLength, SealStack, SealBore, OtherPiece:
	}
	return false
}

// pieceport is the port that a piece opens and shuts.
func (d *deriver) pieceport(i int, p *assembly.Placed, x *Piece) {
	inner := d.Innermost()
	in, out := d.space(d.Inside(i), p.At), d.space(i, p.At)
	at := unit.Length(p.At)
	switch x.Kind {
	case PackerPiece:
		if len(x.Sets) > 0 {
			d.port(Port{Name: p.Name + " bypass", Joins: []string{d.above(i, p.At), out}, MD: at, Open: true, Note: "around " + p.Name + " until it sets"}, way{shuts: true})
		}
	case SleevePiece:
		d.apart(i, p)
		d.port(Port{Name: p.Name, Joins: []string{in, out}, MD: at, Open: x.Open, Note: "through the wall of " + d.Strings[i].Name}, way{shuts: true, valve: true})
	case IsolationValve, PlugPiece:
		w := way{shuts: true, valve: true}
		note := "across the bore of " + d.Strings[i].Name
		switch {
		case x.In == InWall:
			d.apart(i, p)
			note = "through the wall of " + d.Strings[i].Name
		case i == inner:
			note += "; the pipe under it is open below and counts with what is around it"
		default:
			in, out = d.above(i+1, p.At), d.space(i+1, p.At)
		}
		d.port(Port{Name: p.Name, Joins: []string{in, out}, MD: at, Open: x.Open, Note: note}, w)
	case ReleasePiece:
		d.apart(i, p)
		d.port(Port{Name: "parted " + p.Name, Joins: []string{in, out}, MD: at, Note: "inside and around meet where " + p.Name + " parts"}, way{shuts: true})
	case ScreenPiece:
		mid := unit.Length(d.snap(p.Top + (p.Bottom-p.Top)/2))
		if x.At != 0 {
			mid = x.At
		}
		d.port(Port{Name: p.Name, Joins: []string{d.space(d.Inside(i), float64(mid)), d.space(i, float64(mid))}, MD: mid, Open: true, Note: "screens are always open; the middle of the first is taken for all between the same two"}, way{})
	case PipeLength, SealStack, SealBore, SafetyValve, OtherPiece:
	}
}

// apart checks that what opens a wall doesn't stand just where a space is divided.
func (d *deriver) apart(i int, p *assembly.Placed) {
	for _, k := range []int{i, d.Inside(i)} {
		if a, b := d.Above(k, p.At), d.At(k, p.At); a != b {
			c := d.Spaces[b].Under
			d.faults.New(p.Path, "%s opens the wall at %s, just where %s (%s) divides the space; on which side of it?", p.Name, d.text(unit.Length(p.At)), c.Path, c.Name)
		}
	}
}
