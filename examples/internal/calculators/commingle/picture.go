package commingle

import (
	"errors"
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/valve/production"
)

// points of the curves.
const points = 30

// picture draws what every zone gives against the tubing's pressure at the topmost
// zone, with the choke positions of the answer.
func (in inputs) picture(w production.Well, f production.Flow, gas bool) func(io.Writer) error {
	return func(out io.Writer) error {
		top := unit.Pressure(0)
		for _, z := range w.Zones {
			top = max(top, z.Inflow.Static())
		}
		positions := make([]int, len(f.Zones))
		curves := make([]chart.Curve, len(f.Zones)+1)
		for i, z := range f.Zones {
			positions[i], curves[i].Name = z.Position, w.Zones[i].Name
		}
		total := &curves[len(f.Zones)]
		total.Name = "to surface"
		for k := range points + 1 {
			w.Outflow = production.FixedPressure{Pressure: top * unit.Pressure(k) / points}
			n, err := w.Prepare()
			if err != nil {
				return err
			}
			var at production.Flow
			if err := n.Solve(positions, &at); errors.Is(err, production.ErrNoFlow) {
				continue // shut against so much
			} else if err != nil {
				return err
			}
			for i, z := range at.Zones {
				curves[i].X, curves[i].Y = append(curves[i].X, at.Pressure), append(curves[i].Y, z.Rate)
			}
			total.X, total.Y = append(total.X, at.Pressure), append(total.Y, at.Rate)
		}
		return chart.Curves{Title: "What each zone gives, chokes as answered", X: chart.Axis{Name: "tubing pressure at the topmost zone", For: display.Pressure},
			Y: chart.Axis{Name: "rate, negative into the zone", For: purpose(gas)}, Curves: curves}.WriteSVG(out, in.units.System)
	}
}
