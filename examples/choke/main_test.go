package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestChoke(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "position", 0, "-positions", "testdata/positions.csv")
	golden.File(t, command, "too-small", 1, "-positions", "testdata/positions.csv", "-rate", "900 m3/h")
	golden.File(t, command, "choked", 1, "-solve", "drop", "-rate", "500 m3/h")
	golden.File(t, command, "gas", 0, "-explain", "-solve", "rate", "-heat-ratio", "1.3", "-density", "60 kg/m3", "-upstream", "1300 psi", "-downstream", "400 psi", "-coefficient", "5 Cv", "-size", "2 in")
	golden.File(t, command, "gas-drop", 0, "-solve", "drop", "-heat-ratio", "1.3", "-density", "60 kg/m3", "-upstream", "1300 psi", "-rate", "1.2 m3/min", "-coefficient", "5 Cv", "-size", "2 in")
	golden.File(t, command, "gas-choked", 1, "-solve", "drop", "-heat-ratio", "1.3", "-density", "60 kg/m3", "-upstream", "1300 psi", "-rate", "6 m3/min", "-coefficient", "5 Cv", "-size", "2 in")
	golden.File(t, command, "reverse", 1, "-downstream", "700 psi")
	golden.File(t, command, "faults", 2, "-solve", "size")
	golden.File(t, command, "more-faults", 2, "-density", "-1 kg/m3", "-fl", "3")
}
