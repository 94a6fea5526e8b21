package main

import (
	_ "embed"
	"fmt"
	"html/template"
	"os"
	"regexp"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
)

//go:embed report.html
var page string

// sheet is what the page shows of a step.
type sheet struct {
	Number int
	*sequence.StepResult
	Apply, Moves      []string
	Window, Nearest   string
	Pumped, Swaps     []string
	Rating, StringRow string
	Balances, Flows   []string
	Zones, Standing   []string
	Lost              []string
	Points            []sequence.Point
	Picture           template.HTML
}

// writeReport writes the programme as one HTML file that needs nothing else.
func writeReport(file string, plan *sequence.Plan, p *sequence.Programme, odds *risk) error {
	t, err := template.New("report").Funcs(template.FuncMap{
		"psi":     func(p unit.Pressure) string { return p.Rounded(digits) },
		"feet":    func(l unit.Length) string { return fmt.Sprintf("%.0f ft", l.In(unit.Foot)) },
		"percent": func(x float64) string { return fmt.Sprintf("%.2f %%", 100*x) },
		"tested":  tested,
		"join":    func(s []string) string { return strings.Join(s, ", ") },
		"whole":   whole,
	}).Parse(page)
	if err != nil {
		return err
	}
	d := struct {
		Plan      *sequence.Plan
		Programme *sequence.Programme
		Caution   string
		Sheets    []sheet
		Ledger    []template.HTML
		Along     []template.HTML
		Envelope  template.HTML
		Risk      *risk
	}{Plan: plan, Programme: p, Caution: calculator.Caution, Risk: odds}
	for i := range p.Steps {
		s, err := sheetOf(i, &p.Steps[i])
		if err != nil {
			return err
		}
		d.Sheets = append(d.Sheets, s)
	}
	if d.Ledger, err = ledger(p); err != nil {
		return err
	}
	if d.Along, err = along(p); err != nil {
		return err
	}
	if plan.Holding != nil {
		if d.Envelope, err = envelope(plan.Holding.Envelope, p); err != nil {
			return err
		}
	}
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	if err := t.Execute(f, d); err != nil {
		f.Close() //nolint:errcheck // the first error counts
		return err
	}
	return f.Close()
}

// unbroken finds where a line must not break: between a number and its unit.
var unbroken = regexp.MustCompile(`(\d) ([a-zA-Z%])`)

// whole keeps numbers and units in one line, and an arrow with what stands
// before it.
func whole(text string) string {
	return strings.ReplaceAll(unbroken.ReplaceAllString(text, "$1\u00a0$2"), " →", "\u00a0→")
}

func sheetOf(i int, s *sequence.StepResult) (sheet, error) {
	x := sheet{Number: i + 1, StepResult: s, Apply: surface(s), Points: s.Points}
	for _, e := range s.Events {
		x.Moves = append(x.Moves, event(e))
	}
	for _, v := range s.Volumes {
		head, text := pumped(v)
		x.Pumped = append(x.Pumped, head+" "+text)
		if v.What != "compression" {
			x.Swaps = append(x.Swaps, head+" "+text)
		}
	}
	for n := range s.Windows {
		x.Window += window(&s.Windows[n]) + " "
	}
	for _, t := range s.Partings {
		x.Window = fmt.Sprintf("%s at %s to %s on the weight indicator", t.Action, t.Least.Rounded(digits), t.Greatest.Rounded(digits))
	}
	if t, ok := nearest(s); ok {
		x.Nearest = fmt.Sprintf("%s: %s left", t.Action, t.Margin.Rounded(digits))
	}
	if r, ok := mostUsed(s); ok {
		x.Rating = fmt.Sprintf("%.0f %% of %s", 100*r.Usage, r.Name)
	}
	if at, ok := mostLoaded(s); ok {
		x.StringRow = stringWords(at)
	}
	for _, b := range s.Balance {
		x.Balances = append(x.Balances, fmt.Sprintf("%s against %s: %s", b.Compartment, b.Formation, balance(b.Overbalance)))
	}
	for _, f := range s.Points[len(s.Points)-1].Flows {
		x.Flows = append(x.Flows, fmt.Sprintf("%s from %s to %s, driven by %s", f.Kind, f.From, f.To, f.Differential.Rounded(digits)))
	}
	for _, z := range s.Zones {
		x.Zones = append(x.Zones, fmt.Sprintf("%s gives %s", z.Formation, z.Rate.Rounded(digits)))
	}
	for _, b := range s.Barriers {
		text := b.Name
		if len(b.Tested) > 0 {
			text += " (tested from " + strings.Join(b.Tested, " and ") + ")"
		}
		if b.Stands {
			x.Standing = append(x.Standing, text)
		}
		if b.Lost {
			x.Lost = append(x.Lost, b.Name)
		}
	}
	var err error
	x.Picture, err = pressureWithDepth(s)
	return x, err
}
