// Package kill is the pressure schedule of circulating a shut-in well dead, held against
// the fracture of its weakest point.
package kill

import (
	"flag"

	"completion.example/examples/internal/stack"
	"completion.example/examples/internal/wellpath"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "kill",
	Question: "what do pump and choke show while a well is circulated dead, and does its weakest point stand it?",
	Setup:    setup,
	Picture:  true,
}

// input is the flags. The well is an invented one, with its packer not set yet.
type input struct {
	units               *calculator.Units
	k                   flow.Kill
	id, od, casing      unit.Length
	length, depth, shoe unit.Length
	fracture            unit.Gradient
	influx              string
	limit               unit.Pressure
	pump                flow.Pump
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{pump: flow.Pump{Cylinders: 3, Stroke: 10 * unit.Inch}}
	k := &in.k
	flags.TextVar(&k.Formation, "formation", 4300*unit.PSI, "formation pressure at the end of the tubing")
	flags.TextVar(&k.Margin, "margin", 150*unit.PSI, "margin over the formation pressure, held while circulating")
	flags.TextVar(&in.length, "length", 9800*unit.Foot, "length of the tubing along the hole, down to where the fluid goes round")
	flags.TextVar(&in.depth, "depth", 9000*unit.Foot, "true vertical depth of its end; unused with -survey")
	flags.TextVar(&in.id, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&in.od, "od", 3.5*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&in.casing, "casing-id", 6.184*unit.Inch, "inside diameter of the casing")
	flags.TextVar(&k.InWell.Density, "density", 8.6*unit.PoundPerGallon, "density of the fluid in the well")
	flags.TextVar(&k.Liquid.Density, "kill-density", 9.6*unit.PoundPerGallon, "density of the kill fluid")
	flags.TextVar(&k.InWell.Rheology.Consistency, "consistency", 0.0025*unit.PoundForceSecondNPer100SquareFeet, "consistency index of both fluids, a viscosity where -index is 1")
	flags.Float64Var(&k.InWell.Rheology.Index, "index", 1, "flow index of both fluids")
	flags.TextVar(&k.InWell.Rheology.Yield, "yield-point", 0*unit.PoundForcePer100SquareFeet, "yield point of both fluids")
	flags.TextVar(&k.Rate, "rate", 2*unit.BarrelPerMinute, "rate of the pump")
	flags.BoolVar(&k.Reverse, "reverse", false, "pump down the annulus; what has come in is then in the tubing")
	flags.TextVar(&k.Influx.Volume, "gain", 15*unit.Barrel, "volume that has come in: the gain in the pits; 0 bbl for none")
	flags.StringVar(&in.influx, "influx", "gas 0.65", "what has come in: "+stack.Usage())
	flags.TextVar(&k.Influx.Surface, "surface-temperature", unit.Fahrenheit(80), "temperature at surface")
	flags.TextVar(&k.Influx.Bottom, "bottom-temperature", unit.Fahrenheit(210), "temperature at the bottom of the well")
	flags.TextVar(&in.shoe, "shoe", 6000*unit.Foot, "true vertical depth of the weakest point around the annulus, such as a shoe or open perforations")
	flags.TextVar(&in.fracture, "fracture-gradient", 0.75*unit.PSIPerFoot, "fracture gradient there")
	flags.TextVar(&in.limit, "limit", 5000*unit.PSI, "greatest pressure of pump, lines, choke and wellhead")
	flags.TextVar(&in.pump.Liner, "liner", 5*unit.Inch, "liner of the triplex pump, stroke 10 in")
	flags.Float64Var(&in.pump.Efficiency, "efficiency", 0.97, "volumetric efficiency of the pump")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if well.Path() != nil {
			in.depth = in.length
		}
		if err := well.Vertical(&in.depth, &in.shoe); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
