package validation

import (
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var fluidSolutionSuite = Suite{
	File: "fluid-solution.csv",
	Quantities: map[string]Evaluator{
		"density of a solution": func(in *published.Inputs) (any, error) {
			s, t := solution(in)
			return s.Density(0, t)
		},
		"specific gravity of a solution": func(in *published.Inputs) (any, error) {
			s, t := solution(in)
			rho, err := s.Density(0, t)
			if err != nil {
				return nil, err
			}
			s.Fraction = 0
			water, err := s.Density(0, t)
			return float64(rho / water), err
		},
	},
}

func solution(in *published.Inputs) (s fluid.Solution, t unit.Temperature) {
	in.Read("salt", &s.Salt)
	in.Read("w", &s.Fraction)
	in.Read("t", &t)
	return s, t
}

var fluidBrineSuite = Suite{
	File: "fluid-brine.csv",
	Quantities: map[string]Evaluator{
		"volume of the heavier fluid in a blend": func(in *published.Inputs) (any, error) {
			heavy, _, err := cutOf(in)
			return heavy, err
		},
		"volume of the lighter fluid in a blend": func(in *published.Inputs) (any, error) {
			_, light, err := cutOf(in)
			return light, err
		},
		"density of a blend":           blended,
		"volume added to weight up":    weightedUp,
		"starting volume to weight up": startingVolume,
		"correction per 100 degF": func(in *published.Inputs) (any, error) {
			b, err := tabled(in)
			return b.At70F * unit.Density(b.Expansion.In(unit.PerFahrenheit)*100), err
		},
		"correction per 1,000 psi": func(in *published.Inputs) (any, error) {
			b, err := tabled(in)
			return b.At70F * unit.Density(b.Compression.In(unit.PerPSI)*1000), err
		},
		"brine density": func(in *published.Inputs) (any, error) {
			var b fluid.Brine
			var t unit.Temperature
			in.Read("at70F", &b.At70F)
			in.Read("alpha", &b.Expansion)
			in.Read("t", &t)
			return b.Density(0, t)
		},
		"mean correction for temperature": func(in *published.Inputs) (any, error) {
			s, err := surfaceWeight(in)
			return s.Thermal, err
		},
		"mean correction for pressure": func(in *published.Inputs) (any, error) {
			s, err := surfaceWeight(in)
			return s.Squeeze, err
		},
		"weight to mix at surface": func(in *published.Inputs) (any, error) {
			s, err := surfaceWeight(in)
			return s.Weight, err
		},
		"formation water compressibility": func(in *published.Inputs) (any, error) {
			var c unit.Density
			in.Read("concentration", &c)
			p, t := absoluteState(in)
			return fluid.Osif(p, c, t)
		},
		"crystallisation temperature": func(in *published.Inputs) (any, error) {
			var salt fluid.Salt
			var w float64
			in.Read("salt", &salt)
			in.Read("w", &w)
			c, err := fluid.Crystallisation(salt, w, 0)
			return c.Temperature, err
		},
	},
}

// tabled reads a brine of one of the published tables.
func tabled(in *published.Inputs) (fluid.Brine, error) {
	var set string
	var system fluid.System
	var at70F unit.Density
	in.Read("set", &set)
	in.Read("system", &system)
	in.Read("at70F", &at70F)
	switch set {
	case "KrookBoyce":
		return fluid.KrookBoyce(system, at70F)
	case "Bridges":
		return fluid.Bridges(system, at70F)
	}
	return fluid.Brine{}, fmt.Errorf("no table of %q", set)
}

func surfaceWeight(in *published.Inputs) (fluid.SurfaceWeight, error) {
	var at70F unit.Density
	var w fluid.WellAverage
	in.Read("at70F", &at70F)
	in.Read("wanted", &w.Wanted)
	in.Read("surface", &w.Surface)
	in.Read("bottom", &w.Bottom)
	in.Read("pressure", &w.BottomPressure)
	b, err := fluid.Bridges(fluid.SystemNaCl, at70F)
	if err != nil {
		return fluid.SurfaceWeight{}, err
	}
	return b.SurfaceWeight(w)
}
