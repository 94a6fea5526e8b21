package envelope

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit/display"
	"completion.example/packer"
)

// picture draws the envelope with the loads in it and their names.
func picture(w io.Writer, s display.System, polygon packer.Polygon, loads []namedLoad) error {
	p := &chart.Plot{Title: "What the packer holds", X: chart.Scale{Name: "axial force of the tubing on the packer, " + s.Unit(display.Force) + " (pull to the right)"},
		Y: chart.Scale{Name: "pressure below minus above, " + s.Unit(display.Pressure)}}
	p.Area("envelope", svg.Pale, svg.Pen{Ink: svg.Blue, Width: 2}, corners(s, polygon.Vertices)...)
	edges(p, s, polygon)
	var points []svg.XY
	for _, l := range loads {
		at := corners(s, []packer.Load{{Differential: l.Differential, Axial: l.Axial}})[0]
		points = append(points, at)
		p.Words(svg.Lettering{Halo: true}, at, 8, 4, l.Name)
	}
	p.Marks("load", chart.Cross, svg.Rust, 5, points...)
	p.X.Room(0.08) // for a name
	p.Y.Room(0.05)
	return p.WriteSVG(w)
}

// edges names what ends the packer along each edge, a little inside of it.
func edges(p *chart.Plot, s display.System, of packer.Polygon) {
	at := corners(s, of.Vertices)
	var middle svg.XY
	for _, c := range at {
		middle.X += c.X / float64(len(at))
		middle.Y += c.Y / float64(len(at))
	}
	for i, limit := range of.Limits {
		a, b := at[i], at[(i+1)%len(at)]
		x, y := (a.X+b.X)/2, (a.Y+b.Y)/2
		l := svg.Lettering{Size: 10.5, Anchor: "middle", Ink: svg.Blue, Turned: a.X == b.X}
		p.Words(l, svg.XY{X: x + inward*(middle.X-x), Y: y + inward*(middle.Y-y)}, 0, 4, limit)
	}
}

// inward is how far from its edge a limit's name stands, as a share of the way
// to the middle.
const inward = 0.1

func corners(s display.System, of []packer.Load) []svg.XY {
	xy := make([]svg.XY, len(of))
	for i, l := range of {
		xy[i] = svg.XY{X: s.In(l.Axial, display.Force), Y: s.In(l.Differential, display.Pressure)}
	}
	return xy
}
