// Package chart adds lines to a plot and writes it as SVG.
package chart

import (
	"fmt"
	"image/color"
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	_ "gonum.org/v1/plot/vg/vgsvg" // the SVG writer
)

// Line is a curve. Its dashes tell it from the others where its colour doesn't,
// as in print.
type Line struct {
	Name   string // in the legend; none keeps it out of there
	Points plotter.XYs
	Color  color.Color
	Dashes []vg.Length
}

const width = 1.5 // points

// Add draws lines, in their order. A value that isn't finite is an error.
func Add(p *plot.Plot, lines ...Line) error {
	for _, l := range lines {
		drawn, err := plotter.NewLine(l.Points)
		if err != nil {
			return fmt.Errorf("chart: line %q: %w", l.Name, err)
		}
		drawn.Color, drawn.Dashes, drawn.Width = l.Color, l.Dashes, vg.Points(width)
		p.Add(drawn)
		if l.Name != "" {
			p.Legend.Add(l.Name, drawn)
		}
	}
	return nil
}

// WriteSVG writes p in the size of a picture of one plot.
func WriteSVG(w io.Writer, p *plot.Plot) error {
	canvas, err := p.WriterTo(18*vg.Centimeter, 12*vg.Centimeter, "svg")
	if err != nil {
		return fmt.Errorf("chart: %w", err)
	}
	_, err = canvas.WriteTo(w)
	return err
}
