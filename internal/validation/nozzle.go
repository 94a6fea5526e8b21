package validation

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/valve/production/choke"
)

var nozzleSuite = Suite{
	File: "choke-nozzle.csv",
	Quantities: map[string]Evaluator{
		"mass flux of a nozzle": func(in *published.Inputs) (any, error) {
			f, err := nozzle(in)
			return float64(f.Mass), err
		},
		"area of a nozzle": func(in *published.Inputs) (any, error) {
			var rate unit.MassRate
			in.Read("rate", &rate)
			f, err := nozzle(in)
			return unit.Area(rate / f.Mass), err
		},
		// What of the incompressible flow at the same drop is left.
		"coefficient of subcritical flow": func(in *published.Inputs) (any, error) {
			flux, p1, p2, err := fluxOfUnitDensity(in)
			return flux / math.Sqrt(2*float64(p1-p2)), err
		},
		"whether a nozzle is critical, 1 or 0": func(in *published.Inputs) (any, error) {
			f, err := nozzle(in)
			if f.Critical {
				return 1.0, err
			}
			return 0.0, err
		},
		// Mass flux over sqrt(p1·ρ1), by the constant of the standard's units.
		"coefficient C of critical flow, API Std 520 in SI": func(in *published.Inputs) (any, error) {
			flux, p1, _, err := fluxOfUnitDensity(in)
			return 0.03948 * flux / math.Sqrt(float64(p1)), err
		},
		"critical pressure of a nozzle": func(in *published.Inputs) (any, error) {
			var p1 unit.Pressure
			var γ float64
			in.Read("gamma", &γ)
			in.Read("p1", &p1)
			return p1 * unit.Pressure(choke.CriticalRatio(γ)), nil
		},
	},
}

// fluxOfUnitDensity is the mass flux of a nozzle before which a gas of 1 kg/m³ stands, and the
// pressures before and behind it, absolute.
func fluxOfUnitDensity(in *published.Inputs) (flux float64, p1, p2 unit.Pressure, err error) {
	g := choke.UpstreamGas{Density: 1}
	in.Read("gamma", &g.HeatRatio)
	in.Read("p1", &p1)
	in.Read("p2", &p2)
	f, err := choke.Nozzle(g, 1, 1, p1-unit.Atmosphere, p2-unit.Atmosphere)
	return float64(f.Mass), p1, p2, err
}

// nozzle is one of 1 m² with pressures absolute.
func nozzle(in *published.Inputs) (choke.NozzleFlow, error) {
	var M, Z, cd float64
	var t unit.Temperature
	var p1, p2 unit.Pressure
	g := choke.UpstreamGas{}
	in.Read("M", &M)
	in.Read("T", &t)
	in.Read("Z", &Z)
	in.Read("gamma", &g.HeatRatio)
	in.Read("Cd", &cd)
	in.Read("p1", &p1)
	in.Read("p2", &p2)
	const R = 8314.46261815324 // J/(kmol·K)
	g.Density = unit.Density(float64(p1) * M / (Z * R * t.Kelvin()))
	return choke.Nozzle(g, cd, 1, p1-unit.Atmosphere, p2-unit.Atmosphere)
}
