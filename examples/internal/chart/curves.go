package chart

import (
	"image/color"
	"io"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
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

// inks are the colours and dashes of the curves, told apart in print and by most
// colour-blind eyes.
var inks = []struct {
	color  color.Color
	dashes []vg.Length
}{
	{color.RGBA{R: 0x1b, G: 0x4f, B: 0x72, A: 0xff}, nil},
	{color.RGBA{R: 0xb0, G: 0x3a, B: 0x2e, A: 0xff}, []vg.Length{6, 3}},
	{color.RGBA{R: 0x6c, G: 0x7a, B: 0x14, A: 0xff}, []vg.Length{2, 2}},
	{color.RGBA{R: 0x7d, G: 0x3c, B: 0x98, A: 0xff}, []vg.Length{8, 2, 2, 2}},
	{color.RGBA{R: 0x80, G: 0x60, B: 0x20, A: 0xff}, []vg.Length{12, 4}},
}

// legendShare is the part of the height that a line of the legend takes.
const legendShare = 0.065

// WriteSVG draws the picture in the units of s.
func (c Curves) WriteSVG(w io.Writer, s display.System) error {
	p := plot.New()
	p.Title.Text, p.Title.Padding = c.Title, vg.Points(6)
	p.BackgroundColor = color.White
	p.X.Label.Text, p.Y.Label.Text = c.X.Name, c.Y.Name
	p.X.Tick.Marker, p.Y.Tick.Marker = Plain{}, Plain{}
	p.Add(plotter.NewGrid())
	left, right := math.Inf(1), math.Inf(-1)
	var lines []Line
	for _, curve := range c.Curves {
		xy := make(plotter.XYs, len(curve.X))
		for i := range xy {
			xy[i] = plotter.XY{X: in(s, curve.X[i], c.X.For), Y: in(s, curve.Y[i], c.Y.For)}
			left, right = math.Min(left, xy[i].X), math.Max(right, xy[i].X)
		}
		lines = append(lines, Line{Name: curve.Name, Points: xy})
	}
	for _, l := range c.Levels {
		y := in(s, l.Y, c.Y.For)
		lines = append(lines, Line{Name: l.Name, Points: plotter.XYs{{X: left, Y: y}, {X: right, Y: y}}})
	}
	for i := range lines {
		ink := inks[i%len(inks)]
		lines[i].Color, lines[i].Dashes = ink.color, ink.dashes
	}
	if err := Add(p, lines...); err != nil {
		return err
	}
	p.X.Label.Text = labelled(s, c.X, first(c.Curves, true))
	p.Y.Label.Text = labelled(s, c.Y, first(c.Curves, false))
	p.X.Min, p.Y.Min = fromNought(p.X.Min, p.X.Max), fromNought(p.Y.Min, p.Y.Max)
	room := legendShare * float64(len(lines)) * (p.Y.Max - p.Y.Min)
	p.Legend.Padding = vg.Points(3)
	p.Y.Max += room
	if p.Legend.Top = true; c.Downwards {
		p.Y.Scale = plot.InvertedScale{Normalizer: plot.LinearScale{}}
		p.Legend.Top = false
	}
	return WriteSVG(w, p)
}

// fromNought begins a scale at nought where its values come anywhere near.
func fromNought(lo, hi float64) float64 {
	if lo > 0 && lo < hi/2 {
		return 0
	}
	return lo
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

func labelled(s display.System, a Axis, v any) string {
	if u := s.UnitOf(v, a.For); u != "" {
		return a.Name + ", " + u
	}
	return a.Name
}

// Plain labels a scale in as few digits as it takes.
type Plain struct{}

// Ticks returns the ticks of a scale: some five at round values, with labels.
func (Plain) Ticks(lo, hi float64) []plot.Tick {
	span := hi - lo
	if !(span > 0) || math.IsInf(span, 0) {
		return plot.DefaultTicks{}.Ticks(lo, hi)
	}
	step := math.Pow(10, math.Floor(math.Log10(span/labels)))
	for _, k := range []float64{1, 2, 5, 10} {
		if span/(k*step) <= labels+2 {
			step *= k
			break
		}
	}
	var ticks []plot.Tick
	for i := math.Ceil(lo / step); i*step <= hi; i++ {
		ticks = append(ticks, plot.Tick{Value: i * step, Label: unit.Significant(math.Round(i*step*1e9)/1e9, 5)})
	}
	return ticks
}

// labels on a scale, about.
const labels = 5
