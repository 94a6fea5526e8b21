package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

// twoZones is an invented plan as somebody wrote it from the template in bar and metres:
// two gas-condensate zones, SG and lb/ft where the trade has them.
const twoZones = "testdata/two-zones.json"

// american finds a quantity in a unit of the American oilfield, and one with a prefix that
// no gauge has.
var american = regexp.MustCompile(`[0-9] ?(psi|ksi|ft|bbl|gal|lbf|klbf|lb/gal|psi/ft|lb/ft|bbl/d|degF|MPa|kPa|km)\b`)

// A plan in bar and metres is answered in bar and metres, also where it fails and where
// values of it are set; no line is too long; and every pressure that is held or bled to
// has its window.
func TestTwoZonesInBarAndMetres(t *testing.T) {
	for _, x := range []struct {
		code int
		args []string
		has  []string
	}{
		{0, nil, []string{"PROVED", "8.07 bar isolation valve: opens step 7"}},
		{0, []string{"-gauge", "tubing = -3 bar"}, []string{"PROVED", "tubing shows 3 bar too little"}},
		{1, []string{"-set", "steps.shear the tail plug out.ramps[2].tubing = 120 bar"}, []string{"REFUTED", "(was 160 bar)", "152 bar to 458.4 bar"}},
		{1, []string{"-set", "steps.shear the tail plug out.ramps[1].tubing = 385 bar"}, []string{"REFUTED", "replay -world 'density of completion brine = 1195"}},
	} {
		code, out, errs := runs(append([]string{"-plan", twoZones}, x.args...)...)
		require.Equal(t, x.code, code, errs)
		for _, want := range x.has {
			require.True(t, strings.Contains(strings.Join(strings.Fields(out), " "), want), "%v: no %q", x.args, want)
		}
		for _, line := range strings.Split(out, "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(line), 110, line)
			require.NotRegexp(t, american, line)
		}
		if x.code == 0 {
			require.NotContains(t, out, "NONE")
		}
	}
	// Written with names that are nearly right, it is told what was meant.
	code, _, errs := runs("-plan", twoZones, "-set", "steps.shear the tale plug out.ramps[2].tubing = 120 bar")
	require.Equal(t, 2, code)
	require.Contains(t, errs, `did you mean "shear the tail plug out"?`)
}

// What flows between two zones below everything that pressure reaches can't be mended at
// surface, and isn't told to be.
func TestNoSurfacePressureReachesIt(t *testing.T) {
	long.Skip(t, "looks for its cure")
	data, err := os.ReadFile(twoZones)
	require.NoError(t, err)
	valve := regexp.MustCompile(`(?m)^.*"lower isolation valve".*$`) // is left out, its length stays
	text := valve.ReplaceAll(data, nil)
	require.NotEqual(t, len(data), len(text))
	file := filepath.Join(t.TempDir(), "crossflow.json")
	require.NoError(t, os.WriteFile(file, text, 0o600))
	code, out, errs := runs("-plan", file)
	require.Equal(t, 1, code, errs)
	require.Contains(t, strings.Join(strings.Fields(out), " "), `no surface pressure reaches it: shut the port between them, or let the step allow "inflow"`)
}

// A plan of two strings tells and draws both: heavy lines for their walls, devices on that
// of their own string, the working of either term by term, forces along each.
func TestTwoStringsAreToldAndDrawn(t *testing.T) {
	t.Parallel()
	const plan = "testdata/two-strings.json"
	code, out, errs := runs("-plan", plan, "-explain", "step 5")
	require.Zero(t, code, errs)
	flat := strings.Join(strings.Fields(out), " ")
	for _, name := range []string{"string at pull 1:", "outer at pull 1:"} {
		i := strings.Index(flat, name)
		require.Positive(t, i, name)
		rest := flat[i:]
		for _, line := range []string{"wall force at the top", "Ft = Fe + W + Fs + Fr + Fp + Fh + Ff + Fd + D =", "balance of “", "ring of ", "travel of ", "buckled length", "use of "} {
			require.Contains(t, rest, line, name)
		}
	}
	require.Contains(t, flat, "weight indicator: R = Ft - cap + block = ", "of the outer string, which is pulled")
	page := pageOf(t, 0, "-plan", plan)
	has(t, page, "heavy lines are the strings")
	has(t, page, "outer string: step 5, pull the outer string")
	require.Zero(t, strings.Count(page, `class="pipe"`)%4, "two strings in the whole well and in the larger part of it")
	require.NotZero(t, strings.Count(page, `class="pipe"`))
	sign := regexp.MustCompile(`M([0-9.]+) [0-9.]+ l9 -6 v12 z[^>]*class="sign (set|idle)"`)
	at := map[string]bool{}
	for _, x := range sign.FindAllStringSubmatch(page, 4) {
		at[x[1]] = true
	}
	require.Len(t, at, 2, "on two walls")
	hasNot(t, pageOf(t, 0), `class="pipe"`)
}

// A second plan written from the template in bar and metres, with pipe by its metric names
// and a string stabbed into the lower completion: what its writer stumbled over is told in
// the units and by the keys of the plan.
func TestTwoZonesWrittenInMetricNames(t *testing.T) {
	const file = "testdata/two-zones-stabbed.json"
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	code, out, errs := runs("-plan", file)
	require.Zero(t, code, errs)
	require.Contains(t, out, "PROVED")
	for _, line := range strings.Split(out, "\n") {
		require.NotRegexp(t, american, line)
	}
	for _, x := range []struct{ old, new, want string }{
		{`"up": "2.5 m", `, ``, "assembly.strings[1].tally[8].up: is missing: how far the seals may move up"},
		{`"kind": "seals", "bore": "101.6 mm"`, `"kind": "seals", "bore": "114.3 mm"`, "seals of 114.3 mm outside doesn't go through assembly.strings[0].tally[5] (seal bore) of 101.6 mm inside"},
		{`"weight": "79.6 kg/m"`, `"weight": "79.9 kg/m"`, "244.5 mm at 79.9 kg/m: not in the catalogue: there are"},
		{`{"kind": "pipe", "length": "90 m"}`, `{"kind": "pipe", "length": "90 m", "top": "2925 m"}`, "begins at 2925 m, but assembly.strings[1].tally[3] (packer) ends at 2920 m: a gap of 5 m"},
		{`{"kind": "pipe", "length": "90 m"}`, `{"kind": "pipe", "length": "90 m", "top": "2915 m"}`, "they overlap by 5 m"},
	} {
		require.Equal(t, 1, strings.Count(string(data), x.old), x.old)
		other := filepath.Join(t.TempDir(), "other.json")
		require.NoError(t, os.WriteFile(other, []byte(strings.Replace(string(data), x.old, x.new, 1)), 0o600))
		code, _, errs := runs("-plan", other)
		require.Equal(t, 2, code)
		require.Contains(t, errs, x.want)
		require.NotRegexp(t, `[0-9] (in|ft|psi|km|MPa)\b`, errs, "in the plan's units")
	}
	// A test that is missed says what it wanted in bar, and the cure which ramp it is of.
	code, out, errs = runs("-plan", file, "-set", "steps.test the packer from above.ramps[0].annulus = 100 bar")
	require.Equal(t, 1, code, errs)
	one := strings.Join(strings.Fields(out), " ")
	require.Contains(t, one, "wanted 130 bar to 150 bar")
	require.Contains(t, one, `131.1 bar to 148.9 bar on "annulus" in ramp 1, in place of 100 bar`)
}
