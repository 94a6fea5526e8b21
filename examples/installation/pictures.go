package main

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/valve/sequence"
)

// picture is a plot with its key beside it, where no line can run through it.
type picture struct {
	Title string
	SVG   markup
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
var dashes = [most][]float64{nil, {9, 4}, {3, 3}, {12, 3, 3, 3}, {2, 4}}

// The inks are those of the page, which differ in light, dark and print.
var inks = [most]string{"var(--l1)", "var(--l2)", "var(--l3)", "var(--l4)", "var(--l5)"}

const bandInk = "var(--band)"

func style(i int) svg.Pen {
	return svg.Pen{Ink: inks[i%most], Width: 2.2, Dashes: dashes[i%most]}
}

func newPlot(x, y string) *chart.Plot {
	return &chart.Plot{X: chart.Scale{Name: x}, Y: chart.Scale{Name: y}, Clear: true}
}

// Sizes of the plots, in pixels.
const (
	plotWide, plotHigh = 400, 300
	ledgerHigh         = 200
)

// pageInks are the inks of a plot as the page has them.
var pageInks = strings.NewReplacer(`"`+svg.Ink+`"`, `"var(--ink)"`, `"`+svg.Rule+`"`, `"var(--rule)"`)

// drawn is the plot as a drawing of the page, in the page's inks.
func drawn(p *chart.Plot, wide, high float64, name string) (markup, error) {
	var b bytes.Buffer
	if err := chart.Row(&b, wide, high, name, p); err != nil {
		return "", err
	}
	return markup(pageInks.Replace(b.String())), nil
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
	profiles := make([][]sequence.ProfilePoint, len(s.Points))
	for i := range s.Points {
		var err error
		if profiles[i], err = s.Points[i].Profile(); err != nil {
			return nil, err
		}
	}
	here, err := at.Profile()
	if err != nil {
		return nil, err
	}
	lines, moved := map[string][]svg.XY{}, map[string]float64{}
	for k, q := range here {
		if lines[q.Compartment] == nil {
			order = append(order, q.Compartment)
		}
		lines[q.Compartment] = append(lines[q.Compartment], svg.XY{X: u.in(q.Pressure, pressure), Y: u.in(q.TVD, depth)})
		for _, other := range profiles {
			if k < len(other) {
				moved[q.Compartment] = max(moved[q.Compartment], math.Round(math.Abs(float64(other[k].Pressure-q.Pressure))))
			}
		}
	}
	slices.SortStableFunc(order, func(a, b string) int { return cmp.Compare(moved[b], moved[a]) })
	p := newPlot("pressure, "+u.symbol(pressure), "true vertical depth, "+u.symbol(depth))
	p.Y.Down = true
	x := &picture{Title: "pressure with depth, " + at.Label}
	for i, name := range order[:min(most, len(order))] {
		p.Line("", style(i), lines[name]...)
		x.Key = append(x.Key, keyLine{name, i})
	}
	if len(order) > most {
		x.Title += fmt.Sprintf(": the %d compartments that it moves most of %d", most, len(order))
	}
	x.SVG, err = drawn(p, plotWide, plotHigh, x.Title)
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
	c.X.Whole = true
	for _, t := range waits {
		low, high := u.in(t.Threshold.Least, what), u.in(t.Threshold.Greatest, what)
		c.Area("", bandInk, svg.Pen{Ink: inks[1], Width: 0.8}, svg.XY{X: t.step - 0.5, Y: low}, svg.XY{X: t.step + 0.5, Y: low},
			svg.XY{X: t.step + 0.5, Y: high}, svg.XY{X: t.step - 0.5, Y: high})
		from, to := svg.XY{X: t.step, Y: u.in(t.Least, what)}, svg.XY{X: t.step, Y: u.in(t.Greatest, what)}
		c.Line("", svg.Pen{Ink: inks[0], Width: 3}, from, to)
		shape := chart.Dot
		if t.Intended {
			shape = chart.Wedge
		}
		c.Marks("", shape, inks[0], 3, from, to)
	}
	c.X.Least, c.X.Greatest = 0.5, float64(steps)+0.5
	c.Y.Room(0.06)
	svg, err := drawn(c, plotWide, ledgerHigh, name)
	return &picture{Title: name, SVG: svg}, err
}
