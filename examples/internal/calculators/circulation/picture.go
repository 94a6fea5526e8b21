package circulation

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
)

// points of the curves, up to so many times the rate asked for.
const (
	points = 40
	beyond = 1.5
)

// picture draws pump and bottom against the rate.
func (in input) picture(round flow.Circulation) func(io.Writer) error {
	return func(w io.Writer) error {
		pump, bottom, rest := chart.Curve{Name: "pump"}, chart.Curve{Name: "bottom, circulating"}, chart.Curve{Name: "bottom, at rest"}
		for i := range points + 1 {
			r := round
			r.Rate = in.rate * unit.FlowRate(beyond*float64(i)/points)
			c, err := r.Solve()
			if err != nil {
				return err
			}
			for _, x := range []struct {
				curve *chart.Curve
				p     unit.Pressure
			}{{&pump, c.PumpPressure}, {&bottom, c.Bottom.Pressure}, {&rest, c.Bottom.Static}} {
				x.curve.X, x.curve.Y = append(x.curve.X, r.Rate), append(x.curve.Y, x.p)
			}
		}
		picture := chart.Curves{Title: "Pressure against the rate of circulation", X: chart.Axis{Name: "rate", For: display.PumpRate}, Y: chart.Axis{Name: "pressure", For: display.Pressure},
			Curves: []chart.Curve{pump, bottom, rest}}
		if in.fracture > 0 {
			picture.Levels = append(picture.Levels, chart.Level{Name: "fracture", Y: in.fracture})
		}
		if in.balance > 0 {
			picture.Levels = append(picture.Levels, chart.Level{Name: "formation", Y: in.balance})
		}
		return picture.WriteSVG(w, in.units.System)
	}
}
