package chart_test

import (
	"bytes"
	"errors"
	"image/color"
	"io"
	"math"
	"testing"

	"completion.example/examples/internal/chart"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
)

func TestLinesAreDrawnAndNamed(t *testing.T) {
	p := plot.New()
	rise := plotter.XYs{{X: 0, Y: 0}, {X: 1, Y: 2}}
	require.NoError(t, chart.Add(p,
		chart.Line{Name: "pulled", Points: rise, Color: color.RGBA{R: 1, G: 2, B: 3, A: 255}},
		chart.Line{Points: plotter.XYs{{X: 0, Y: 2}, {X: 1, Y: 5}}, Color: color.RGBA{R: 7, G: 8, B: 9, A: 255}, Dashes: []vg.Length{6, 3}}))
	require.Equal(t, 5.0, p.Y.Max, "the scale takes both lines in")
	var out bytes.Buffer
	require.NoError(t, chart.WriteSVG(&out, p))
	golden.SVG(t, out.Bytes())
	require.Equal(t, 1, bytes.Count(out.Bytes(), []byte("pulled")))
	require.Equal(t, 2, bytes.Count(out.Bytes(), []byte("stroke:#010203")), "the line and its sample in the legend")
	require.Equal(t, 1, bytes.Count(out.Bytes(), []byte("stroke:#070809")), "no name, no legend")
	require.Contains(t, out.String(), "dasharray:6,3")
}

func TestFaults(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		require.ErrorContains(t, chart.Add(plot.New(), chart.Line{Name: "set down", Points: plotter.XYs{{X: 0, Y: x}}}), `"set down"`)
	}
	require.ErrorIs(t, chart.WriteSVG(full{}, plot.New()), errFull)
}

var errFull = errors.New("no space left")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestCurvesAreInTheReadersUnits(t *testing.T) {
	c := chart.Curves{Title: "pressure down the well", X: chart.Axis{Name: "pressure"}, Y: chart.Axis{Name: "depth", For: display.Depth}, Downwards: true,
		Curves: []chart.Curve{{Name: "column", X: []any{0 * unit.PSI, 5000 * unit.PSI}, Y: []any{0 * unit.Foot, 10000 * unit.Foot}}},
		Levels: []chart.Level{{Name: "packer", Y: 9000 * unit.Foot}}}
	for s, want := range map[display.System][]string{display.Field(): {"pressure, psi", "depth, ft", ">10000<", ">5000<"}, display.SI(): {"pressure, bar", "depth, m", ">3000<", ">300<"}} {
		var out bytes.Buffer
		require.NoError(t, c.WriteSVG(&out, s))
		golden.SVG(t, out.Bytes())
		for _, w := range append(want, "column", "packer") {
			require.Contains(t, out.String(), w)
		}
	}
	c.Curves[0].X[1] = unit.Pressure(math.NaN())
	require.ErrorContains(t, c.WriteSVG(io.Discard, display.Field()), `"column"`)
	numbers := chart.Curves{X: chart.Axis{Name: "pins"}, Y: chart.Axis{Name: "share"}, Curves: []chart.Curve{{X: []any{1.0, 2.0}, Y: []any{0.5, 0.7}}}}
	var out bytes.Buffer
	require.NoError(t, numbers.WriteSVG(&out, display.SI()))
	require.Contains(t, out.String(), ">pins<")
}
