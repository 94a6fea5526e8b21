package column

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestColumn(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "published", 0, "-layers", exam, "-depth", "10000 ft")
	golden.File(t, Command, "gas", 0, "-layers", "nitrogen to 4000 ft, water to 10000 ft", "-pressure", "4000 psi", "-at", "10000 ft", "-depth", "0 ft", "-wanted-pressure", "100 psi")
	golden.File(t, Command, "faults", 2, "-layers", "treacle to 5 ft", "-depth", "5")
	golden.File(t, Command, "order", 2, "-layers", "water to 9000 ft, nitrogen to 1000 ft")
	golden.File(t, Command, "outside", 2, "-depth", "11000 ft")
	golden.File(t, Command, "brine", 0, "-layers", "gas 0.65 to 3000 ft, hot seawater to 6000 ft, CaCl2 11.3 lb/gal to 10000 ft", "-pressure", "2000 psi", "-explain")
	golden.File(t, Command, "vacuum", 1, "-layers", "water to 10000 ft", "-pressure", "0 psi", "-at", "10000 ft")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command, "-units", "si"), "bottom of 6.8")
}
