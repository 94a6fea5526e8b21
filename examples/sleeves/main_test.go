package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestSleeves(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "single", 0, "-from", "open, unknown, closed", "-to", "closed, closed, open", "-single")
	golden.File(t, command, "table", 0, "-combinations")
	golden.File(t, command, "weak", 1, "-limit", "700 psi")
	golden.File(t, command, "columns", 1, "-open-area", "3 in2")
	golden.File(t, command, "there", 0, "-from", "open, closed, closed", "-to", "open, closed, closed")
	golden.File(t, command, "faults", 2, "-to", "open", "-stroke", "0 in", "-from", "open, closed")
	golden.File(t, command, "flags", 2, "-to", "ajar", "-depths", "8000")
}
