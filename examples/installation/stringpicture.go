package main

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/packer"
	"completion.example/valve/sequence"
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
		for k, of := range []func(sequence.Point) *sequence.StringAt{stringOf, outerOf} {
			if p, ok := mostUsing(s, of); ok {
				all = append(all, loaded{fmt.Sprintf("%sstep %d, %s, %s", [2]string{"", "outer string: "}[k], i+1, s.Name, p.Label), of(p)})
			}
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
		p.Y.Down = true
		x := &picture{Title: d.title}
		for i, one := range all {
			var xy []svg.XY
			for _, n := range one.at.Along {
				xy = append(xy, svg.XY{X: d.of(n), Y: u.in(n.MD, depth)})
			}
			p.Line("", style(i), xy...)
			x.Key = append(x.Key, keyLine{one.name, i})
		}
		p.X.Room(0.06)
		var err error
		if x.SVG, err = drawn(p, plotWide, plotHigh, x.Title); err != nil {
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
	var corners, loads, named []svg.XY
	for _, v := range polygon.Vertices {
		corners = append(corners, svg.XY{X: u.in(v.Axial, force), Y: u.in(v.Differential, pressure)})
	}
	c.Area("", bandInk, svg.Pen{Ink: inks[1], Width: 1.6}, corners...)
	wide, high := c.X.Span(), c.Y.Span()
	for i, s := range p.Steps {
		for _, h := range s.Holding {
			at := svg.XY{X: u.in(h.Axial, force), Y: u.in(h.Differential, pressure)}
			loads = append(loads, at)
			if !slices.ContainsFunc(named, func(o svg.XY) bool {
				return math.Abs(o.X-at.X) < wide/18 && math.Abs(o.Y-at.Y) < high/18
			}) {
				named = append(named, at)
				c.Words(svg.Lettering{}, at, 5, 0, fmt.Sprint(i+1))
			}
		}
	}
	if len(loads) > 0 {
		c.Marks("", chart.Dot, inks[0], 3, loads...)
	}
	c.X.Room(0.06)
	c.Y.Room(0.06)
	const title = "the packer's holding envelope and its loads"
	svg, err := drawn(c, 640, 400, title)
	return &picture{Title: title, SVG: svg}, err
}
