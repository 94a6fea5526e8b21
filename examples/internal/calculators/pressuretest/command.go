// Package pressuretest tells what a pressure test takes to pump, and reads its record.
package pressuretest

import (
	_ "embed"
	"flag"
	"strings"
	"time"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
)

//go:embed record.csv
var demo string

// Command is the calculator.
var Command = calculator.Command{
	Name:     "pressuretest",
	Question: "how much does a pressure test take to pump, and did it pass?",
	Setup:    setup,
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var part confined.Part
	var t confined.PressureTest
	var perDegree unit.Pressure
	file := flags.String("record", "", "CSV `file` with the columns time, pressure and, if there is one, temperature; none is an invented test")
	name := flags.String("criterion", "us-offshore-casing", "what is to be met: "+strings.Join(names(), ", "))
	flags.DurationVar(&t.Start, "start", 5*time.Minute, "start of the hold, on the record's clock")
	flags.TextVar(&t.Target, "target", 1500*unit.PSI, "least pressure at the start of the hold, and the pressure to pump up to")
	flags.TextVar(&t.Resolution, "resolution", 1*unit.PSI, "smallest change that the gauge shows")
	flags.TextVar(&perDegree, "per-degree", 0*unit.PSI, "rise of the closed system's pressure for one °F of warming")
	flags.TextVar(&part.Volume, "volume", 180*unit.Barrel, "volume under test")
	flags.TextVar(&part.Fluid, "compressibility", 3.58e-6*unit.PerPSI, "compressibility of what is in it, walls included")
	return func() (calculator.Answer, error) {
		var err error
		if t.Criterion, err = confined.Preset(*name); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		if t.Record, err = record(*file); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		t.PerDegree = float64(perDegree) / float64(unit.FahrenheitDifference)
		j, err := t.Judge()
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		system := confined.System{part}
		pump := system.VolumeFor(t.Target)
		a := calculator.Answer{
			Failed: j.Verdict != confined.Passed, Notes: append(j.Reasons, "Criterion: "+t.Criterion.Source+" ("+t.Criterion.Status+"). Check the rule that applies."),
			Steps: append(system.Steps(t.Target), j.Steps()...),
			Results: []calculator.Result{
				{Name: "volume to pump to the target", Value: working.In(pump, unit.Barrel, "bbl")},
				{Name: "verdict", Value: j.Verdict},
				{Name: "pressure at the start of the hold", Value: j.Start},
				{Name: "pressure at its end", Value: j.End},
				{Name: "fall", Value: j.Fall},
				{Name: "fall allowed", Value: j.Allowed},
				{Name: "rate of fall in an hour", Value: j.PerHour},
				{Name: "in the first half of the hold", Value: j.Early},
				{Name: "in the second half", Value: j.Late},
				{Name: "trend", Value: j.Trend},
				{Name: "leak, if it is one", Value: working.In(system.LeakRate(j.Late, time.Hour), unit.CubicCentimetrePerMinute, "cm3/min")},
			},
		}
		if perDegree != 0 {
			a.Results = append(a.Results, calculator.Result{Name: "fall explained by cooling", Value: j.Cooling})
		}
		if part.Volume == 180*unit.Barrel && t.Target == 1500*unit.PSI && part.Fluid == 3.58e-6*unit.PerPSI {
			a.Published = &calculator.Published{Name: "volume to pump", Printed: "0.97 bbl", Ours: working.In(pump, unit.Barrel, "bbl"),
				Source: "M. Turri, note on the compressibility of drilling fluids (2003)"}
		}
		return a, nil
	}
}
