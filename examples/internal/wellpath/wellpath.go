// Package wellpath is the flag -survey of the calculators: a file of stations, by
// which the depths of the other flags are measured along the hole.
package wellpath

import (
	"errors"
	"flag"
	"fmt"
	"os"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
)

// Usage is what the flag says of itself.
const Usage = "CSV `file` of the well's stations, MD,inclination,azimuth with units under one header line; depths are then measured along the hole, and without it the well is vertical"

// Survey is the well's path, if a file gave one.
type Survey struct {
	file  string
	path  *hydrostatics.Path
	pairs [][2]unit.Length // measured, vertical
}

// Flag adds -survey to flags.
func Flag(flags *flag.FlagSet) *Survey {
	s := &Survey{}
	flags.Var(s, "survey", Usage)
	return s
}

// String returns the file's name.
func (s *Survey) String() string { return s.file }

// Set reads the file.
func (s *Survey) Set(file string) error {
	f, err := os.Open(file)
	if err != nil {
		return err
	}
	defer f.Close()
	stations, err := hydrostatics.ReadSurvey(f)
	if err != nil {
		return err
	}
	path, err := hydrostatics.NewPath(stations)
	if err != nil {
		return err
	}
	s.file, s.path = file, path
	return nil
}

// Path returns the path, nil for a vertical well.
func (s *Survey) Path() *hydrostatics.Path { return s.path }

// Vertical turns measured depths into true vertical ones, in place; without a
// survey they are both.
func (s *Survey) Vertical(depths ...*unit.Length) error {
	if s.path == nil {
		return nil
	}
	var faults []error
	for _, d := range depths {
		at, err := s.path.At(*d)
		if err != nil {
			faults = append(faults, fmt.Errorf("survey %s: %w", s.file, err))
			continue
		}
		s.pairs = append(s.pairs, [2]unit.Length{*d, at.TVD})
		*d = at.TVD
	}
	if err := errors.Join(faults...); err != nil {
		return calculator.BadInput{Err: err}
	}
	return nil
}

// Tell puts the depths that were turned in front of the answer's tables.
func (s *Survey) Tell(a *calculator.Answer) {
	if len(s.pairs) == 0 {
		return
	}
	t := calculator.Table{Name: "Depths by the survey", Header: []string{"measured", "true vertical"}, For: []display.Purpose{display.Depth, display.Depth}}
	for _, p := range s.pairs {
		t.Rows = append(t.Rows, []any{p[0], p[1]})
	}
	a.Tables = append([]calculator.Table{t}, a.Tables...)
}
