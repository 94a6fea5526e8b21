package buckling

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/tubular/movement"
)

// picture draws the loads of buckling over the inclination of the hole, with the
// compression asked for in it.
func (in input) picture(w io.Writer) error {
	end := 90.0
	if in.c.Inclination > 90*unit.Degree {
		end = 180
	}
	p := &chart.Plot{Title: "Where this pipe buckles in this hole", X: chart.Scale{Name: "inclination of the hole, deg"},
		Y: chart.Scale{Name: "effective compression, " + in.units.Unit(display.Force)}}
	for i, l := range []struct {
		name string
		of   func(movement.Confined) unit.Force
	}{
		{"snakes from", movement.Confined.Sinusoidal}, {"helix possible", movement.Confined.HelicalLeast},
		{"helix full", movement.Confined.Helical}, {"helix at the latest", movement.Confined.HelicalMost},
	} {
		p.Line(l.name, chart.PenOf(i), in.loads(l.of, end)...)
	}
	p.Marks("asked for", chart.Cross, svg.Ink, 5, svg.XY{X: in.c.Inclination.In(unit.Degree), Y: in.units.In(in.load, display.Force)})
	p.X.Reach(1.03 * end)
	p.Y.Reach(0)
	return p.WriteSVG(w)
}

func (in input) loads(of func(movement.Confined) unit.Force, end float64) []svg.XY {
	const points = 90
	xy := make([]svg.XY, points+1)
	c := in.c
	for i := range xy {
		degrees := end * float64(i) / points
		c.Inclination = unit.Angle(degrees) * unit.Degree
		xy[i] = svg.XY{X: degrees, Y: in.units.In(of(c), display.Force)}
	}
	return xy
}
