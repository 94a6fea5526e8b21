package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/column"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestColumn(t *testing.T) {
	t.Chdir("column")
	golden.Check(t, column.Command)
	golden.File(t, column.Command, "published", 0, "-layers", "10 lb/gal to 7000 ft, 8 lb/gal to 7500 ft, 12.5 lb/gal to 9000 ft, 16.5 lb/gal to 10000 ft", "-depth", "10000 ft")
	golden.File(t, column.Command, "gas", 0, "-layers", "nitrogen to 4000 ft, water to 10000 ft", "-pressure", "4000 psi", "-at", "10000 ft", "-depth", "0 ft", "-wanted-pressure", "100 psi")
	golden.File(t, column.Command, "faults", 2, "-layers", "treacle to 5 ft", "-depth", "5")
	golden.File(t, column.Command, "order", 2, "-layers", "water to 9000 ft, nitrogen to 1000 ft")
	golden.File(t, column.Command, "outside", 2, "-depth", "11000 ft")
	golden.File(t, column.Command, "brine", 0, "-layers", "gas 0.65 to 3000 ft, hot seawater to 6000 ft, CaCl2 11.3 lb/gal to 10000 ft", "-pressure", "2000 psi", "-explain")
	golden.File(t, column.Command, "vacuum", 1, "-layers", "water to 10000 ft", "-pressure", "0 psi", "-at", "10000 ft")
}

func TestColumnPicture(t *testing.T) {
	t.Chdir("column")
	require.Contains(t, golden.Picture(t, column.Command, "-units", "si"), "bottom of 6.8")
}
