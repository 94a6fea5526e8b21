package kill

import (
	"path/filepath"
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestKill(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "reverse", 0, "-reverse", "-gain", "5 bbl")
	golden.File(t, Command, "no-influx", 0, "-gain", "0 bbl")
	golden.File(t, Command, "light", 1, "-kill-density", "9.0 ppg")
	golden.File(t, Command, "weak", 1, "-fracture-gradient", "0.53 psi/ft", "-limit", "900 psi")
	golden.File(t, Command, "metric", 0, "-formation", "350 bar", "-length", "3500 m", "-density", "1.1 SG", "-kill-density", "1.3 SG", "-gain", "2 m3", "-rate", "300 L/min", "-shoe", "2000 m",
		"-fracture-gradient", "17.5 kPa/m", "-survey", filepath.Join("..", "survey", "testdata", "building.csv"))
	golden.File(t, Command, "faults", 2, "-rate", "0 bbl/min", "-gain", "-5 bbl", "-shoe", "9999 ft")
	golden.File(t, Command, "flags", 2, "-influx", "treacle", "-efficiency", "2")
}

func TestPicture(t *testing.T) {
	svg := golden.Picture(t, Command, "-units", "si")
	require.Contains(t, svg, "weakest point")
	require.Contains(t, svg, "pressure, bar")
}
