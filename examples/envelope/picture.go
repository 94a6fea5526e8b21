package main

import (
	"image/color"
	"io"
	"math"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit/display"
	"completion.example/packer"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// picture draws the envelope with the loads in it and their names.
func picture(w io.Writer, s display.System, polygon packer.Polygon, loads []namedLoad) error {
	p := plot.New()
	p.Title.Text = "What the packer holds"
	p.X.Label.Text = "axial force of the tubing on the packer, " + s.Unit(display.Force) + " (pull to the right)"
	p.Y.Label.Text = "pressure below minus above, " + s.Unit(display.Pressure)
	p.X.Tick.Marker, p.Y.Tick.Marker = chart.Plain{}, chart.Plain{}
	p.Add(plotter.NewGrid())
	area, err := plotter.NewPolygon(corners(s, polygon.Vertices))
	if err != nil {
		return err
	}
	area.Color = color.RGBA{R: 222, G: 236, B: 232, A: 255}
	area.LineStyle = draw.LineStyle{Color: color.RGBA{R: 20, G: 80, B: 70, A: 255}, Width: vg.Points(1.5)}
	p.Add(area)
	p.Legend.Add("envelope", area)
	labels := plotter.XYLabels{}
	for _, l := range loads {
		labels.XYs = append(labels.XYs, corners(s, []packer.Load{{Differential: l.Differential, Axial: l.Axial}})...)
		labels.Labels = append(labels.Labels, l.Name)
	}
	points, err := plotter.NewScatter(labels.XYs)
	if err != nil {
		return err
	}
	points.GlyphStyle = draw.GlyphStyle{Color: color.RGBA{R: 150, G: 40, B: 30, A: 255}, Radius: vg.Points(4), Shape: draw.CrossGlyph{}}
	names, err := plotter.NewLabels(labels)
	if err != nil {
		return err
	}
	names.Offset = vg.Point{X: vg.Points(6), Y: vg.Points(-3)}
	limits, err := edges(s, polygon)
	if err != nil {
		return err
	}
	p.Add(limits, points, names)
	p.Legend.Add("load", points)
	p.Legend.Top = true
	wide, high := 0.05*(p.X.Max-p.X.Min), 0.05*(p.Y.Max-p.Y.Min)
	p.X.Min, p.Y.Min, p.Y.Max = p.X.Min-wide, p.Y.Min-high, p.Y.Max+high
	p.X.Max += 0.25 * (p.X.Max - p.X.Min) // room for the legend and a name
	return chart.WriteSVG(w, p)
}

// edges names what ends the packer along each edge, a little inside of it.
func edges(s display.System, of packer.Polygon) (*plotter.Labels, error) {
	at := corners(s, of.Vertices)
	var middle plotter.XY
	for _, c := range at {
		middle.X += c.X / float64(len(at))
		middle.Y += c.Y / float64(len(at))
	}
	labels := plotter.XYLabels{}
	for i, limit := range of.Limits {
		a, b := at[i], at[(i+1)%len(at)]
		x, y := (a.X+b.X)/2, (a.Y+b.Y)/2
		labels.XYs = append(labels.XYs, plotter.XY{X: x + inward*(middle.X-x), Y: y + inward*(middle.Y-y)})
		labels.Labels = append(labels.Labels, limit)
	}
	l, err := plotter.NewLabels(labels)
	if err != nil {
		return nil, err
	}
	for i := range l.TextStyle {
		style := &l.TextStyle[i]
		style.XAlign, style.YAlign = draw.XCenter, draw.YCenter
		style.Font.Size = vg.Points(7.5)
		style.Color = color.RGBA{R: 20, G: 80, B: 70, A: 255}
		if a, b := at[i], at[(i+1)%len(at)]; a.X == b.X {
			style.Rotation = math.Pi / 2
		}
	}
	return l, nil
}

// inward is how far from its edge a limit's name stands, as a share of the way
// to the middle.
const inward = 0.1

func corners(s display.System, of []packer.Load) plotter.XYs {
	xy := make(plotter.XYs, len(of))
	for i, l := range of {
		xy[i] = plotter.XY{X: s.In(l.Axial, display.Force), Y: s.In(l.Differential, display.Pressure)}
	}
	return xy
}
