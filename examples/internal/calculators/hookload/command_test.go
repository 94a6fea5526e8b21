package hookload

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestHookload(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "vertical", 0, "-inclination", "0 deg", "-block", "30 klbf")
	golden.File(t, Command, "level", 0, "-inclination", "90 deg", "-set-down", "5 klbf")
	golden.File(t, Command, "shallow", 0, "-measured-depth", "100 ft", "-indicator", "100 lbf", "-set-down", "0 lbf", "-explain")
	golden.File(t, Command, "too-much", 2, "-set-down", "200 klbf")
	golden.File(t, Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-measured-depth", "3800 m", "-cased-to", "3000 m")
	golden.File(t, Command, "faults", 2, "-od", "2 in", "-friction-open", "7", "-measured-depth", "9000 ft", "-casing-id", "1 in")
}

func TestPicture(t *testing.T) {
	svg := golden.Picture(t, Command)
	for _, word := range []string{"Effective axial force", "pulled", "run in", "contact"} {
		require.Contains(t, svg, word)
	}
}
