package unit

import (
	"fmt"
	"strings"
)

// ParseError says why a text is not a quantity, and what would do.
type ParseError struct {
	Quantity string   // what was wanted, such as "pressure"
	Text     string   // what was given
	Problem  string   // what is wrong with it
	Units    []string // the units that would do
}

func (e *ParseError) Error() string {
	article := "a"
	if strings.HasPrefix(e.Quantity, "a") || strings.HasPrefix(e.Quantity, "e") {
		article = "an" // angle, area, expansivity
	}
	if len(e.Units) == 0 {
		return fmt.Sprintf("unit: cannot read %q as %s %s: %s", e.Text, article, e.Quantity, e.Problem)
	}
	return fmt.Sprintf("unit: cannot read %q as %s %s: %s; write a number with one of %s",
		e.Text, article, e.Quantity, e.Problem, strings.Join(e.Units, ", "))
}

func (t *table) fault(text, problem string) error {
	e := &ParseError{Quantity: t.quantity, Text: text, Problem: problem}
	for _, s := range t.symbols {
		e.Units = append(e.Units, s.text)
	}
	return e
}
