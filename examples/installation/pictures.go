package main

import (
	"bytes"
	"cmp"
	"fmt"
	"html/template"
	"image/color"
	"math"
	"slices"
	"strings"

	"completion.example/valve/sequence"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// picture is a plot with its key beside it, where no line can run through it.
type picture struct {
	Title string
	SVG   template.HTML
	Key   []keyLine
}

// keyLine names a line; Dash is how it is drawn.
type keyLine struct {
	Name string
	Dash int
}

// most lines in one picture.
const most = 5

// dashes tell lines apart without colour.
var dashes = [most][]vg.Length{nil, {vg.Points(7), vg.Points(3)}, {vg.Points(2), vg.Points(2)}, {vg.Points(9), vg.Points(2), vg.Points(2), vg.Points(2)}, {vg.Points(1), vg.Points(3)}}

// The plots are drawn in inks that stand for those of the page, which differ in
// light, dark and print.
var (
	inks      = [most]color.RGBA{{1, 0, 0, 255}, {2, 0, 0, 255}, {3, 0, 0, 255}, {4, 0, 0, 255}, {5, 0, 0, 255}}
	bandInk   = color.RGBA{6, 0, 0, 255}
	faintInk  = color.RGBA{7, 0, 0, 255}
	pageInks  = map[string]string{"#010000": "var(--l1)", "#020000": "var(--l2)", "#030000": "var(--l3)", "#040000": "var(--l4)", "#050000": "var(--l5)", "#060000": "var(--band)", "#070000": "var(--rule)", "#080000": "var(--ink)", "#000000": "var(--ink)"}
	lineWidth = vg.Points(1.7)
)

func style(i int) draw.LineStyle {
	return draw.LineStyle{Color: inks[i%most], Width: lineWidth, Dashes: dashes[i%most]}
}

func newPlot(x, y string) *plot.Plot {
	p := plot.New()
	p.X.Label.Text, p.Y.Label.Text = x, y
	p.X.Label.TextStyle.Font.Size, p.Y.Label.TextStyle.Font.Size = vg.Points(9), vg.Points(9)
	p.X.Tick.Marker, p.Y.Tick.Marker = wholeNumbers{}, wholeNumbers{}
	p.BackgroundColor = color.Transparent
	g := plotter.NewGrid()
	g.Vertical.Color, g.Horizontal.Color = faintInk, faintInk
	p.Add(g)
	return p
}

// wholeNumbers marks an axis at whole numbers, without a sign: depths are drawn
// downwards.
type wholeNumbers struct{ down bool }

func (w wholeNumbers) Ticks(least, greatest float64) []plot.Tick {
	step := nice(max((greatest-least)/6, 1))
	var all []plot.Tick
	for x := math.Ceil(least/step) * step; x <= greatest; x += step {
		v := x
		if w.down {
			v = math.Abs(x)
		}
		if math.Abs(v) < step/2 {
			v = 0 // and not -0
		}
		all = append(all, plot.Tick{Value: x, Label: fmt.Sprintf("%.0f", v)})
	}
	return all
}

// drawn is the plot as a drawing of the page, in the page's inks.
func drawn(p *plot.Plot, wide, high vg.Length) (template.HTML, error) {
	w, err := p.WriterTo(wide, high, "svg")
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	if _, err := w.WriteTo(&b); err != nil {
		return "", err
	}
	text := b.String()
	if i := strings.Index(text, "<svg"); i > 0 { // the XML head has no place inside a page
		text = text[i:]
	}
	for from, to := range pageInks {
		text = strings.ReplaceAll(text, from, to)
	}
	return template.HTML(text), nil //nolint:gosec // gonum/plot escapes its text
}

// pressureWithDepth draws, where a step stands still with the highest surface
// pressure, the compartments whose pressure changes most in it.
func pressureWithDepth(u reader, s *sequence.StepResult) (*picture, error) {
	at, highest := &s.Points[0], math.Inf(-1)
	for i := range s.Points {
		for _, r := range s.Points[i].Surface {
			if float64(r.Pressure) > highest {
				highest, at = float64(r.Pressure), &s.Points[i]
			}
		}
	}
	var order []string
	lines, moved := map[string]plotter.XYs{}, map[string]float64{}
	for k, q := range at.Profiles {
		if lines[q.Compartment] == nil {
			order = append(order, q.Compartment)
		}
		lines[q.Compartment] = append(lines[q.Compartment], plotter.XY{X: u.in(q.Pressure, pressure), Y: -u.in(q.TVD, depth)})
		for i := range s.Points {
			if k < len(s.Points[i].Profiles) {
				moved[q.Compartment] = max(moved[q.Compartment], math.Round(math.Abs(float64(s.Points[i].Profiles[k].Pressure-q.Pressure))))
			}
		}
	}
	slices.SortStableFunc(order, func(a, b string) int { return cmp.Compare(moved[b], moved[a]) })
	p := newPlot("pressure, "+u.symbol(pressure), "true vertical depth, "+u.symbol(depth))
	p.Y.Tick.Marker = wholeNumbers{down: true}
	x := &picture{Title: "pressure with depth, " + at.Label}
	for i, name := range order[:min(most, len(order))] {
		l, err := plotter.NewLine(lines[name])
		if err != nil {
			return nil, err
		}
		l.LineStyle = style(i)
		p.Add(l)
		x.Key = append(x.Key, keyLine{name, i})
	}
	if len(order) > most {
		x.Title += fmt.Sprintf(": the %d compartments that it moves most of %d", most, len(order))
	}
	var err error
	x.SVG, err = drawn(p, 12*vg.Centimeter, 9*vg.Centimeter)
	return x, err
}

// wait is an action in a step.
type wait struct {
	step float64
	sequence.TriggerResult
}

// ledger draws, for each action, what it has felt in each step beside the band of
// the trigger that it waited for.
func ledger(w *work) ([]*picture, error) {
	var order []string
	waits := map[string][]wait{}
	for i, s := range w.programme.Steps {
		for _, t := range s.Triggers {
			if waits[t.Action] == nil {
				order = append(order, t.Action)
			}
			waits[t.Action] = append(waits[t.Action], wait{float64(i + 1), t})
		}
	}
	var all []*picture
	for _, name := range order {
		x, err := ledgerOf(w.read, name, waits[name], len(w.programme.Steps))
		if err != nil {
			return nil, err
		}
		all = append(all, x)
	}
	return all, nil
}

func ledgerOf(u reader, name string, waits []wait, steps int) (*picture, error) {
	what, word := pressure, "differential, "
	if waits[0].Least.Axial() {
		what, word = force, "balance of the joint, "
	}
	c := newPlot("step", word+u.symbol(what))
	for _, t := range waits {
		low, high := u.in(t.Threshold.Least, what), u.in(t.Threshold.Greatest, what)
		block, err := plotter.NewPolygon(plotter.XYs{{X: t.step - 0.5, Y: low}, {X: t.step + 0.5, Y: low}, {X: t.step + 0.5, Y: high}, {X: t.step - 0.5, Y: high}})
		if err != nil {
			return nil, err
		}
		block.Color, block.LineStyle = bandInk, draw.LineStyle{Color: inks[1], Width: vg.Points(0.6)}
		from, to := u.in(t.Least, what), u.in(t.Greatest, what)
		bar, err := plotter.NewLine(plotter.XYs{{X: t.step, Y: from}, {X: t.step, Y: to}})
		if err != nil {
			return nil, err
		}
		bar.LineStyle = draw.LineStyle{Color: inks[0], Width: vg.Points(2.2)}
		ends, err := plotter.NewScatter(plotter.XYs{{X: t.step, Y: from}, {X: t.step, Y: to}})
		if err != nil {
			return nil, err
		}
		shape := draw.GlyphDrawer(draw.CircleGlyph{})
		if t.Intended {
			shape = draw.TriangleGlyph{}
		}
		ends.GlyphStyle = draw.GlyphStyle{Color: inks[0], Radius: vg.Points(2), Shape: shape}
		c.Add(block, bar, ends)
	}
	c.X.Min, c.X.Max = 0.5, float64(steps)+0.5
	room(&c.Y)
	svg, err := drawn(c, 12*vg.Centimeter, 6*vg.Centimeter)
	return &picture{Title: name, SVG: svg}, err
}

// room leaves some space beyond the last points of an axis.
func room(a *plot.Axis) {
	d := 0.06 * (a.Max - a.Min)
	a.Min, a.Max = a.Min-d, a.Max+d
}
