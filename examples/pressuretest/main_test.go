package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestPressureTest(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "stable", 1, "-criterion", "barrier-high", "-start", "20m")
	golden.File(t, command, "short", 1, "-start", "20m")
	golden.File(t, command, "faults", 2, "-criterion", "norsok")
	golden.File(t, command, "late", 2, "-start", "2h", "-target", "-5 psi")
	golden.File(t, command, "nofile", 2, "-record", "testdata/none.csv")
}
