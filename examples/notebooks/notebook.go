package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
)

// The words that every lesson has in common.
const (
	caution = "> **Caution.** An engineering aid for learning. Pressure, tension and gas kill: verify every input; the equipment maker's rated data, local regulation, well-control practice and the review of a competent engineer come first. The wells here are invented, and so are their names and figures."

	howToRun = "**To run the code** you need Go 1.26 or later and a copy of this library. Reading needs neither: what the code prints is below it. All cells together are one Go program; in a module of your own these two lines find the library:\n\n" +
		"```text\ngo mod edit -require=completion.example@v0.0.0 -replace=completion.example=/path/to/the/copy\ngo mod tidy\n```\n\n" +
		"`go run ./examples/notebooks -o DIR` in the copy writes every lesson as a page, as a notebook and as a program with that line in its go.mod."
)

// opening is the first text of a lesson.
func (l Lesson) opening() string {
	return fmt.Sprintf("# %d. %s\n\n%s\n\n*About %s hours. Needs: %s.*\n\n%s\n\n%s", l.Number, l.Title, l.Gives, l.Hours, l.Needs, caution, howToRun)
}

// The notebook format 4.5, as much of it as the lessons use.
type (
	notebook struct {
		Cells    []any          `json:"cells"`
		Metadata map[string]any `json:"metadata"`
		Format   int            `json:"nbformat"`
		Minor    int            `json:"nbformat_minor"`
	}
	textCell struct {
		Type     string         `json:"cell_type"`
		ID       string         `json:"id"`
		Metadata map[string]any `json:"metadata"`
		Source   []string       `json:"source"`
	}
	codeCell struct {
		Type     string         `json:"cell_type"`
		Count    int            `json:"execution_count"`
		ID       string         `json:"id"`
		Metadata map[string]any `json:"metadata"`
		Outputs  []any          `json:"outputs"`
		Source   []string       `json:"source"`
	}
	stream struct {
		Name string   `json:"name"`
		Type string   `json:"output_type"`
		Text []string `json:"text"`
	}
	display struct {
		Data     map[string][]string `json:"data"`
		Metadata map[string]any      `json:"metadata"`
		Type     string              `json:"output_type"`
	}
)

// What a kernel that compiles every cell by itself wants to be told, as comments, so
// that a cell is Go and nothing else.
const (
	whereItIs  = "//gonb:!*go mod edit -require=completion.example@v0.0.0 -replace=completion.example=${GONB_DIR}/../..\n"
	isForMain  = "//gonb:%%\n"
	kernelName = "gonb"
)

// notebook writes the lesson with what its cells printed.
func (l Lesson) notebook(printed map[int][]Output) ([]byte, error) {
	none := map[string]any{}
	book := notebook{Format: 4, Minor: 5, Metadata: map[string]any{
		"kernelspec":    map[string]string{"display_name": "Go (" + kernelName + ")", "language": "go", "name": kernelName},
		"language_info": map[string]string{"file_extension": ".go", "mimetype": "text/x-go", "name": "go"},
		"title":         l.Title,
	}}
	id := func() string { return fmt.Sprintf("%s-%02d", l.Name, len(book.Cells)) }
	book.Cells = append(book.Cells, textCell{"markdown", id(), none, lines(l.opening())})
	count := 0
	for i, c := range l.Cells {
		if c.Kind == Text {
			book.Cells = append(book.Cells, textCell{"markdown", id(), none, lines(c.Source)})
			continue
		}
		count++
		source := map[Kind]string{Imports: whereItIs, Statements: isForMain}[c.Kind] + c.Source
		code := codeCell{Type: "code", Count: count, ID: id(), Metadata: none, Outputs: []any{}, Source: lines(source)}
		if c.Folded {
			code.Metadata = map[string]any{"collapsed": true, "jupyter": map[string]bool{"outputs_hidden": true, "source_hidden": true}}
		}
		for _, o := range printed[i] {
			if o.Picture != "" {
				code.Outputs = append(code.Outputs, display{map[string][]string{"image/svg+xml": lines(o.Picture)}, none, "display_data"})
				continue
			}
			code.Outputs = append(code.Outputs, stream{"stdout", "stream", lines(o.Text)})
		}
		book.Cells = append(book.Cells, code)
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	err := e.Encode(book)
	return out.Bytes(), err
}

// lines splits as notebooks do: every line keeps its end.
func lines(s string) []string {
	s = strings.TrimSuffix(s, "\n")
	if s == "" {
		return []string{}
	}
	return strings.SplitAfter(s, "\n")
}
