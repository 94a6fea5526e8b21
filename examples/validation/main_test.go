package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"testing"

	"completion.example/internal/accuracy"
	"completion.example/internal/long"
	"completion.example/internal/published"
	"completion.example/internal/validation"
	"github.com/stretchr/testify/require"
)

func TestValidationMeetsEveryCase(t *testing.T) {
	var out, errs bytes.Buffer
	require.Zero(t, run(nil, &out, &errs), out.String()+errs.String())
	require.Contains(t, out.String(), "Every case is met")
	require.Regexp(t, `S1 +NO OUTSIDE CASE`, out.String())
	require.NotRegexp(t, `H1 +NO OUTSIDE CASE`, out.String())
	require.Regexp(t, `P1 JIT4, rupture of a burst disc of 900 to 1100 psi: 2900 psi \(.*\): beyond its band`, out.String())

	out.Reset()
	require.Zero(t, run([]string{"-json"}, &out, &errs))
	var rows []map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &rows))
	require.NotEmpty(t, rows)
	for _, r := range rows {
		for _, field := range []string{"capability", "source", "status", "cases", "worst"} {
			require.Contains(t, r, field)
		}
		require.Equal(t, r["cases"], r["met"], "%v", r)
		require.Zero(t, r["missed"])
		require.NotEmpty(t, r["worst_case"])
	}

	require.Equal(t, 2, run([]string{"-capability", "Z9"}, &out, &errs))
	require.Equal(t, 2, run([]string{"-jsno"}, &out, &errs))
	require.Contains(t, errs.String(), "did you mean -json?")
}

// A case that fails is counted and says its inputs, answers and row, as text and in
// JSON.
func TestFailedCasesAreTold(t *testing.T) {
	c := published.Case{ID: "A-1", Capability: "H1", Quantity: "pressure", Inputs: "rho=1 kg/m3", Printed: "5 psi", Source: "a book", Status: published.Published, File: "x.csv", Line: 7}
	rows, missed := summarise([]validation.Outcome{
		{Case: c, Comparison: published.Comparison{Got: 6, Want: 5, Tolerance: 0.5, Unit: "psi"}},
		{Case: c, Err: errors.New("boiled dry")},
		{Case: c, Comparison: published.Comparison{Got: 5.25, Want: 5, Tolerance: 0.5, Unit: "psi"}},
	})
	require.Len(t, rows, 1)
	require.Len(t, missed, 2)
	r := rows[0]
	require.Equal(t, []int{3, 1, 2}, []int{r.Cases, r.Met, r.Missed})
	require.InDelta(t, 0.2, r.Worst, 1e-12)
	require.InDelta(t, 2, r.OfAllowed, 1e-12)
	require.Equal(t, "A-1, pressure", r.WorstCase)
	var out bytes.Buffer
	require.NoError(t, text(&out, rows, missed, 3, "H1"))
	for _, part := range []string{"1 of 3", "MISSED x.csv:7 A-1: pressure (rho=1 kg/m3): got 6, want 5 ± 0.5 psi", "boiled dry"} {
		require.Contains(t, out.String(), part)
	}
	require.NotContains(t, out.String(), "NO OUTSIDE CASE")
	require.NotContains(t, out.String(), "no case, with the reason")
	require.NotContains(t, out.String(), "<nil>")
	require.NotContains(t, out.String(), "Every case is met")
}

func TestAccuracyIsPrinted(t *testing.T) {
	long.Skip(t, "works everything with high precision")
	var out, errs bytes.Buffer
	require.Zero(t, run([]string{"-accuracy"}, &out, &errs), out.String()+errs.String())
	require.Contains(t, out.String(), "fluid/flow.Colebrook")
	out.Reset()
	require.NoError(t, writeAccuracy(&out, accuracy.Run(25), true))
	var rows []map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &rows))
	require.NotEmpty(t, rows)
	for _, r := range rows {
		require.Equal(t, true, r["met"], "%v", r)
	}
}
