// Survey tells where a well goes: depth, north, east and dogleg severity along
// the hole by minimum curvature.
package main

import (
	_ "embed"
	"flag"
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

var command = calculator.Command{
	Name:     "survey",
	Question: "where does the well go, how deep is a measured depth, and which measured depths have a true vertical depth?",
	Setup:    setup,
	Picture:  true,
}

func main() { calculator.Main(command) }

// schrock is the directional survey of a disposal well, as published by the
// Kansas Geological Survey (API 15-007-23748).
//
//go:embed schrock.csv
var schrock string

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var file string
	var md, tvd unit.Length
	var section unit.Angle
	flags.StringVar(&file, "survey", "", "CSV of stations: MD,inclination,azimuth with units, one header line; none for a published survey")
	flags.TextVar(&md, "measured-depth", 5580*unit.Foot, "measured depth whose position is asked")
	flags.TextVar(&tvd, "depth", 5000*unit.Foot, "true vertical depth whose measured depths are asked")
	flags.TextVar(&section, "section", 0*unit.Degree, "azimuth of the vertical section")
	return func() (calculator.Answer, error) {
		stations, err := load(file)
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		path, err := hydrostatics.NewPath(stations)
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		at, err := path.At(md)
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		a := answer(path, at, tvd, section)
		if file == "" && md == 5580*unit.Foot {
			a.Published = &calculator.Published{Name: "TVD at 5580 ft", Printed: "5579.85 ft", Ours: fmt.Sprintf("%.2f ft", at.TVD.In(unit.Foot)),
				Source: "Kansas Geological Survey, well Schrock 3510 12-1SWD, LAS 2.0 directional survey"}
		}
		return a, nil
	}
}
