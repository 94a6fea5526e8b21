package chart

import (
	"errors"
	"fmt"
	"io"
	"math"

	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit"
)

// Plot is lines, areas, marks and words over two scales. Its key stands under it,
// where no line runs through it.
type Plot struct {
	Title  string
	X, Y   Scale
	Clear  bool // no paper behind it
	things []func(c *svg.Canvas, at func(svg.XY) svg.XY)
	key    []entry
	faults []error
}

// Scale is one side of a plot. What is drawn widens it.
type Scale struct {
	Name            string
	Least, Greatest float64
	Down            bool // grows downwards
	NoGrid          bool
	Whole           bool                   // marks stand at whole numbers alone: of what is counted
	Names           []string               // of the whole numbers from 0 on, instead of numbers
	Mark            func(x float64) string // writes a number; nil: in as few digits as it takes
	widened         bool
}

// entry is a line of the key.
type entry struct {
	name   string
	sample func(c *svg.Canvas, at svg.XY) // in a place of sampleWide by 10, at its middle
}

const sampleWide = 28

// Line draws a line through points, named in the key unless name is empty. Values
// that aren't finite, and no values at all, are faults that WriteSVG reports.
func (p *Plot) Line(name string, pen svg.Pen, points ...svg.XY) {
	if pen.Width == 0 {
		pen.Width = lineWidth
	}
	if !p.take("line", name, points) {
		return
	}
	p.things = append(p.things, func(c *svg.Canvas, at func(svg.XY) svg.XY) { c.Line(pen, all(points, at)...) })
	p.named(name, func(c *svg.Canvas, at svg.XY) {
		c.Line(pen, svg.XY{X: at.X - sampleWide/2, Y: at.Y}, svg.XY{X: at.X + sampleWide/2, Y: at.Y})
	})
}

const lineWidth = 2

// Area draws an area.
func (p *Plot) Area(name, fill string, outline svg.Pen, points ...svg.XY) {
	if !p.take("area", name, points) {
		return
	}
	p.things = append(p.things, func(c *svg.Canvas, at func(svg.XY) svg.XY) { c.Area(fill, outline, all(points, at)...) })
	p.named(name, func(c *svg.Canvas, at svg.XY) {
		c.Box(fill, outline, svg.XY{X: at.X - sampleWide/2, Y: at.Y - 5}, svg.XY{X: at.X + sampleWide/2, Y: at.Y + 5})
	})
}

// Shape is how a point is marked.
type Shape int

// The shapes.
const (
	Cross Shape = iota
	Dot
	Wedge
)

// Marks draws a mark at each point.
func (p *Plot) Marks(name string, shape Shape, ink string, radius float64, points ...svg.XY) {
	if !p.take("mark", name, points) {
		return
	}
	mark := func(c *svg.Canvas, at svg.XY) {
		r := radius
		switch shape {
		case Dot:
			c.Circle(ink, svg.Pen{}, at, r)
		case Wedge:
			c.Area(ink, svg.Pen{}, svg.XY{X: at.X, Y: at.Y - r}, svg.XY{X: at.X + r, Y: at.Y + r}, svg.XY{X: at.X - r, Y: at.Y + r})
		default:
			pen := svg.Pen{Ink: ink, Width: 2}
			c.Line(pen, svg.XY{X: at.X - r, Y: at.Y - r}, svg.XY{X: at.X + r, Y: at.Y + r})
			c.Line(pen, svg.XY{X: at.X - r, Y: at.Y + r}, svg.XY{X: at.X + r, Y: at.Y - r})
		}
	}
	p.things = append(p.things, func(c *svg.Canvas, at func(svg.XY) svg.XY) {
		for _, point := range points {
			mark(c, at(point))
		}
	})
	p.named(name, mark)
}

// Words sets a text at a point, moved by right and down in pixels.
func (p *Plot) Words(l svg.Lettering, point svg.XY, right, down float64, text string) {
	if !p.take("words", text, []svg.XY{point}) {
		return
	}
	p.things = append(p.things, func(c *svg.Canvas, at func(svg.XY) svg.XY) {
		where := at(point)
		c.Words(l, svg.XY{X: where.X + right, Y: where.Y + down}, text)
	})
}

