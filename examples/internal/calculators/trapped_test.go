package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/trapped"
	"completion.example/internal/calculator/golden"
)

func TestTrapped(t *testing.T) {
	t.Chdir("trapped")
	golden.Check(t, trapped.Command)
	golden.File(t, trapped.Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-depth", "3000 m", "-top", "100 m", "-pressure-before", "160 bar", "-bleed-to", "160 bar")
	golden.File(t, trapped.Command, "off", 2, "-survey", "../survey/testdata/building.csv", "-depth", "5000 m", "-top", "5100 m")
	golden.File(t, trapped.Command, "beyond", 2, "-survey", "../survey/testdata/building.csv", "-depth", "5000 m")
	golden.File(t, trapped.Command, "short", 2, "-length", "100 ft")
	golden.File(t, trapped.Command, "not-full", 0, "-pressure-before", "2000 psi")
	golden.File(t, trapped.Command, "nitrogen", 0, "-gas-volume", "10 bbl")
	golden.File(t, trapped.Command, "water", 0, "-density", "0 lb/gal", "-cemented")
	golden.File(t, trapped.Command, "cooled", 1, "-temperature-before", "200 degF", "-temperature-after", "80 degF", "-pressure-before", "100 psi")
	golden.File(t, trapped.Command, "below", 0, "-bleed-to", "9000 psi")
	golden.File(t, trapped.Command, "faults", 2, "-casing-od", "8 in", "-od", "9 in")
}
