package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/displacement"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestDisplacement(t *testing.T) {
	t.Chdir("displacement")
	golden.Check(t, displacement.Command)
	golden.File(t, displacement.Command, "u-tube", 0, "-density", "8.6 lb/gal", "-plastic-viscosity", "1 cP", "-yield-point", "0 lbf/100ft2", "-spacer-volume", "0 bbl", "-new-density", "12 lb/gal", "-rate", "1 bbl/min")
	golden.File(t, displacement.Command, "reverse", 0, "-reverse", "-new-volume", "100 bbl")
	golden.File(t, displacement.Command, "pump", 2, "-efficiency", "1.2")
	golden.File(t, displacement.Command, "faults", 2, "-depth", "12000 ft", "-rate", "0 bbl/min", "-casing-id", "3 in")
}

func TestDisplacementPicture(t *testing.T) {
	t.Chdir("displacement")
	require.Contains(t, golden.Picture(t, displacement.Command), "pumped, bbl")
}
