package stress

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit/display"
	"completion.example/tubular"
)

// picture draws the envelope, divided by its design factors, with the load in it.
func picture(w io.Writer, s display.System, e tubular.Envelope, l tubular.Load) error {
	p := &chart.Plot{Title: "What the pipe body bears, design factors in", X: chart.Scale{Name: "axial force, " + s.Unit(display.Force) + " (tension to the right)"},
		Y: chart.Scale{Name: "inside minus outside pressure, " + s.Unit(display.Pressure)}}
	body, burst := s.In(e.BodyYield, display.Force), s.In(e.InternalYield, display.Pressure)
	low := 0.0
	for _, at := range e.Triaxial {
		low = min(low, s.In(at.Differential, display.Pressure))
	}
	p.Line("triaxial", chart.PenOf(0), points(s, e.Triaxial)...)
	p.Line("collapse", chart.PenOf(1), points(s, e.Collapse)...)
	p.Line("internal yield", chart.PenOf(2), svg.XY{X: -body, Y: burst}, svg.XY{X: body, Y: burst})
	p.Line("body yield", chart.PenOf(3), svg.XY{X: body, Y: low}, svg.XY{X: body, Y: burst})
	p.Line("", chart.PenOf(3), svg.XY{X: -body, Y: low}, svg.XY{X: -body, Y: burst})
	p.Marks("load", chart.Cross, svg.Ink, 5, points(s, []tubular.LoadPoint{{Axial: l.Axial, Differential: l.Inside - l.Outside}})...)
	p.X.Room(0.04)
	p.Y.Room(0.05)
	return p.WriteSVG(w)
}

func points(s display.System, of []tubular.LoadPoint) []svg.XY {
	xy := make([]svg.XY, len(of))
	for i, at := range of {
		xy[i] = svg.XY{X: s.In(at.Axial, display.Force), Y: s.In(at.Differential, display.Pressure)}
	}
	return xy
}
