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
	for name, want := range map[string]struct {
		code int
		says []string
	}{
		"clean": {0, []string{"AS PLANNED: The record is what the programme expects", "known      packer bypass shut", "isolation valve C open", "As run through step 11, open isolation valve C",
			"As run, and from there on as planned: PROVED", "isolation valve C: opens: slope of volume changes at tubing", "step 10, close sleeve A again: “sleeve A: closes” did not happen"}},
		"leak": {1, []string{"NOT AS PLANNED", "step 7, test the packer from below: tubing leaks", "it shows in annulus", "The leak isn't in it",
			"ruled out  every device moved as the programme has it", "OFF: annulus, ramp 1: volume"}},
		"valve-did-not-open": {1, []string{"NOT AS PLANNED", "“isolation valve C: opens” did not happen", "isolation valve C shut", "The first step that breaks is 11, open isolation valve C",
			"ruled out  every device moved as the programme has it"}},
	} {
		t.Run(name, func(t *testing.T) {
			code, out, errs := runs("-as-run", logFile(name))
			require.Equal(t, want.code, code, errs)
			flat := strings.Join(strings.Fields(out), " ")
			for _, s := range want.says {
				require.Contains(t, flat, strings.Join(strings.Fields(s), " "))
			}
			narrow(t, out)
		})
	}
}

// In bar and litres there is nothing in psi, and the page and the JSON have it too.
func TestAsRunElsewhere(t *testing.T) {
	file := filepath.Join(t.TempDir(), "r.html")
	code, out, errs := runs("-as-run", logFile("leak"), "-units", "si", "-report", file, "-floor", "-date", "1 May 2031")
	require.Equal(t, 1, code, errs)
	for _, foreign := range []string{" psi", " bbl", " gal", " lbf"} {
		require.NotContains(t, out, foreign)
	}
	b, err := os.ReadFile(file)
	require.NoError(t, err)
	page := string(b)
	structure(t, page)
	has(t, page, `id="record"`)
	has(t, page, `id="asrun"`)
	has(t, page, "NOT AS PLANNED")
	hasNot(t, page, " psi")

	code, out, errs = runs("-as-run", logFile("leak"), "-units", "si", "-json")
	require.Equal(t, 1, code, errs)
	var answer struct {
		Record struct {
			Finding  string
			Explains []struct{ Says []string }
			Steps    []struct{ Checks []struct{ Expected string } }
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &answer))
	require.Equal(t, "otherwise", answer.Record.Finding)
	require.Contains(t, answer.Record.Explains[0].Says[0], "tubing leaks")
	require.Len(t, answer.Record.Steps, 8)

	// A gauge known to read wrong is put right in the record too: all pressures of the
	// tubing are then 100 psi less, and what was seen is no longer what it should be.
	code, out, _ = runs("-as-run", logFile("clean"), "-gauge", "tubing = 100 psi")
	require.Equal(t, 1, code)
	require.Contains(t, out, "tubing gauge at the end of the step's start")
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
