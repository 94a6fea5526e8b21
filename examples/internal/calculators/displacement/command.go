// Package displacement tells pressures, volumes, strokes and times while a well is
// displaced from one fluid to another.
package displacement

import (
	"completion.example/examples/internal/wellpath"
	"flag"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "displacement",
	Question: "what do pump and bottom feel while a well is displaced to another fluid, and when is it done?",
	Setup:    setup,
	Picture:  true,
}

// inputs are the flags.
type inputs struct {
	units                   *calculator.Units
	d                       flow.Displacement
	tubingID, tubingOD      unit.Length
	casingID, length, tvd   unit.Length
	mud, spacer, new        unit.Density
	pv, spacerPV, newPV     unit.Viscosity
	yp, spacerYP            unit.Pressure
	spacerVolume, newVolume unit.Volume
	rate                    unit.FlowRate
	pump                    flow.Pump
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{pump: flow.Pump{Cylinders: 3, Stroke: 10 * unit.Inch}}
	flags.TextVar(&in.tubingID, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&in.tubingOD, "od", 3.5*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&in.casingID, "casing-id", 6.184*unit.Inch, "inside diameter of the casing")
	flags.TextVar(&in.length, "length", 9800*unit.Foot, "length of the tubing along the hole")
	flags.TextVar(&in.tvd, "depth", 9000*unit.Foot, "true vertical depth of its end; unused with -survey")
	flags.TextVar(&in.mud, "density", 11*unit.PoundPerGallon, "density of the fluid in the well")
	flags.TextVar(&in.pv, "plastic-viscosity", 15*unit.Centipoise, "its plastic viscosity")
	flags.TextVar(&in.yp, "yield-point", 8*unit.PoundForcePer100SquareFeet, "its yield point")
	flags.TextVar(&in.spacer, "spacer-density", 10.2*unit.PoundPerGallon, "density of the spacer")
	flags.TextVar(&in.spacerPV, "spacer-plastic-viscosity", 20*unit.Centipoise, "plastic viscosity of the spacer")
	flags.TextVar(&in.spacerYP, "spacer-yield-point", 12*unit.PoundForcePer100SquareFeet, "yield point of the spacer")
	flags.TextVar(&in.spacerVolume, "spacer-volume", 30*unit.Barrel, "volume of the spacer; 0 bbl pumps none")
	flags.TextVar(&in.new, "new-density", 9.5*unit.PoundPerGallon, "density of the new fluid")
	flags.TextVar(&in.newPV, "new-viscosity", 1.5*unit.Centipoise, "viscosity of the new fluid")
	flags.TextVar(&in.newVolume, "new-volume", 340*unit.Barrel, "volume of the new fluid")
	flags.TextVar(&in.rate, "rate", 3*unit.BarrelPerMinute, "rate of the pump")
	flags.TextVar(&in.d.BackPressure, "back-pressure", 0*unit.PSI, "pressure held on the returns")
	flags.BoolVar(&in.d.Reverse, "reverse", false, "pump down the annulus")
	flags.TextVar(&in.pump.Liner, "liner", 5*unit.Inch, "liner of the triplex pump, stroke 10 in")
	flags.Float64Var(&in.pump.Efficiency, "efficiency", 0.97, "volumetric efficiency of the pump")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if well.Path() != nil {
			in.tvd = in.length
		}
		if err := well.Vertical(&in.tvd); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
