// Package depthchart draws quantities along a well as SVG: depth downwards,
// panels side by side on one depth scale, in colours that can be told apart in
// print and by most colour-blind eyes, each curve dashed in its own way too.
package depthchart

import (
	"errors"
	"fmt"
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
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

// Size of a panel, in pixels.
const (
	panelWidth  = 430
	panelHeight = 620
)

// WriteSVG draws the chart.
func (c Chart) WriteSVG(w io.Writer) error {
	if len(c.Depth) < 2 || len(c.Panels) == 0 {
		return errors.New("depthchart: nothing to draw: permitted two depths and one panel or more")
	}
	var plots []*chart.Plot
	name := ""
	for _, p := range c.Panels {
		panel, err := c.panel(p)
		if err != nil {
			return err
		}
		plots = append(plots, panel)
		name += p.Title + ". "
	}
	return chart.Row(w, panelWidth, panelHeight, name, plots...)
}

func (c Chart) panel(p Panel) (*chart.Plot, error) {
	out := &chart.Plot{Title: p.Title, X: chart.Scale{Name: p.Label}, Y: chart.Scale{Name: "measured depth, " + c.Units.Unit(display.Depth), Down: true}}
	for i, curve := range p.Curves {
		if len(curve.Values) != len(c.Depth) {
			return nil, fmt.Errorf("depthchart: curve %q has %d values for %d depths", curve.Name, len(curve.Values), len(c.Depth))
		}
		points := make([]svg.XY, len(c.Depth))
		for k := range points {
			points[k] = svg.XY{X: curve.Values[k], Y: c.Units.In(c.Depth[k], display.Depth)}
		}
		out.Line(curve.Name, chart.PenOf(i), points...)
	}
	for i, m := range p.Marks {
		out.Line(m.Name, chart.PenOf(len(p.Curves)+i), svg.XY{X: m.Value, Y: c.Units.In(c.Depth[0], display.Depth)}, svg.XY{X: m.Value, Y: c.Units.In(c.Depth[len(c.Depth)-1], display.Depth)})
	}
	return out, nil
}
