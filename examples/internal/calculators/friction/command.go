// Package friction tells what a fluid loses in pipe or annulus, by its viscometer
// readings or by its constants.
package friction

import (
	"flag"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "friction",
	Question: "what pressure does a fluid lose in pipe or annulus, and when does it turn turbulent?",
	Setup:    setup,
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var s flow.Stream
	var length unit.Length
	dials, model := readings{}, flow.ModelPowerLaw
	flags.TextVar(&s.Conduit.Outer, "outer", 6.184*unit.Inch, "inside diameter of the pipe, casing or hole")
	flags.TextVar(&s.Conduit.Inner, "inner", 3.5*unit.Inch, "outside diameter of the pipe within; 0 in for a pipe alone")
	flags.TextVar(&s.Conduit.Roughness, "roughness", 0*unit.Millimetre, "roughness of the walls")
	flags.TextVar(&s.Density, "density", 9.2*unit.PoundPerGallon, "density of the fluid")
	flags.TextVar(&s.Rate, "rate", 3*unit.BarrelPerMinute, "rate")
	flags.TextVar(&length, "length", 9800*unit.Foot, "length")
	flags.TextVar(&dials, "readings", dials, "viscometer readings, SPEED=DIAL in rev/min and degrees; none takes the constants below")
	flags.TextVar(&model, "model", model, "law fitted to the readings: newtonian, bingham, power-law, herschel-bulkley")
	flags.TextVar(&s.Rheology.Yield, "yield-point", 0*unit.PoundForcePer100SquareFeet, "yield point, or yield stress, without readings")
	flags.TextVar(&s.Rheology.Consistency, "consistency", 0.001*unit.PascalSecondN, "consistency index, without readings")
	flags.Float64Var(&s.Rheology.Index, "index", 1, "flow index, without readings")
	return func() (calculator.Answer, error) { return answer(s, dials, model, length) }
}
