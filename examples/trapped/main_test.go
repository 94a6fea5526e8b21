package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestTrapped(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "nitrogen", 0, "-gas-volume", "10 bbl")
	golden.File(t, command, "water", 0, "-density", "0 lb/gal", "-cemented")
	golden.File(t, command, "cooled", 1, "-temperature-before", "200 degF", "-temperature-after", "80 degF", "-pressure-before", "100 psi")
	golden.File(t, command, "below", 0, "-bleed-to", "9000 psi")
	golden.File(t, command, "faults", 2, "-casing-od", "8 in", "-od", "9 in")
}
