package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestSetting(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "chamber", 0, "-chamber", "4 in")
	golden.File(t, command, "no-window", 1, "-other", "4300 psi +/- 5 %")
	golden.File(t, command, "unknown", 1, "-surface", "3700 psi")
	golden.File(t, command, "faults", 2, "-pins", "0", "-piston", "-8 in2")
}
