// Package capacity tells what a pipe and the annulus around it hold.
package capacity

import (
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "capacity",
	Question: "what do a pipe and the annulus around it hold, and what does the pipe displace?",
	Setup:    setup,
}

// inputs are the flags.
type inputs struct{ od, id, hole, length unit.Length }

// published is the casing of the published case.
var published = inputs{od: 7 * unit.Inch, id: 5.920 * unit.Inch, hole: 8.5 * unit.Inch, length: 10685 * unit.Foot}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in inputs
	flags.TextVar(&in.od, "od", 3.5*unit.Inch, "outside diameter of the pipe")
	flags.TextVar(&in.id, "id", 2.992*unit.Inch, "inside diameter of the pipe")
	flags.TextVar(&in.hole, "casing-id", 6.184*unit.Inch, "inside diameter of the casing or hole around it")
	flags.TextVar(&in.length, "length", 9800*unit.Foot, "measured length")
	return func() (calculator.Answer, error) { return in.answer() }
}
