package chart_test

import (
	"bytes"
	"errors"
	"image/color"
	"math"
	"testing"

	"completion.example/examples/internal/chart"
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
