package chart

import (
	"fmt"
	"image/color"
	"io"
	"math"

	"completion.example/hydrostatics/unit/display"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Ranges draws ranges of one quantity under each other on one scale: what acts
// where, what is permitted, and where the job stands.
type Ranges struct {
	Title string
	Scale Axis
	Rows  []Range
	Here  any    // a value that is marked right across, such as what is applied; nil for none
	Named string // what it is
}

// Range is a bar from one value to another; the same twice is a mark. A range that
// is permitted is drawn hollow, one that something happens in is filled.
type Range struct {
	Name      string
	From, To  any
	Permitted bool
}

const rangeHalf = 0.28 // of the room of a row

// WriteSVG draws the picture in the units of s.
func (r Ranges) WriteSVG(w io.Writer, s display.System) error {
	p := plot.New()
	p.Title.Text, p.Title.Padding = r.Title, vg.Points(6)
	p.BackgroundColor = color.White
	if len(r.Rows) > 0 {
		p.X.Label.Text = labelled(s, r.Scale, r.Rows[0].From)
	}
	p.X.Tick.Marker = Plain{}
	grid := plotter.NewGrid()
	grid.Horizontal.Color = nil
	p.Add(grid)
	var names []string
	low, high := math.Inf(1), math.Inf(-1)
	for i, row := range r.Rows {
		names = append([]string{row.Name}, names...)
		from, to := in(s, row.From, r.Scale.For), in(s, row.To, r.Scale.For)
		low, high = math.Min(low, math.Min(from, to)), math.Max(high, math.Max(from, to))
		if err := r.bar(p, float64(len(r.Rows)-1-i), from, to, row); err != nil {
			return err
		}
	}
	if r.Here != nil {
		x := in(s, r.Here, r.Scale.For)
		low, high = math.Min(low, x), math.Max(high, x)
		if err := Add(p, Line{Name: r.Named, Points: plotter.XYs{{X: x, Y: -0.6}, {X: x, Y: float64(len(r.Rows)) - 0.4}}, Color: inks[1].color, Dashes: inks[1].dashes}); err != nil {
			return err
		}
		p.Legend.Top, p.Legend.Padding = true, vg.Points(3)
	}
	p.NominalY(names...)
	room := 0.04 * (high - low)
	p.X.Min, p.X.Max = fromNought(low-room, high+room), high+room
	p.Y.Min, p.Y.Max = -0.6, float64(len(r.Rows))
	return WriteSVG(w, p)
}

func (r Ranges) bar(p *plot.Plot, y, from, to float64, row Range) error {
	ink := inks[0].color
	if from == to {
		return Add(p, Line{Points: plotter.XYs{{X: from, Y: y - rangeHalf}, {X: from, Y: y + rangeHalf}}, Color: ink})
	}
	box, err := plotter.NewPolygon(plotter.XYs{{X: from, Y: y - rangeHalf}, {X: to, Y: y - rangeHalf}, {X: to, Y: y + rangeHalf}, {X: from, Y: y + rangeHalf}})
	if err != nil {
		return fmt.Errorf("chart: %s: %w", row.Name, err)
	}
	box.LineStyle = draw.LineStyle{Color: ink, Width: vg.Points(1)}
	box.Color = color.RGBA{R: 0x9a, G: 0xb4, B: 0xc6, A: 0xff}
	if row.Permitted {
		box.Color = color.RGBA{R: 0xf4, G: 0xf6, B: 0xee, A: 0xff}
		box.LineStyle.Dashes = []vg.Length{4, 2}
	}
	p.Add(box)
	return nil
}
