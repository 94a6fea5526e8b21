package main

import (
	"completion.example/hydrostatics/unit/display"
	"image/color"
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// The picture's own colours; lines differ in their dashes too, for print.
var (
	moss  = color.RGBA{R: 70, G: 105, B: 40, A: 255}
	rust  = color.RGBA{R: 165, G: 70, B: 30, A: 255}
	plum  = color.RGBA{R: 110, G: 40, B: 90, A: 255}
	slate = color.RGBA{R: 50, G: 70, B: 95, A: 255}
)

// picture draws the loads of buckling over the inclination of the hole, with the
// compression asked for in it.
func (in input) picture(w io.Writer) error {
	p := plot.New()
	p.Title.Text, p.Title.Padding = "Where this pipe buckles in this hole", vg.Points(6)
	p.X.Label.Text, p.Y.Label.Text = "inclination of the hole, deg", "effective compression, "+in.units.Unit(display.Force)
	p.X.Tick.Marker, p.Y.Tick.Marker = chart.Plain{}, chart.Plain{}
	p.Add(plotter.NewGrid())
	end := 90.0
	if in.c.Inclination > 90*unit.Degree {
		end = 180
	}
	err := chart.Add(p,
		chart.Line{Name: "helix at the latest", Points: in.loads(movement.Confined.HelicalMost, end), Color: plum, Dashes: []vg.Length{2, 2}},
		chart.Line{Name: "helix full", Points: in.loads(movement.Confined.Helical, end), Color: rust, Dashes: []vg.Length{8, 3, 2, 3}},
		chart.Line{Name: "helix possible", Points: in.loads(movement.Confined.HelicalLeast, end), Color: slate, Dashes: []vg.Length{6, 3}},
		chart.Line{Name: "snakes from", Points: in.loads(movement.Confined.Sinusoidal, end), Color: moss})
	if err != nil {
		return err
	}
	asked, err := plotter.NewScatter(plotter.XYs{{X: in.c.Inclination.In(unit.Degree), Y: in.units.In(in.load, display.Force)}})
	if err != nil {
		return err
	}
	asked.GlyphStyle = draw.GlyphStyle{Color: color.Black, Radius: vg.Points(5), Shape: draw.CrossGlyph{}}
	p.Add(asked)
	p.Legend.Add("asked for", asked)
	p.Legend.Left, p.Legend.Top = true, true
	p.X.Max += 0.03 * end
	p.Y.Min = 0
	p.Y.Max *= 1.25 // room for the legend
	return chart.WriteSVG(w, p)
}

func (in input) loads(of func(movement.Confined) unit.Force, end float64) plotter.XYs {
	const points = 90
	xy := make(plotter.XYs, points+1)
	c := in.c
	for i := range xy {
		degrees := end * float64(i) / points
		c.Inclination = unit.Angle(degrees) * unit.Degree
		xy[i] = plotter.XY{X: degrees, Y: in.units.In(of(c), display.Force)}
	}
	return xy
}
