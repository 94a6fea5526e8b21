package pins

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestPins(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "none", 1, "-window", "3300 psi .. 3500 psi", "-stock", "8")
	golden.File(t, Command, "installed", 1, "-pins", "7", "-factor", "0.98", "-tolerance", "0.03")
	golden.File(t, Command, "faults", 2, "-pins", "0", "-strength", "-5 lbf", "-area", "0 in2")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command, "-units", "si"), "must have parted at")
}
