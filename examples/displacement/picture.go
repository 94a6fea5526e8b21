package main

import (
	"image/color"
	"io"
	"strconv"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	_ "gonum.org/v1/plot/vg/vgsvg" // the SVG writer
)

// draw returns the picture: pressures at pump and bottom against volume pumped.
func draw(s flow.Schedule) func(io.Writer) error {
	return func(w io.Writer) error {
		p := plot.New()
		p.X.Label.Text, p.Y.Label.Text = "pumped, bbl", "pressure, psi"
		p.Title.Text = "Pressure against volume pumped"
		p.BackgroundColor = color.White
		p.Y.Tick.Marker = whole{}
		p.Add(plotter.NewGrid())
		p.Legend.Top, p.Legend.Padding = true, vg.Points(3)
		curves := []struct {
			name   string
			value  func(flow.Point) unit.Pressure
			colour color.Color
			dashes []vg.Length
		}{
			{"at the pump", func(x flow.Point) unit.Pressure { return x.PumpPressure }, color.RGBA{R: 0x1b, G: 0x4f, B: 0x72, A: 0xff}, nil},
			{"at the bottom", func(x flow.Point) unit.Pressure { return x.Bottom }, color.RGBA{R: 0xb0, G: 0x3a, B: 0x2e, A: 0xff}, []vg.Length{vg.Points(6), vg.Points(3)}},
			{"pump off, shut in", func(x flow.Point) unit.Pressure { return x.Static }, color.RGBA{R: 0x6c, G: 0x7a, B: 0x14, A: 0xff}, []vg.Length{vg.Points(2), vg.Points(2)}},
		}
		for _, c := range curves {
			xy := make(plotter.XYs, len(s.Points))
			for i, x := range s.Points {
				xy[i] = plotter.XY{X: x.Volume.In(unit.Barrel), Y: c.value(x).In(unit.PSI)}
			}
			line, err := plotter.NewLine(xy)
			if err != nil {
				return err
			}
			line.Width, line.Color, line.Dashes = vg.Points(1.4), c.colour, c.dashes
			p.Add(line)
			p.Legend.Add(c.name, line)
		}
		p.Y.Min, p.Y.Max = min(p.Y.Min, 0), p.Y.Max*1.2 // room for the legend above the curves
		svg, err := p.WriterTo(20*vg.Centimeter, 14*vg.Centimeter, "svg")
		if err != nil {
			return err
		}
		_, err = svg.WriteTo(w)
		return err
	}
}

// whole writes the default ticks without idle decimals.
type whole struct{}

func (whole) Ticks(lo, hi float64) []plot.Tick {
	ticks := plot.DefaultTicks{}.Ticks(lo, hi)
	for i, t := range ticks {
		if t.Label != "" {
			ticks[i].Label = strconv.FormatFloat(t.Value, 'f', -1, 64)
		}
	}
	return ticks
}
