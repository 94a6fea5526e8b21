package setting

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestSetting(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-depth", "3000 m", "-below", "280 bar", "-tubing-pressure", "285 bar")
	golden.File(t, Command, "chamber", 0, "-chamber", "4 in")
	golden.File(t, Command, "no-window", 1, "-other", "4300 psi +/- 5 %")
	golden.File(t, Command, "unknown", 1, "-tubing-pressure", "3700 psi")
	golden.File(t, Command, "faults", 2, "-pins", "0", "-piston", "-8 in2")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command, "-units", "si"), "window, margin kept")
}
