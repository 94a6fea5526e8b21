package bullhead

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// draw returns the picture that the driller holds the gauge against.
func (in input) draw(points []hydrostatics.BullheadPoint) func(io.Writer) error {
	curve := func(name string, value func(hydrostatics.BullheadPoint) unit.Pressure) chart.Curve {
		c := chart.Curve{Name: name}
		for _, p := range points {
			c.X, c.Y = append(c.X, p.Pumped), append(c.Y, value(p))
		}
		return c
	}
	return func(w io.Writer) error {
		return chart.Curves{
			Title: "Pumping the well's fluid back: surface pressure against volume pumped",
			X:     chart.Axis{Name: "pumped", For: display.Volume}, Y: chart.Axis{Name: "surface pressure", For: display.Pressure},
			Curves: []chart.Curve{
				curve("at the pump", func(p hydrostatics.BullheadPoint) unit.Pressure { return p.Pump }),
				curve("formation fractures, pump off", func(p hydrostatics.BullheadPoint) unit.Pressure { return p.Greatest }),
				curve("shut in: formation balanced", func(p hydrostatics.BullheadPoint) unit.Pressure { return p.Shut }),
			},
			Levels: []chart.Level{{Name: "limit of pump, lines and wellhead", Y: in.limit}},
		}.WriteSVG(w, in.units.System)
	}
}
