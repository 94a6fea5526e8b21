package buckling

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestBuckling(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "level", 0, "-inclination", "90 deg", "-explain")
	golden.File(t, Command, "straight", 0, "-compression", "3000 lbf", "-build", "2 deg/100ft", "-inclination", "45 deg", "-explain")
	golden.File(t, Command, "vertical", 0, "-inclination", "0 deg", "-compression", "1000 lbf", "-tool", "3 in", "-explain")
	golden.File(t, Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-measured-depth", "2000 m", "-compression", "6000 lbf")
	golden.File(t, Command, "beyond", 2, "-survey", "../survey/testdata/building.csv", "-measured-depth", "20000 m")
	golden.File(t, Command, "faults", 2, "-casing-id", "2 in", "-compression", "-5 lbf", "-inclination", "200 deg")
}

func TestPicture(t *testing.T) {
	for _, inclination := range []string{"0 deg", "60 deg", "120 deg"} {
		svg := golden.Picture(t, Command, "-inclination", inclination, "-turn", "1 deg/100ft")
		for _, word := range []string{"helix full", "snakes from", "asked for", "effective compression, lbf"} {
			require.Contains(t, svg, word)
		}
	}
}
