// Package safetyvalve tells how deep a surface-controlled safety valve may be set, what
// opens and keeps it open, and whether its leak is within the limit.
package safetyvalve

import (
	"completion.example/examples/internal/wellpath"
	"flag"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "safetyvalve",
	Question: "how deep may a safety valve be set, what opens and closes it, and does it leak too much?",
	Setup:    setup,
}

type input struct {
	units         *calculator.Units
	valve         valve.SafetyValve
	columns       valve.FailSafeColumns
	depth         unit.Length
	margin, panel unit.Pressure
	tubing        unit.Band[unit.Pressure]
	leak          valve.GasLeak
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{leak: valve.GasLeak{Standard: valve.StandardUS()}}
	flags.TextVar(&in.valve.Backing, "backing", valve.TubingBacked, "what backs the piston: tubing, second line, annulus or none")
	flags.TextVar(&in.valve.Opens, "opens", unit.Band[unit.Pressure]{Least: 1710 * unit.PSI, Nominal: 1800 * unit.PSI, Greatest: 1890 * unit.PSI}, "differential, control minus backing, at which it is fully open")
	flags.TextVar(&in.valve.Closes, "closes", unit.Band[unit.Pressure]{Least: 950 * unit.PSI, Nominal: 1000 * unit.PSI, Greatest: 1050 * unit.PSI}, "differential at which it is fully closed")
	flags.TextVar(&in.columns.Control, "control-fluid", 7.26*unit.PoundPerGallon, "control fluid")
	flags.TextVar(&in.columns.Annulus, "annulus-fluid", 9.5*unit.PoundPerGallon, "density of the heaviest fluid in the annulus, that a leak can put into the line")
	flags.TextVar(&in.columns.Second, "second-fluid", 7.26*unit.PoundPerGallon, "fluid in the second line, if there is one")
	flags.TextVar(&in.columns.Backing, "lightest", 8.4*unit.PoundPerGallon, "lightest annulus, if it backs the piston")
	flags.TextVar(&in.depth, "depth", 1500*unit.Foot, "true vertical depth of the valve under the panel")
	flags.TextVar(&in.margin, "margin", 100*unit.PSI, "margin on closing")
	flags.TextVar(&in.panel, "panel", 5000*unit.PSI, "control pressure held at the panel")
	flags.TextVar(&in.tubing, "backing-pressure", unit.Band[unit.Pressure]{Least: 500 * unit.PSI, Nominal: 1500 * unit.PSI, Greatest: 3000 * unit.PSI}, "what backs the piston, at the valve: least, usual and greatest")
	flags.TextVar(&in.leak.Start, "leak-start", 85*unit.PSI, "build-up test: pressure at its start")
	flags.TextVar(&in.leak.End, "leak-end", 107*unit.PSI, "pressure at its end")
	flags.Float64Var(&in.leak.StartFactor, "z-start", 0.985, "gas deviation factor at the start")
	flags.Float64Var(&in.leak.EndFactor, "z-end", 0.982, "gas deviation factor at the end")
	flags.DurationVar(&in.leak.Duration, "leak-time", 30*time.Minute, "duration of the test")
	flags.TextVar(&in.leak.Volume, "leak-volume", 50*unit.Barrel, "gas space above the valve")
	flags.TextVar(&in.leak.Temperature, "leak-temperature", unit.Fahrenheit(100), "of that space")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if err := well.Vertical(&in.depth); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
