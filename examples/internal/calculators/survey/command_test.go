package survey

import (
	"path/filepath"
	"strings"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestSurvey(t *testing.T) {
	golden.Check(t, Command)
	file := filepath.Join("testdata", "rising.csv")
	golden.File(t, Command, "rising", 0, "-survey", file, "-measured-depth", "3000 m", "-depth", "1560 m", "-section", "30 deg")
	golden.File(t, Command, "faults", 2, "-survey", filepath.Join("testdata", "faults.csv"))
	golden.File(t, Command, "outside", 2, "-measured-depth", "5581 ft")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command), "From above")
}

func FuzzRead(f *testing.F) {
	f.Add("MD,inclination,azimuth\n100 m,0 deg,30 deg\n")
	f.Add("\"\n,,\n")
	f.Fuzz(func(t *testing.T, text string) {
		stations, err := hydrostatics.ReadSurvey(strings.NewReader(text))
		if err != nil {
			return
		}
		if p, err := hydrostatics.NewPath(stations); err == nil && len(p.Stations()) < len(stations) {
			t.Fatalf("%q lost a station", text)
		}
	})
}
