package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestIsolation(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "swapped", 1, "-tubing", "9.5 lb/gal", "-annulus", "8.8 lb/gal")
	golden.File(t, command, "cycles", 0, "-kind", "opens after cycles", "-earlier", "tubing test 4500 psi, circulation 1200 psi")
	golden.File(t, command, "faults", 2, "-bleed", "4000 psi", "-cycles", "0", "-kind", "opens after cycles")
	golden.File(t, command, "uncertainty", 2, "-uncertainty", "-5 psi")
	golden.File(t, command, "flags", 2, "-earlier", "test", "-kind", "flapper")
}
