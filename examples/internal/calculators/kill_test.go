package calculators_test

import (
	"path/filepath"
	"testing"

	"completion.example/examples/internal/calculators/kill"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestKill(t *testing.T) {
	t.Chdir("kill")
	golden.Check(t, kill.Command)
	golden.File(t, kill.Command, "reverse", 0, "-reverse", "-gain", "5 bbl")
	golden.File(t, kill.Command, "no-influx", 0, "-gain", "0 bbl")
	golden.File(t, kill.Command, "light", 1, "-kill-density", "9.0 ppg")
	golden.File(t, kill.Command, "weak", 1, "-fracture-gradient", "0.53 psi/ft", "-limit", "900 psi")
	golden.File(t, kill.Command, "metric", 0, "-formation", "350 bar", "-length", "3500 m", "-density", "1.1 SG", "-kill-density", "1.3 SG", "-gain", "2 m3", "-rate", "300 L/min", "-shoe", "2000 m",
		"-fracture-gradient", "17.5 kPa/m", "-survey", filepath.Join("..", "survey", "testdata", "building.csv"))
	golden.File(t, kill.Command, "faults", 2, "-rate", "0 bbl/min", "-gain", "-5 bbl", "-shoe", "9999 ft")
	golden.File(t, kill.Command, "flags", 2, "-influx", "treacle", "-efficiency", "2")
}

func TestKillPicture(t *testing.T) {
	t.Chdir("kill")
	svg := golden.Picture(t, kill.Command, "-units", "si")
	require.Contains(t, svg, "weakest point")
	require.Contains(t, svg, "pressure, bar")
}
