package validation

import (
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var fluidWaterSuite = Suite{
	File: "fluid-water.csv",
	Quantities: map[string]Evaluator{
		"specific volume in m3/kg": func(in *published.Inputs) (any, error) {
			rho, err := waterDensity(in)
			return 1 / float64(rho), err
		},
		"density": func(in *published.Inputs) (any, error) { return waterDensity(in) },
		"viscosity": func(in *published.Inputs) (any, error) {
			p, t := absoluteState(in)
			return fluid.Water{}.Viscosity(p, t)
		},
		"expansivity": func(in *published.Inputs) (any, error) {
			p, t := absoluteState(in)
			return fluid.Water{}.Expansivity(p, t)
		},
		"compressibility": func(in *published.Inputs) (any, error) {
			p, t := absoluteState(in)
			return fluid.Water{}.Compressibility(p, t)
		},
		"viscosity at density": func(in *published.Inputs) (any, error) {
			var rho unit.Density
			var t unit.Temperature
			in.Read("rho", &rho)
			in.Read("t", &t)
			return fluid.WaterViscosity(rho, t), nil
		},
	},
}

// absoluteState reads a state whose pressure the source gives absolute.
func absoluteState(in *published.Inputs) (unit.Pressure, unit.Temperature) {
	var p unit.Pressure
	var t unit.Temperature
	in.Read("absolute", &p)
	in.Read("t", &t)
	return p - unit.Atmosphere, t
}

func waterDensity(in *published.Inputs) (unit.Density, error) {
	p, t := absoluteState(in)
	return fluid.Water{}.Density(p, t)
}

var fluidSeawaterSuite = Suite{
	File: "fluid-seawater.csv",
	Quantities: map[string]Evaluator{
		"density of seawater": func(in *published.Inputs) (any, error) {
			var s fluid.Seawater
			var p unit.Pressure
			var t unit.Temperature
			in.Read("salinity", &s.Salinity)
			in.Read("p", &p)
			in.Read("t", &t)
			return s.Density(p, t)
		},
	},
}

var fluidGasSuite = Suite{
	File: "fluid-gas.csv",
	Quantities: map[string]Evaluator{
		"Z factor": func(in *published.Inputs) (any, error) {
			var ppr, tpr float64
			in.Read("ppr", &ppr)
			in.Read("tpr", &tpr)
			return fluid.ZFactor(ppr, tpr)
		},
		"pseudo-critical pressure": func(in *published.Inputs) (any, error) {
			pc, err := gravityGas(in).PseudoCritical()
			return pc.Pressure, err
		},
		"pseudo-critical temperature": func(in *published.Inputs) (any, error) {
			pc, err := gravityGas(in).PseudoCritical()
			return pc.Temperature, err
		},
		"Z factor of gas": func(in *published.Inputs) (any, error) {
			p, t := absoluteState(in)
			return gravityGas(in).ZFactor(p, t)
		},
		"gas density": func(in *published.Inputs) (any, error) {
			p, t := absoluteState(in)
			return gravityGas(in).Density(p, t)
		},
		"gas viscosity": func(in *published.Inputs) (any, error) {
			p, t := absoluteState(in)
			return gravityGas(in).Viscosity(p, t)
		},
		"pressure under a gas column, average Z and T": func(in *published.Inputs) (any, error) {
			var c fluid.AverageGasColumn
			var top unit.Pressure
			in.Read("gravity", &c.Gravity)
			in.Read("z", &c.Z)
			in.Read("t", &c.Temperature)
			in.Read("height", &c.Height)
			in.Read("top", &top)
			return top * unit.Pressure(c.Factor()), nil
		},
		"density by reference equation": func(in *published.Inputs) (any, error) {
			g, err := referenceGas(in)
			if err != nil {
				return nil, err
			}
			p, t := absoluteState(in)
			return g.Density(p, t)
		},
		"viscosity by reference equation": func(in *published.Inputs) (any, error) {
			g, err := referenceGas(in)
			if err != nil {
				return nil, err
			}
			p, t := absoluteState(in)
			return g.Viscosity(p, t)
		},
	},
}

func gravityGas(in *published.Inputs) (g fluid.Gas) {
	in.Read("gravity", &g.Gravity)
	return g
}

type gas interface {
	Density(unit.Pressure, unit.Temperature) (unit.Density, error)
	Viscosity(unit.Pressure, unit.Temperature) (unit.Viscosity, error)
}

func referenceGas(in *published.Inputs) (gas, error) {
	var name string
	in.Read("gas", &name)
	switch name {
	case "nitrogen":
		return fluid.Nitrogen{}, nil
	case "methane":
		return fluid.Methane{}, nil
	}
	return nil, fmt.Errorf("no reference equation of %q", name)
}

var fluidOilSuite = Suite{
	File: "fluid-oil.csv",
	Quantities: map[string]Evaluator{
		"CTPL": func(in *published.Inputs) (any, error) {
			o, p, t := oil(in)
			v, err := o.VolumeCorrection(p, t)
			return v.Total(), err
		},
		"oil density": func(in *published.Inputs) (any, error) {
			o, p, t := oil(in)
			return o.Density(p, t)
		},
		"density at 60 degF": func(in *published.Inputs) (any, error) {
			var api float64
			in.Read("api", &api)
			return hydrostatics.DensityOfAPIGravity(api), nil
		},
	},
}

func oil(in *published.Inputs) (o fluid.Oil, p unit.Pressure, t unit.Temperature) {
	var api float64
	in.Read("commodity", &o.Commodity)
	in.Read("api", &api)
	in.Read("p", &p)
	in.Read("t", &t)
	o.At60F = hydrostatics.DensityOfAPIGravity(api)
	return o, p, t
}
