package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"completion.example/internal/calculator"
	"completion.example/internal/calculator/golden"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

func runs(args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = run(args, &o, &e)
	return code, o.String(), e.String()
}

func TestDemo(t *testing.T) {
	code, out, errs := runs()
	require.Zero(t, code, out)
	require.Empty(t, errs)
	require.Contains(t, out, calculator.Caution)
	golden.Compare(t, "demo", out)
}

// Each plan beside the demo has one mistake, and it is the first thing that is
// reported: step, device, numbers and cure.
func TestEveryMistakeIsFound(t *testing.T) {
	for file, want := range map[string]struct {
		kind         sequence.Kind
		step, device string
		numbers      string
		cure         string
	}{
		"setting-shears-isolation-valve": {sequence.Unintended, "set the packer", "isolation valve C: opens", "2327.5 psi at 9500 ft", `on "tubing"`},
		"packer-fluid-swapped":           {sequence.Missing, "set the packer", "packer: sets", "threshold is 1377.5 psi to 1522.5 psi", "no surface pressure"},
		"sleeves-in-wrong-order":         {sequence.Unintended, "close sleeve A", "sleeve C: closes", "1200 psi at 9450 ft", "no surface pressure"},
		"test-passes-casing-rating":      {sequence.RatingCross, "test the packer from above", "casing 9-5/8 in above the packer", "allowed 6241.3 psi", "take 562.37 psi off"},
		"cold-injection-parts-release":   {sequence.Unintended, "inject cold water", "release: parts", "52500 lbf at 8590 ft", `at most 387 psi on "tubing"`},
		"seals-leave-the-bore":           {sequence.SealTravel, "displace the tubing to base oil", "seals", "of 36.0 in", "space out"},
		"sleeve-opened-overbalanced":     {sequence.BalanceOff, "open sleeve A for its valve", "zone A", "221.96 psi overbalance", "a lighter fluid"},
		"annulus-test-with-port-shut":    {sequence.TestOff, "test the packer from above", "packer", `"annulus" less "annulus A" is -44.646 psi`, `"annulus A" is trapped`},
	} {
		t.Run(file, func(t *testing.T) {
			code, out, errs := runs("-plan", filepath.Join("plans", file+".json"), "-json")
			require.Equal(t, 1, code, errs)
			var p struct{ Findings []sequence.Finding }
			require.NoError(t, json.Unmarshal([]byte(out), &p))
			f := p.Findings[0]
			require.Empty(t, f.Follows)
			require.Equal(t, want.kind, f.Kind)
			require.Equal(t, want.step, f.Step)
			require.Equal(t, want.device, f.Device)
			require.Contains(t, f.Numbers, want.numbers)
			require.Contains(t, f.Cure, want.cure)
		})
	}
	plans, err := filepath.Glob("plans/*.json")
	require.NoError(t, err)
	require.Len(t, plans, 9, "a plan that no test looks at")
}

// A newcomer changes a pin count and sees which steps fail and why, with the
// pressures of every compartment at every device.
func TestChangedPinCountShowsWhatFails(t *testing.T) {
	const pins = `"count": 7, "strength": "770 lbf"`
	require.Equal(t, 1, strings.Count(string(demo), pins), "the pins of isolation valve C stand once in the file")
	text := strings.Replace(string(demo), pins, `"count": 5, "strength": "770 lbf"`, 1)
	file := filepath.Join(t.TempDir(), "plan.json")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	code, out, _ := runs("-plan", file)
	require.Equal(t, 1, code)
	require.Contains(t, out, "set the packer  [FAILS]")
	require.Contains(t, out, "isolation valve C: opens")
	require.Contains(t, out, "sand face C")
	require.Contains(t, out, "What is wrong with the plan")

	code, out, _ = runs("-plan", file, "-against", "plans/demo.json")
	require.Equal(t, 1, code)
	require.Contains(t, out, "window on tubing")
	require.NotContains(t, out, "test the packer from above  window", "only what has changed")
}

func TestBadInput(t *testing.T) {
	code, out, errs := runs("-paln", "x")
	require.Equal(t, 2, code)
	require.Empty(t, out)
	require.Contains(t, errs, "did you mean -plan?")

	code, _, errs = runs("-plan", "nowhere.json")
	require.Equal(t, 2, code)
	require.Contains(t, errs, "nowhere.json")

	file := filepath.Join(t.TempDir(), "hole.json")
	require.NoError(t, os.WriteFile(file, []byte(`{"name": "hole", "wel": {}, "fluids": [{"name": "mud", "density": "9"}]}`), 0o600))
	code, out, errs = runs("-plan", file)
	require.Equal(t, 2, code)
	require.Empty(t, out, "nothing half-run")
	require.Contains(t, errs, "wel: unknown field")
	require.Contains(t, errs, "fluids[0].density: unit:")

	code, out, _ = runs("-h")
	require.Zero(t, code)
	require.Contains(t, out, "-report")
	code, _, errs = runs("-samples", "-5")
	require.Equal(t, 2, code)
	require.Contains(t, errs, "samples is -5")
}

func TestReportIsOneFileWithItsPictures(t *testing.T) {
	file := filepath.Join(t.TempDir(), "report.html")
	code, _, errs := runs("-report", file)
	require.Zero(t, code, errs)
	b, err := os.ReadFile(file)
	require.NoError(t, err)
	page := string(b)
	require.Contains(t, page, "</html>")
	require.GreaterOrEqual(t, strings.Count(page, "<svg"), 26+12+3, "a picture for each step, each trigger, the string and the packer")
	for _, outside := range []string{"<script", "src=", "url(", "@import", "<link"} {
		require.NotContains(t, page, outside, "needs nothing else")
	}
	require.NotContains(t, page, "&lt;svg")
	require.NotContains(t, page, "ZgotmplZ")
	require.Equal(t, 2, strings.Count(page, "class=\"caution\""))
}

func TestExplainAndPressures(t *testing.T) {
	_, out, _ := runs("-explain", "-pressures")
	require.Contains(t, out, "m = near - felt = ")
	require.Contains(t, out, "sand face C")
}
