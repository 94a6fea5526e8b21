package chart

import (
	"io"

	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit/display"
)

// Ranges draws ranges of one quantity under each other on one scale: what acts
// where, what is permitted, and where the job stands.
type Ranges struct {
	Title string
	Scale Axis
	Rows  []Range
	Here  any    // a value that is marked right across, such as what is applied; nil for none
	Named string // what it is
}

// Range is a bar from one value to another; the same twice is a mark. A range that
// is permitted is drawn hollow, one that something happens in is filled.
type Range struct {
	Name      string
	From, To  any
	Permitted bool
}

const rangeHalf = 0.28 // of the room of a row

// WriteSVG draws the picture in the units of s.
func (r Ranges) WriteSVG(w io.Writer, s display.System) error {
	p := &Plot{Title: r.Title, X: Scale{Name: r.Scale.Name}, Y: Scale{NoGrid: true, Down: true, Names: []string{}}}
	if len(r.Rows) > 0 {
		p.X.Name = named(s, r.Scale, r.Rows[0].From)
	}
	for i, row := range r.Rows {
		p.Y.Names = append(p.Y.Names, row.Name)
		y, from, to := float64(i), in(s, row.From, r.Scale.For), in(s, row.To, r.Scale.For)
		if from == to {
			p.Line("", svg.Pen{Ink: svg.Blue, Width: 3}, svg.XY{X: from, Y: y - rangeHalf}, svg.XY{X: from, Y: y + rangeHalf})
			continue
		}
		fill, outline := svg.Tint, svg.Pen{Ink: svg.Blue}
		if row.Permitted {
			fill, outline.Dashes = svg.Pale, []float64{5, 3}
		}
		p.area(row.Name, fill, outline, svg.XY{X: from, Y: y - rangeHalf}, svg.XY{X: to, Y: y + rangeHalf})
	}
	top, bottom := -0.6, float64(len(r.Rows))-0.4
	if r.Here != nil {
		x := in(s, r.Here, r.Scale.For)
		p.Line(r.Named, PenOf(1), svg.XY{X: x, Y: top}, svg.XY{X: x, Y: bottom})
	}
	p.X.Room(0.04)
	p.X.fromNought()
	p.Y.Least, p.Y.Greatest = top, bottom
	return p.WriteSVG(w)
}

// area draws a box that isn't in the key; its name is for faults.
func (p *Plot) area(name, fill string, outline svg.Pen, a, b svg.XY) {
	key := p.key
	p.Area(name, fill, outline, a, svg.XY{X: b.X, Y: a.Y}, b, svg.XY{X: a.X, Y: b.Y})
	p.key = key
}
