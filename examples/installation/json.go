package main

import (
	"encoding/json"
	"io"

	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
)

func printJSON(out io.Writer, w *work, over float64) error {
	e := json.NewEncoder(out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	d := struct {
		Caution string          `json:"caution"`
		Hash    string          `json:"hash"`
		Edits   []sequence.Edit `json:"edits,omitempty"`
		Notes   []string        `json:"notes,omitempty"`
		*sequence.Programme
		Changes *changed `json:"changes,omitempty"`
		Risk    *risk    `json:"risk,omitempty"`
	}{calculator.Caution, w.hash, w.edits, w.notes, w.programme, nil, w.risk}
	if w.before != nil {
		d.Changes = compare(w, over)
	}
	return e.Encode(d)
}
