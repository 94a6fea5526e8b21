package sleeves

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestSleeves(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "single", 0, "-from", "open, unknown, closed", "-to", "closed, closed, open", "-single")
	golden.File(t, Command, "table", 0, "-combinations")
	golden.File(t, Command, "weak", 1, "-limit", "700 psi")
	golden.File(t, Command, "columns", 1, "-open-area", "3 in2")
	golden.File(t, Command, "there", 0, "-from", "open, closed, closed", "-to", "open, closed, closed")
	golden.File(t, Command, "faults", 2, "-to", "open", "-stroke", "0 in", "-from", "open, closed")
	golden.File(t, Command, "flags", 2, "-to", "ajar", "-depths", "8000")
}
