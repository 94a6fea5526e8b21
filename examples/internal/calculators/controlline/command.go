// Package controlline tells what a control line stands and takes, how long a shift lasts,
// and what volumes tell a good shift from a leak.
package controlline

import (
	"completion.example/examples/internal/wellpath"
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/controlline"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "controlline",
	Question: "what does a control line stand and take up, and how is a shift told from a leak?",
	Setup:    setup,
}

type input struct {
	units   *calculator.Units
	line    controlline.Line
	shift   controlline.Shift
	around  controlline.Outside
	warming unit.TemperatureDifference
	metal   unit.Expansivity
	reading controlline.Reading
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	l, q, s := &in.line, &in.shift.Liquid, &in.shift
	flags.TextVar(&l.OD, "od", 0.25*unit.Inch, "outside diameter of the line")
	flags.TextVar(&l.Wall, "wall", 0.049*unit.Inch, "wall, nominal")
	flags.TextVar(&l.Length, "length", 10000*unit.Foot, "measured length from the panel")
	flags.TextVar(&l.TVD, "depth", 9800*unit.Foot, "true vertical depth of the device")
	flags.TextVar(&l.Yield, "yield", 30000*unit.PSI, "yield strength of the line")
	flags.TextVar(&l.Young, "young", 28e6*unit.PSI, "Young's modulus of the line")
	flags.Float64Var(&l.Poisson, "poisson", 0.3, "Poisson's ratio of the line")
	flags.Float64Var(&l.WallTolerance, "wall-tolerance", 0.1, "share by which the wall may be thinner")
	flags.TextVar(&q.Density, "density", 7.26*unit.PoundPerGallon, "density of the control fluid")
	flags.TextVar(&q.Viscosity, "viscosity", 10*unit.Centipoise, "viscosity of the control fluid at its temperature in the line")
	flags.TextVar(&q.Compressibility, "compressibility", 3.8e-6*unit.PerPSI, "compressibility of the control fluid")
	flags.TextVar(&q.Expansivity, "expansivity", 0.0004*unit.PerFahrenheit, "volume expansivity of the control fluid")
	flags.TextVar(&s.Pump, "panel", 3000*unit.PSI, "pressure held at the panel")
	flags.TextVar(&s.Move, "move", 500*unit.PSI, "differential at the device that keeps it moving")
	flags.TextVar(&s.Swept, "swept", 0.5*unit.Litre, "volume of the stroke on the feed side")
	flags.TextVar(&s.Displaced, "displaced", 0.5*unit.Litre, "volume of the stroke on the vent side")
	flags.TextVar(&in.around.Bottom, "outside-pressure", 4400*unit.PSI, "outside pressure, around the line at the device")
	flags.TextVar(&in.warming, "warming", 50*unit.FahrenheitDifference, "warming of a blocked line")
	flags.TextVar(&in.metal, "metal", 9e-6*unit.PerFahrenheit, "linear expansivity of the line")
	flags.TextVar(&in.reading.Pumped, "pumped", 0.93*unit.Litre, "volume pumped, as measured")
	flags.TextVar(&in.reading.Returned, "returned", 0.49*unit.Litre, "volume returned, as measured")
	flags.TextVar(&in.reading.Uncertainty, "volume-uncertainty", 0.04*unit.Litre, "uncertainty of each")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if err := well.Vertical(&in.line.TVD); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
