package survey

import (
	"completion.example/hydrostatics/unit/display"
	"io"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

func answer(u *calculator.Units, path *hydrostatics.Path, at hydrostatics.Position, tvd unit.Length, section unit.Angle) calculator.Answer {
	out, azimuth := at.Closure()
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "TVD", Value: at.TVD, For: display.PipeLength},
			{Name: "north", Value: at.North, For: display.PipeLength},
			{Name: "east", Value: at.East, For: display.PipeLength},
			{Name: "inclination", Value: at.Inclination},
			{Name: "azimuth", Value: at.Azimuth},
			{Name: "dogleg severity", Value: at.DoglegSeverity},
			{Name: "closure", Value: out, For: display.PipeLength},
			{Name: "azimuth of the closure", Value: azimuth},
			{Name: "vertical section", Value: at.Section(section), For: display.PipeLength},
		},
		Draw: func(w io.Writer) error { return picture(w, u, path, section) },
	}
	for _, md := range path.MDs(tvd) {
		a.Results = append(a.Results, calculator.Result{Name: "MD of TVD " + u.Format(tvd, display.PipeLength), Value: md, For: display.PipeLength})
	}
	if len(path.MDs(tvd)) == 0 {
		a.Notes = append(a.Notes, "the well nowhere has a TVD of "+u.Format(tvd, display.PipeLength))
	}
	t := calculator.Table{Name: "Stations", Header: []string{"MD", "inclination", "azimuth", "TVD", "north", "east", "dogleg severity"},
		For: []display.Purpose{display.PipeLength, display.Usual, display.Usual, display.PipeLength, display.PipeLength, display.PipeLength}}
	for _, p := range path.Positions() {
		t.Rows = append(t.Rows, []any{p.MD, p.Inclination, p.Azimuth, p.TVD, p.North, p.East, p.DoglegSeverity})
	}
	a.Tables = []calculator.Table{t}
	stations := path.Stations()
	i := 1 // the course that ends at or below the depth asked
	for i < len(stations)-1 && stations[i].MD < at.MD {
		i++
	}
	a.Steps = hydrostatics.CourseBetween(stations[i-1], stations[i]).Steps()
	return a
}
