package main

import (
	"image/color"
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit/display"
	"completion.example/tubular"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// The picture's own colours; lines differ in their dashes too, for print.
var (
	petrol = color.RGBA{R: 20, G: 90, B: 100, A: 255}
	ochre  = color.RGBA{R: 178, G: 120, B: 20, A: 255}
	plum   = color.RGBA{R: 110, G: 40, B: 90, A: 255}
)

// picture draws the envelope, divided by its design factors, with the load in it.
func picture(w io.Writer, s display.System, e tubular.Envelope, l tubular.Load) error {
	p := plot.New()
	p.Title.Text = "What the pipe body bears, design factors in"
	p.X.Label.Text = "axial force, " + s.Unit(display.Force) + " (tension to the right)"
	p.Y.Label.Text = "inside minus outside pressure, " + s.Unit(display.Pressure)
	p.X.Tick.Marker, p.Y.Tick.Marker = chart.Plain{}, chart.Plain{}
	p.Add(plotter.NewGrid())
	body, burst := s.In(e.BodyYield, display.Force), s.In(e.InternalYield, display.Pressure)
	low := 0.0
	for _, at := range e.Triaxial {
		low = min(low, s.In(at.Differential, display.Pressure))
	}
	err := chart.Add(p,
		chart.Line{Name: "triaxial", Points: points(s, e.Triaxial), Color: petrol},
		chart.Line{Name: "collapse", Points: points(s, e.Collapse), Color: plum, Dashes: []vg.Length{6, 3}},
		chart.Line{Name: "internal yield", Points: plotter.XYs{{X: -body, Y: burst}, {X: body, Y: burst}}, Color: ochre, Dashes: []vg.Length{2, 2}},
		chart.Line{Name: "body yield", Points: plotter.XYs{{X: body, Y: low}, {X: body, Y: burst}}, Color: ochre, Dashes: []vg.Length{8, 3, 2, 3}},
		chart.Line{Points: plotter.XYs{{X: -body, Y: low}, {X: -body, Y: burst}}, Color: ochre, Dashes: []vg.Length{8, 3, 2, 3}})
	if err != nil {
		return err
	}
	load, err := plotter.NewScatter(points(s, []tubular.LoadPoint{{Axial: l.Axial, Differential: l.Inside - l.Outside}}))
	if err != nil {
		return err
	}
	load.GlyphStyle = draw.GlyphStyle{Color: color.Black, Radius: vg.Points(4), Shape: draw.CrossGlyph{}}
	p.Add(load)
	p.Legend.Add("load", load)
	p.Legend.Top = true
	p.X.Max += 0.3 * (p.X.Max - p.X.Min) // room for the legend
	p.Y.Max += 0.05 * (p.Y.Max - p.Y.Min)
	p.Y.Min -= 0.05 * (p.Y.Max - p.Y.Min)
	return chart.WriteSVG(w, p)
}

func points(s display.System, of []tubular.LoadPoint) plotter.XYs {
	xy := make(plotter.XYs, len(of))
	for i, at := range of {
		xy[i] = plotter.XY{X: s.In(at.Axial, display.Force), Y: s.In(at.Differential, display.Pressure)}
	}
	return xy
}
