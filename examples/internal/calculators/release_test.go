package calculators_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"completion.example/examples/internal/calculators/release"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestRelease(t *testing.T) {
	t.Chdir("release")
	golden.Check(t, release.Command)
	golden.File(t, release.Command, "too-strong", 1, "-parting-load", "110000 lbf +/- 10 %", "-tried", "170000 lbf")
	golden.File(t, release.Command, "with-pressure", 1, "-share", "0.66")
	golden.File(t, release.Command, "pipe-light", 1, "-trapped", "5800 psi")
	golden.File(t, release.Command, "premature", 1, "-cold", "-150 degF", "-pressured", "5000 psi")
	golden.File(t, release.Command, "flowing", 1, "-annulus-fluid", "8.8 lb/gal")
	golden.File(t, release.Command, "stuck", 0, "-free", "8000 ft")
	golden.File(t, release.Command, "surveyed", 0, "-survey", "../survey/testdata/building.csv", "-depth", "3300 m", "-cut-top", "3280 m", "-cut-bottom", "3290 m",
		"-formation", "0 psi", "-trapped", "5600 psi .. 5700 psi .. 5800 psi", "-reserve", "0 lbf")
	golden.File(t, release.Command, "faults", 2, "-share", "1.5", "-rig", "0 lbf", "-depth", "-5 ft")
}

func TestReleasePicture(t *testing.T) {
	t.Chdir("release")
	require.Contains(t, golden.Picture(t, release.Command, "-units", "si"), "the pins part")
}

// A survey of a vertical well says what no survey does: the closed form and the march
// node by node agree.
func TestReleaseVerticalSurvey(t *testing.T) {
	t.Chdir("release")
	file := filepath.Join(t.TempDir(), "vertical.csv")
	require.NoError(t, os.WriteFile(file, []byte("MD,inclination,azimuth\n0 ft,0 deg,0 deg\n9000 ft,0 deg,0 deg\n"), 0o600))
	run := func(args ...string) string {
		var out, errs bytes.Buffer
		release.Command.Run(args, &out, &errs)
		require.Empty(t, errs.String())
		return out.String()
	}
	_, plain, _ := strings.Cut(run(), "reading when")
	_, surveyed, _ := strings.Cut(run("-survey", file), "reading when")
	require.NotEmpty(t, plain)
	require.Equal(t, plain, surveyed)
}
