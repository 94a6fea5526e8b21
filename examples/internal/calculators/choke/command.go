// Package choke tells how far open a choke must be, what it passes, or what it costs.
package choke

import (
	"flag"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/production/choke"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "choke",
	Question: "how far open must a choke be, what does it pass, or what drop does it cost?",
	Setup:    setup,
}

// inputs are the flags. The defaults are example 1 of the standard: 680 and 220
// kPa absolute.
type inputs struct {
	units                *calculator.Units
	solve                string
	trim                 choke.Trim
	liquid               choke.UpstreamLiquid
	gas                  choke.UpstreamGas
	upstream, downstream unit.Pressure
	rate                 unit.FlowRate
	discharge, erosion   float64
	table                string
}

const source = "IEC 60534-2-1, example 1, read in the tests of a library"

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{}
	flags.StringVar(&in.solve, "solve", "coefficient", "what is wanted: coefficient, rate or drop")
	flags.TextVar(&in.rate, "rate", 4000*unit.BarrelPerDay, "rate at inlet conditions; unused for -solve rate")
	flags.TextVar(&in.trim.Coefficient, "coefficient", 12*unit.Cv, "flow coefficient, Cv, Kv or m2; unused for -solve coefficient")
	flags.TextVar(&in.upstream, "upstream", 3200*unit.PSI, "pressure upstream")
	flags.TextVar(&in.downstream, "downstream", 3100*unit.PSI, "pressure downstream; unused for -solve drop")
	flags.TextVar(&in.liquid.Density, "density", 6.8*unit.PoundPerGallon, "density at the inlet")
	calculator.AbsoluteVar(flags, &in.liquid.VapourPressure, "vapour", 0*unit.PSI, "vapour pressure at inlet temperature, absolute; 0 for a dead liquid")
	calculator.AbsoluteVar(flags, &in.liquid.CriticalPressure, "critical", 0*unit.PSI, "thermodynamic critical pressure, absolute")
	flags.TextVar(&in.liquid.Viscosity, "viscosity", unit.Viscosity(0), "viscosity; 0 takes the flow as turbulent")
	flags.Float64Var(&in.gas.HeatRatio, "heat-ratio", 0, "ratio of specific heats of a gas; 0 for a liquid")
	flags.Float64Var(&in.trim.Recovery, "fl", 0.9, "liquid pressure recovery factor FL")
	flags.Float64Var(&in.trim.GasRatio, "xt", 0.7, "pressure ratio xT at which gas becomes critical")
	flags.Float64Var(&in.trim.Style, "fd", 0.46, "valve style modifier Fd; only for viscous flow")
	flags.TextVar(&in.trim.Bore, "size", 3.5*unit.Inch, "nominal size of the choke")
	flags.TextVar(&in.trim.Upstream, "pipe", unit.Length(0), "inside diameter of the pipe upstream; 0 for that of the choke")
	flags.TextVar(&in.trim.Downstream, "pipe-after", unit.Length(0), "inside diameter of the pipe downstream; 0 for that of the choke")
	flags.Float64Var(&in.discharge, "discharge", choke.NozzleDischarge, "discharge coefficient, to turn the coefficient into an opening")
	flags.Float64Var(&in.erosion, "erosion", choke.ErosionContinuous, "constant of API RP 14E in field units")
	flags.StringVar(&in.table, "positions", "", "CSV `file` of choke positions (position,travel,coefficient), to name the least that passes the rate")
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if in.gas.HeatRatio != 0 {
			return in.ofGas()
		}
		return in.ofLiquid()
	}
}

// wrong is what -solve can't be.
func (in inputs) wrong(can string) error {
	return calculator.BadInput{Err: fmt.Errorf("-solve is %q; it must be one of: %s", in.solve, can)}
}
