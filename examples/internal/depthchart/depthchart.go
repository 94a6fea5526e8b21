// Package depthchart draws quantities along a well as SVG: depth downwards,
// panels side by side on one depth scale, in colours that can be told apart in
// print and by most colour-blind eyes, each curve dashed in its own way too.
package depthchart

import (
	"errors"
	"fmt"
	"image/color"
	"io"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Chart is panels side by side.
type Chart struct {
	Units  display.System // of the depth scale; the panels' values are numbers in units of the caller's choice
	Depth  []unit.Length  // of all curves, top down
	Panels []Panel
}

// Panel is one set of curves over a common scale.
type Panel struct {
	Title, Label string
	Curves       []Curve
	Marks        []Mark
}

// Curve is a value at every depth of the chart.
type Curve struct {
	Name   string
	Values []float64
}

// Mark is a vertical line at a value, such as a limit.
type Mark struct {
	Name  string
	Value float64
}

// Size of a panel.
const (
	panelWidth  = 11 * vg.Centimeter
	panelHeight = 16 * vg.Centimeter
	margin      = vg.Centimeter / 4
)

// ink are the curves' colours and dashes.
func ink(i int) (color.Color, []vg.Length) {
	colours := []color.Color{color.RGBA{R: 0x1b, G: 0x4f, B: 0x72, A: 0xff}, color.RGBA{R: 0xb0, G: 0x3a, B: 0x2e, A: 0xff}, color.RGBA{R: 0x6c, G: 0x7a, B: 0x14, A: 0xff}, color.RGBA{R: 0x7d, G: 0x3c, B: 0x98, A: 0xff}}
	dashes := [][]vg.Length{nil, {vg.Points(6), vg.Points(3)}, {vg.Points(2), vg.Points(2)}, {vg.Points(8), vg.Points(2), vg.Points(2), vg.Points(2)}}
	return colours[i%len(colours)], dashes[i%len(dashes)]
}

// WriteSVG draws the chart.
func (c Chart) WriteSVG(w io.Writer) error {
	if len(c.Depth) < 2 || len(c.Panels) == 0 {
		return errors.New("depthchart: nothing to draw: permitted two depths and one panel or more")
	}
	canvas := vgsvg.New(panelWidth*vg.Length(len(c.Panels)), panelHeight)
	for i, p := range c.Panels {
		panel, err := c.panel(p)
		if err != nil {
			return err
		}
		area := draw.New(canvas)
		left := panelWidth * vg.Length(i)
		panel.Draw(draw.Crop(area, left+margin, left+panelWidth-margin-area.Max.X, margin, -margin))
	}
	_, err := canvas.WriteTo(w)
	return err
}

func (c Chart) panel(p Panel) (*plot.Plot, error) {
	out := plot.New()
	out.Title.Text, out.X.Label.Text, out.Y.Label.Text = p.Title, p.Label, "measured depth, "+c.Units.Unit(display.Depth)
	out.BackgroundColor = color.White
	// Depth runs down: the scale is turned over.
	out.Y.Scale = plot.InvertedScale{Normalizer: plot.LinearScale{}}
	out.Add(plotter.NewGrid())
	out.Title.Padding = vg.Points(6)
	out.Legend.Top, out.Legend.Left = false, false
	for i, curve := range p.Curves {
		if len(curve.Values) != len(c.Depth) {
			return nil, fmt.Errorf("depthchart: curve %q has %d values for %d depths", curve.Name, len(curve.Values), len(c.Depth))
		}
		points := make(plotter.XYs, len(c.Depth))
		for k := range points {
			points[k] = plotter.XY{X: curve.Values[k], Y: c.Units.In(c.Depth[k], display.Depth)}
		}
		if err := add(out, i, curve.Name, points); err != nil {
			return nil, err
		}
	}
	for i, m := range p.Marks {
		points := plotter.XYs{{X: m.Value, Y: c.Units.In(c.Depth[0], display.Depth)}, {X: m.Value, Y: c.Units.In(c.Depth[len(c.Depth)-1], display.Depth)}}
		if err := add(out, len(p.Curves)+i, m.Name, points); err != nil {
			return nil, err
		}
	}
	// Room under the deepest node for the longest legend, so that it covers no curve.
	longest := 0
	for _, each := range c.Panels {
		longest = max(longest, len(each.Curves)+len(each.Marks))
	}
	out.Y.Max += 0.035 * float64(longest) * (out.Y.Max - out.Y.Min)
	return out, nil
}

func add(p *plot.Plot, i int, name string, points plotter.XYs) error {
	line, err := plotter.NewLine(points)
	if err != nil {
		return fmt.Errorf("depthchart: %s: %w", name, err)
	}
	line.Width = vg.Points(1.4)
	line.Color, line.Dashes = ink(i)
	p.Add(line)
	p.Legend.Add(name, line)
	return nil
}
