package chart_test

import (
	"bytes"
	"io"
	"math"
	"testing"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestRanges(t *testing.T) {
	r := chart.Ranges{Title: "setting", Scale: chart.Axis{Name: "surface pressure"}, Here: 3000 * unit.PSI, Named: "applied", Rows: []chart.Range{
		{Name: "screws part", From: 2500 * unit.PSI, To: 2700 * unit.PSI}, {Name: "window", From: 2700 * unit.PSI, To: 4000 * unit.PSI, Permitted: true}, {Name: "rating", From: 5000 * unit.PSI, To: 5000 * unit.PSI}}}
	var out bytes.Buffer
	require.NoError(t, r.WriteSVG(&out, display.SI()))
	golden.SVG(t, out.Bytes())
	for _, want := range []string{"surface pressure, bar", "screws part", "window", "rating", "applied"} {
		require.Contains(t, out.String(), ">"+want+"<")
	}
	r.Rows[0].To = unit.Pressure(math.NaN())
	require.Error(t, r.WriteSVG(io.Discard, display.SI()))
}
