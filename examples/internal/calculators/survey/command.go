// Package survey tells where a well goes: depth, north, east and dogleg severity along
// the hole by minimum curvature.
package survey

import (
	"completion.example/examples/internal/wellpath"
	_ "embed"
	"flag"
	"fmt"
	"strings"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "survey",
	Question: "where does the well go, how deep is a measured depth, and which measured depths have a true vertical depth?",
	Setup:    setup,
	Picture:  true,
}

// schrock is the directional survey of a disposal well, as published by the
// Kansas Geological Survey (API 15-007-23748).
//
//go:embed schrock.csv
var schrock string

func example() (*hydrostatics.Path, error) {
	stations, err := hydrostatics.ReadSurvey(strings.NewReader(schrock))
	if err != nil {
		return nil, err
	}
	return hydrostatics.NewPath(stations)
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var md, tvd unit.Length
	var section unit.Angle
	well := wellpath.Flag(flags)
	flags.TextVar(&md, "measured-depth", 5580*unit.Foot, "measured depth whose position is asked")
	flags.TextVar(&tvd, "depth", 5000*unit.Foot, "true vertical depth whose measured depths are asked")
	flags.TextVar(&section, "section", 0*unit.Degree, "azimuth of the vertical section")
	return func() (calculator.Answer, error) {
		path, published := well.Path(), false
		if path == nil {
			var err error
			if path, err = example(); err != nil {
				return calculator.Answer{}, err
			}
			published = true
		}
		at, err := path.At(md)
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		a := answer(calculator.UnitsOf(flags), path, at, tvd, section)
		if published && md == 5580*unit.Foot {
			a.Published = &calculator.Published{Name: "TVD at 5580 ft", Printed: "5579.85 ft", Ours: fmt.Sprintf("%.2f ft", at.TVD.In(unit.Foot)),
				Source: "Kansas Geological Survey, well Schrock 3510 12-1SWD, LAS 2.0 directional survey"}
		}
		return a, nil
	}
}
