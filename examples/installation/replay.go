package main

import (
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/valve/sequence"
)

// replay is the witness of a finding as -world reads it; empty where every value
// is nominal.
func (w *work) replay(f sequence.Finding) string {
	if !f.Decided || len(f.Witness) == 0 {
		return ""
	}
	nominal := map[string]string{}
	for _, q := range w.plan.Quantities() {
		nominal[q.Path] = q.Exact
	}
	var parts []string
	for _, c := range f.Witness {
		was, known := nominal[c.Path]
		switch {
		case known && was == c.Exact:
		case known:
			parts = append(parts, c.Name+" = "+w.short(c))
		case c.Value != "50 %": // a share of flow
			parts = append(parts, c.Path+" = "+c.Exact)
		}
	}
	return strings.Join(parts, ", ")
}

// short is the value of a choice in the reader's units and as few digits as lie in its
// band, or without loss.
func (w *work) short(c sequence.Choice) string {
	for digits := 5; digits <= 9; digits++ {
		text := w.read.few(c.Exact, digits)
		if q, err := one[unit.TemperatureDifference](c.Exact); err == nil {
			text = w.read.Significant(q, display.TemperatureDifference, digits)
		}
		if _, err := w.plan.Choose(c.Path + " = " + text); err == nil {
			return text
		}
	}
	return c.Exact
}
