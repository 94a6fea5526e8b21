package chart_test

import (
	"bytes"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"testing"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestLinesAreDrawnAndNamed(t *testing.T) {
	p := &chart.Plot{Title: "pulled & set", X: chart.Scale{Name: "time"}}
	p.Line("pulled", svg.Pen{Ink: "#010203"}, svg.XY{X: 0, Y: 0}, svg.XY{X: 1, Y: 2})
	p.Line("", svg.Pen{Ink: "#070809", Dashes: []float64{6, 3}}, svg.XY{X: 0, Y: 2}, svg.XY{X: 1, Y: 5})
	require.Equal(t, 5.0, p.Y.Greatest, "the scale takes both lines in")
	p.Area("held", "#0a0b0c", svg.Pen{}, svg.XY{X: 0, Y: 0}, svg.XY{X: 1, Y: 0}, svg.XY{X: 1, Y: 1})
	for _, shape := range []chart.Shape{chart.Cross, chart.Dot, chart.Wedge} {
		p.Marks("", shape, "#0d0e0f", 4, svg.XY{X: 0.5, Y: 1})
	}
	p.Words(svg.Lettering{Halo: true}, svg.XY{X: 0.5, Y: 1}, 3, 3, "here")
	var out bytes.Buffer
	require.NoError(t, p.WriteSVG(&out))
	golden.SVG(t, out.Bytes())
	require.Equal(t, 1, bytes.Count(out.Bytes(), []byte(">pulled<")))
	require.Equal(t, 2, bytes.Count(out.Bytes(), []byte(`stroke="#010203"`)), "the line and its sample in the key")
	require.Equal(t, 1, bytes.Count(out.Bytes(), []byte(`stroke="#070809"`)), "no name, no place in the key")
	require.Equal(t, 2, bytes.Count(out.Bytes(), []byte(`fill="#0a0b0c"`)))
	require.Contains(t, out.String(), `dasharray="6,3"`)
	require.Contains(t, out.String(), "pulled &amp; set")
}

func TestFaults(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		p := &chart.Plot{}
		p.Line("set down", svg.Pen{}, svg.XY{X: 0, Y: x})
		require.ErrorContains(t, p.WriteSVG(io.Discard), `"set down"`)
	}
	require.ErrorContains(t, (&chart.Plot{Title: "void"}).WriteSVG(io.Discard), "void")
	none := &chart.Plot{}
	none.Line("none", svg.Pen{})
	require.ErrorContains(t, none.WriteSVG(io.Discard), `"none" has no points`)
	full1 := &chart.Plot{}
	full1.Line("one", svg.Pen{Ink: svg.Ink}, svg.XY{X: 1, Y: 1})
	require.ErrorIs(t, full1.WriteSVG(full{}), errFull)
}

var errFull = errors.New("no space left")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

// Marks of a scale stand at round values, the ends in, and depths grow downwards.
func TestScales(t *testing.T) {
	p := &chart.Plot{Y: chart.Scale{Down: true}}
	p.Line("", svg.Pen{Ink: svg.Ink}, svg.XY{X: -2, Y: 0}, svg.XY{X: 2, Y: 12000})
	var out bytes.Buffer
	require.NoError(t, p.WriteSVG(&out))
	for _, mark := range []string{"-2", "-1", "0", "1", "2", "2000", "4000", "12000"} {
		require.Contains(t, out.String(), ">"+mark+"<")
	}
	at := func(mark string) (y float64) {
		m := regexp.MustCompile(` y="([0-9.]+)"[^>]*>` + mark + `<`).FindStringSubmatch(out.String())
		require.NotNil(t, m, mark)
		y, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		return y
	}
	require.Less(t, at("2000"), at("12000"))
	flat := &chart.Plot{}
	flat.Line("", svg.Pen{Ink: svg.Ink}, svg.XY{X: 3, Y: 0}, svg.XY{X: 3, Y: 0})
	require.NoError(t, flat.WriteSVG(io.Discard), "a scale without a span is given some")
}

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
