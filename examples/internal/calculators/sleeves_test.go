package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/sleeves"
	"completion.example/internal/calculator/golden"
)

func TestSleeves(t *testing.T) {
	t.Chdir("sleeves")
	golden.Check(t, sleeves.Command)
	golden.File(t, sleeves.Command, "single", 0, "-from", "open, unknown, closed", "-to", "closed, closed, open", "-single")
	golden.File(t, sleeves.Command, "table", 0, "-combinations")
	golden.File(t, sleeves.Command, "weak", 1, "-limit", "700 psi")
	golden.File(t, sleeves.Command, "columns", 1, "-open-area", "3 in2")
	golden.File(t, sleeves.Command, "there", 0, "-from", "open, closed, closed", "-to", "open, closed, closed")
	golden.File(t, sleeves.Command, "faults", 2, "-to", "open", "-stroke", "0 in", "-from", "open, closed")
	golden.File(t, sleeves.Command, "flags", 2, "-to", "ajar", "-depths", "8000")
}
