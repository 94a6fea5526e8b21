package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/ratings"
	"completion.example/internal/calculator/golden"
)

func TestRatings(t *testing.T) {
	t.Chdir("ratings")
	golden.Check(t, ratings.Command)
	golden.File(t, ratings.Command, "published", 0, "-weight", "11.6 lb/ft")
	golden.File(t, ratings.Command, "loaded", 0, "-od", "2-7/8 in", "-weight", "6.5 lb/ft", "-grade", "L-80", "-axial", "60000 lbf", "-inside-pressure", "1000 psi",
		"-temperature", "250 degF", "-wear", "0.02 in", "-explain")
	golden.File(t, ratings.Command, "missing", 2, "-od", "2-7/8 in", "-weight", "7 lb/ft")
	golden.File(t, ratings.Command, "faults", 2, "-grade", "Z99", "-wear", "1 in", "-temperature", "900 degF")
	golden.File(t, ratings.Command, "worn", 2, "-wear", "1 in", "-temperature", "900 degF")
	golden.File(t, ratings.Command, "none", 1, "-axial", "250000 lbf", "-inside-pressure", "9000 psi")
}
