package sketch

import (
	"errors"
	"fmt"
	"strings"
)

// Point is a place in a chart, in the units of its axes.
type Point struct{ X, Y float64 }

// Line is a curve through points. Without a name it isn't in the legend.
type Line struct {
	Name   string
	Points []Point
}

// Area is a shaded polygon. Ink chooses its colour, as the number of a line.
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

// Axis is one side of a chart: what it shows with its unit, and its ends. Ends
// that are both zero are taken from what is drawn. Down turns it round, as for a
// depth.
type Axis struct {
	Name            string
	Least, Greatest float64
	Down            bool
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
	if err := c.check(); err != nil {
		return "", err
	}
	const top, left, right, foot = 32.0, 66.0, 14.0, 300.0
	x, y := c.scales()
	x.from, x.to = left, wide-right
	y.from, y.to = foot, top
	if c.Y.Down {
		y.from, y.to = top, foot
	}
	if c.X.Down {
		x.from, x.to = x.to, x.from
	}
	var d canvas
	at, names := x.ticks(5)
	for i, v := range at {
		d.line(x.at(v), top, x.at(v), foot, "grid")
		d.text(x.at(v), foot+row/2+4, "middle", names[i])
	}
	at, names = y.ticks(6)
	for i, v := range at {
		d.line(left, y.at(v), wide-right, y.at(v), "grid")
		d.text(left-8, y.at(v), "end", names[i])
	}
	d.text(14, 15, "start", c.Y.Name)
	d.text(wide-right, foot+2*row-2, "end", c.X.Name)
	clip := clipName(c.Title)
	d.add(`<clipPath id="%s"><rect x="%.1f" y="%.1f" width="%.1f" height="%.1f"/></clipPath><g clip-path="url(#%s)">`, clip, left, top, wide-left-right, foot-top, clip)
	for _, a := range c.Areas {
		d.add(`<polygon points="%s" class="wash f%d"/>`, path(a.Points, x, y), a.Ink%len(dashes))
	}
	for i, l := range c.Lines {
		d.add(`<polyline points="%s" class="curve s%d" stroke-dasharray="%s"/>`, path(l.Points, x, y), i%len(dashes), dashes[i%len(dashes)])
	}
	d.add(`</g>`)
	d.add(`<path d="M%.1f %.1fV%.1fH%.1f" class="axis"/>`, left, top, foot, wide-right)
	for _, m := range c.Marks {
		d.mark(m, x.at(m.X), y.at(m.Y), (left+wide-right)/2)
	}
	var legend []string
	for _, l := range c.Lines {
		legend = append(legend, l.Name)
	}
	for _, a := range c.Areas {
		legend = append(legend, a.Name)
	}
	d.high = d.legend(legend, foot+3*row+2, func(i int, x, y float64) {
		if i < len(c.Lines) {
			d.add(`<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f" class="curve s%d" stroke-dasharray="%s"/>`, x, y, x+30, y, i%len(dashes), dashes[i%len(dashes)])
			return
		}
		d.box(x, y-6, 30, 12, fmt.Sprintf("wash f%d", c.Areas[i-len(c.Lines)].Ink%len(dashes)))
	})
	return d.svg(c.Title), nil
}

// mark draws a point with its name on the side where there is more room.
func (d *canvas) mark(m Mark, x, y, middle float64) {
	d.dot(x, y, m.Ink)
	if x > middle {
		d.text(x-8, y-9, "end", m.Name)
		return
	}
	d.text(x+8, y-9, "start", m.Name)
}

// scales spans both axes.
func (c Chart) scales() (x, y scale) {
	var xs, ys []float64
	each := func(points []Point) {
		for _, p := range points {
			xs, ys = append(xs, p.X), append(ys, p.Y)
		}
	}
	for _, l := range c.Lines {
		each(l.Points)
	}
	for _, a := range c.Areas {
		each(a.Points)
	}
	for _, m := range c.Marks {
		each([]Point{m.Point})
	}
	return c.X.scale(xs), c.Y.scale(ys)
}

func (a Axis) scale(values []float64) scale {
	if a.Least != 0 || a.Greatest != 0 {
		return scale{least: a.Least, greatest: a.Greatest}
	}
	least, greatest := spanOf(values)
	return scale{least: least, greatest: greatest}
}

func (c Chart) check() error {
	var errs []error
	for _, a := range []Axis{c.X, c.Y} {
		err := finite("an end of the axis "+a.Name, a.Least, a.Greatest)
		if err == nil && a.Least > a.Greatest {
			err = fmt.Errorf("sketch: axis %s goes from %g to %g; must end above its beginning", a.Name, a.Least, a.Greatest)
		}
		errs = append(errs, err)
	}
	each := func(what string, points []Point) {
		for i, p := range points {
			errs = append(errs, finite(fmt.Sprintf("point %d of %s", i+1, what), p.X, p.Y))
		}
	}
	for _, l := range c.Lines {
		each("line "+l.Name, l.Points)
	}
	for _, a := range c.Areas {
		each("area "+a.Name, a.Points)
	}
	for _, m := range c.Marks {
		errs = append(errs, finite("mark "+m.Name, m.X, m.Y))
	}
	return errors.Join(errs...)
}

// path writes points as SVG does.
func path(points []Point, x, y scale) string {
	var s []string
	for _, p := range points {
		s = append(s, fmt.Sprintf("%.1f,%.1f", x.at(p.X), y.at(p.Y)))
	}
	return strings.Join(s, " ")
}

// clipName is a name for the clip of this picture, so that two pictures of one
// page don't share one.
func clipName(title string) string {
	var sum uint32 = 2166136261 // FNV-1a
	for _, b := range []byte(title) {
		sum = (sum ^ uint32(b)) * 16777619
	}
	return fmt.Sprintf("clip-%08x", sum)
}
