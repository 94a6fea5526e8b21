package displacement

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// draw returns the picture: pressures at pump and bottom against volume pumped.
func draw(units display.System, s flow.Schedule) func(io.Writer) error {
	curve := func(name string, value func(flow.Point) unit.Pressure) chart.Curve {
		c := chart.Curve{Name: name}
		for _, x := range s.Points {
			c.X, c.Y = append(c.X, x.Volume), append(c.Y, value(x))
		}
		return c
	}
	return func(w io.Writer) error {
		return chart.Curves{Title: "Pressure against volume pumped", X: chart.Axis{Name: "pumped", For: display.Volume}, Y: chart.Axis{Name: "pressure", For: display.Pressure},
			Curves: []chart.Curve{
				curve("at the pump", func(x flow.Point) unit.Pressure { return x.PumpPressure }),
				curve("at the bottom", func(x flow.Point) unit.Pressure { return x.Bottom }),
				curve("pump off, shut in", func(x flow.Point) unit.Pressure { return x.Static }),
			}}.WriteSVG(w, units)
	}
}
