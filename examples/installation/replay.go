package main

import (
	"strings"

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

// short is the value of a choice in few digits and the reader's units, or without
// loss where the few lie outside its band.
func (w *work) short(c sequence.Choice) string {
	for _, text := range []string{w.read.few(c.Exact), c.Value} {
		if _, err := w.plan.Choose(c.Path + " = " + text); err == nil {
			return text
		}
	}
	return c.Exact
}
