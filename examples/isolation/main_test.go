package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestIsolation(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "swapped", 1, "-tubing-fluid", "9.5 lb/gal", "-annulus-fluid", "8.8 lb/gal")
	golden.File(t, command, "cycles", 0, "-kind", "opens after cycles", "-earlier", "tubing test 4500 psi, circulation 1200 psi")
	golden.File(t, command, "faults", 2, "-bleed", "4000 psi", "-cycles", "0", "-kind", "opens after cycles")
	golden.File(t, command, "opened", 1, "-earlier", "tubing test 5000 psi")
	golden.File(t, command, "unlocked", 1, "-tubing-fluid", "14 lb/gal", "-earlier", "tubing test 3500 psi")
	golden.File(t, command, "in-band", 1, "-kind", "opens under pressure", "-earlier", "tubing test 3500 psi")
	golden.File(t, command, "uncertainty", 2, "-uncertainty", "-5 psi")
	golden.File(t, command, "flags", 2, "-earlier", "test", "-kind", "flapper")
}
