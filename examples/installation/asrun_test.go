package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func logFile(name string) string { return filepath.Join("records", name+".csv") }

// The demo's invented records, each with what was invented.
func TestAsRun(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]struct {
		code  int
		units string
		says  []string
	}{
		"clean": {0, "field", []string{"AS PLANNED: The record is what the programme expects", "known packer bypass shut", "isolation valve C open", "As run through step 11, open isolation valve C",
			"As run, and from there on as planned: PROVED", "isolation valve C: opens: slope of volume changes at tubing", "step 10, close sleeve A again: “sleeve A: closes” did not happen"}},
		"valve-did-not-open": {1, "si", []string{"NOT AS PLANNED", "“isolation valve C: opens” did not happen", "isolation valve C shut", "The first step that breaks is 21, produce zone C alone",
			"ruled out every device moved as the programme has it"}},
	} {
		t.Run(name, func(t *testing.T) {
			code, out, errs := runs("-as-run", logFile(name), "-units", want.units)
			require.Equal(t, want.code, code, errs)
			flat := strings.Join(strings.Fields(out), " ")
			for _, s := range want.says {
				require.Contains(t, flat, s)
			}
			if want.units == "si" {
				for _, foreign := range []string{" psi", " bbl", " gal", " lbf"} {
					require.NotContains(t, out, foreign)
				}
			}
			narrow(t, out)
		})
	}
}

// The page and the JSON have it too, in the reader's units.
func TestAsRunLeakInPageAndJSON(t *testing.T) {
	t.Parallel()
	file := filepath.Join(t.TempDir(), "r.html")
	code, out, errs := runs("-as-run", logFile("leak"), "-units", "si", "-json", "-report", file, "-date", "1 May 2031")
	require.Equal(t, 1, code, errs)
	b, err := os.ReadFile(file)
	require.NoError(t, err)
	page := string(b)
	structure(t, page)
	for _, x := range []string{`id="record"`, `id="asrun"`, "NOT AS PLANNED", "The leak isn&#39;t in it", "it shows in annulus", "After step 8."} {
		has(t, page, x)
	}
	hasNot(t, page, " psi")
	var answer struct {
		Record struct {
			Finding  string
			Explains []struct{ Says []string }
			Ruled    []struct{ Says []string } `json:"ruled_out"`
			Steps    []struct{ Checks []struct{ Expected string } }
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &answer))
	require.Equal(t, "otherwise", answer.Record.Finding)
	require.Contains(t, answer.Record.Explains[0].Says[0], "step 7, test the packer from below: tubing leaks")
	require.Equal(t, []string{"every device moved as the programme has it"}, answer.Record.Ruled[0].Says)
	require.Len(t, answer.Record.Steps, 8)
	_, part, _ := strings.Cut(out, `"record": {`)
	require.False(t, strings.Contains(part, " psi"), "the record in psi, and bar was asked for")
}

func TestAsRunRefuses(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "bad.csv")
	require.NoError(t, os.WriteFile(bad, []byte("time [s],step,tubng pressure [psi]\n0,1,1\n"), 0o600))
	for _, args := range [][]string{{"-as-run", bad}, {"-as-run", "nowhere.csv"}, {"-as-run", logFile("clean"), "-against", "plans/demo.json"}, {"-as-run", logFile("clean"), "-world", "drag = 6000 lbf"}} {
		code, out, errs := runs(args...)
		require.Equal(t, 2, code, args)
		require.Empty(t, out)
		require.NotEmpty(t, errs)
	}
	_, _, errs := runs("-as-run", bad)
	require.Contains(t, errs, "line 1, tubng pressure: is of no compartment that reaches the surface; did you mean tubing?")
}

// From the record on there is a plan of its own, that begins as the record leaves the
// well.
func TestAsRunGoesOn(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	for name, want := range map[string]int{"clean": 0, "valve-did-not-open": 1} {
		file := filepath.Join(dir, name+".json")
		code, out, errs := runs("-as-run", logFile(name), "-after", "open isolation valve C = "+file)
		require.Zero(t, code, errs)
		require.Contains(t, out, "the 15 steps that follow")
		if name == "clean" {
			require.Contains(t, out, "Not known after the record: sleeve A shut or open")
		}
		code, out, errs = runs("-plan", file)
		require.Equal(t, want, code, errs)
		if name == "clean" {
			require.Contains(t, out, "isolation valve C:\nopens.")
		} else {
			require.Contains(t, out, "REFUTED")
			require.Contains(t, out, "produce zone C alone")
		}
	}
}
