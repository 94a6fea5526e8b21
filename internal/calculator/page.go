package calculator

import (
	"encoding"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"
	"time"
)

// page is an answer on its way to the reader.
type page struct {
	command Command
	answer  Answer
	inputs  []input
	explain bool
	units   *Units
}

// text writes the page for people: caution, inputs as understood, working,
// tables, answer, and the printed answer beside it.
func (p page) text(out io.Writer) error {
	w := &strings.Builder{}
	prose(w, "", "  ", p.command.Name+": "+p.command.Question)
	prose(w, "", "", Caution)
	fmt.Fprintf(w, "\nInputs\n")
	given := slices.DeleteFunc(slices.Clone(p.inputs), func(in input) bool { return in.people == "" }) // files that there are not
	rows(w, len(given), func(i int) []string { return []string{given[i].name, given[i].people} })
	if p.explain {
		fmt.Fprintf(w, "\nWorking\n")
		for _, s := range p.answer.Steps {
			prose(w, "  ", "  ", fmt.Sprintf("%s (%s)", p.units.Rewrite(s.Name), s.Source))
			prose(w, "    ", "      ", p.units.step(s))
		}
		if len(p.answer.Steps) == 0 {
			fmt.Fprintf(w, "  (this answer has no closed form to show; its doc names method and source)\n")
		}
	}
	for _, t := range p.answer.Tables {
		fmt.Fprintf(w, "\n%s\n", t.Name)
		cells := t.words(p.units)
		rows(w, len(cells)+1, func(i int) []string {
			if i == 0 {
				return t.Header
			}
			return cells[i-1]
		})
	}
	fmt.Fprintf(w, "\nAnswer\n")
	rows(w, len(p.answer.Results), func(i int) []string {
		return []string{p.units.Rewrite(p.answer.Results[i].Name), p.units.word(p.answer.Results[i].Value, p.answer.Results[i].For)}
	})
	for _, n := range p.notes() {
		prose(w, "  note: ", "        ", n)
	}
	if c := p.answer.Published; c != nil {
		w.WriteString("\nPublished\n")
		prose(w, "  ", "    ", published(c))
	}
	_, err := io.WriteString(out, w.String())
	return err
}

// published is a printed answer with ours beside it.
func published(c *Published) string {
	return fmt.Sprintf("%s: printed %s, here %s (%s)", c.Name, printed(c.Printed), beside(c.Printed, c.Ours), c.Source)
}

// rows aligns n rows of cells in columns.
func rows(out *strings.Builder, n int, row func(int) []string) {
	b := &strings.Builder{}
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	cells := make([][]string, n)
	for i := range n {
		cells[i] = row(i)
		fmt.Fprintf(w, "  %s\n", strings.Join(cells[i], "\t"))
	}
	w.Flush() //nolint:errcheck // a strings.Builder takes everything
	if fits(b.String()) {
		out.WriteString(b.String())
		return
	}
	grid(out, cells)
}

// json writes the page for machines. Quantities are text without loss, each field
// in one fixed unit whatever its size.
func (p page) json(out io.Writer) error {
	type pair struct {
		Name  string `json:"name"`
		Value any    `json:"value"`
	}
	type line struct {
		Name     string `json:"name"`
		Symbol   string `json:"symbol"`
		Equation string `json:"equation"`
		Numbers  string `json:"numbers"`
		Value    string `json:"value"`
		Source   string `json:"source"`
	}
	type table struct {
		Name   string   `json:"name"`
		Header []string `json:"header"`
		Rows   [][]any  `json:"rows"`
	}
	type published struct {
		Name    string `json:"name"`
		Printed any    `json:"printed"`
		Ours    any    `json:"ours"`
		Source  string `json:"source"`
	}
	var d struct {
		Calculator string            `json:"calculator"`
		Units      string            `json:"units"`
		Caution    string            `json:"caution"`
		Inputs     map[string]string `json:"inputs"`
		Results    []pair            `json:"results"`
		Tables     []table           `json:"tables,omitempty"`
		Notes      []string          `json:"notes,omitempty"`
		Working    []line            `json:"working,omitempty"`
		Published  *published        `json:"published,omitempty"`
	}
	d.Calculator, d.Units, d.Caution, d.Notes = p.command.Name, p.units.System.String(), Caution, p.notes()
	d.Inputs = map[string]string{}
	for _, in := range p.inputs {
		d.Inputs[in.name] = in.value
	}
	for _, r := range p.answer.Results {
		d.Results = append(d.Results, pair{r.Name, p.units.exact(r.Value, r.For)})
	}
	for _, t := range p.answer.Tables {
		m := table{Name: t.Name, Header: t.Header}
		for _, row := range t.Rows {
			cells := make([]any, len(row))
			for i, v := range row {
				cells[i] = p.units.exact(v, t.purpose(i))
			}
			m.Rows = append(m.Rows, cells)
		}
		d.Tables = append(d.Tables, m)
	}
	if p.explain {
		for _, s := range p.answer.Steps {
			d.Working = append(d.Working, line{s.Name, s.Symbol, s.Equation, s.NumbersAs(p.units.worked), p.units.worked(s.Value), s.Source})
		}
	}
	if c := p.answer.Published; c != nil {
		d.Published = &published{c.Name, machine(c.Printed), machine(c.Ours), c.Source}
	}
	e := json.NewEncoder(out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(d)
}

// machine keeps what JSON can hold and turns the rest into text.
func machine(v any) any {
	switch v := v.(type) {
	case nil, string, bool, int, encoding.TextMarshaler:
		return v
	case float64:
		return json.Number(strconv.FormatFloat(v, 'g', -1, 64))
	case time.Duration:
		return v.String()
	case fmt.Stringer:
		return v.String()
	}
	return v
}
