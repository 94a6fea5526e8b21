package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/isolation"
	"completion.example/internal/calculator/golden"
)

func TestIsolation(t *testing.T) {
	t.Chdir("isolation")
	golden.Check(t, isolation.Command)
	golden.File(t, isolation.Command, "swapped", 1, "-tubing-fluid", "9.5 lb/gal", "-annulus-fluid", "8.8 lb/gal")
	golden.File(t, isolation.Command, "cycles", 0, "-kind", "opens after cycles", "-earlier", "tubing test 4500 psi, circulation 1200 psi")
	golden.File(t, isolation.Command, "faults", 2, "-bleed", "4000 psi", "-cycles", "0", "-kind", "opens after cycles")
	golden.File(t, isolation.Command, "opened", 1, "-earlier", "tubing test 5000 psi")
	golden.File(t, isolation.Command, "unlocked", 1, "-tubing-fluid", "14 lb/gal", "-earlier", "tubing test 3500 psi")
	golden.File(t, isolation.Command, "in-band", 1, "-kind", "opens under pressure", "-earlier", "tubing test 3500 psi")
	golden.File(t, isolation.Command, "uncertainty", 2, "-uncertainty", "-5 psi")
	golden.File(t, isolation.Command, "flags", 2, "-earlier", "test", "-kind", "flapper")
}
