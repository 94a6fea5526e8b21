package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestBuckling(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "straight", 0, "-compression", "3000 lbf", "-build", "2 deg/100ft", "-inclination", "45 deg")
	golden.File(t, command, "faults", 2, "-hole", "2 in", "-compression", "-5 lbf", "-inclination", "200 deg")
}
