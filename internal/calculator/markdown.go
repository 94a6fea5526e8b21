package calculator

import (
	"fmt"
	"io"
	"strings"
)

// markdown writes the page as Markdown, for a report or a message: the answer
// first, then what it came from.
func (p page) markdown(out io.Writer) error {
	w := &strings.Builder{}
	fmt.Fprintf(w, "# %s\n\n%s\n\n> %s\n", p.command.Name, p.command.Question, Caution)
	fmt.Fprintf(w, "\n## Answer\n\n")
	markdownTable(w, []string{"", ""}, len(p.answer.Results), func(i int) []string {
		r := p.answer.Results[i]
		return []string{p.units.Rewrite(r.Name), p.units.word(r.Value, r.For)}
	})
	for i, n := range p.notes() {
		if i == 0 {
			fmt.Fprintln(w)
		}
		fmt.Fprintf(w, "- %s\n", oneLine(n))
	}
	for _, t := range p.answer.Tables {
		fmt.Fprintf(w, "\n## %s\n\n", t.Name)
		cells := t.words(p.units)
		markdownTable(w, t.Header, len(cells), func(i int) []string { return cells[i] })
	}
	if c := p.answer.Published; c != nil {
		fmt.Fprintf(w, "\n## Published\n\n%s\n", published(c))
	}
	if p.explain {
		fmt.Fprintf(w, "\n## Working\n\n")
		for _, s := range p.answer.Steps {
			fmt.Fprintf(w, "- %s (%s): `%s`\n", p.units.Rewrite(s.Name), s.Source, p.units.step(s))
		}
	}
	fmt.Fprintf(w, "\n## Inputs\n\n")
	markdownTable(w, []string{"flag", "value"}, len(p.inputs), func(i int) []string { return []string{p.inputs[i].name, p.inputs[i].people} })
	_, err := io.WriteString(out, w.String())
	return err
}

func markdownTable(w io.Writer, header []string, n int, row func(int) []string) {
	fmt.Fprintf(w, "| %s |\n|%s\n", strings.Join(header, " | "), strings.Repeat(" --- |", len(header)))
	for i := range n {
		cells := row(i)
		for j := range cells {
			cells[j] = oneLine(cells[j])
		}
		fmt.Fprintf(w, "| %s |\n", strings.Join(cells, " | "))
	}
}
