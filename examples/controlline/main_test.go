package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestControlline(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "noshift", 1, "-panel", "400 psi")
	golden.File(t, command, "leak", 1, "-pumped", "1.9 L")
	golden.File(t, command, "cooled", 0, "-warming", "-100 degF")
	golden.File(t, command, "overloaded", 1, "-panel", "9500 psi", "-pumped", "1.84 L", "-warming", "80 degF")
	golden.File(t, command, "faults", 2, "-wall", "0.2 in", "-viscosity", "0 cP")
}
