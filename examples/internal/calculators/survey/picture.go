package survey

import (
	"io"

	"completion.example/examples/internal/chart"
	"completion.example/examples/internal/svg"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
)

// picture draws the well from the side and from above.
func picture(w io.Writer, u *calculator.Units, path *hydrostatics.Path, section unit.Angle) error {
	var side, above []svg.XY
	const points = 400
	for i := range points + 1 {
		at, err := path.At(path.TotalDepth() * unit.Length(i) / points)
		if err != nil {
			continue // above a first station that isn't at surface there is no hole
		}
		side = append(side, svg.XY{X: u.In(at.Section(section), display.Depth), Y: u.In(at.TVD, display.Depth)})
		above = append(above, svg.XY{X: u.In(at.East, display.Depth), Y: u.In(at.North, display.Depth)})
	}
	feet := u.Unit(display.Depth)
	left := panel("From the side", "section along "+u.Format(section, display.Usual)+", "+feet, "TVD, "+feet, side)
	left.Y.Down = true
	right := panel("From above", "east, "+feet, "north, "+feet, above)
	return chart.Row(w, 480, 520, "the well from the side and from above", left, right)
}

func panel(title, x, y string, path []svg.XY) *chart.Plot {
	p := &chart.Plot{Title: title, X: chart.Scale{Name: x}, Y: chart.Scale{Name: y}}
	p.Line("", chart.PenOf(0), path...)
	return p
}
