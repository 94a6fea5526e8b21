package wellpath_test

import (
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"testing"

	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"github.com/stretchr/testify/require"
)

// A quarter circle of 1,000 m radius ends 1,000 m deep (geometry).
const quarter = "MD,inclination,azimuth\n0 m,0 deg,0 deg\n1570.79632679 m,90 deg,0 deg\n2000 m,90 deg,0 deg\n"

func survey(t *testing.T, text string) (*wellpath.Survey, error) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "survey.csv")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	flags := flag.NewFlagSet("", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	s := wellpath.Flag(flags)
	return s, flags.Parse([]string{"-survey", file})
}

func TestVertical(t *testing.T) {
	s, err := survey(t, quarter)
	require.NoError(t, err)
	require.NotNil(t, s.Path())
	halfway, end := unit.Length(1570.79632679/2), 2000*unit.Metre
	require.NoError(t, s.Vertical(&halfway, &end))
	require.InDelta(t, 1000*math.Sin(math.Pi/4), float64(halfway), 1e-6)
	require.InDelta(t, 1000, float64(end), 1e-6)
	var a calculator.Answer
	s.Tell(&a)
	require.Len(t, a.Tables[0].Rows, 2)

	deep, depth := 2100*unit.Metre, 2200*unit.Metre
	err = s.Vertical(&deep, &depth)
	require.ErrorAs(t, err, &calculator.BadInput{})
	require.ErrorContains(t, err, "survey.csv")
}

func TestWithoutASurveyTheWellIsVertical(t *testing.T) {
	var s wellpath.Survey
	d := 5 * unit.Metre
	require.NoError(t, s.Vertical(&d))
	require.Equal(t, 5*unit.Metre, d)
	var a calculator.Answer
	s.Tell(&a)
	require.Empty(t, a.Tables)
}

func TestFaults(t *testing.T) {
	for _, text := range []string{"", "MD,inclination,azimuth\n0 m,0 deg\n", "MD,inclination,azimuth\n0 m,0 deg,0\n5 psi,x,0 deg\n", "MD,inclination,azimuth\n5 m,0 deg,0 deg\n4 m,0 deg,0 deg\n"} {
		_, err := survey(t, text)
		require.Error(t, err, text)
	}
	require.Error(t, new(wellpath.Survey).Set("no such file"))
}
