package main

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"completion.example/internal/calculator"
)

// width of the text, in columns.
const width = calculator.Width

// lines is a text whose lines have a head and go on under their beginning.
type lines struct{ strings.Builder }

// line writes head and text, indented; the head is padded to a column.
func (l *lines) line(indent int, head string, column int, format string, args ...any) {
	start := strings.Repeat(" ", indent)
	if column > 0 {
		start += pad(head, column)
	}
	text := format
	if len(args) > 0 {
		text = fmt.Sprintf(format, args...)
	}
	hang := strings.Repeat(" ", utf8.RuneCountInString(start))
	for _, part := range calculator.Wrap(text, width-len(hang)) {
		l.WriteString(strings.TrimRight(start+part, " ") + "\n")
		start = hang
	}
}

// pad fills a word up to a column, with at least one space behind it.
func pad(word string, column int) string {
	n := utf8.RuneCountInString(word)
	return word + strings.Repeat(" ", max(column-n, 1))
}
