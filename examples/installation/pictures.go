package main

import (
	"bytes"
	"fmt"
	"html/template"
	"image/color"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/valve/sequence"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// inks tell lines apart by hue, darkness and dashes at once, so that they stay
// apart in a black-and-white print and for the colour-blind.
var inks = []draw.LineStyle{
	{Color: color.RGBA{R: 0x1b, G: 0x4b, B: 0x5a, A: 255}, Width: vg.Points(1.6)},
	{Color: color.RGBA{R: 0xb4, G: 0x5f, B: 0x06, A: 255}, Width: vg.Points(1.6), Dashes: []vg.Length{vg.Points(6), vg.Points(2)}},
	{Color: color.RGBA{R: 0x6a, G: 0x3d, B: 0x7c, A: 255}, Width: vg.Points(1.6), Dashes: []vg.Length{vg.Points(2), vg.Points(2)}},
	{Color: color.RGBA{R: 0x4f, G: 0x6f, B: 0x1c, A: 255}, Width: vg.Points(1.6), Dashes: []vg.Length{vg.Points(8), vg.Points(2), vg.Points(2), vg.Points(2)}},
	{Color: color.RGBA{R: 0x8c, G: 0x2f, B: 0x39, A: 255}, Width: vg.Points(1.6), Dashes: []vg.Length{vg.Points(1), vg.Points(3)}},
}

var (
	bandInk  = color.RGBA{R: 0xe3, G: 0xc9, B: 0x8f, A: 255}
	feltInk  = color.RGBA{R: 0x1b, G: 0x4b, B: 0x5a, A: 255}
	faintInk = color.RGBA{R: 0xb8, G: 0xbf, B: 0xc4, A: 255}
)

func newPlot(title, x, y string) *plot.Plot {
	p := plot.New()
	p.Title.Text, p.X.Label.Text, p.Y.Label.Text = title, x, y
	p.Title.TextStyle.Font.Size, p.X.Label.TextStyle.Font.Size, p.Y.Label.TextStyle.Font.Size = vg.Points(10), vg.Points(9), vg.Points(9)
	p.Legend.TextStyle.Font.Size = vg.Points(8)
	p.Add(plotter.NewGrid())
	return p
}

func svg(p *plot.Plot, wide, high vg.Length) (template.HTML, error) {
	w, err := p.WriterTo(wide, high, "svg")
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	if _, err := w.WriteTo(&b); err != nil {
		return "", err
	}
	// The XML head has no place inside a page.
	if i := bytes.Index(b.Bytes(), []byte("<svg")); i > 0 {
		b.Next(i)
	}
	return template.HTML(b.String()), nil //nolint:gosec // gonum/plot escapes its text
}

// pressureWithDepth draws every compartment of a step at its peak: where it
// stands still with the highest surface pressure.
func pressureWithDepth(s *sequence.StepResult) (template.HTML, error) {
	at := &s.Points[0]
	most := math.Inf(-1)
	for i := range s.Points {
		for _, r := range s.Points[i].Surface {
			if float64(r.Pressure) > most {
				most, at = float64(r.Pressure), &s.Points[i]
			}
		}
	}
	p := newPlot("pressure with depth, "+at.Label, "psi", "true vertical depth, ft")
	var order []string
	lines := map[string]plotter.XYs{}
	for _, q := range at.Profiles {
		if lines[q.Compartment] == nil {
			order = append(order, q.Compartment)
		}
		lines[q.Compartment] = append(lines[q.Compartment], plotter.XY{X: q.Pressure.In(unit.PSI), Y: -q.TVD.In(unit.Foot)})
	}
	for i, name := range order {
		l, err := plotter.NewLine(lines[name])
		if err != nil {
			return "", err
		}
		l.LineStyle = inks[i%len(inks)]
		if i >= len(inks) {
			l.Width = vg.Points(0.8)
		}
		p.Add(l)
		p.Legend.Add(name, l)
	}
	p.Y.Tick.Marker = depthTicks{}
	p.Legend.Top, p.Legend.Left = false, true
	return svg(p, 13*vg.Centimeter, 11*vg.Centimeter)
}

// depthTicks writes depths below surface without their sign.
type depthTicks struct{}

func (depthTicks) Ticks(least, greatest float64) []plot.Tick {
	ticks := plot.DefaultTicks{}.Ticks(least, greatest)
	for i := range ticks {
		if ticks[i].Label != "" {
			ticks[i].Label = fmt.Sprintf("%.0f", math.Abs(ticks[i].Value))
		}
	}
	return ticks
}

// ledger draws, for each action, what it has felt in each step beside the band
// of the trigger that it waited for.
func ledger(p *sequence.Programme) ([]template.HTML, error) {
	var order []string
	waits := map[string][]wait{}
	for i, s := range p.Steps {
		for _, t := range s.Triggers {
			if waits[t.Action] == nil {
				order = append(order, t.Action)
			}
			waits[t.Action] = append(waits[t.Action], wait{float64(i + 1), t})
		}
	}
	var all []template.HTML
	for _, name := range order {
		picture, err := ledgerOf(name, waits[name], len(p.Steps))
		if err != nil {
			return nil, err
		}
		all = append(all, picture)
	}
	return all, nil
}

// wait is an action in a step.
type wait struct {
	step float64
	sequence.TriggerResult
}

func ledgerOf(name string, waits []wait, steps int) (template.HTML, error) {
	y := "differential, psi"
	if waits[0].Least.Axial() {
		y = "tension, 1,000 lbf"
	}
	c := newPlot(name, "step", y)
	for _, t := range waits {
		low, high := scaled(t.Threshold.Least), scaled(t.Threshold.Greatest)
		block, err := plotter.NewPolygon(plotter.XYs{{X: t.step - 0.5, Y: low}, {X: t.step + 0.5, Y: low}, {X: t.step + 0.5, Y: high}, {X: t.step - 0.5, Y: high}})
		if err != nil {
			return "", err
		}
		block.Color, block.LineStyle.Width = bandInk, 0
		from, to := scaled(t.Least), scaled(t.Greatest)
		bar, err := plotter.NewLine(plotter.XYs{{X: t.step, Y: from}, {X: t.step, Y: to}})
		if err != nil {
			return "", err
		}
		bar.LineStyle = draw.LineStyle{Color: feltInk, Width: vg.Points(2)}
		ends, err := plotter.NewScatter(plotter.XYs{{X: t.step, Y: from}, {X: t.step, Y: to}})
		if err != nil {
			return "", err
		}
		ends.GlyphStyle = draw.GlyphStyle{Color: feltInk, Radius: vg.Points(1.8), Shape: draw.CircleGlyph{}}
		c.Add(block, bar, ends)
	}
	c.X.Min, c.X.Max = 0.5, float64(steps)+0.5
	room(&c.Y)
	return svg(c, 11*vg.Centimeter, 6*vg.Centimeter)
}

// room leaves some space beyond the last points of an axis.
func room(a *plot.Axis) {
	d := 0.06 * (a.Max - a.Min)
	a.Min, a.Max = a.Min-d, a.Max+d
}

func scaled(x sequence.Level) float64 {
	if f, ok := x.Force(); ok {
		return f.In(unit.Kilopound)
	}
	p, _ := x.Pressure()
	return p.In(unit.PSI)
}

// along draws tension and use of the string with depth: all steps faintly, the
// step that uses it most boldly.
func along(p *sequence.Programme) ([]template.HTML, error) {
	force := newPlot("tension along the string", "1,000 lbf", "measured depth, ft")
	use := newPlot("use of the string, design factor included", "share of the governing limit", "measured depth, ft")
	var most *sequence.StringAt
	name := ""
	for i, s := range p.Steps {
		for k := range s.Points {
			x := s.Points[k].String
			if x == nil {
				continue
			}
			if most == nil || x.Usage > most.Usage {
				most, name = x, fmt.Sprintf("step %d, %s", i+1, s.Points[k].Label)
			}
			if err := addAlong(force, use, x, draw.LineStyle{Color: faintInk, Width: vg.Points(0.5)}, ""); err != nil {
				return nil, err
			}
		}
	}
	if most == nil {
		return nil, nil
	}
	if err := addAlong(force, use, most, inks[4%len(inks)], name); err != nil {
		return nil, err
	}
	var all []template.HTML
	for _, c := range []*plot.Plot{force, use} {
		c.Y.Tick.Marker = depthTicks{}
		c.Legend.Left = true
		room(&c.X)
		picture, err := svg(c, 13*vg.Centimeter, 10*vg.Centimeter)
		if err != nil {
			return nil, err
		}
		all = append(all, picture)
	}
	return all, nil
}

func addAlong(force, use *plot.Plot, x *sequence.StringAt, style draw.LineStyle, name string) error {
	var f, u plotter.XYs
	for _, n := range x.Along {
		f = append(f, plotter.XY{X: n.Wall.In(unit.Kilopound), Y: -n.MD.In(unit.Foot)})
		u = append(u, plotter.XY{X: n.Usage, Y: -n.MD.In(unit.Foot)})
	}
	for _, c := range []struct {
		plot *plot.Plot
		xy   plotter.XYs
	}{{force, f}, {use, u}} {
		l, err := plotter.NewLine(c.xy)
		if err != nil {
			return err
		}
		l.LineStyle = style
		c.plot.Add(l)
		if name != "" {
			c.plot.Legend.Add(name, l)
		}
	}
	return nil
}

// envelope draws what the packer holds, with its load wherever a step stands
// still.
func envelope(polygon packer.Polygon, p *sequence.Programme) (template.HTML, error) {
	c := newPlot("the packer's holding envelope and its loads", "pull of the string, up positive, 1,000 lbf", "pressure below minus above, psi")
	var corners, loads plotter.XYs
	for _, v := range polygon.Vertices {
		corners = append(corners, plotter.XY{X: v.Axial.In(unit.Kilopound), Y: v.Differential.In(unit.PSI)})
	}
	labels := plotter.XYLabels{}
	for i, s := range p.Steps {
		for _, h := range s.Holding {
			at := plotter.XY{X: h.Axial.In(unit.Kilopound), Y: h.Differential.In(unit.PSI)}
			near := false
			for _, o := range loads {
				near = near || math.Abs(o.X-at.X) < 1 && math.Abs(o.Y-at.Y) < 50
			}
			loads = append(loads, at)
			if !near {
				labels.XYs, labels.Labels = append(labels.XYs, at), append(labels.Labels, fmt.Sprintf(" %d", i+1))
			}
		}
	}
	area, err := plotter.NewPolygon(corners)
	if err != nil {
		return "", err
	}
	area.Color, area.LineStyle = color.RGBA{R: 0xf1, G: 0xea, B: 0xda, A: 255}, draw.LineStyle{Color: inks[1].Color, Width: vg.Points(1.2)}
	c.Add(area)
	if len(loads) > 0 {
		dots, err := plotter.NewScatter(loads)
		if err != nil {
			return "", err
		}
		dots.GlyphStyle = draw.GlyphStyle{Color: feltInk, Radius: vg.Points(2.5), Shape: draw.CircleGlyph{}}
		names, err := plotter.NewLabels(labels)
		if err != nil {
			return "", err
		}
		c.Add(dots, names)
	}
	room(&c.X)
	room(&c.Y)
	return svg(c, 18*vg.Centimeter, 12*vg.Centimeter)
}
