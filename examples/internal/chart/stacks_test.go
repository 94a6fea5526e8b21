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

func TestStacks(t *testing.T) {
	s := chart.Stacks{Title: "fluids", Depth: "depth", Bottom: 9000 * unit.Foot, Bars: []chart.Bar{
		{Name: "tubing", Parts: []chart.Filled{{Name: "oil", Bottom: 4000 * unit.Foot, Density: 815}, {Name: "brine", Top: 4000 * unit.Foot, Bottom: 8900 * unit.Foot, Density: 1100},
			{Name: "sliver", Top: 8900 * unit.Foot, Bottom: 9000 * unit.Foot, Density: 5000}, {Name: "nothing", Top: 9000 * unit.Foot, Bottom: 9000 * unit.Foot}}},
		{Name: "annulus", Marks: []chart.Mark{{Name: "packer", Depth: 8000 * unit.Foot}}},
		{Name: "empty"},
	}}
	var out bytes.Buffer
	require.NoError(t, s.WriteSVG(&out, display.SI()))
	golden.SVG(t, out.Bytes())
	for _, want := range []string{"fluids", "depth, m", "tubing", "annulus", "oil", "brine", "packer"} {
		require.Contains(t, out.String(), ">"+want+"<")
	}
	require.NotContains(t, out.String(), "sliver", "no room for its name")
	require.NotContains(t, out.String(), "nothing")
	s.Bars[0].Parts[0].Bottom = unit.Length(math.Inf(1))
	require.Error(t, s.WriteSVG(io.Discard, display.SI()))
}
