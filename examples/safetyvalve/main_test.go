package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestSafetyvalve(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "deep", 1, "-depth", "2000 ft", "-leak-end", "115 psi")
	golden.File(t, command, "balanced", 0, "-backing", "second line")
	golden.File(t, command, "never", 1, "-margin", "1000 psi")
	golden.File(t, command, "faults", 2, "-opens", "500 psi", "-leak-volume", "0 bbl")
}
