package pressuretest

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestPressureTest(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "stable", 1, "-criterion", "barrier-high", "-start", "20m")
	golden.File(t, Command, "short", 1, "-start", "20m")
	golden.File(t, Command, "faults", 2, "-criterion", "norsok")
	golden.File(t, Command, "late", 2, "-start", "2h", "-target", "-5 psi")
	golden.File(t, Command, "nofile", 2, "-record", "testdata/none.csv")
}