// Span is how far the scale goes.
func (s *Scale) Span() float64 { return s.Greatest - s.Least }

// Room widens the scale at both ends by a share of it.
func (s *Scale) Room(share float64) {
	d := share * s.Span()
	s.Least, s.Greatest = s.Least-d, s.Greatest+d
}

// Reach widens the scale to a value.
func (s *Scale) Reach(x float64) {
	if !s.widened {
		s.Least, s.Greatest, s.widened = x, x, true
	}
	s.Least, s.Greatest = math.Min(s.Least, x), math.Max(s.Greatest, x)
}

// take widens the scales to the points, or says what is wrong with them.
func (p *Plot) take(what, name string, points []svg.XY) bool {
	if len(points) == 0 {
		p.faults = append(p.faults, fmt.Errorf("chart: %s %q has no points", what, name))
		return false
	}
	for _, at := range points {
		if v := at.X + at.Y; math.IsNaN(v) || math.IsInf(v, 0) {
			p.faults = append(p.faults, fmt.Errorf("chart: %s %q: the point %v, %v isn't finite", what, name, at.X, at.Y))
			return false
		}
	}
	for _, at := range points {
		p.X.Reach(at.X)
		p.Y.Reach(at.Y)
	}
	return true
}

func (p *Plot) named(name string, sample func(*svg.Canvas, svg.XY)) {
	if name != "" {
		p.key = append(p.key, entry{name, sample})
	}
}

func all(points []svg.XY, at func(svg.XY) svg.XY) []svg.XY {
	moved := make([]svg.XY, len(points))
	for i, point := range points {
		moved[i] = at(point)
	}
	return moved
}

// tick is a mark of a scale.
type tick struct {
	at    float64
	label string
}

// marks of a scale, some five at round values.
func (s *Scale) marks() []tick {
	var ticks []tick
	if s.Names != nil {
		for i, name := range s.Names {
			ticks = append(ticks, tick{float64(i), name})
		}
		return ticks
	}
	step := math.Pow(10, math.Floor(math.Log10(s.Span()/labels)))
	for _, k := range []float64{1, 2, 5, 10} {
		if s.Span()/(k*step) <= labels+2 {
			step *= k
			break
		}
	}
	if s.Whole {
		step = math.Max(step, 1)
	}
	for i := math.Ceil(s.Least/step - 1e-9); i*step <= s.Greatest+1e-9*step; i++ {
		x := math.Round(i*step*1e9)/1e9 + 0
		label := unit.Significant(x, 5)
		if s.Mark != nil {
			label = s.Mark(x)
		}
		ticks = append(ticks, tick{x, label})
	}
	return ticks
}

// labels on a scale, about.
const labels = 5

// open gives a scale without a span some.
func (s *Scale) open() {
	if !(s.Span() > 0) {
		d := math.Max(math.Abs(s.Least)/10, 0.5)
		s.Least, s.Greatest = s.Least-d, s.Greatest+d
	}
}

// Row writes plots beside each other, each that many pixels wide and high.
func Row(w io.Writer, wide, high float64, name string, plots ...*Plot) error {
	c := &svg.Canvas{Wide: wide * float64(len(plots)), High: high, Name: name}
	var faults []error
	for i, p := range plots {
		if len(p.things) == 0 && p.faults == nil {
			p.faults = append(p.faults, fmt.Errorf("chart: %q has nothing in it", p.Title))
		}
		if p.faults != nil {
			faults = append(faults, p.faults...)
			continue
		}
		p.draw(c, wide*float64(i), wide, high)
	}
	if faults != nil {
		return errors.Join(faults...)
	}
	if _, err := c.WriteTo(w); err != nil {
		return fmt.Errorf("chart: %w", err)
	}
	return nil
}

// WriteSVG writes the plot in the size of a picture of one.
func (p *Plot) WriteSVG(w io.Writer) error { return Row(w, 720, 480, p.Title, p) }
