package main

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"completion.example/packer"
	"completion.example/valve/sequence"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// loaded is the string where a step stands still.
type loaded struct {
	name string
	at   *sequence.StringAt
}

// along draws force and use of the string with depth for the steps that use it
// most.
func along(w *work) ([]*picture, error) {
	u := w.read
	var all []loaded
	for i := range w.programme.Steps {
		s := &w.programme.Steps[i]
		if p, ok := mostLoaded(s); ok {
			all = append(all, loaded{fmt.Sprintf("step %d, %s, %s", i+1, s.Name, p.Label), p.String})
		}
	}
	slices.SortStableFunc(all, func(a, b loaded) int { return cmp.Compare(b.at.Usage, a.at.Usage) })
	if len(all) == 0 {
		return nil, nil
	}
	all = all[:min(most, len(all))]
	draws := []struct {
		title, axis string
		of          func(n sequence.StringDepth) float64
	}{
		{"wall force along the string", "wall force, " + u.symbol(force), func(n sequence.StringDepth) float64 { return u.in(n.Wall, force) }},
		{"use of the string, design factor included", "share of the governing limit, %", func(n sequence.StringDepth) float64 { return 100 * n.Usage }},
	}
	var made []*picture
	for _, d := range draws {
		p := newPlot(d.axis, "measured depth, "+u.symbol(depth))
		p.Y.Tick.Marker = wholeNumbers{down: true}
		x := &picture{Title: d.title}
		for i, one := range all {
			var xy plotter.XYs
			for _, n := range one.at.Along {
				xy = append(xy, plotter.XY{X: d.of(n), Y: -u.in(n.MD, depth)})
			}
			l, err := plotter.NewLine(xy)
			if err != nil {
				return nil, err
			}
			l.LineStyle = style(i)
			p.Add(l)
			x.Key = append(x.Key, keyLine{one.name, i})
		}
		room(&p.X)
		var err error
		if x.SVG, err = drawn(p, 12*vg.Centimeter, 9*vg.Centimeter); err != nil {
			return nil, err
		}
		made = append(made, x)
	}
	return made, nil
}

// envelope draws what the packer holds, with its load wherever a step stands
// still.
func envelope(u reader, polygon packer.Polygon, p *sequence.Programme) (*picture, error) {
	c := newPlot("pull of the string on the packer, up positive, "+u.symbol(force), "pressure below minus above, "+u.symbol(pressure))
	var corners, loads plotter.XYs
	for _, v := range polygon.Vertices {
		corners = append(corners, plotter.XY{X: u.in(v.Axial, force), Y: u.in(v.Differential, pressure)})
	}
	area, err := plotter.NewPolygon(corners)
	if err != nil {
		return nil, err
	}
	area.Color, area.LineStyle = bandInk, draw.LineStyle{Color: inks[1], Width: vg.Points(1.2)}
	c.Add(area)
	wide, high := c.X.Max-c.X.Min, c.Y.Max-c.Y.Min
	labels := plotter.XYLabels{}
	for i, s := range p.Steps {
		for _, h := range s.Holding {
			at := plotter.XY{X: u.in(h.Axial, force), Y: u.in(h.Differential, pressure)}
			loads = append(loads, at)
			if !slices.ContainsFunc(labels.XYs, func(o plotter.XY) bool {
				return math.Abs(o.X-at.X) < wide/18 && math.Abs(o.Y-at.Y) < high/18
			}) {
				labels.XYs, labels.Labels = append(labels.XYs, at), append(labels.Labels, fmt.Sprintf(" %d", i+1))
			}
		}
	}
	if len(loads) > 0 {
		dots, err := plotter.NewScatter(loads)
		if err != nil {
			return nil, err
		}
		dots.GlyphStyle = draw.GlyphStyle{Color: inks[0], Radius: vg.Points(2.5), Shape: draw.CircleGlyph{}}
		names, err := plotter.NewLabels(labels)
		if err != nil {
			return nil, err
		}
		c.Add(dots, names)
	}
	room(&c.X)
	room(&c.Y)
	svg, err := drawn(c, 16*vg.Centimeter, 10*vg.Centimeter)
	return &picture{Title: "the packer's holding envelope and its loads", SVG: svg}, err
}
