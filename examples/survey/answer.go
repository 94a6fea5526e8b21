package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

func answer(path *hydrostatics.Path, at hydrostatics.Position, tvd unit.Length, section unit.Angle) calculator.Answer {
	out, azimuth := at.Closure()
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "TVD", Value: feet(at.TVD)},
			{Name: "north", Value: feet(at.North)},
			{Name: "east", Value: feet(at.East)},
			{Name: "inclination", Value: at.Inclination},
			{Name: "azimuth", Value: at.Azimuth},
			{Name: "dogleg severity", Value: at.DoglegSeverity},
			{Name: "closure", Value: feet(out)},
			{Name: "azimuth of the closure", Value: azimuth},
			{Name: "vertical section", Value: feet(at.Section(section))},
		},
		Draw: func(w io.Writer) error { return picture(w, path, section) },
	}
	for _, md := range path.MDs(tvd) {
		a.Results = append(a.Results, calculator.Result{Name: "MD of TVD " + feet(tvd), Value: feet(md)})
	}
	if len(path.MDs(tvd)) == 0 {
		a.Notes = append(a.Notes, "the well nowhere has a TVD of "+feet(tvd))
	}
	t := calculator.Table{Name: "Stations", Header: []string{"MD", "inclination", "azimuth", "TVD", "north", "east", "dogleg severity"}}
	for _, p := range path.Positions() {
		t.Rows = append(t.Rows, []any{feet(p.MD), p.Inclination, p.Azimuth, feet(p.TVD), feet(p.North), feet(p.East), p.DoglegSeverity})
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

// feet writes as surveys do: to the hundredth of a foot.
func feet(l unit.Length) string { return fmt.Sprintf("%.2f ft", l.In(unit.Foot)) }

func load(file string) ([]hydrostatics.Station, error) {
	if file == "" {
		return read(strings.NewReader(schrock))
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return read(f)
}

func read(r io.Reader) ([]hydrostatics.Station, error) {
	c := csv.NewReader(r)
	c.FieldsPerRecord = 3
	lines, err := c.ReadAll()
	if err != nil {
		return nil, err
	}
	var stations []hydrostatics.Station
	var errs []error
	for i, l := range lines {
		if i == 0 {
			continue // the header
		}
		var s hydrostatics.Station
		if err := errors.Join(s.MD.UnmarshalText([]byte(l[0])), s.Inclination.UnmarshalText([]byte(l[1])), s.Azimuth.UnmarshalText([]byte(l[2]))); err != nil {
			errs = append(errs, fmt.Errorf("line %d: %w", i+1, err))
		}
		stations = append(stations, s)
	}
	return stations, errors.Join(errs...)
}
