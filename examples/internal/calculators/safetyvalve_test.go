package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/safetyvalve"
	"completion.example/internal/calculator/golden"
)

func TestSafetyvalve(t *testing.T) {
	t.Chdir("safetyvalve")
	golden.Check(t, safetyvalve.Command)
	golden.File(t, safetyvalve.Command, "deep", 1, "-depth", "2000 ft", "-leak-end", "115 psi")
	golden.File(t, safetyvalve.Command, "balanced", 0, "-backing", "second line")
	golden.File(t, safetyvalve.Command, "never", 1, "-margin", "1000 psi")
	golden.File(t, safetyvalve.Command, "faults", 2, "-opens", "500 psi", "-leak-volume", "0 bbl")
}
