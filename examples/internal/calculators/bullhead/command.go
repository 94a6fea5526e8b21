// Package bullhead tells what pressures a well shows while kill fluid is pumped into it
// behind what has come in, and between which limits they must stay.
package bullhead

import (
	"flag"

	"completion.example/examples/internal/stack"
	"completion.example/examples/internal/wellpath"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "bullhead",
	Question: "what is pumped at which surface pressure to push a well's fluid back into the formation, and what must not be passed?",
	Setup:    setup,
	Picture:  true,
}

// input is the flags. The well is that of a published example, with a gas of its own.
type input struct {
	units                             *calculator.Units
	path                              *hydrostatics.Path
	formation, injection              unit.Pressure
	depth, packer                     unit.Length
	fracture                          unit.Gradient
	influx                            string
	kill                              flow.PumpedFluid
	rate                              unit.FlowRate
	id, casing, roughness             unit.Length
	rating, limit, annulus            unit.Pressure
	outside                           unit.Density
	share                             float64
	surface, bottom                   unit.Temperature
	measuredFormation, measuredPacker unit.Length
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	flags.TextVar(&in.formation, "formation", 4895*unit.PSI, "formation pressure")
	flags.TextVar(&in.depth, "depth", 11000*unit.Foot, "true vertical depth of the topmost perforation; measured with -survey")
	flags.TextVar(&in.injection, "injection", 200*unit.PSI, "pressure above the formation's at which it accepts the rate")
	flags.TextVar(&in.fracture, "fracture-gradient", 0.645*unit.PSIPerFoot, "fracture gradient at the perforations")
	flags.StringVar(&in.influx, "influx", "gas 0.65", "what has come in and stands in the well: "+stack.Usage())
	flags.TextVar(&in.kill.Density, "density", 8.8*unit.PoundPerGallon, "density of the kill fluid")
	flags.TextVar(&in.kill.Rheology.Consistency, "consistency", 0.0025*unit.PoundForceSecondNPer100SquareFeet, "consistency index of the kill fluid, a viscosity where -index is 1")
	flags.Float64Var(&in.kill.Rheology.Index, "index", 1, "flow index of the kill fluid")
	flags.TextVar(&in.kill.Rheology.Yield, "yield-point", 0*unit.PoundForcePer100SquareFeet, "yield point of the kill fluid")
	flags.TextVar(&in.rate, "rate", 3*unit.BarrelPerMinute, "rate of the pump")
	flags.TextVar(&in.id, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&in.casing, "casing-id", 6.184*unit.Inch, "inside diameter of the casing below the packer")
	flags.TextVar(&in.packer, "packer", 10300*unit.Foot, "depth of packer and end of the tubing, true vertical")
	flags.TextVar(&in.roughness, "roughness", 0.0006*unit.Inch, "roughness of the walls")
	flags.TextVar(&in.rating, "rating", 7500*unit.PSI, "internal yield pressure of the tubing, or the least of what is in it")
	flags.Float64Var(&in.share, "share", 0.8, "share of that rating that may be used; 0.8 is common practice (Crumpton 2018, p. 280)")
	flags.TextVar(&in.limit, "limit", 5000*unit.PSI, "greatest pressure of pump, lines and wellhead")
	flags.TextVar(&in.outside, "annulus-fluid", 8.6*unit.PoundPerGallon, "density of the fluid in the annulus")
	flags.TextVar(&in.annulus, "annulus-pressure", 0*unit.PSI, "pressure held on the annulus at surface")
	flags.TextVar(&in.surface, "surface-temperature", unit.Fahrenheit(80), "temperature at surface")
	flags.TextVar(&in.bottom, "bottom-temperature", unit.Fahrenheit(220), "temperature at the bottom of the well")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		in.path, in.measuredFormation, in.measuredPacker = well.Path(), in.depth, in.packer
		if err := well.Vertical(&in.depth, &in.packer); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
