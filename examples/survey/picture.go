package main

import (
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"image/color"
	"io"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// picture draws the well from the side and from above.
func picture(w io.Writer, u *calculator.Units, path *hydrostatics.Path, section unit.Angle) error {
	var side, above plotter.XYs
	const points = 400
	for i := range points + 1 {
		at, err := path.At(path.TotalDepth() * unit.Length(i) / points)
		if err != nil {
			continue // above a first station that isn't at surface there is no hole
		}
		side = append(side, plotter.XY{X: u.In(at.Section(section), display.Depth), Y: -u.In(at.TVD, display.Depth)})
		above = append(above, plotter.XY{X: u.In(at.East, display.Depth), Y: u.In(at.North, display.Depth)})
	}
	feet := u.Unit(display.Depth)
	left, err := panel("From the side", "section along "+u.Format(section, display.Usual)+", "+feet, "TVD, "+feet, side)
	if err != nil {
		return err
	}
	left.Y.Tick.Marker = ticks{sign: -1} // depths are drawn negative
	right, err := panel("From above", "east, "+feet, "north, "+feet, above)
	if err != nil {
		return err
	}
	canvas := vgsvg.New(24*vg.Centimeter, 13*vg.Centimeter)
	tiles := draw.Tiles{Rows: 1, Cols: 2, PadX: 8 * vg.Millimeter, PadTop: 3 * vg.Millimeter, PadBottom: 3 * vg.Millimeter, PadLeft: 3 * vg.Millimeter, PadRight: 5 * vg.Millimeter}
	for i, p := range []*plot.Plot{left, right} {
		p.Draw(tiles.At(draw.New(canvas), i, 0))
	}
	_, err = canvas.WriteTo(w)
	return err
}

func panel(title, x, y string, path plotter.XYs) (*plot.Plot, error) {
	p := plot.New()
	p.Title.Text, p.X.Label.Text, p.Y.Label.Text = title, x, y
	p.X.Tick.Marker, p.Y.Tick.Marker = ticks{sign: 1}, ticks{sign: 1}
	line, err := plotter.NewLine(path)
	if err != nil {
		return nil, err
	}
	line.LineStyle = draw.LineStyle{Color: color.RGBA{R: 20, G: 70, B: 120, A: 255}, Width: vg.Points(1.6)}
	p.Add(plotter.NewGrid(), line)
	return p, nil
}

// ticks labels a scale in as few digits as it takes.
type ticks struct{ sign float64 }

func (t ticks) Ticks(lo, hi float64) []plot.Tick {
	all := plot.DefaultTicks{}.Ticks(lo, hi)
	for i, tick := range all {
		if tick.Label != "" {
			all[i].Label = unit.Significant(t.sign*tick.Value, 4)
		}
	}
	return all
}
