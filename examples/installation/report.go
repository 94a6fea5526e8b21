package main

import (
	"regexp"
	"strings"
)

func writeReport(o *options, w *work) error { return nil }

// unbroken finds where a line must not break: between a number and its unit.
var unbroken = regexp.MustCompile(`(\d) ([a-zA-Z%])`)

// whole keeps numbers and units in one line, and an arrow with what stands
// before it.
func whole(text string) string {
	return strings.ReplaceAll(unbroken.ReplaceAllString(text, "$1\u00a0$2"), " →", "\u00a0→")
}
