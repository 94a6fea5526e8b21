package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/pins"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestPins(t *testing.T) {
	t.Chdir("pins")
	golden.Check(t, pins.Command)
	golden.File(t, pins.Command, "none", 1, "-window", "3300 psi .. 3500 psi", "-stock", "8")
	golden.File(t, pins.Command, "installed", 1, "-pins", "7", "-factor", "0.98", "-tolerance", "0.03")
	golden.File(t, pins.Command, "faults", 2, "-pins", "0", "-strength", "-5 lbf", "-area", "0 in2")
}

func TestPinsPicture(t *testing.T) {
	t.Chdir("pins")
	require.Contains(t, golden.Picture(t, pins.Command, "-units", "si"), "must have parted at")
}
