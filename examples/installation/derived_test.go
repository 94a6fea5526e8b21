package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// What -derived prints is a plan: without a tally, each entry with its rule, in the
// units asked for; and it is walked as the tally is.
func TestDerivedIsAPlan(t *testing.T) {
	for _, args := range [][]string{{"-plan", "plans/demo-as-tally.json"}, {"-plan", "begin/si.json"}, {"-plan", "begin/field.json", "-units", "si"}} {
		code, text, errs := runs(append(args, "-derived")...)
		require.Zero(t, code, errs)
		require.NotContains(t, text, `"assembly"`)
		p, err := sequence.Read([]byte(text))
		require.NoError(t, err)
		for _, c := range p.Compartments {
			require.NotEmpty(t, c.Note, c.Name)
		}
		for _, d := range p.Devices {
			require.NotEmpty(t, d.Note, d.Name)
		}
		for _, r := range p.Ratings {
			require.NotEmpty(t, r.Note, r.Name)
		}
		for _, b := range p.Barriers {
			require.NotEmpty(t, b.Note, b.Name)
		}
		if strings.Contains(args[1], "demo") { // which takes long; valve/sequence has it
			continue
		}
		file := filepath.Join(t.TempDir(), "derived.json")
		require.NoError(t, os.WriteFile(file, []byte(text), 0o666))
		_, written, errs := runs("-plan", file, "-units", "field")
		require.Empty(t, errs)
		_, tally, errs := runs(append(args, "-units", "field")...)
		require.Empty(t, errs)
		require.Equal(t, tally, written)
	}
}

// A plan in bar and metres is answered in them, though its pipes are in inches.
func TestBarAndMetresBack(t *testing.T) {
	code, text, errs := runs("-plan", "begin/si.json")
	require.Zero(t, code, errs)
	require.Contains(t, text, "depth in m, stroke in mm, pressure in bar, volume in m3, small volume in L, force in kN")
	require.NotContains(t, text, " psi")
	require.NotContains(t, text, " lbf")
	require.NotContains(t, text, " ft")
	code, text, _ = runs("-plan", "begin/si.json", "-derived")
	require.Zero(t, code)
	require.Contains(t, text, `"size": "4.5 in"`)
	require.Contains(t, text, `"bottom": "2380 m"`)
	require.NotContains(t, text, " psi")
}

// -set reaches a piece of the tally, and what only follows from it.
func TestSetOfATally(t *testing.T) {
	code, text, errs := runs("-plan", "begin/si.json", "-set", "assembly.tail plug.pins = 8", "-derived")
	require.Zero(t, code, errs)
	require.Contains(t, text, `{"pins": {"count": 8`)
	code, text, errs = runs("-plan", "begin/si.json", "-set", "compartments.annulus.capacity = 20 L/m", "-derived")
	require.Zero(t, code, errs)
	require.Contains(t, text, `"capacity": "20 L/m"`)
	code, _, errs = runs("-plan", "begin/si.json", "-set", "assembly.tail plug.top = 2400 m")
	require.Equal(t, 2, code)
	require.Contains(t, errs, "they overlap by 10 m")
	code, _, errs = runs("-plan", "begin/si.json", "-set", "devices.sleeve Q.depth = 2400 m")
	require.Equal(t, 2, code)
	require.Equal(t, 1, strings.Count(errs, "-set"))
}
