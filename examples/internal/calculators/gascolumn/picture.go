package gascolumn

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// points of the curve.
const points = 60

// picture draws the pressure down the gas, beside what water of 1 g/cm³ from the same
// bottom would have above it.
func (in input) picture(c *hydrostatics.Column) func(io.Writer) error {
	return func(w io.Writer) error {
		gas, water := chart.Curve{Name: "gas"}, chart.Curve{Name: "fresh water that stands in the gas pressure at the bottom"}
		bottom, err := c.At(in.depth)
		if err != nil {
			return err
		}
		for i := range points + 1 {
			z := in.depth * unit.Length(i) / points
			p, err := c.At(z)
			if err != nil {
				return err
			}
			gas.X, gas.Y = append(gas.X, p), append(gas.Y, z)
			if wet := bottom - hydrostatics.Pressure(hydrostatics.PureWater, in.depth-z); wet >= 0 {
				water.X, water.Y = append(water.X, wet), append(water.Y, z)
			}
		}
		return chart.Curves{Title: "Pressure down the gas column", X: chart.Axis{Name: "pressure", For: display.Pressure}, Y: chart.Axis{Name: "true vertical depth", For: display.Depth}, Downwards: true,
			Curves: []chart.Curve{gas, water}}.WriteSVG(w, in.units.System)
	}
}
