// Package balance tells over- or underbalance at a formation, the kill density, and how
// to leave a well underbalanced by a wanted pressure.
package balance

import (
	"completion.example/examples/internal/wellpath"
	"flag"

	"completion.example/examples/internal/stack"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "balance",
	Question: "is the well over- or underbalanced, what kills it, and what leaves it underbalanced as wanted?",
	Setup:    setup,
}

type input struct {
	units                         *calculator.Units
	formation                     hydrostatics.Formation
	margin, underbalance, surface unit.Pressure
	density                       unit.Density
	light                         string
	cushion, shoe                 unit.Length
	fracture                      unit.Gradient
	temperature                   unit.Temperature
	gradient                      unit.TemperatureGradient
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	flags.TextVar(&in.formation.Pressure, "formation", 4690*unit.PSI, "formation pressure")
	flags.TextVar(&in.formation.TVD, "depth", 10000*unit.Foot, "true vertical depth of the formation")
	flags.TextVar(&in.margin, "overbalance", 250*unit.PSI, "overbalance wanted of the kill fluid")
	flags.TextVar(&in.density, "density", 9.2*unit.PoundPerGallon, "density of the fluid in the well")
	flags.TextVar(&in.surface, "surface-pressure", 0*unit.PSI, "pressure at surface")
	flags.TextVar(&in.underbalance, "underbalance", 500*unit.PSI, "underbalance wanted before the well is opened")
	flags.StringVar(&in.light, "light", "empty", "what stands on the fluid: "+stack.Usage())
	flags.TextVar(&in.cushion, "cushion", 4000*unit.Foot, "true vertical depth down to which a cushion of it reaches, for its surface pressure")
	flags.TextVar(&in.fracture, "fracture-gradient", 0.8*unit.PSIPerFoot, "fracture gradient at the shoe")
	flags.TextVar(&in.shoe, "shoe", 9000*unit.Foot, "true vertical depth of the casing shoe")
	flags.TextVar(&in.temperature, "surface-temperature", unit.Fahrenheit(70), "temperature at surface")
	flags.TextVar(&in.gradient, "temperature-gradient", 1.5*unit.FahrenheitPer100Feet, "temperature gradient")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if err := well.Vertical(&in.formation.TVD, &in.shoe, &in.cushion); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
