package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/circulation"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestCirculation(t *testing.T) {
	t.Chdir("circulation")
	golden.Check(t, circulation.Command)
	golden.File(t, circulation.Command, "published", 0, "-id", "3.82 in", "-od", "4.5 in", "-casing-id", "7.875 in", "-length", "14300 ft", "-depth", "14300 ft", "-density", "15 lb/gal", "-consistency", "0.522 lbf.s^n/100ft2",
		"-index", "0.8069", "-rate", "5 bbl/min", "-speed", "270 ft/min", "-cling", "0.45")
	golden.File(t, circulation.Command, "open", 0, "-open", "-ports", "6", "-formation", "4250 psi", "-fracture-pressure", "4350 psi", "-rate", "5 bbl/min")
	golden.File(t, circulation.Command, "reverse", 0, "-reverse", "-density", "9.2 lb/gal", "-consistency", "1 mPa.s^n", "-index", "1", "-cling", "0")
	golden.File(t, circulation.Command, "faults", 2, "-od", "9 in", "-speed", "-3 ft/min", "-index", "0")
}

func TestCirculationPicture(t *testing.T) {
	t.Chdir("circulation")
	require.Contains(t, golden.Picture(t, circulation.Command, "-units", "si"), "bottom, circulating")
}
