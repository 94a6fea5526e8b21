package release

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestRelease(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "too-strong", 1, "-parting-load", "110000 lbf +/- 10 %", "-tried", "170000 lbf")
	golden.File(t, Command, "with-pressure", 1, "-share", "0.66")
	golden.File(t, Command, "pipe-light", 1, "-trapped", "5800 psi")
	golden.File(t, Command, "premature", 1, "-cold", "-150 degF", "-pressured", "5000 psi")
	golden.File(t, Command, "flowing", 1, "-annulus-fluid", "8.8 lb/gal")
	golden.File(t, Command, "stuck", 0, "-free", "8000 ft")
	golden.File(t, Command, "faults", 2, "-share", "1.5", "-rig", "0 lbf", "-depth", "-5 ft")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command, "-units", "si"), "the pins part")
}
