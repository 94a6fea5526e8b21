package calculators_test

import (
	"path/filepath"
	"testing"

	"completion.example/examples/internal/calculators/bullhead"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

// The formation and fracture pressures are those of a published example; what is
// pumped follows the package's tests.
func TestBullhead(t *testing.T) {
	t.Chdir("bullhead")
	golden.Check(t, bullhead.Command)
	golden.File(t, bullhead.Command, "slow", 1, "-rate", "0.3 bbl/min")
	golden.File(t, bullhead.Command, "fracture", 1, "-injection", "2500 psi", "-limit", "7000 psi")
	golden.File(t, bullhead.Command, "weak", 1, "-rating", "4500 psi", "-density", "8.4 lb/gal")
	golden.File(t, bullhead.Command, "metric", 0, "-formation", "337 bar", "-depth", "3500 m", "-packer", "3300 m", "-density", "1.18 SG", "-limit", "350 bar", "-rate", "500 L/min", "-survey", filepath.Join("..", "survey", "testdata", "building.csv"))
	golden.File(t, bullhead.Command, "oil", 0, "-influx", "6.8 lb/gal")
	golden.File(t, bullhead.Command, "faults", 2, "-rate", "0 bbl/min", "-share", "2", "-influx", "treacle", "-packer", "12000 ft")
}

func TestBullheadPicture(t *testing.T) {
	t.Chdir("bullhead")
	svg := golden.Picture(t, bullhead.Command, "-units", "si")
	require.Contains(t, svg, "at the pump")
	require.Contains(t, svg, "surface pressure, bar")
	require.Contains(t, svg, "pumped, m3")
}
