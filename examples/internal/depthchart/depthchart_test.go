package depthchart_test

import (
	"bytes"
	"io"
	"math"
	"testing"

	"completion.example/examples/internal/depthchart"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func chart() depthchart.Chart {
	return depthchart.Chart{
		Depth: []unit.Length{0, 1000 * unit.Foot, 2000 * unit.Foot},
		Panels: []depthchart.Panel{
			{Title: "Axial force", Label: "klbf", Curves: []depthchart.Curve{{Name: "true", Values: []float64{90, 40, -10}}}, Marks: []depthchart.Mark{{Name: "zero", Value: 0}}},
			{Title: "Use", Label: "share", Curves: []depthchart.Curve{{Name: "triaxial", Values: []float64{0.5, 0.4, 0.3}}}},
		},
	}
}

func TestChartIsWellFormedAndNamesItsCurves(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, chart().WriteSVG(&out))
	for _, name := range []string{"Axial force", "true", "zero", "triaxial", "measured depth, ft"} {
		require.Contains(t, out.String(), name)
	}
	golden.SVG(t, out.Bytes())
}

func TestChartFaults(t *testing.T) {
	require.Error(t, depthchart.Chart{}.WriteSVG(io.Discard))
	c := chart()
	c.Panels[0].Curves[0].Values = []float64{1}
	require.ErrorContains(t, c.WriteSVG(io.Discard), "true")
	c = chart()
	c.Panels[0].Curves[0].Values[1] = math.NaN()
	require.Error(t, c.WriteSVG(io.Discard))
}
