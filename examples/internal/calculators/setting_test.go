package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/setting"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestSetting(t *testing.T) {
	t.Chdir("setting")
	golden.Check(t, setting.Command)
	golden.File(t, setting.Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-depth", "3000 m", "-below", "280 bar", "-tubing-pressure", "285 bar")
	golden.File(t, setting.Command, "chamber", 0, "-chamber", "4 in")
	golden.File(t, setting.Command, "no-window", 1, "-other", "4300 psi +/- 5 %")
	golden.File(t, setting.Command, "unknown", 1, "-tubing-pressure", "3700 psi")
	golden.File(t, setting.Command, "faults", 2, "-pins", "0", "-piston", "-8 in2")
}

func TestSettingPicture(t *testing.T) {
	t.Chdir("setting")
	require.Contains(t, golden.Picture(t, setting.Command, "-units", "si"), "window, margin kept")
}
