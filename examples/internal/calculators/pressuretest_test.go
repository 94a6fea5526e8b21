package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/pressuretest"
	"completion.example/internal/calculator/golden"
)

func TestPressureTest(t *testing.T) {
	t.Chdir("pressuretest")
	golden.Check(t, pressuretest.Command)
	golden.File(t, pressuretest.Command, "stable", 1, "-criterion", "barrier-high", "-start", "20m")
	golden.File(t, pressuretest.Command, "short", 1, "-start", "20m")
	golden.File(t, pressuretest.Command, "faults", 2, "-criterion", "norsok")
	golden.File(t, pressuretest.Command, "late", 2, "-start", "2h", "-target", "-5 psi")
	golden.File(t, pressuretest.Command, "nofile", 2, "-record", "testdata/none.csv")
}
