package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/stretch"
	"completion.example/internal/calculator/golden"
)

func TestStretch(t *testing.T) {
	t.Chdir("stretch")
	golden.Check(t, stretch.Command)
	golden.File(t, stretch.Command, "published", 0, "-string", "2-7/8 in, 6.4 lb/ft, 10000 ft", "-density", "0 lb/gal", "-warming", "0 degF", "-plain-end")
	golden.File(t, stretch.Command, "surveyed", 0, "-string", "3-1/2 in, 9.3 lb/ft, 2000 m; 2-7/8 in, 6.5 lb/ft, 1500 m", "-survey", "../survey/testdata/building.csv", "-explain")
	golden.File(t, stretch.Command, "beyond", 2, "-string", "3-1/2 in, 9.3 lb/ft, 5000 m", "-survey", "../survey/testdata/building.csv")
	golden.File(t, stretch.Command, "tapered", 0, "-string", "3-1/2 in, 9.3 lb/ft, 6000 ft; 2-7/8 in, 6.5 lb/ft, 3000 ft", "-density", "9.5 lb/gal",
		"-warming", "70 degF", "-pull", "-2000 lbf", "-plain-end=false", "-explain")
	golden.File(t, stretch.Command, "faults", 2, "-string", "3-1/2 in, 9.4 lb/ft, 6000 ft")
	golden.File(t, stretch.Command, "negative", 2, "-string", "3-1/2 in, 9.3 lb/ft, -6000 ft", "-density", "-1 lb/gal")
}
