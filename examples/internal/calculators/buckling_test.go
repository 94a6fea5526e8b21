package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/buckling"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestBuckling(t *testing.T) {
	t.Chdir("buckling")
	golden.Check(t, buckling.Command)
	golden.File(t, buckling.Command, "level", 0, "-inclination", "90 deg", "-explain")
	golden.File(t, buckling.Command, "straight", 0, "-compression", "3000 lbf", "-build", "2 deg/100ft", "-inclination", "45 deg", "-explain")
	golden.File(t, buckling.Command, "vertical", 0, "-inclination", "0 deg", "-compression", "1000 lbf", "-tool", "3 in", "-explain")
	golden.File(t, buckling.Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-measured-depth", "2000 m", "-compression", "6000 lbf")
	golden.File(t, buckling.Command, "beyond", 2, "-survey", "../survey/testdata/building.csv", "-measured-depth", "20000 m")
	golden.File(t, buckling.Command, "faults", 2, "-casing-id", "2 in", "-compression", "-5 lbf", "-inclination", "200 deg")
}

func TestBucklingPicture(t *testing.T) {
	t.Chdir("buckling")
	for _, inclination := range []string{"0 deg", "60 deg", "120 deg"} {
		svg := golden.Picture(t, buckling.Command, "-inclination", inclination, "-turn", "1 deg/100ft")
		for _, word := range []string{"helix full", "snakes from", "asked for", "effective compression, lbf"} {
			require.Contains(t, svg, word)
		}
	}
}
