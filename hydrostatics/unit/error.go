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
	return fmt.Sprintf("unit: cannot read %q as a %s: %s; write a number with one of %s",
		e.Text, e.Quantity, e.Problem, strings.Join(e.Units, ", "))
}

func (t *table) fault(text, problem string) error {
	e := &ParseError{Quantity: t.quantity, Text: text, Problem: problem}
	for _, s := range t.symbols {
		e.Units = append(e.Units, s.text)
	}
	return e
}
