package packer_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"completion.example/packer"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

func TestPolygonThroughJSON(t *testing.T) {
	p, err := ratings().Polygon()
	require.NoError(t, err)
	p.Name = "invented packer"
	text, err := json.Marshal(p)
	require.NoError(t, err)
	back, err := packer.ReadPolygon(strings.NewReader(string(text)))
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(p, back, cmpopts.EquateEmpty()))
	for text, want := range map[string]string{
		`{"vertices": [{"differential": "5 psi"}]}`:               "vertices[0]: must have both",
		`{"vertices": [{"differential": "5 psi", "axial": "5"}]}`: "vertices[0].axial",
		`{"vertexes": []}`:                "unknown field",
		`{"vertices": []}`:                "three corners",
		`{} {}`:                           "after the end",
		``:                                "EOF",
		strings.Repeat(" ", 1<<20) + "{}": "more than",
		`{"vertices":` + strings.Repeat("[", 1<<19): "nested deeper than 8",
	} {
		_, err := packer.ReadPolygon(strings.NewReader(text))
		require.ErrorContains(t, err, want)
	}
}

func TestEnvelopeReadsBackAsWritten(t *testing.T) {
	p, err := ratings().Polygon()
	require.NoError(t, err)
	e, err := p.Envelope()
	require.NoError(t, err)
	text, err := json.Marshal(e)
	require.NoError(t, err)
	var back packer.Envelope
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, *e, back)
	require.ErrorContains(t, json.Unmarshal([]byte(`{"vertices": []}`), &back), "three corners")
	require.Error(t, json.Unmarshal([]byte(`5`), &back))
}

func FuzzReadPolygon(f *testing.F) {
	p, _ := ratings().Polygon()
	text, _ := json.Marshal(p)
	f.Add(string(text))
	f.Add(`{"vertices":[{"differential":"-1 psi","axial":"-1 lbf"},{"differential":"1 psi","axial":"-1 lbf"},{"differential":"0 psi","axial":"1e300 N"}]}`)
	f.Fuzz(func(t *testing.T, text string) {
		p, err := packer.ReadPolygon(strings.NewReader(text))
		if err != nil {
			return
		}
		e, err := p.Envelope()
		require.NoError(t, err)
		for _, v := range append(p.Vertices, packer.Load{}) {
			m := e.Margin(v)
			if math.IsNaN(m.Usage) || math.IsInf(m.Usage, 0) || math.IsNaN(m.Distance) {
				t.Fatalf("%v: %+v", v, m)
			}
		}
		require.True(t, e.Margin(packer.Load{}).Inside())
	})
}
