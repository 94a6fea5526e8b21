package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestCommingle(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "split", 0, "-search", "split", "-split", "1:2")
	golden.File(t, command, "water", 0, "-search", "water", "-water", "0.2", "-nocrossflow")
	golden.File(t, command, "dry", 1, "-search", "water", "-water", "0.01")
	golden.File(t, command, "dead", 1, "-wellhead", "3000 psi")
	golden.File(t, command, "crossflow", 0, "-shut",
		"-zone", "name=lower; depth=9000 ft; pr=4000 psi; J=5 bbl/d/psi", "-zone", "name=upper; depth=9000 ft; pr=3500 psi; J=10 bbl/d/psi")
	golden.File(t, command, "table", 0, "-outflow", "testdata/outflow.csv")
	golden.File(t, command, "faults", 2, "-zone", "name=lower; depth=9 psi; q=5", "-water", "x")
	golden.File(t, command, "no-position", 2, "-zone", "name=lower; depth=9000 ft; pr=4000 psi; J=5 bbl/d/psi; choke=9")
}
