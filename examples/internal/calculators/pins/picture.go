package pins

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/valve"
)

// picture draws at what pressure every number of pins parts, with the window.
func picture(s display.System, pins valve.Pins, area unit.Area, window unit.Band[unit.Pressure], stock int) func(io.Writer) error {
	return func(w io.Writer) error {
		least, greatest := chart.Curve{Name: "part no earlier than"}, chart.Curve{Name: "have parted by"}
		for n := 1; n <= max(stock, pins.Count); n++ {
			some := pins
			some.Count = n
			b, err := some.PressureOn(area)
			if err != nil {
				return err
			}
			least.X, least.Y = append(least.X, float64(n)), append(least.Y, b.Least)
			greatest.X, greatest.Y = append(greatest.X, float64(n)), append(greatest.Y, b.Greatest)
		}
		return chart.Curves{Title: "Differential that parts the pins", X: chart.Axis{Name: "pins"}, Y: chart.Axis{Name: "differential", For: display.Pressure},
			Curves: []chart.Curve{least, greatest},
			Levels: []chart.Level{{Name: "must hold below", Y: window.Least}, {Name: "must have parted at", Y: window.Greatest}}}.WriteSVG(w, s)
	}
}
