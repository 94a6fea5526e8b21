package displacement

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestDisplacement(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "u-tube", 0, "-density", "8.6 lb/gal", "-plastic-viscosity", "1 cP", "-yield-point", "0 lbf/100ft2", "-spacer-volume", "0 bbl", "-new-density", "12 lb/gal", "-rate", "1 bbl/min")
	golden.File(t, Command, "reverse", 0, "-reverse", "-new-volume", "100 bbl")
	golden.File(t, Command, "pump", 2, "-efficiency", "1.2")
	golden.File(t, Command, "faults", 2, "-depth", "12000 ft", "-rate", "0 bbl/min", "-casing-id", "3 in")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command), "pumped, bbl")
}
