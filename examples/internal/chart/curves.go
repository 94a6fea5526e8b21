// Package chart draws curves, ranges and columns of fluids in the reader's units
// as SVG.
package chart

import (
	"io"

	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit/display"
)

// Axis is a scale: what it shows, and what that is for.
type Axis struct {
	Name string
	For  display.Purpose
}

// Curve is a line or a limit through values of quantities.
type Curve struct {
	Name string
	X, Y []any
}

// Level is a straight line at one value of y, such as a limit.
type Level struct {
	Name string
	Y    any
}

// Curves is a picture of curves in the reader's units. Downwards turns y over, for
// depths.
type Curves struct {
	Title     string
	X, Y      Axis
	Downwards bool
	Curves    []Curve
	Levels    []Level
}

// pens are those of the curves, told apart in print and by most colour-blind eyes.
var pens = []svg.Pen{
	{Ink: svg.Blue},
	{Ink: svg.Rust, Dashes: []float64{8, 4}},
	{Ink: svg.Moss, Dashes: []float64{3, 3}},
	{Ink: svg.Plum, Dashes: []float64{10, 3, 3, 3}},
	{Ink: svg.Ochre, Dashes: []float64{16, 5}},
}

// PenOf is how the i-th line of a picture is drawn.
func PenOf(i int) svg.Pen { return pens[i%len(pens)] }

// WriteSVG draws the picture in the units of s.
func (c Curves) WriteSVG(w io.Writer, s display.System) error {
	p := &Plot{Title: c.Title, X: Scale{Name: named(s, c.X, first(c.Curves, true))}, Y: Scale{Name: named(s, c.Y, first(c.Curves, false)), Down: c.Downwards}}
	for i, curve := range c.Curves {
		points := make([]svg.XY, len(curve.X))
		for k := range points {
			points[k] = svg.XY{X: in(s, curve.X[k], c.X.For), Y: in(s, curve.Y[k], c.Y.For)}
		}
		p.Line(curve.Name, PenOf(i), points...)
	}
	left, right := p.X.Least, p.X.Greatest
	for i, l := range c.Levels {
		y := in(s, l.Y, c.Y.For)
		p.Line(l.Name, PenOf(len(c.Curves)+i), svg.XY{X: left, Y: y}, svg.XY{X: right, Y: y})
	}
	p.X.fromNought()
	p.Y.fromNought()
	return p.WriteSVG(w)
}

// fromNought begins a scale at nought where its values come anywhere near.
func (s *Scale) fromNought() {
	if s.Least > 0 && s.Least < s.Greatest/2 {
		s.Least = 0
	}
}

// in reads a quantity in the reader's unit, a number as it is.
func in(s display.System, v any, p display.Purpose) float64 {
	if x, ok := v.(float64); ok {
		return x
	}
	return s.In(v, p)
}

func first(curves []Curve, x bool) any {
	for _, c := range curves {
		if x && len(c.X) > 0 {
			return c.X[0]
		}
		if !x && len(c.Y) > 0 {
			return c.Y[0]
		}
	}
	return nil
}

// named is a scale's name with the unit of a value on it.
func named(s display.System, a Axis, v any) string {
	if u := s.UnitOf(v, a.For); u != "" {
		return a.Name + ", " + u
	}
	return a.Name
}
