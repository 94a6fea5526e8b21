package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/hookload"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestHookload(t *testing.T) {
	t.Chdir("hookload")
	golden.Check(t, hookload.Command)
	golden.File(t, hookload.Command, "vertical", 0, "-inclination", "0 deg", "-block", "30 klbf")
	golden.File(t, hookload.Command, "level", 0, "-inclination", "90 deg", "-set-down", "5 klbf")
	golden.File(t, hookload.Command, "shallow", 0, "-measured-depth", "100 ft", "-indicator", "100 lbf", "-set-down", "0 lbf", "-explain")
	golden.File(t, hookload.Command, "too-much", 2, "-set-down", "200 klbf")
	golden.File(t, hookload.Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-measured-depth", "3800 m", "-cased-to", "3000 m")
	golden.File(t, hookload.Command, "faults", 2, "-od", "2 in", "-friction-open", "7", "-measured-depth", "9000 ft", "-casing-id", "1 in")
}

func TestHookloadPicture(t *testing.T) {
	t.Chdir("hookload")
	svg := golden.Picture(t, hookload.Command)
	for _, word := range []string{"Effective axial force", "pulled", "run in", "contact"} {
		require.Contains(t, svg, word)
	}
}
