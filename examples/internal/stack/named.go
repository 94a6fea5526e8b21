package stack

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// Names are the fluids that have a name of their own.
func Names() []string {
	return []string{"water", "seawater", "hot seawater", "nitrogen", "methane", "empty"}
}

// Usage says how a fluid is written.
func Usage() string {
	return "a constant density; " + strings.Join(Names(), ", ") + "; a brine by its density at 70 degF, such as CaCl2 11.3 lb/gal; natural gas by its gravity, such as gas 0.65"
}

// Named returns the fluid of a name, a brine, a natural gas, or a fluid of
// constant density.
func Named(name string) (hydrostatics.Fluid, error) {
	switch name {
	case "water":
		return fluid.Water{}, nil
	case "seawater":
		return fluid.Seawater{Salinity: fluid.StandardSalinity}, nil
	case "hot seawater":
		return hotSeawater()
	case "nitrogen":
		return fluid.Nitrogen{}, nil
	case "methane":
		return fluid.Methane{}, nil
	case "empty":
		return hydrostatics.Incompressible(0), nil
	}
	if kind, rest, found := strings.Cut(name, " "); found {
		if kind == "gas" {
			return naturalGas(strings.TrimSpace(rest))
		}
		var system fluid.System
		if system.UnmarshalText([]byte(kind)) == nil {
			var rho unit.Density
			if err := rho.UnmarshalText([]byte(rest)); err != nil {
				return nil, err
			}
			return fluid.KrookBoyce(system, rho)
		}
	}
	var rho unit.Density
	if err := rho.UnmarshalText([]byte(name)); err != nil {
		return nil, fmt.Errorf("fluid %q is not known; write %s", name, Usage())
	}
	return hydrostatics.Incompressible(rho), nil
}

func naturalGas(gravity string) (hydrostatics.Fluid, error) {
	v, err := strconv.ParseFloat(gravity, 64)
	if err != nil {
		return nil, fmt.Errorf("%q is no gas gravity; write one such as 0.65", gravity)
	}
	g := fluid.Gas{Gravity: v}
	_, err = g.PseudoCritical()
	return g, err
}

// hotSeawater is what fluid.Seawater advises above 40 °C.
func hotSeawater() (hydrostatics.Fluid, error) {
	sea, base := fluid.Seawater{Salinity: fluid.StandardSalinity}, unit.Fahrenheit(70)
	rho, err1 := sea.Density(0, base)
	c, err2 := sea.Compressibility(20*unit.Megapascal, unit.Celsius(40))
	s, err3 := fluid.SolutionOfDensity(fluid.SodiumChloride, rho, base)
	s.Compression = c
	return s, errors.Join(err1, err2, err3)
}
