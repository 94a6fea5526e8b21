package calculators_test

import (
	"path/filepath"
	"testing"

	"completion.example/examples/internal/calculators/survey"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestSurvey(t *testing.T) {
	t.Chdir("survey")
	golden.Check(t, survey.Command)
	file := filepath.Join("testdata", "rising.csv")
	golden.File(t, survey.Command, "rising", 0, "-survey", file, "-measured-depth", "3000 m", "-depth", "1560 m", "-section", "30 deg")
	golden.File(t, survey.Command, "faults", 2, "-survey", filepath.Join("testdata", "faults.csv"))
	golden.File(t, survey.Command, "outside", 2, "-measured-depth", "5581 ft")
}

func TestSurveyPicture(t *testing.T) {
	t.Chdir("survey")
	require.Contains(t, golden.Picture(t, survey.Command), "From above")
}
