package main

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestValidationMeetsEveryCase(t *testing.T) {
	var out, errs bytes.Buffer
	require.Zero(t, run(nil, &out, &errs), out.String()+errs.String())
	require.Contains(t, out.String(), "Every case is met")

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
	}

	require.Equal(t, 2, run([]string{"-capability", "Z9"}, &out, &errs))
	require.Equal(t, 2, run([]string{"-jsno"}, &out, &errs))
	require.Contains(t, errs.String(), "did you mean -json?")
}
