package picture

import (
	"errors"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
)

// Point is a place in a chart, in the units of its axes.
type Point struct{ X, Y float64 }

// Line is a curve through points. Without a name it isn't in the key.
type Line struct {
	Name   string
	Points []Point
}

// Area is a shaded polygon. Ink chooses its outline, as the number of a line.
type Area struct {
	Name   string
	Points []Point
	Ink    int
}

// Mark is a point with its name beside it. Ink chooses its colour.
type Mark struct {
	Name string
	Point
	Ink int
}

// Chart is a plot of curves, shaded areas and marked points on two axes.
type Chart struct {
	Title string // in words, for those who don't see the picture
	X, Y  Axis
	Areas []Area
	Lines []Line
	Marks []Mark
}

// SVG draws the chart. Its errors name what can't be drawn.
func (c Chart) SVG() (string, error) {
	if err := errors.Join(c.X.fault(), c.Y.fault()); err != nil {
		return "", err
	}
	p := &chart.Plot{X: chart.Scale{Name: c.X.Name, Down: c.X.Down}, Y: chart.Scale{Name: c.Y.Name, Down: c.Y.Down}}
	for _, a := range c.Areas {
		p.Area(a.Name, svg.Pale, svg.Pen{Ink: ink(a.Ink)}, points(a.Points)...)
	}
	for i, l := range c.Lines {
		p.Line(l.Name, chart.PenOf(i), points(l.Points)...)
	}
	for _, m := range c.Marks {
		p.Marks("", chart.Dot, ink(m.Ink), 4, svg.XY(m.Point))
	}
	c.X.end(&p.X)
	c.Y.end(&p.Y)
	for _, m := range c.Marks {
		l, right := svg.Lettering{Size: 13, Halo: true}, 8.0
		if m.X > (p.X.Least+p.X.Greatest)/2 { // where there is more room
			l.Anchor, right = "end", -8
		}
		if m.Name != "" {
			p.Words(l, svg.XY(m.Point), right, -8, m.Name)
		}
	}
	return finished(p, c.Title, 370)
}

func points(from []Point) []svg.XY {
	to := make([]svg.XY, len(from))
	for i, p := range from {
		to[i] = svg.XY(p)
	}
	return to
}
