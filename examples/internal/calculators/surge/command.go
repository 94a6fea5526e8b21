// Package surge tells how fast a completion may be run and pulled, so that the open
// formation neither breaks down nor comes in.
package surge

import (
	"flag"

	"completion.example/examples/internal/wellpath"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "surge",
	Question: "how fast may a completion be run and pulled past an open formation?",
	Setup:    setup,
	Picture:  true,
}

// input is the flags. The well is invented: a packer and its tail on tubing in
// perforated casing.
type input struct {
	units                         *calculator.Units
	survey                        *wellpath.Survey
	trip                          flow.Trip
	od, id, casing                unit.Length
	assembly, assemblyID          unit.Length
	assemblyLength, length, stand unit.Length
	depth                         unit.Length
	formation, margin             unit.Pressure
	fracture                      unit.Gradient
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{trip: flow.Trip{Liquid: flow.PumpedFluid{Name: "fluid"}}}
	t := &in.trip
	flags.TextVar(&in.od, "od", 3.5*unit.Inch, "outside diameter of the pipe")
	flags.TextVar(&in.id, "id", 2.992*unit.Inch, "inside diameter of the pipe")
	flags.TextVar(&in.casing, "casing-id", 6.184*unit.Inch, "inside diameter of the casing or hole")
	flags.TextVar(&in.assembly, "assembly-od", 5.85*unit.Inch, "outside diameter of the assembly at the lower end: packer, screens; 0 in for none")
	flags.TextVar(&in.assemblyID, "assembly-id", 2.992*unit.Inch, "inside diameter of it, for an open end")
	flags.TextVar(&in.assemblyLength, "assembly-length", 30*unit.Foot, "length of it")
	flags.TextVar(&in.length, "length", 9800*unit.Foot, "length along the hole to the lower end when it is landed")
	flags.BoolVar(&t.Open, "open", false, "the pipe fills through its open end while it moves; else a closed valve or plug is at its end")
	flags.TextVar(&in.depth, "depth", 9200*unit.Foot, "true vertical depth of the open formation; measured with -survey")
	flags.TextVar(&in.formation, "formation", 3900*unit.PSI, "formation pressure there")
	flags.TextVar(&in.fracture, "fracture-gradient", 0.60*unit.PSIPerFoot, "fracture gradient there")
	flags.TextVar(&in.margin, "margin", 50*unit.PSI, "margin kept to both")
	flags.TextVar(&t.Liquid.Density, "density", 9.2*unit.PoundPerGallon, "density of the fluid")
	flags.TextVar(&t.Liquid.Rheology.Yield, "yield-point", 2*unit.PoundForcePer100SquareFeet, "yield point of the fluid")
	flags.TextVar(&t.Liquid.Rheology.Consistency, "consistency", 0.01*unit.PoundForceSecondNPer100SquareFeet, "consistency index of the fluid, its plastic viscosity where -index is 1")
	flags.Float64Var(&t.Liquid.Rheology.Index, "index", 1, "flow index of the fluid")
	flags.TextVar(&t.Speed, "speed", 90*unit.FootPerMinute, "mean speed of the pipe over a stand that is planned")
	flags.TextVar(&in.stand, "stand", 93*unit.Foot, "length of a stand, for the time that it takes at least")
	flags.Float64Var(&t.Cling, "cling", 0, "share of the pipe's speed that the fluid is dragged along with; 0 works it out")
	flags.Float64Var(&t.Peak, "peak", flow.PeakSpeed, "greatest over mean speed of the pipe")
	in.survey = wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if err := in.survey.Vertical(&in.depth); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		in.survey.Tell(&a)
		return a, err
	}
}
