// Package gaswell tells what a gas well gives through a choke, and what every size of choke
// makes of it.
package gaswell

import (
	"flag"

	"completion.example/examples/internal/wellpath"
	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "gaswell",
	Question: "what does a gas well give through its choke, and at which pressures?",
	Setup:    setup,
	Picture:  true,
}

// input is the flags. The well is invented.
type input struct {
	units            *calculator.Units
	zone             inflow.GasDeliverability
	gas              fluid.Gas
	id, roughness    unit.Length
	length, depth    unit.Length
	wellhead, bottom unit.Temperature
	bean             unit.Length
	discharge        float64
	heat             float64
	line             unit.Pressure
	standard         unit.Temperature
	erosion          float64
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	flags.TextVar(&in.zone.Reservoir, "formation", 4100*unit.PSI, "formation pressure")
	flags.TextVar(&in.zone.OpenFlow, "open-flow", 60000*unit.ThousandCubicFeetPerDay, "absolute open flow of the zone, at standard conditions")
	flags.Float64Var(&in.zone.Exponent, "exponent", 0.8, "exponent n of its back-pressure equation, 0.5 to 1")
	flags.Float64Var(&in.gas.Gravity, "gravity", 0.65, "gravity of the gas to air")
	flags.Float64Var(&in.gas.Nitrogen, "n2", 0, "mole fraction of nitrogen in natural gas")
	flags.Float64Var(&in.gas.CarbonDioxide, "co2", 0.02, "mole fraction of carbon dioxide in natural gas")
	flags.Float64Var(&in.gas.HydrogenSulphide, "h2s", 0, "mole fraction of hydrogen sulphide in natural gas")
	flags.TextVar(&in.id, "id", 3.958*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&in.roughness, "roughness", 0.0006*unit.Inch, "roughness of the walls")
	flags.TextVar(&in.length, "length", 9800*unit.Foot, "length of the tubing along the hole")
	flags.TextVar(&in.depth, "depth", 9200*unit.Foot, "true vertical depth of its end; unused with -survey")
	flags.TextVar(&in.wellhead, "surface-temperature", unit.Fahrenheit(130), "temperature at surface, flowing")
	flags.TextVar(&in.bottom, "bottom-temperature", unit.Fahrenheit(215), "temperature at the bottom of the well")
	flags.TextVar(&in.bean, "choke", 0.75*unit.Inch, "diameter of the choke's opening")
	flags.Float64Var(&in.discharge, "discharge", 0.85, "discharge coefficient of the opening")
	flags.Float64Var(&in.heat, "heat-ratio", 1.27, "ratio of specific heats of the gas at the wellhead")
	flags.TextVar(&in.line, "downstream", 1000*unit.PSI, "pressure downstream of the choke, in the flow line")
	flags.TextVar(&in.standard, "standard-temperature", unit.Fahrenheit(60), "temperature at which the rate is counted, at 101.325 kPa")
	flags.Float64Var(&in.erosion, "erosion", choke.ErosionContinuous, "constant of API RP 14E in field units")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if well.Path() != nil {
			in.depth = in.length
		}
		if err := well.Vertical(&in.depth); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
