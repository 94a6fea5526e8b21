package sketch

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var pictures = map[string]interface{ SVG() (string, error) }{
	"chart": Chart{Title: "Pressure < depth & more", X: Axis{Name: "psi"}, Y: Axis{Name: "ft", Down: true},
		Lines: []Line{{Name: "brine", Points: []Point{{0, 0}, {4000, 9000}}}, {Name: "a gas with a rather long name", Points: []Point{{3000, 0}, {3800, 9000}}}, {Name: "third", Points: []Point{{1, 1}}}},
		Areas: []Area{{Name: "window", Ink: 2, Points: []Point{{0, 0}, {1000, 0}, {1000, 9000}}}},
		Marks: []Mark{{Name: "device", Point: Point{2000, 4500}}}},
	"ranges": Ranges{Title: "Bands", X: Axis{Name: "psi"}, Lines: []float64{3000}, Rows: []Range{{Name: "piston", From: 2850, To: 3150, Nominal: 3000}, {Name: "test", From: 2500, To: 2500, Ink: 1}}},
	"stacks": Stacks{Title: "Legs", Y: Axis{Name: "ft"}, Depths: []Mark{{Name: "port", Point: Point{Y: 9000}}},
		Stacks: []Stack{{Name: "tubing", Layers: []Layer{{Name: "oil", Bottom: 9000}}}, {Name: "annulus", Layers: []Layer{{Name: "air", Bottom: 100}, {Name: "brine", Top: 100, Bottom: 9000, Ink: 1}}}}},
}

// A picture is well-formed, says what it shows, and keeps its texts inside its frame
// as far as the width of letters is known.
func TestPicturesAreWellFormed(t *testing.T) {
	for name, p := range pictures {
		svg, err := p.SVG()
		require.NoError(t, err, name)
		d := xml.NewDecoder(strings.NewReader(svg))
		for {
			_, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err, name)
		}
		require.Contains(t, svg, `role="img" aria-label="`, name)
		require.NotContains(t, svg, "NaN", name)
		require.NotContains(t, svg, "%!", name)
		for _, m := range regexp.MustCompile(`<text x="([0-9.-]+)" y="([0-9.-]+)"`).FindAllStringSubmatch(svg, -1) {
			require.NotContains(t, m[1]+m[2], "-", "%s: text outside the frame", name)
		}
	}
}

func TestWhatCannotBeDrawnIsNamed(t *testing.T) {
	for want, p := range map[string]interface{ SVG() (string, error) }{
		"sketch: point 2 of line brine is NaN; must be finite":                                     Chart{Lines: []Line{{Name: "brine", Points: []Point{{0, 0}, {math.NaN(), 1}}}}},
		"sketch: mark device is +Inf; must be finite":                                              Chart{Marks: []Mark{{Name: "device", Point: Point{Y: math.Inf(1)}}}},
		"sketch: axis psi goes from 5 to 2; must end above its beginning":                          Chart{X: Axis{Name: "psi", Least: 5, Greatest: 2}},
		"sketch: range piston goes from 3 to 2; must not end below its beginning":                  Ranges{Rows: []Range{{Name: "piston", From: 3, To: 2}}},
		"sketch: layer oil of tubing goes from 9 to 2; must end below its beginning":               Stacks{Stacks: []Stack{{Name: "tubing", Layers: []Layer{{Name: "oil", Top: 9, Bottom: 2}}}}},
		"sketch: depth port is NaN; must be finite":                                                Stacks{Depths: []Mark{{Name: "port", Point: Point{Y: math.NaN()}}}},
		"sketch: an end of the axis psi is NaN; must be finite":                                    Chart{X: Axis{Name: "psi", Least: math.NaN()}},
		"sketch: point 1 of area a is -Inf; must be finite\nsketch: mark m is NaN; must be finite": Chart{Areas: []Area{{Name: "a", Points: []Point{{math.Inf(-1), 0}}}}, Marks: []Mark{{Name: "m", Point: Point{X: math.NaN()}}}},
	} {
		_, err := p.SVG()
		require.EqualError(t, err, want)
	}
}

func TestTicksAreRound(t *testing.T) {
	for _, c := range []struct {
		least, greatest float64
		most            int
		want            string
	}{
		{0, 9360, 5, "0 2000 4000 6000 8000"},
		{2850, 3150, 5, "2900 3000 3100"},
		{-0.12, 0.31, 5, "−0.1 0.0 0.1 0.2 0.3"},
		{-1500, 700, 5, "−1500 −1000 −500 0 500"},
		{0, 23000, 5, "0 5000 10,000 15,000 20,000"},
		{0.001, 0.0042, 5, "0.001 0.002 0.003 0.004"},
	} {
		_, names := scale{least: c.least, greatest: c.greatest}.ticks(c.most)
		require.Equal(t, c.want, strings.Join(names, " "))
	}
}

func TestSpan(t *testing.T) {
	for _, c := range []struct {
		values          []float64
		least, greatest float64
	}{
		{nil, 0, 1},
		{[]float64{0, 100}, 0, 104},
		{[]float64{40, 100}, 37.6, 102.4},
		{[]float64{20, 100}, 0, 103.2},
		{[]float64{-100, 100}, -108, 108},
		{[]float64{7}, 6.72, 7.28},
	} {
		least, greatest := spanOf(c.values)
		require.InDelta(t, c.least, least, 1e-9, c.values)
		require.InDelta(t, c.greatest, greatest, 1e-9, c.values)
	}
}
