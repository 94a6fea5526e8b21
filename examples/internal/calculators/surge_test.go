package calculators_test

import (
	"path/filepath"
	"testing"

	"completion.example/examples/internal/calculators/surge"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestSurge(t *testing.T) {
	t.Chdir("surge")
	golden.Check(t, surge.Command)
	golden.File(t, surge.Command, "published", 0, "-od", "4.5 in", "-id", "3.82 in", "-casing-id", "7.875 in", "-assembly-od", "0 in", "-length", "14300 ft", "-density", "15 lb/gal", "-yield-point", "0 lbf/100ft2",
		"-consistency", "0.522 lbf.s^n/100ft2", "-index", "0.8069", "-speed", "270 ft/min", "-cling", "0.45", "-depth", "14400 ft", "-formation", "10000 psi", "-fracture-gradient", "0.9 psi/ft")
	golden.File(t, surge.Command, "open", 0, "-open")
	golden.File(t, surge.Command, "too-fast", 1, "-speed", "400 ft/min")
	golden.File(t, surge.Command, "tight", 1, "-formation", "4390 psi")
	golden.File(t, surge.Command, "gelled", 1, "-yield-point", "40 lbf/100ft2")
	golden.File(t, surge.Command, "metric", 0, "-length", "3600 m", "-depth", "3700 m", "-density", "1.1 SG", "-formation", "290 bar", "-fracture-gradient", "14 kPa/m", "-speed", "25 m/min",
		"-survey", filepath.Join("..", "survey", "testdata", "building.csv"))
	golden.File(t, surge.Command, "faults", 2, "-casing-id", "3 in", "-cling", "2")
	golden.File(t, surge.Command, "beyond", 2, "-length", "0 ft")
}

func TestSurgePicture(t *testing.T) {
	t.Chdir("surge")
	svg := golden.Picture(t, surge.Command)
	require.Contains(t, svg, "fastest running")
	require.Contains(t, svg, "mean speed, ft/min")
}
