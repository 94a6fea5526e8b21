package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/freepoint"
	"completion.example/internal/calculator/golden"
)

func TestFreePoint(t *testing.T) {
	t.Chdir("freepoint")
	golden.Check(t, freepoint.Command)
	golden.File(t, freepoint.Command, "tapered", 0, "-string", "4-1/2 in, 12.75 lb/ft, 3000 ft; 3-1/2 in, 9.3 lb/ft, 4000 ft", "-stretch", "16 in", "-explain")
	golden.File(t, freepoint.Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv")
	golden.File(t, freepoint.Command, "beyond", 2, "-survey", "../survey/testdata/building.csv", "-string", "3-1/2 in, 9.3 lb/ft, 6000 m", "-stretch", "60 in")
	golden.File(t, freepoint.Command, "free", 1, "-stretch", "60 in")
	golden.File(t, freepoint.Command, "faults", 2, "-stretch", "-1 in", "-pull-difference", "0 lbf")
}
