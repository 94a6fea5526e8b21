package safetyvalve

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestSafetyvalve(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "deep", 1, "-depth", "2000 ft", "-leak-end", "115 psi")
	golden.File(t, Command, "balanced", 0, "-backing", "second line")
	golden.File(t, Command, "never", 1, "-margin", "1000 psi")
	golden.File(t, Command, "faults", 2, "-opens", "500 psi", "-leak-volume", "0 bbl")
}
