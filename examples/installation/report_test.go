package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// pageOf writes a report and reads it back.
func pageOf(t *testing.T, want int, args ...string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "report.html")
	code, _, errs := runs(append(args, "-report", file, "-date", "1 May 2031")...)
	require.Equal(t, want, code, errs)
	b, err := os.ReadFile(file)
	require.NoError(t, err)
	return string(b)
}

// has and hasNot don't print the page where it fails.
func has(t *testing.T, page, what string) {
	t.Helper()
	require.True(t, strings.Contains(page, what), "the page has no %q", what)
}

func hasNot(t *testing.T, page, what string) {
	t.Helper()
	require.False(t, strings.Contains(page, what), "the page has %q", what)
}

// structure is what every page must have: headings in order, anchors that lead
// somewhere, nothing fetched, nothing that the template refused.
func structure(t *testing.T, page string) {
	t.Helper()
	has(t, page, "</html>")
	for _, outside := range []string{"<script", "src=", "url(", "@import", "<link", "http:", "https:"} {
		require.False(t, strings.Contains(strings.ReplaceAll(page, "http://www.w3.org/", ""), outside), "%s: it needs nothing else", outside)
	}
	for _, broken := range []string{"ZgotmplZ", "&lt;svg", "%!", "<no value>", "NaN", "+Inf"} {
		require.False(t, strings.Contains(page, broken), broken)
	}
	ids := map[string]int{}
	for _, m := range regexp.MustCompile(` id="([^"]+)"`).FindAllStringSubmatch(page, -1) {
		ids[m[1]]++
	}
	for id, n := range ids {
		require.Equal(t, 1, n, "id %s stands %d times", id, n)
	}
	for _, m := range regexp.MustCompile(`href="#([^"]+)"`).FindAllStringSubmatch(page, -1) {
		require.Contains(t, ids, m[1], "an anchor that leads nowhere")
	}
	level := 0
	for _, m := range regexp.MustCompile(`<h([1-6])[ >]`).FindAllStringSubmatch(page, -1) {
		now := int(m[1][0] - '0')
		require.LessOrEqual(t, now, level+2, "a heading that skips levels")
		level = now
	}
	require.Equal(t, 1, strings.Count(page, "<h1>"))
	for _, tag := range []string{"table", "div", "section", "article", "ul", "dl", "svg", "figure"} {
		require.Equal(t, strings.Count(page, "<"+tag+">")+strings.Count(page, "<"+tag+" "), strings.Count(page, "</"+tag+">"), "<%s> that isn't closed", tag)
	}
}

func TestReport(t *testing.T) {
	page := pageOf(t, 0, "-revision", "C")
	structure(t, page)
	require.Equal(t, 2, strings.Count(page, `class="caution"`))
	require.Equal(t, 26, strings.Count(page, `<article class="step`))
	for i := range 26 {
		has(t, page, fmt.Sprintf(`id="step%d"`, i+1))
	}
	has(t, page, "1 May 2031, revision C, plan ")
	has(t, page, "PROVED")
	for _, id := range []string{"schedule", "steps", "unchecked", "margins", "triggers", "string", "packer", "pressures"} {
		has(t, page, `id="`+id+`"`)
	}
	require.Equal(t, 28, strings.Count(page, `<svg class="well`), "of the well one for a desk and one for a phone, and one a step")
	hasNot(t, page, "#010000")
	has(t, page, "size: A4")
	has(t, page, `counter(pages)`)
	for _, words := range []string{"What must be seen", "Stop if", "Test sheet", "initials", "hold tubing", "Not checked by this plan"} {
		has(t, page, words)
	}
	for _, figure := range strings.Split(page, "<figure>")[1:] {
		require.LessOrEqual(t, strings.Count(strings.Split(figure, "</figure>")[0], `class="l`), most, "lines in one picture")
	}
}

func TestReportForTheFloor(t *testing.T) {
	page := pageOf(t, 0, "-floor", "-paper", "letter", "-units", "si")
	structure(t, page)
	hasNot(t, page, "<figure>")
	hasNot(t, page, `id="pressures"`)
	has(t, page, "size: letter")
	text := regexp.MustCompile(`(?s)<style>.*?</style>|<[^>]*>`).ReplaceAllString(page, " ")
	for _, unit := range []string{" psi", " ft ", " lbf", " bbl", " gal"} {
		require.NotContains(t, strings.ReplaceAll(text, "\u00a0", " "), unit, "metric throughout")
	}
}

func TestReportOfAFailingPlanLeadsWithItsFindings(t *testing.T) {
	t.Parallel()
	page := pageOf(t, 1, "-plan", planFile("goes-on-with-a-valve-unlocked"))
	structure(t, page)
	has(t, page, "REFUTED")
	require.Less(t, strings.Index(page, `id="findings"`), strings.Index(page, `<svg class="well`))
	has(t, page, "depends on step 1")
	has(t, page, "not certain")

	page = pageOf(t, 1, "-set", "steps.test the packer from below.ramps[0].tubing = 2000 psi")
	structure(t, page)
	require.Less(t, strings.Index(page, `id="findings"`), strings.Index(page, `id="changes"`))
	has(t, page, "(was 2400 psi)")
}

// Steps are counted in whole numbers, also where a plan has two.
func TestStepsOfAPictureAreWhole(t *testing.T) {
	page := pageOf(t, 1, "-plan", planFile("test-cools-while-it-is-held"))
	triggers := page[strings.Index(page, `id="triggers"`):strings.Index(page, `id="pressures"`)]
	has(t, triggers, ">1</text>")
	has(t, triggers, ">2</text>")
	require.NotRegexp(t, `>[0-9]\.5</text>`, triggers)
}

// Words of a plan are text, never markup.
func TestReportEscapesNames(t *testing.T) {
	page := pageOf(t, 0, "-set", `name = <b>bold</b> & "quoted"`, "-set", "steps.vent.note = <i>x</i>", "-revision", `"; } body { display: none }`, "-floor")
	structure(t, page)
	hasNot(t, page, "<b>bold")
	hasNot(t, page, "<i>x")
	hasNot(t, page[:strings.Index(page, "</style>")], "display: none }\"")
	has(t, page, `content: "plan `)
	hasNot(t, page[:strings.Index(page, "</style>")], `revision "`)
}

// The slope of a ramp by hand: 1.25 bbl from 855 to 2600 psi are 0.0716 bbl in
// 100 psi, 3.01 gal.
func TestSlopeOfARamp(t *testing.T) {
	page := strings.ReplaceAll(pageOf(t, 0, "-floor"), "\u00a0", " ")
	step := page[strings.Index(page, `id="step5"`):strings.Index(page, `id="step6"`)]
	has(t, step, "takes 1.25 bbl into tubing (compression), 3.01 gal in 100 psi")
}

func TestSpreadKeepsLabelsApart(t *testing.T) {
	at := []float64{10, 11, 12, 50, 95, 99, 100}
	moved := spread(at, 8, 0, 100)
	for i := range moved {
		require.GreaterOrEqual(t, moved[i], 0.0)
		require.LessOrEqual(t, moved[i], 100.0)
		if i > 0 {
			require.GreaterOrEqual(t, moved[i]-moved[i-1], 8-1e-9)
		}
	}
	require.Equal(t, 50.0, moved[3], "what has room stays")
}
