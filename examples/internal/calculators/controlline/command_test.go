package controlline

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestControlline(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "noshift", 1, "-panel", "400 psi")
	golden.File(t, Command, "leak", 1, "-pumped", "1.9 L")
	golden.File(t, Command, "cooled", 0, "-warming", "-100 degF")
	golden.File(t, Command, "overloaded", 1, "-panel", "9500 psi", "-pumped", "1.84 L", "-warming", "80 degF")
	golden.File(t, Command, "faults", 2, "-wall", "0.2 in", "-viscosity", "0 cP")
}
