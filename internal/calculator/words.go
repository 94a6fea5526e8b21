package calculator

import (
	"fmt"
	"strings"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/hydrostatics/working"
	"completion.example/internal/clock"
)

// digits of a number without a unit, and of a printed answer.
const digits = 5

// word writes a value for people, in the unit of its purpose.
func (u *Units) word(v any, p display.Purpose) string {
	switch v := v.(type) {
	case string:
		return u.Rewrite(v)
	case working.Value:
		if q := v.Quantity(); q != nil {
			return u.Format(q, implied(v, p))
		}
		return v.String()
	case float64:
		return unit.Significant(v, digits)
	case time.Duration:
		return clock.Words(v)
	case bool:
		if v {
			return "yes"
		}
		return "no"
	case nil:
		return ""
	}
	if u.UnitOf(v, p) != "" {
		return u.Format(v, p)
	}
	if r, ok := v.(interface{ Rounded(int) string }); ok {
		return r.Rounded(digits)
	}
	return fmt.Sprint(v)
}

// exact writes a value for machines, or returns it if JSON can hold it.
func (u *Units) exact(v any, p display.Purpose) any {
	if text, ok := v.(string); ok {
		return u.Rewrite(text)
	}
	if w, ok := v.(working.Value); ok && w.Quantity() != nil {
		v, p = w.Quantity(), implied(w, p)
	}
	if u.UnitOf(v, p) != "" {
		return u.Exact(v, p)
	}
	return machine(v)
}

// implied is what a worked value is for: p, or what its unit says.
func implied(v working.Value, p display.Purpose) display.Purpose {
	if p != display.Usual {
		return p
	}
	return display.Implied(v.Quantity(), lastWord(v.String()))
}

// step writes a worked line in the units of the output.
func (u *Units) step(s working.Step) string { return s.Text(u.worked) }

// workedDigits are enough to follow the arithmetic with a pocket calculator.
const workedDigits = 6

func (u *Units) worked(v working.Value) string {
	if q := v.Quantity(); q != nil {
		return u.Significant(q, implied(v, display.Usual), workedDigits)
	}
	return v.String()
}

// printed is a published answer as it is printed.
func printed(v any) string {
	if text, ok := v.(string); ok {
		return text
	}
	return inFieldUnits(v)
}

// beside writes our answer in the unit of the printed one.
func beside(theirs, ours any) string {
	text, ok := theirs.(string)
	if !ok {
		return inFieldUnits(ours)
	}
	if mine, is := ours.(string); is {
		return mine
	}
	if w, is := ours.(working.Value); is && w.Quantity() != nil {
		ours = w.Quantity()
	}
	q, written, ok := unit.Written(text)
	s := display.Plan(text)
	if p := display.Implied(ours, written.Text); ok && q != "" && s.UnitOf(ours, p) == written.Text {
		return s.Significant(ours, p, digits)
	}
	return inFieldUnits(ours)
}

// inFieldUnits writes a value for people, in field units.
func inFieldUnits(v any) string { return (&Units{}).word(v, display.Usual) }

// words writes a table for people: each column in one unit throughout.
func (t Table) words(u *Units) [][]string {
	cells := make([][]string, len(t.Rows))
	for i, row := range t.Rows {
		cells[i] = make([]string, len(row))
		for j, v := range row {
			cells[i][j] = u.word(v, t.purpose(j))
		}
	}
	return cells
}

func (t Table) purpose(column int) display.Purpose {
	if column < len(t.For) {
		return t.For[column]
	}
	return display.Usual
}

// oneLine keeps a cell of a Markdown table in its cell.
func oneLine(s string) string {
	return strings.NewReplacer("|", `\|`, "\n", " ").Replace(s)
}

// notes are the answer's findings, in the units of the output.
func (p page) notes() []string {
	var all []string
	for _, n := range p.answer.Notes {
		all = append(all, p.units.Rewrite(n))
	}
	return all
}
