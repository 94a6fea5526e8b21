package chart

import (
	"fmt"
	"image/color"
	"io"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Stacks draws fluids that stand upon each other, side by side on one depth scale.
type Stacks struct {
	Title  string
	Depth  string // of the scale
	Bottom unit.Length
	Bars   []Bar
}

// Bar is one column of fluids, with what is said under it.
type Bar struct {
	Name  string
	Parts []Filled
	Marks []Mark
}

// Filled is a fluid from one depth to another; the denser, the darker.
type Filled struct {
	Name        string
	Top, Bottom unit.Length
	Density     unit.Density
}

// Mark is a level in a bar, with words.
type Mark struct {
	Name  string
	Depth unit.Length
}

const (
	barHalf  = 0.32 // of the room of a bar
	heaviest = 2200 // kg/m³: drawn darkest
)

// shade is the fill of a fluid: light ones light, no colour that means anything.
func shade(rho unit.Density) color.Color {
	share := math.Max(0, math.Min(1, float64(rho)/heaviest))
	mix := func(light, dark float64) uint8 { return uint8(light + (dark-light)*share) }
	return color.RGBA{R: mix(246, 60), G: mix(240, 105), B: mix(222, 125), A: 0xff}
}

// WriteSVG draws the picture in the units of s.
func (c Stacks) WriteSVG(w io.Writer, s display.System) error {
	p := plot.New()
	p.Title.Text, p.Title.Padding = c.Title, vg.Points(6)
	p.BackgroundColor = color.White
	p.Y.Label.Text = c.Depth + ", " + s.UnitOf(c.Bottom, display.Depth)
	p.Y.Tick.Marker = Plain{}
	p.Y.Scale = plot.InvertedScale{Normalizer: plot.LinearScale{}}
	names := make([]string, len(c.Bars))
	for i, b := range c.Bars {
		names[i] = b.Name
		if err := c.bar(p, s, float64(i), b); err != nil {
			return err
		}
	}
	p.NominalX(names...)
	p.X.Min, p.X.Max = -0.6, float64(len(c.Bars))-0.4
	p.Y.Min, p.Y.Max = 0, s.In(c.Bottom, display.Depth)
	return WriteSVG(w, p)
}

func (c Stacks) bar(p *plot.Plot, s display.System, x float64, b Bar) error {
	outline := draw.LineStyle{Color: color.Gray{Y: 60}, Width: vg.Points(0.8)}
	box := func(top, bottom unit.Length, fill color.Color) error {
		t, d := s.In(top, display.Depth), s.In(bottom, display.Depth)
		poly, err := plotter.NewPolygon(plotter.XYs{{X: x - barHalf, Y: t}, {X: x + barHalf, Y: t}, {X: x + barHalf, Y: d}, {X: x - barHalf, Y: d}})
		if err != nil {
			return fmt.Errorf("chart: %s: %w", b.Name, err)
		}
		poly.Color, poly.LineStyle = fill, outline
		p.Add(poly)
		return nil
	}
	if err := box(0, c.Bottom, color.White); err != nil {
		return err
	}
	var words plotter.XYLabels
	say := func(text string, depth unit.Length) {
		words.XYs = append(words.XYs, plotter.XY{X: x, Y: s.In(depth, display.Depth)})
		words.Labels = append(words.Labels, text)
	}
	for _, f := range b.Parts {
		if f.Bottom <= f.Top {
			continue
		}
		if err := box(f.Top, f.Bottom, shade(f.Density)); err != nil {
			return err
		}
		if f.Bottom-f.Top > c.Bottom/25 { // room for its name
			say(f.Name, f.Top+(f.Bottom-f.Top)/2)
		}
	}
	for _, m := range b.Marks {
		say(m.Name, m.Depth)
	}
	if len(words.Labels) == 0 {
		return nil
	}
	labels, err := plotter.NewLabels(words)
	if err != nil {
		return fmt.Errorf("chart: %s: %w", b.Name, err)
	}
	for i := range labels.TextStyle {
		labels.TextStyle[i].XAlign, labels.TextStyle[i].YAlign = draw.XCenter, draw.YCenter
		labels.TextStyle[i].Font.Size = vg.Points(10)
	}
	p.Add(labels)
	return nil
}
