package picture

import (
	"errors"
	"fmt"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
)

// Range is a bar on the common scale, with the value in it that is nominal, or a
// single value where From and To are the same. Ink chooses its colour.
type Range struct {
	Name     string
	From, To float64
	Nominal  float64
	Ink      int
}

// Ranges are bars under each other on one scale: what acts where.
type Ranges struct {
	Title string // in words, for those who don't see the picture
	X     Axis
	Rows  []Range
	Lines []float64 // values marked across all rows
}

// SVG draws the ranges. Its errors name what can't be drawn.
func (r Ranges) SVG() (string, error) {
	const half, rowHigh = 0.16, 46
	errs := []error{r.X.fault()}
	p := &chart.Plot{X: chart.Scale{Name: r.X.Name}, Y: chart.Scale{Down: true, NoGrid: true, Names: []string{}}}
	for i, b := range r.Rows {
		y := float64(i) + 0.2 // the name stands above
		if b.From > b.To {
			errs = append(errs, fmt.Errorf("picture: range %q goes from %g to %g; must not end below its beginning", b.Name, b.From, b.To))
		}
		if b.From == b.To {
			p.Marks("", chart.Dot, ink(b.Ink), 4, svg.XY{X: b.From, Y: y})
			continue
		}
		p.Area("", svg.Tint, svg.Pen{Ink: ink(b.Ink)}, svg.XY{X: b.From, Y: y - half}, svg.XY{X: b.To, Y: y - half}, svg.XY{X: b.To, Y: y + half}, svg.XY{X: b.From, Y: y + half})
		if b.Nominal > b.From && b.Nominal < b.To {
			p.Line("", svg.Pen{Ink: ink(b.Ink)}, svg.XY{X: b.Nominal, Y: y - 1.4*half}, svg.XY{X: b.Nominal, Y: y + 1.4*half})
		}
	}
	top, bottom := -0.5, float64(len(r.Rows))-0.5
	for _, v := range r.Lines {
		p.Line("", svg.Pen{Ink: svg.Ink, Width: 1, Dashes: []float64{4, 3}}, svg.XY{X: v, Y: top}, svg.XY{X: v, Y: bottom})
	}
	if err := errors.Join(errs...); err != nil {
		return "", err
	}
	r.X.end(&p.X)
	for i, b := range r.Rows {
		p.Words(svg.Lettering{Size: 13, Halo: true}, svg.XY{X: p.X.Least, Y: float64(i) - 0.2}, 6, 4, b.Name)
	}
	p.Y.Least, p.Y.Greatest = top, bottom
	return finished(p, r.Title, rowHigh*float64(len(r.Rows))+66)
}
