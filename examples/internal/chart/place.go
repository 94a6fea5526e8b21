package chart

import (
	"math"

	"completion.example/examples/internal/svg"
)

// How words of a plot are set.
var (
	titled   = svg.Lettering{Size: 15, Anchor: "middle", Bold: true}
	labelled = svg.Lettering{Size: 13, Anchor: "middle"}
	marked   = svg.Lettering{Size: 12}
	keyed    = svg.Lettering{Size: 12.5}
)

// Rooms of a plot, in pixels.
const (
	edge    = 10 // around it
	line    = 19 // of words
	tooth   = 5  // of a mark of a scale
	between = 22 // entries of the key
)

// frame is where a plot's scales lie.
type frame struct{ left, right, top, bottom float64 }

// draw draws the plot between x and x + wide.
func (p *Plot) draw(c *svg.Canvas, x, wide, high float64) {
	p.X.open()
	p.Y.open()
	if !p.Clear {
		c.Box(svg.Paper, svg.Pen{}, svg.XY{X: x}, svg.XY{X: x + wide, Y: high})
	}
	down, across := p.Y.marks(), p.X.marks()
	room := 0.0
	for _, t := range down {
		room = math.Max(room, marked.Room(t.label))
	}
	if p.Clear { // the page's letters, that may be wider
		room *= 1.3
	}
	f := frame{left: x + edge + line + room + tooth, right: x + wide - edge - 8, top: edge + 4, bottom: high - edge}
	if n := len(across); n > 0 {
		f.right -= marked.Room(across[n-1].label) / 4
	}
	if p.Title != "" {
		c.Words(titled, svg.XY{X: x + wide/2, Y: edge + 14}, p.Title)
		f.top += 24
	}
	rows := p.rows(wide - 2*edge)
	f.bottom -= line * float64(len(rows))
	p.legend(c, rows, x+edge, f.bottom)
	if p.X.Name != "" {
		c.Words(labelled, svg.XY{X: (f.left + f.right) / 2, Y: f.bottom - 6}, p.X.Name)
		f.bottom -= line
	}
	f.bottom -= line + tooth
	if p.Y.Name != "" {
		turned := labelled
		turned.Turned = true
		c.Words(turned, svg.XY{X: x + edge + 10, Y: (f.top + f.bottom) / 2}, p.Y.Name)
	}
	at := p.placed(f)
	p.scales(c, f, at, across, down)
	for _, draw := range p.things {
		draw(c, at)
	}
}

// placed tells where in a frame a point lies.
func (p *Plot) placed(f frame) func(svg.XY) svg.XY {
	return func(v svg.XY) svg.XY {
		across, up := (v.X-p.X.Least)/p.X.Span(), (v.Y-p.Y.Least)/p.Y.Span()
		if p.Y.Down {
			up = 1 - up
		}
		return svg.XY{X: f.left + across*(f.right-f.left), Y: f.bottom - up*(f.bottom-f.top)}
	}
}

// scales draws both scales with their marks.
func (p *Plot) scales(c *svg.Canvas, f frame, at func(svg.XY) svg.XY, across, down []tick) {
	faint, firm := svg.Pen{Ink: svg.Rule}, svg.Pen{Ink: svg.Ink}
	for _, t := range across {
		x := at(svg.XY{X: t.at, Y: p.Y.Least}).X
		if !p.X.NoGrid {
			c.Line(faint, svg.XY{X: x, Y: f.top}, svg.XY{X: x, Y: f.bottom})
		}
		c.Line(firm, svg.XY{X: x, Y: f.bottom}, svg.XY{X: x, Y: f.bottom + tooth})
		l := marked
		l.Anchor = "middle"
		c.Words(l, svg.XY{X: x, Y: f.bottom + line - 1}, t.label)
	}
	for _, t := range down {
		y := at(svg.XY{X: p.X.Least, Y: t.at}).Y
		if !p.Y.NoGrid {
			c.Line(faint, svg.XY{X: f.left, Y: y}, svg.XY{X: f.right, Y: y})
		}
		c.Line(firm, svg.XY{X: f.left - tooth, Y: y}, svg.XY{X: f.left, Y: y})
		l := marked
		l.Anchor = "end"
		c.Words(l, svg.XY{X: f.left - tooth - 2, Y: y + 4}, t.label)
	}
	c.Line(firm, svg.XY{X: f.left, Y: f.top}, svg.XY{X: f.left, Y: f.bottom}, svg.XY{X: f.right, Y: f.bottom})
}

// rows parts the key into rows that have room.
func (p *Plot) rows(wide float64) [][]entry {
	var rows [][]entry
	used := math.Inf(1)
	for _, e := range p.key {
		takes := sampleWide + 6 + keyed.Room(e.name) + between
		if used+takes > wide+between {
			rows, used = append(rows, nil), 0
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], e)
		used += takes
	}
	return rows
}

func (p *Plot) legend(c *svg.Canvas, rows [][]entry, left, top float64) {
	for i, row := range rows {
		x, y := left+4, top+line*float64(i)+line/2
		for _, e := range row {
			e.sample(c, svg.XY{X: x + sampleWide/2, Y: y})
			c.Words(keyed, svg.XY{X: x + sampleWide + 6, Y: y + 4}, e.name)
			x += sampleWide + 6 + keyed.Room(e.name) + between
		}
	}
}
