package column

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/stack"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// points of the curve.
const points = 100

// picture draws the pressure down the column, and where each fluid ends.
func picture(s display.System, c *hydrostatics.Column, layers stack.Stack) func(io.Writer) error {
	return func(w io.Writer) error {
		curve := chart.Curve{Name: "pressure"}
		var depths []unit.Length
		for i := range points + 1 {
			depths = append(depths, c.Top()+(c.Bottom()-c.Top())*unit.Length(i)/points)
		}
		for _, z := range depths {
			p, err := c.At(z)
			if err != nil {
				return err
			}
			curve.X, curve.Y = append(curve.X, p), append(curve.Y, z)
		}
		picture := chart.Curves{Title: "Pressure down the column", X: chart.Axis{Name: "pressure", For: display.Pressure}, Y: chart.Axis{Name: "true vertical depth", For: display.Depth}, Downwards: true,
			Curves: []chart.Curve{curve}}
		for _, l := range layers[:min(len(layers), mostNamed)] {
			picture.Levels = append(picture.Levels, chart.Level{Name: "bottom of " + l.Name, Y: l.Bottom})
		}
		return picture.WriteSVG(w, s)
	}
}

// mostNamed layers are told apart in the legend.
const mostNamed = 4
