// Package gascolumn tells the pressure under a column of natural gas, nitrogen or methane:
// a shut-in well, a gas cap, a nitrogen cushion.
package gascolumn

import (
	"completion.example/examples/internal/wellpath"
	"flag"
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "gascolumn",
	Question: "what is the pressure under a column of gas, and how dense is the gas on the way down?",
	Setup:    setup,
	Picture:  true,
}

// input is a shut-in well, an invented one by default.
type input struct {
	units        *calculator.Units
	kind         string
	natural      fluid.Gas
	top          unit.Pressure
	depth        unit.Length
	surface, end unit.Temperature
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{}
	flags.StringVar(&in.kind, "gas", "natural", "natural (by -gravity), nitrogen or methane")
	flags.Float64Var(&in.natural.Gravity, "gravity", 0.65, "gravity of natural gas to air")
	flags.Float64Var(&in.natural.Nitrogen, "n2", 0, "mole fraction of nitrogen in natural gas")
	flags.Float64Var(&in.natural.CarbonDioxide, "co2", 0, "mole fraction of carbon dioxide in natural gas")
	flags.Float64Var(&in.natural.HydrogenSulphide, "h2s", 0, "mole fraction of hydrogen sulphide in natural gas")
	flags.TextVar(&in.top, "surface-pressure", 2500*unit.PSI, "pressure at surface, on top of the column")
	flags.TextVar(&in.depth, "depth", 9000*unit.Foot, "true vertical depth of the bottom of the column")
	flags.TextVar(&in.surface, "surface-temperature", unit.Fahrenheit(80), "temperature at surface")
	flags.TextVar(&in.end, "bottom-temperature", unit.Fahrenheit(210), "temperature at the bottom, straight in between")
	well := wellpath.Flag(flags)
	return func() (calculator.Answer, error) {
		if err := well.Vertical(&in.depth); err != nil {
			return calculator.Answer{}, err
		}
		in.units = calculator.UnitsOf(flags)
		a, err := answer(in)
		well.Tell(&a)
		return a, err
	}
}

func (in input) gas() (hydrostatics.Fluid, error) {
	switch in.kind {
	case "natural":
		_, err := in.natural.PseudoCritical()
		return in.natural, err
	case "nitrogen":
		return fluid.Nitrogen{}, nil
	case "methane":
		return fluid.Methane{}, nil
	}
	return nil, fmt.Errorf("gas is %q; there are natural, nitrogen and methane", in.kind)
}

func (in input) column() (*hydrostatics.Column, *hydrostatics.TemperatureProfile, error) {
	gas, err := in.gas()
	if err != nil {
		return nil, nil, err
	}
	if !(in.depth > 0) {
		return nil, nil, fmt.Errorf("depth is %v; it must be more than 0 ft", in.depth)
	}
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: in.surface}, {TVD: in.depth, Temperature: in.end}})
	if err != nil {
		return nil, nil, err
	}
	c, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: gas, BottomTVD: in.depth}}, profile, hydrostatics.Reference{Pressure: in.top})
	return c, profile, err
}
