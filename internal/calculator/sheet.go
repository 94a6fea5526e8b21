package calculator

import (
	"bytes"
	"flag"
	"strings"

	"completion.example/hydrostatics/unit/fault"
)

// Field is an input of a command as a form shows it.
type Field struct {
	Name  string `json:"name"`
	Usage string `json:"usage"`
	Value string `json:"value"` // where nothing is typed
	Kind  Kind   `json:"kind"`
}

// Kind is how a field is filled in.
type Kind string

// The kinds of fields.
const (
	Text  Kind = "text"
	YesNo Kind = "yes"  // true or false
	File  Kind = "file" // the text of a file
)

// Fields lists the inputs of c in the order of their names, those of the frame left
// out but for -units.
func (c Command) Fields() []Field {
	a := &asked{}
	a.set(c)
	var all []Field
	a.flags.VisitAll(func(f *flag.Flag) {
		switch f.Name {
		case "json", "md", "explain", "picture":
			return
		}
		kind, usage := flag.UnquoteUsage(f)
		x := Field{Name: f.Name, Usage: usage, Value: understood(f.Value), Kind: Text}
		if b, ok := f.Value.(interface{ IsBoolFlag() bool }); ok && b.IsBoolFlag() {
			x.Kind = YesNo
		} else if kind == "file" {
			x.Kind = File
		}
		all = append(all, x)
	})
	return all
}

// Sheet is an answer in the same words as Run prints, in parts, for a page that
// sets them in its own way.
type Sheet struct {
	Code      int          `json:"code"` // exit code of Run
	Faults    []Wrong      `json:"faults"`
	Results   []Line       `json:"results"`
	Notes     []string     `json:"notes"`
	Tables    []SheetTable `json:"tables"`
	Working   []Line       `json:"working"`
	Published string       `json:"published"`
	Inputs    []Line       `json:"inputs"`
	Picture   string       `json:"picture"` // SVG
	Text      string       `json:"text"`    // what Run prints with these arguments
	Caution   string       `json:"caution"`
}

// Line is a named text.
type Line struct {
	Name   string `json:"name"`
	Text   string `json:"text"`
	Source string `json:"source,omitempty"`
}

// SheetTable is a table in words.
type SheetTable struct {
	Name   string     `json:"name"`
	Header []string   `json:"header"`
	Rows   [][]string `json:"rows"`
}

// Wrong is what is wrong with an input; the flag is empty where it is of no single
// one.
type Wrong struct {
	Flag string `json:"flag"`
	Says string `json:"says"`
}

// Sheet answers as Run does.
func (c Command) Sheet(args []string) Sheet {
	a := c.ask(args)
	x := Sheet{Code: a.code, Caution: Caution, Text: a.message}
	if a.err != nil {
		for _, f := range fault.List(a.err) {
			x.Faults = append(x.Faults, a.wrong(f))
		}
		return x
	}
	for _, r := range a.answer.Results {
		x.Results = append(x.Results, Line{Name: a.units.Rewrite(r.Name), Text: a.units.word(r.Value, r.For)})
	}
	for _, t := range a.answer.Tables {
		x.Tables = append(x.Tables, SheetTable{t.Name, t.Header, t.words(a.units)})
	}
	for _, s := range a.answer.Steps {
		x.Working = append(x.Working, Line{Name: a.units.Rewrite(s.Name), Text: a.units.step(s), Source: s.Source})
	}
	for _, in := range a.inputs {
		x.Inputs = append(x.Inputs, Line{Name: in.name, Text: in.people})
	}
	x.Notes = a.notes()
	if p := a.answer.Published; p != nil {
		x.Published = published(p)
	}
	var text, picture bytes.Buffer
	err := a.text(&text)
	if err == nil && a.answer.Draw != nil {
		err = a.answer.Draw(&picture)
	}
	if err != nil {
		x.Code, x.Faults = exitNoAnswer, append(x.Faults, Wrong{Says: err.Error()})
	}
	x.Text, x.Picture = text.String(), picture.String()
	return x
}

// wrong finds the flag that a fault is of.
func (a *asked) wrong(f fault.Fault) Wrong {
	says := f.Error()
	if value, rest, ok := strings.Cut(says, " for flag -"); ok && strings.HasPrefix(value, "invalid value ") {
		if name, why, ok := strings.Cut(rest, ": "); ok {
			return Wrong{name, strings.TrimPrefix(value, "invalid value ") + ": " + why}
		}
	}
	name := strings.TrimPrefix(strings.ToLower(f.Path), "-")
	if name == "" {
		name, _, _ = strings.Cut(strings.TrimPrefix(says, "-"), " ")
	}
	if a.flags.Lookup(name) == nil {
		return Wrong{Says: says}
	}
	return Wrong{name, says}
}
