package trapped

import (
	"testing"

	"completion.example/internal/calculator/golden"
)

func TestTrapped(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-depth", "3000 m", "-top", "100 m", "-pressure-before", "160 bar", "-bleed-to", "160 bar")
	golden.File(t, Command, "off", 2, "-survey", "../survey/testdata/building.csv", "-depth", "5000 m", "-top", "5100 m")
	golden.File(t, Command, "beyond", 2, "-survey", "../survey/testdata/building.csv", "-depth", "5000 m")
	golden.File(t, Command, "short", 2, "-length", "100 ft")
	golden.File(t, Command, "not-full", 0, "-pressure-before", "2000 psi")
	golden.File(t, Command, "nitrogen", 0, "-gas-volume", "10 bbl")
	golden.File(t, Command, "water", 0, "-density", "0 lb/gal", "-cemented")
	golden.File(t, Command, "cooled", 1, "-temperature-before", "200 degF", "-temperature-after", "80 degF", "-pressure-before", "100 psi")
	golden.File(t, Command, "below", 0, "-bleed-to", "9000 psi")
	golden.File(t, Command, "faults", 2, "-casing-od", "8 in", "-od", "9 in")
}
