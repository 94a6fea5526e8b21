package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestCirculation(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "open", 0, "-open", "-ports", "6", "-formation", "10900 psi", "-fracture-pressure", "11500 psi")
	golden.File(t, command, "reverse", 0, "-reverse", "-density", "9.2 lb/gal", "-consistency", "1 mPa.s^n", "-index", "1", "-cling", "0")
	golden.File(t, command, "faults", 2, "-od", "9 in", "-speed", "-3 ft/min", "-index", "0")
}
