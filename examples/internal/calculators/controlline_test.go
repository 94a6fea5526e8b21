package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/controlline"
	"completion.example/internal/calculator/golden"
)

func TestControlline(t *testing.T) {
	t.Chdir("controlline")
	golden.Check(t, controlline.Command)
	golden.File(t, controlline.Command, "noshift", 1, "-panel", "400 psi")
	golden.File(t, controlline.Command, "leak", 1, "-pumped", "1.9 L")
	golden.File(t, controlline.Command, "cooled", 0, "-warming", "-100 degF")
	golden.File(t, controlline.Command, "overloaded", 1, "-panel", "9500 psi", "-pumped", "1.84 L", "-warming", "80 degF")
	golden.File(t, controlline.Command, "faults", 2, "-wall", "0.2 in", "-viscosity", "0 cP")
}
