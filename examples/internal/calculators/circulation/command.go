// Package circulation tells pump pressure and equivalent circulating density while one
// fluid goes round, and surge and swab while the pipe moves.
package circulation

import (
	"completion.example/examples/internal/wellpath"
	"flag"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "circulation",
	Question: "what do pump and formation feel while a fluid goes round, and while pipe is run or pulled?",
	Setup:    setup,
	Picture:  true,
}

// input are the flags.
type input struct {
	units             *calculator.Units
	bore, pipe, hole  unit.Length
	length, tvd       unit.Length
	liquid            flow.PumpedFluid
	rate              unit.FlowRate
	back              unit.Pressure
	reverse, open     bool
	ports             flow.Orifices
	speed             unit.Velocity
	cling, peak       float64
	fracture, balance unit.Pressure
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{liquid: flow.PumpedFluid{Name: "fluid"}, ports: flow.Orifices{Discharge: flow.DischargeNozzle}}
	flags.TextVar(&in.bore, "id", 2.992*unit.Inch, "inside diameter of the pipe")
	flags.TextVar(&in.pipe, "od", 3.5*unit.Inch, "outside diameter of the pipe")
	flags.TextVar(&in.hole, "casing-id", 6.184*unit.Inch, "inside diameter of casing or hole")
	flags.TextVar(&in.length, "length", 9800*unit.Foot, "length of the pipe along the hole")
	flags.TextVar(&in.tvd, "depth", 9000*unit.Foot, "true vertical depth of its end; unused with -survey")
	flags.TextVar(&in.liquid.Density, "density", 9.2*unit.PoundPerGallon, "density of the fluid")
	flags.TextVar(&in.liquid.Rheology.Yield, "yield-point", 0*unit.PoundForcePer100SquareFeet, "its yield point, or yield stress")
	flags.TextVar(&in.liquid.Rheology.Consistency, "consistency", 0.0025*unit.PoundForceSecondNPer100SquareFeet, "its consistency index")
	flags.Float64Var(&in.liquid.Rheology.Index, "index", 1, "its flow index")
	flags.TextVar(&in.rate, "rate", 3*unit.BarrelPerMinute, "rate of circulation")
	flags.TextVar(&in.back, "back-pressure", 0*unit.PSI, "pressure held on the returns")
	flags.BoolVar(&in.reverse, "reverse", false, "pump down the annulus")
	flags.IntVar(&in.ports.Count, "ports", 0, "ports or nozzles at the end of the pipe; 0 is an open end")
	flags.TextVar(&in.ports.Diameter, "port-diameter", 0.5*unit.Inch, "their diameter")
	flags.TextVar(&in.speed, "speed", 90*unit.FootPerMinute, "mean speed of the pipe while a stand is run or pulled")
	flags.BoolVar(&in.open, "open", false, "the pipe fills through its open end while it moves")
	flags.Float64Var(&in.cling, "cling", 0, "share of the pipe's speed that the fluid is dragged along with; 0 works it out")
	flags.Float64Var(&in.peak, "peak", flow.PeakSpeed, "greatest over mean speed of the pipe")
	flags.TextVar(&in.fracture, "fracture-pressure", 0*unit.PSI, "fracture pressure at the end of the pipe, if it is to be watched")
	flags.TextVar(&in.balance, "formation", 0*unit.PSI, "formation pressure there, if it is to be watched")
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
