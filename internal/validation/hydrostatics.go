package validation

import (
	"fmt"
	"strings"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var hydrostaticsSuite = Suite{
	File: "hydrostatics.csv",
	Quantities: map[string]Evaluator{
		"hydrostatic pressure":                      hydrostaticPressure,
		"pressure of a gradient":                    pressureOfGradient,
		"gradient":                                  gradientOfDensity,
		"density of a gradient":                     densityOfGradient,
		"equivalent mud weight":                     equivalentMudWeight,
		"difference of gradients":                   gradientDifference,
		"mud weight after a loss of pressure":       reducedMudWeight,
		"density of API gravity":                    densityOfAPI,
		"API gravity":                               apiOfDensity,
		"column pressure":                           layeredPressure,
		"pressure above a contact":                  aboveContact,
		"column, absolute pressure":                 compressibleColumn,
		"gas column at constant Z":                  constantZ,
		"hydrostatic of the dry pipe":               dryPipe,
		"slug volume":                               slugVolume,
		"slug gain":                                 slugGain,
		"volume moved by a slug, U-tube":            slugUTube,
		"slug density":                              slugDensity,
		"slug density by volume":                    slugDensityByVolume,
		"surface pressure that holds a U-tube":      holdingPressure,
		"formation pressure":                        shutInFormation,
		"kill density from shut-in":                 shutInKill,
		"kill density":                              formationKill,
		"light-fluid length for a loss of pressure": lightLength,
		"allowable surface pressure by mud weight":  allowableByMudWeight,
		"allowable mud weight":                      allowableMudWeight,
		"mud weight that a formation bears":         borneMudWeight,
		"thermal time function":                     thermalTime,
		"loss of pressure by a gain":                lossByGain,
		"allowable surface pressure over a column":  allowableOverColumn,
		"pressure that a longer light column costs": costOfLight,
		"allowable surface pressure after a leak-off test": func(in *published.Inputs) (any, error) {
			var s hydrostatics.ShutIn
			var rho unit.Density
			in.Read("leakoff", &s.Pressure)
			in.Read("test", &s.Density)
			in.Read("depth", &s.TVD)
			in.Read("rho", &rho)
			return allowableUnder(hydrostatics.Gradient(s.KillDensity(0)), rho, s.TVD)
		},
	},
}

func hydrostaticPressure(in *published.Inputs) (any, error) {
	var rho unit.Density
	var depth unit.Length
	in.Read("rho", &rho)
	in.Read("depth", &depth)
	return hydrostatics.Pressure(rho, depth), nil
}

func pressureOfGradient(in *published.Inputs) (any, error) {
	var gradient unit.Gradient
	var depth unit.Length
	in.Read("gradient", &gradient)
	in.Read("depth", &depth)
	return hydrostatics.PressureOf(gradient, depth), nil
}

func gradientOfDensity(in *published.Inputs) (any, error) {
	var rho unit.Density
	in.Read("rho", &rho)
	return hydrostatics.Gradient(rho), nil
}

func densityOfGradient(in *published.Inputs) (any, error) {
	var gradient unit.Gradient
	in.Read("gradient", &gradient)
	return hydrostatics.Density(gradient), nil
}

func equivalentMudWeight(in *published.Inputs) (any, error) {
	var p unit.Pressure
	var depth unit.Length
	in.Read("pressure", &p)
	in.Read("depth", &depth)
	return hydrostatics.EquivalentDensity(p, depth), nil
}

func gradientDifference(in *published.Inputs) (any, error) {
	var a, b unit.Density
	in.Read("rho1", &a)
	in.Read("rho2", &b)
	return hydrostatics.Gradient(a) - hydrostatics.Gradient(b), nil
}

func reducedMudWeight(in *published.Inputs) (any, error) {
	var p unit.Pressure
	var depth unit.Length
	var rho unit.Density
	in.Read("pressure", &p)
	in.Read("depth", &depth)
	in.Read("rho", &rho)
	return rho - hydrostatics.EquivalentDensity(p, depth), nil
}

func densityOfAPI(in *published.Inputs) (any, error) {
	var api float64
	in.Read("api", &api)
	return hydrostatics.DensityOfAPIGravity(api), nil
}

func apiOfDensity(in *published.Inputs) (any, error) {
	var rho unit.Density
	in.Read("rho", &rho)
	return hydrostatics.APIGravity(rho), nil
}

// stretches reads "7000 ft:10 lb/gal, 7500 ft:8 lb/gal": bottoms and densities
// from the top down.
type stretches []hydrostatics.Stretch

func (s *stretches) UnmarshalText(text []byte) error {
	*s = nil
	for part := range strings.SplitSeq(string(text), ",") {
		bottom, density, found := strings.Cut(part, ":")
		if !found {
			return fmt.Errorf("stretch %q is not bottom:density", part)
		}
		var one hydrostatics.Stretch
		if err := one.BottomMD.UnmarshalText([]byte(bottom)); err != nil {
			return err
		}
		if err := one.Density.UnmarshalText([]byte(density)); err != nil {
			return err
		}
		*s = append(*s, one)
	}
	return nil
}

func (s stretches) bottom() unit.Length {
	if len(s) == 0 {
		return 0
	}
	return s[len(s)-1].BottomMD
}

func layeredPressure(in *published.Inputs) (any, error) {
	var s stretches
	var depth unit.Length
	in.Read("layers", &s)
	in.Read("depth", &depth)
	var layers []hydrostatics.Layer
	top := unit.Length(0)
	for _, x := range s {
		layers = append(layers, hydrostatics.Layer{Fluid: hydrostatics.Incompressible(x.Density), TopTVD: top, BottomTVD: x.BottomMD})
		top = x.BottomMD
	}
	c, err := hydrostatics.NewColumn(layers, nil, hydrostatics.Reference{})
	if err != nil {
		return nil, err
	}
	return c.At(depth)
}

// aboveContact hangs a gas column from the water's pressure at the contact.
func aboveContact(in *published.Inputs) (any, error) {
	var water, gas unit.Gradient
	var contact, depth unit.Length
	in.Read("water", &water)
	in.Read("gas", &gas)
	in.Read("contact", &contact)
	in.Read("depth", &depth)
	c, err := hydrostatics.NewColumn([]hydrostatics.Layer{
		{Fluid: hydrostatics.Incompressible(hydrostatics.Density(gas)), TopTVD: depth, BottomTVD: contact},
	}, nil, hydrostatics.Reference{Pressure: hydrostatics.PressureOf(water, contact), TVD: contact})
	if err != nil {
		return nil, err
	}
	return c.At(depth)
}

func compressibleColumn(in *published.Inputs) (any, error) {
	var name string
	var p unit.Pressure
	var top unit.Temperature
	var gradient unit.TemperatureGradient
	var depth unit.Length
	in.Read("fluid", &name)
	in.Read("absolute", &p)
	in.Read("top", &top)
	in.Read("gradient", &gradient)
	in.Read("depth", &depth)
	f, ok := map[string]hydrostatics.Fluid{"water": fluid.Water{}, "nitrogen": fluid.Nitrogen{}, "methane": fluid.Methane{}}[name]
	if !ok {
		return nil, fmt.Errorf("fluid %q", name)
	}
	profile, err := hydrostatics.Geothermal{Ground: top, Gradient: gradient}.Profile(depth)
	if err != nil {
		return nil, err
	}
	c, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, BottomTVD: depth}}, profile, hydrostatics.Reference{Pressure: p - unit.Atmosphere})
	if err != nil {
		return nil, err
	}
	q, err := c.At(depth)
	return q + unit.Atmosphere, err
}

// perfect is a gas of constant Z as the worked example has it, with the gas
// constant of air in ft·lbf/(lb·°R).
type perfect struct{ gravity, z float64 }

func (g perfect) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	const air = 53.36 * unit.FootPoundForce / unit.Torque(unit.Pound) // J/(kg·°R)
	return unit.Density(float64(p+unit.Atmosphere) * g.gravity / (g.z * float64(air) * t.Rankine())), nil
}

func constantZ(in *published.Inputs) (any, error) {
	var g perfect
	var p unit.Pressure
	var t unit.Temperature
	var depth unit.Length
	in.Read("gas", &g.gravity)
	in.Read("z", &g.z)
	in.Read("absolute", &p)
	in.Read("temperature", &t)
	in.Read("depth", &depth)
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: t}})
	if err != nil {
		return nil, err
	}
	c, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: g, BottomTVD: depth}}, profile, hydrostatics.Reference{Pressure: p - unit.Atmosphere})
	if err != nil {
		return nil, err
	}
	q, err := c.At(depth)
	return q + unit.Atmosphere, err
}
