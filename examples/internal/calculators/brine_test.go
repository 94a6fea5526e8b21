package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/brine"
	"completion.example/internal/calculator/golden"
)

func TestBrine(t *testing.T) {
	t.Chdir("brine")
	golden.Check(t, brine.Command)
	golden.File(t, brine.Command, "cutback", 0, "-system", "CaCl2", "-density", "11 lb/gal", "-wanted-density", "10 lb/gal", "-with", "8.33 lb/gal", "-salt", "CaCl2", "-explain")
	golden.File(t, brine.Command, "zinc", 0, "-system", "ZnBr2/CaBr2", "-coefficients", "krook-boyce", "-density", "19.2 lb/gal", "-wanted-density", "18.4 lb/gal", "-with", "14.2 lb/gal", "-salt", "none")
	golden.File(t, brine.Command, "own", 0, "-coefficients", "own", "-density", "12 lb/gal", "-wanted-density", "12 lb/gal", "-alpha", "2.4e-4 1/degF", "-beta", "1.7e-6 1/psi", "-salt", "potassium formate")
	golden.File(t, brine.Command, "faults", 2, "-system", "CaBr2", "-density", "11 lb/gal")
	golden.File(t, brine.Command, "volume", 2, "-volume", "-3 bbl")
	golden.File(t, brine.Command, "table", 2, "-coefficients", "mine")
}
