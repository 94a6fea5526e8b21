// Package golden holds a calculator's output against a file that a person has
// read. Run the test with -update to write the files anew, then read them.
package golden

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"completion.example/internal/calculator"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Check runs c with its defaults and -explain and compares the output with
// testdata/default.golden; then it asks what every calculator must do: valid
// JSON, one system of units throughout, help, and exit code 2 with a hint for a flag that is misspelt.
func Check(t *testing.T, c calculator.Command) {
	t.Helper()
	File(t, c, "default", 0, "-explain")
	var out, errs bytes.Buffer
	require.Zero(t, c.Run([]string{"-json", "-explain"}, &out, &errs), errs.String())
	require.True(t, json.Valid(out.Bytes()), "JSON: %s", out.String())
	out.Reset()
	require.Zero(t, c.Run([]string{"-units", "si", "-explain"}, &out, &errs), errs.String())
	require.NotEmpty(t, answered(out.String()))
	for _, line := range strings.Split(answered(out.String()), "\n") {
		if c.Name != "convert" { // shows them all
			require.NotRegexp(t, fieldUnits, line, "-units si")
		}
	}
	out.Reset()
	require.Zero(t, c.Run([]string{"-md"}, &out, &errs), errs.String())
	require.Contains(t, out.String(), "## Answer")
	out.Reset()
	require.Zero(t, c.Run([]string{"-h"}, &out, &errs))
	require.Contains(t, strings.Join(strings.Fields(out.String()), " "), c.Question)
	require.Contains(t, strings.Join(strings.Fields(out.String()), " "), calculator.Caution)
	require.Equal(t, 2, c.Run([]string{"-explian", "-frobnicate", "5 psi"}, &out, &errs))
	require.Contains(t, errs.String(), "did you mean -explain?")
	require.Contains(t, errs.String(), "no flag -frobnicate")
}

// fieldUnits finds a quantity in a unit of the American oilfield. Degrees may be
// named in words that say at which temperature a standard has something.
var fieldUnits = regexp.MustCompile(`(^|[\s(])-?[0-9.]+ (psi|ksi|ft|in|bbl|gal|lbf|klbf|lb/gal|psi/ft|lb/ft|bbl/min|bbl/d|in2|in4|ft/min|ft/s|lbf/100ft2|deg/100ft|Mcf/d|gal/min|bbl/ft)([\s,;)]|$)`)

// answered is the part of a page between its inputs and what others printed.
func answered(text string) string {
	_, text, _ = strings.Cut(text, "\nInputs\n")
	_, text, _ = strings.Cut(text, "\n\n")
	text, _, _ = strings.Cut(text, "\nPublished\n")
	return text
}

// File runs c with args, wants the exit code, and compares standard output
// followed by standard error with testdata/name.golden.
func File(t *testing.T, c calculator.Command, name string, code int, args ...string) {
	t.Helper()
	var out, errs bytes.Buffer
	got := c.Run(args, &out, &errs)
	Compare(t, name, out.String()+errs.String())
	if !slices.Contains(args, "-json") && !slices.Contains(args, "-md") && !slices.Contains(args, "-h") {
		for _, line := range strings.Split(out.String(), "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(line), calculator.Width, line)
		}
	}
	require.Equal(t, code, got, "exit code of %s: %s", strings.Join(args, " "), errs.String())
}

// Compare holds text against testdata/name.golden.
func Compare(t *testing.T, name, text string) {
	t.Helper()
	file := filepath.Join("testdata", name+".golden")
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(text, "\n")); d != "" {
		t.Errorf("%s differs (-want +got):\n%s", file, d)
	}
}
