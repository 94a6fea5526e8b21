package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// quantities finds every number with what may be its unit.
var quantities = regexp.MustCompile(`(?:^|[^\w.“-])-?[0-9](?:[0-9.,]*[0-9])?(?:e[-+]?[0-9]+)? ([A-Za-z][A-Za-z0-9/^.-]*)`)

// shipped are all plans that come with the programme, by file.
func shipped(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("plans/*.json")
	require.NoError(t, err)
	return append(files, "begin/field.json", "begin/si.json", twoZones, "testdata/two-zones-stabbed.json")
}

// own are the plan's own words, in which a number and a unit may stand as it likes.
func own(t *testing.T, file string) []string {
	t.Helper()
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	plan, err := sequence.Read(data)
	require.NoError(t, err)
	plan, err = plan.Derive()
	require.NoError(t, err)
	derived, err := json.Marshal(plan)
	require.NoError(t, err)
	var words []string
	for _, m := range regexp.MustCompile(`"(?:name|note|source|criterion|by|from|after|says)":\s*("(?:[^"\\]|\\.)*")`).FindAllSubmatch(slices.Concat(data, derived), -1) {
		var word string
		require.NoError(t, json.Unmarshal(m[1], &word))
		first, _, _ := strings.Cut(word, " ")
		if _, _, unitFirst := unit.Written("1 " + first); unitFirst || strings.ContainsAny(word, "0123456789") {
			words = append(words, strings.Join(strings.Fields(word), " "))
		}
	}
	slices.SortFunc(words, func(a, b string) int { return len(b) - len(a) })
	return slices.Compact(words)
}

// strange lists the numbers of a text whose unit isn't one that the system has for a
// purpose of that quantity.
func strange(s display.System, text string, words []string) (all []string) {
	text = strings.Join(strings.Fields(strings.ReplaceAll(text, "\u00a0", " ")), " ")
	for _, w := range words {
		text = strings.ReplaceAll(text, w, "…")
	}
	fits := map[string]bool{"MMscf": true, "Mscf": true}
	for p := display.Depth; s.Unit(p) != ""; p++ {
		fits[s.Unit(p)] = p != display.Stress && p != display.YieldStress || fits[s.Unit(p)]
	}
	for _, m := range quantities.FindAllStringSubmatchIndex(text, -1) {
		symbol := strings.TrimRight(text[m[2]:m[3]], ".-")
		quantity, u, known := unit.Written("1 " + symbol)
		if !known || fits[symbol] || u.Text != symbol && strings.ToLower(symbol) == symbol && len(symbol) > 3 {
			continue // a word, or the right one
		}
		if slices.Contains([]string{"s", "h", "d", "min"}, symbol) {
			continue // a time
		}
		if strings.HasSuffix(symbol, "/min") && fits[strings.TrimSuffix(symbol, "/min")] {
			continue // a rate of rise
		}
		all = append(all, fmt.Sprintf("%s of %s: …%s…", quantity, symbol, text[max(m[0]-60, 0):min(m[1]+30, len(text))]))
	}
	return all
}

// One unit per quantity and purpose in a whole output: every number with a unit in text,
// page, table and JSON of every shipped plan, in the units of the field, of SI, and of
// the plan. And no line of text is too long.
func TestOneUnitPerQuantityAndPurpose(t *testing.T) {
	t.Parallel()
	for _, file := range shipped(t) {
		name := strings.TrimSuffix(filepath.Base(file), ".json")
		if !long.Wanted() && !slices.Contains([]string{"si", "two-zones", "level-falls-below-the-disc"}, name) {
			continue
		}
		words := own(t, file)
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		w, before, err := beginWith(data, file, &options{units: "plan"})
		require.NoError(t, err)
		require.NoError(t, w.finish(context.Background(), &options{draws: sequence.Uncertainty{Samples: 20, Seed: 1}}, before, func(float64, string) {}))
		for _, units := range display.Names() {
			s, err := unitsNamed(units, texts(data))
			require.NoError(t, err)
			if units == "plan" && s.Unit(display.Pressure) == "psi" && s.Unit(display.Depth) == "ft" {
				continue // as the field has them
			}
			w.read.units, w.sizes = s, s
			for what, text := range written(t, w) {
				if what == "text" {
					for _, line := range strings.Split(text, "\n") {
						require.LessOrEqual(t, utf8.RuneCountInString(line), 110, "%s, %s: %s", name, units, line)
					}
				}
				if found := strange(s.System, text, words); len(found) > 0 {
					t.Errorf("%s, %s, %s: %d such as %q", name, units, what, len(found), found[:min(3, len(found))])
				}
			}
		}
	}
}

// written is all output of a programme.
func written(t *testing.T, w *work) map[string]string {
	t.Helper()
	page, table := filepath.Join(t.TempDir(), "page.html"), filepath.Join(t.TempDir(), "table.csv")
	o := options{pressures: true, explain: explained{all: true}, report: page, csv: table, paper: "a4", date: "today"}
	var text, machine bytes.Buffer
	require.NoError(t, w.write(&text, &o))
	require.NoError(t, printJSON(&machine, w, 2))
	shown := regexp.MustCompile(`(?s)<style>.*?</style>|<[^>]*>`).ReplaceAllString(read(t, page), " ")
	edits := regexp.MustCompile(`"(before|now)": "(?:[^"\\]|\\.)*"`).ReplaceAllString(machine.String(), "") // texts of the plan, as it has them
	return map[string]string{"text": text.String(), "page": html.UnescapeString(shown), "table": read(t, table), "JSON": edits}
}

func read(t *testing.T, file string) string {
	t.Helper()
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	return string(data)
}
