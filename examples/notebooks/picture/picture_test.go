package picture

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// A picture is well-formed, says what it shows, and follows light and dark.
func TestPictures(t *testing.T) {
	for name, c := range map[string]struct {
		picture Drawing
		holds   []string
	}{
		"chart": {Chart{Title: "Pressure < depth", X: Axis{Name: "psi"}, Y: Axis{Name: "ft", Down: true},
			Lines: []Line{{Name: "brine", Points: []Point{{0, 0}, {4000, 9000}}}, {Points: []Point{{3000, 0}, {3800, 9000}}}},
			Areas: []Area{{Name: "window", Ink: 2, Points: []Point{{0, 0}, {1000, 0}, {1000, 9000}}}},
			Marks: []Mark{{Name: "device", Point: Point{2000, 4500}}, {Point: Point{100, 100}}}},
			[]string{">brine<", ">window<", ">device<", ">psi<", `aria-label="Pressure &lt; depth"`}},
		"ranges": {Ranges{Title: "Bands", X: Axis{Name: "psi"}, Lines: []float64{3000}, Rows: []Range{Band("piston", unit.Within(3000*unit.PSI, 0.05), unit.PSI, 0), {Name: "test", From: 2500, To: 2500, Ink: 1}}},
			[]string{">piston<", ">test<", "<circle"}},
		"stacks": {Stacks{Title: "Legs", Y: Axis{Name: "depth, ft"}, Depths: []Mark{{Name: "port", Point: Point{Y: 9000}}},
			Stacks: []Stack{{Name: "tubing", Layers: []Layer{{Name: "oil", Bottom: 9000}}}, {Name: "annulus", Layers: []Layer{{Name: "air", Bottom: 100}, {Name: "brine", Top: 100, Bottom: 9000, Ink: 1}}}}},
			[]string{">oil<", ">tubing<", ">port<"}},
	} {
		drawn, err := c.picture.SVG()
		require.NoError(t, err, name)
		d := xml.NewDecoder(strings.NewReader(drawn))
		for {
			_, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err, name)
		}
		for _, part := range append(c.holds, `class="lesson"`, "prefers-color-scheme:dark", "var(--ink, ") {
			require.True(t, strings.Contains(drawn, part), "%s: no %s in\n%s", name, part, drawn)
		}
	}
}

func TestWhatCannotBeDrawnIsNamed(t *testing.T) {
	for want, p := range map[string]Drawing{
		`chart: line "brine": the point NaN, 1 isn't finite`:                              Chart{Lines: []Line{{Name: "brine", Points: []Point{{0, 0}, {math.NaN(), 1}}}}},
		`chart: mark "": the point 0, +Inf isn't finite`:                                  Chart{Marks: []Mark{{Name: "device", Point: Point{Y: math.Inf(1)}}}},
		`picture: axis "psi" goes from 5 to 2; must end above its beginning`:              Chart{X: Axis{Name: "psi", Least: 5, Greatest: 2}},
		`picture: axis "psi" goes from NaN to 0; must end above its beginning`:            Ranges{X: Axis{Name: "psi", Least: math.NaN()}},
		`picture: range "piston" goes from 3 to 2; must not end below its beginning`:      Ranges{Rows: []Range{{Name: "piston", From: 3, To: 2}}},
		`picture: layer "oil" of "tubing" goes from 9 to 2; must end below its beginning`: Stacks{Stacks: []Stack{{Name: "tubing", Layers: []Layer{{Name: "oil", Top: 9, Bottom: 2}}}}},
	} {
		_, err := p.SVG()
		require.ErrorContains(t, err, want)
	}
}

// Without the variable that the course sets, a picture becomes a file.
func TestShowWritesAFile(t *testing.T) {
	t.Setenv(Inline, "")
	t.Chdir(t.TempDir())
	Show("one", Chart{Title: "one", Lines: []Line{{Points: []Point{{0, 0}, {1, 1}}}}})
	text, err := os.ReadFile("one.svg")
	require.NoError(t, err)
	require.Contains(t, string(text), "</svg>")
}
