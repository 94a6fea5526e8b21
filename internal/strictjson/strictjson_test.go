package strictjson_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/strictjson"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

type layer struct {
	Fluid string      `json:"fluid"`
	From  unit.Length `json:"from"`
}

type plan struct {
	Name     string                     `json:"name"`
	Depth    unit.Length                `json:"depth"`
	Band     unit.Band[unit.Pressure]   `json:"band"`
	Layers   []layer                    `json:"layers"`
	Pressure map[string]unit.Pressure   `json:"pressure"`
	Limit    *unit.Pressure             `json:"limit"`
	Count    int                        `json:"count"`
	Share    float64                    `json:"share"`
	Open     bool                       `json:"open"`
	Deep     map[string]map[string]bool `json:"deep"`
}

const good = `{"name": "a", "depth": "9000 ft", "band": "3000 psi +/- 5 %", "layers": [{"fluid": "brine", "from": "0 ft"}],
	"pressure": {"tubing": "5 psi"}, "limit": "7 psi", "count": 3, "share": 0.5, "open": true, "deep": {"a": {"b": true}}}`

func TestReadsWhatEncodingJSONReads(t *testing.T) {
	var ours, theirs plan
	require.NoError(t, strictjson.Unmarshal([]byte(good), &ours))
	require.NoError(t, json.Unmarshal([]byte(good), &theirs))
	require.Empty(t, cmp.Diff(theirs, ours))
}

func TestReportsEveryFaultWithItsPath(t *testing.T) {
	var p plan
	err := strictjson.Unmarshal([]byte(`{"nmae": "a", "depth": 9000, "layers": [{"fluid": "brine", "from": "0 ft"}, {"from": "7 psi", "fluid": 3}],
		"pressure": {"tubing": "5", "annulus 2": "NaN psi", "tubing": "6 psi"}, "count": 1.5, "share": "half", "open": 1, "limit": null,
		"band": "3000 psi .. 2 psi", "deep": {"a": []}}`), &p)
	for _, want := range []string{
		"nmae: unknown field; there are band, count, deep",
		`depth: unit: cannot read "9000" as a length: no unit given`,
		"layers[1].from: unit:", "layers[1].fluid: is 3; must be text",
		"pressure.tubing: stands twice", "pressure.tubing: unit:", `pressure."annulus 2": unit:`,
		"count: is 1.5; must be a whole number", `share: is "half"; must be a number`, "open: is 1; must be true or false",
		"limit: is null", "band: is 3000 psi", "deep.a: is a list; must be an object",
	} {
		require.ErrorContains(t, err, want)
	}
}

func TestSyntaxFaultsNameTheirPlace(t *testing.T) {
	var p plan
	require.ErrorContains(t, strictjson.Unmarshal([]byte("{\n  \"name\": }"), &p), "line 2")
	require.ErrorContains(t, strictjson.Unmarshal([]byte(`{"name": "a"`), &p), "unexpected")
	require.ErrorContains(t, strictjson.Unmarshal([]byte(`{} {}`), &p), "after the end")
	require.ErrorContains(t, strictjson.Unmarshal(bytes.Repeat([]byte("["), 1<<20), &p), "deep")
	require.Error(t, strictjson.Unmarshal([]byte(``), &p))
	require.Error(t, strictjson.Unmarshal([]byte(`[]`), &p))
	require.Error(t, strictjson.Unmarshal([]byte(`{}`), p))
}

func FuzzUnmarshal(f *testing.F) {
	f.Add([]byte(good))
	f.Add([]byte(`{"depth": "1e400 ft", "layers": [{}], "count": 99999999999}`))
	f.Add([]byte(`[[[[`))
	f.Fuzz(func(t *testing.T, data []byte) {
		var ours, theirs plan
		if strictjson.Unmarshal(data, &ours) == nil {
			require.NoError(t, json.Unmarshal(data, &theirs), "what is accepted here is valid JSON for all")
			require.Empty(t, cmp.Diff(theirs, ours))
		}
	})
}
