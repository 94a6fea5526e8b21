package calculators_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/examples/internal/calculators/seals"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestSeals(t *testing.T) {
	t.Chdir("seals")
	golden.Check(t, seals.Command)
	golden.File(t, seals.Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-depth", "3000 m", "-shoulder", "3000 m", "-bore-top", "3000.3 m", "-bore-bottom", "3010 m", "-tagged", "3001.2 m")
	golden.File(t, seals.Command, "beyond", 2, "-survey", "../survey/testdata/building.csv", "-depth", "5000 m")
	golden.File(t, seals.Command, "too-short", 1, "-last", "15 ft")
	golden.File(t, seals.Command, "no-pups", 1, "-pups", "")
	golden.File(t, seals.Command, "faults", 2, "-bore-bottom", "9000 ft", "-engaged", "50 ft")
}

// Along a survey that is vertical it is the vertical well again, to the digits shown.
func TestSealsVerticalSurveyIsTheVerticalWell(t *testing.T) {
	t.Chdir("seals")
	answers := make([]map[string]float64, 2)
	for i, args := range [][]string{nil, {"-survey", "../movement/testdata/vertical.csv"}} {
		answers[i] = map[string]float64{}
		for name, value := range answered(t, seals.Command, args...) {
			var x float64
			if _, err := fmt.Sscan(value, &x); err == nil {
				answers[i][name] = x
			}
		}
	}
	require.GreaterOrEqual(t, len(answers[0]), 9)
	for name, x := range answers[0] {
		require.InDelta(t, x, answers[1][name], 1e-3*math.Abs(x)+0.02, name)
	}
}

func TestSealsPicture(t *testing.T) {
	t.Chdir("seals")
	require.Contains(t, golden.Picture(t, seals.Command, "-units", "si"), "seal bore")
}
