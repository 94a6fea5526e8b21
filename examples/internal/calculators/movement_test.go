package calculators_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"completion.example/examples/internal/calculators/movement"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

// lubinski is the worked example of Lubinski, Althouse & Logan 1962.
var lubinski = []string{"-od", "2.875 in", "-id", "2.441 in", "-weight", "6.5 lb/ft", "-yield", "110000 psi", "-casing-id", "6.094 in", "-depth", "10000 ft", "-bore", "3.25 in",
	"-tubing-fluid-before", "7.31 lb/gal", "-annulus-fluid-before", "7.31 lb/gal", "-tubing-fluid", "15 lb/gal", "-annulus-fluid", "7.31 lb/gal",
	"-tubing-pressure", "5000 psi", "-annulus-pressure", "1000 psi", "-warming", "-20 degF"}

func with(base []string, more ...string) []string { return append(slices.Clone(base), more...) }

func TestMovement(t *testing.T) {
	t.Chdir("movement")
	golden.Check(t, movement.Command)
	golden.File(t, movement.Command, "lubinski", 0, with(lubinski, "-explain")...)
	golden.File(t, movement.Command, "anchored", 0, with(lubinski, "-seals", "anchored", "-slack-off", "20000 lbf")...)
	golden.File(t, movement.Command, "limited", 0, with(lubinski, "-seals", "limited", "-travel-up", "5 ft", "-slack-off", "10000 lbf")...)
	golden.File(t, movement.Command, "weak", 1, with(lubinski, "-yield", "80000 psi")...)
	golden.File(t, movement.Command, "joint", 1, with(lubinski, "-seals", "anchored", "-joint", "50 klbf", "-wear", "0.05 in")...)
	golden.File(t, movement.Command, "worn-through", 2, with(lubinski, "-wear", "1 in", "-joint", "-5 lbf")...)
	golden.File(t, movement.Command, "unrated", 0, with(lubinski, "-yield", "0 psi")...)
	golden.File(t, movement.Command, "factors", 1, with(lubinski, "-burst-factor", "1.1", "-collapse-factor", "1.1", "-tension-factor", "1.3", "-triaxial-factor", "1.25")...)
	golden.File(t, movement.Command, "soft", 2, with(lubinski, "-yield", "10000 psi", "-burst-factor", "0.5")...)
	golden.File(t, movement.Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-depth", "3000 m", "-seals", "limited", "-travel-up", "2 m")
	golden.File(t, movement.Command, "beyond-survey", 2, "-survey", "../survey/testdata/building.csv", "-depth", "5000 m")
	golden.File(t, movement.Command, "faults", 2, "-od", "2 in", "-depth", "-5 ft", "-slack-off", "5000 lbf")
}

func TestMovementPicture(t *testing.T) {
	t.Chdir("movement")
	svg := golden.Picture(t, movement.Command)
	for _, word := range []string{"Axial force", "effective", "triaxial"} {
		require.Contains(t, svg, word)
	}
}

// Along a survey that is vertical it is the worked example again, to the digits shown.
func TestMovementVerticalSurveyIsTheVerticalWell(t *testing.T) {
	t.Chdir("movement")
	for _, seals := range []string{"free", "anchored"} {
		answers := make([]map[string]string, 2)
		for i, args := range [][]string{nil, {"-survey", "testdata/vertical.csv"}} {
			answers[i] = answered(t, movement.Command, with(lubinski, append(args, "-seals", seals)...)...)
		}
		for name, value := range answers[1] {
			var a, b float64
			_, err := fmt.Sscan(answers[0][name], &a)
			if err != nil {
				require.Equal(t, answers[0][name], value, name)
				continue
			}
			_, err = fmt.Sscan(value, &b)
			require.NoError(t, err, name)
			require.InDelta(t, a, b, 1e-3*math.Abs(a)+0.02, "%s: %s", seals, name)
		}
	}
}
