package fluid_test

import (
	"math"
	"testing"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Expansivity and compressibility are the derivatives of the density, which a
// five-point difference finds to nine digits: two ways to the same figures.
func TestDerivativesOfTheDensityToSevenDigits(t *testing.T) {
	type compressible interface {
		Density(unit.Pressure, unit.Temperature) (unit.Density, error)
		Expansivity(unit.Pressure, unit.Temperature) (unit.Expansivity, error)
		Compressibility(unit.Pressure, unit.Temperature) (unit.Compressibility, error)
	}
	for name, c := range map[string]struct {
		f compressible
		p []unit.Pressure
		t []float64 // °C
	}{
		"methane": {fluid.Methane{}, []unit.Pressure{2e6, 2e7, 8e7}, []float64{10, 60, 150}},
		// where the bells of the equations, around the critical point, say something
		"cold methane":  {fluid.Methane{}, []unit.Pressure{5e6, 6.5e6, 9e6}, []float64{-73, -70, -60}},
		"cold nitrogen": {fluid.Nitrogen{}, []unit.Pressure{4e6, 6e6, 9e6}, []float64{-123, -120, -110}},
		"nitrogen":      {fluid.Nitrogen{}, []unit.Pressure{2e6, 2e7, 8e7}, []float64{10, 60, 150}},
		"gas":           {fluid.Gas{Gravity: 0.68}, []unit.Pressure{2e6, 2e7, 6e7, 9e7}, []float64{10, 40, 90, 150}},
		"water":         {fluid.Water{}, []unit.Pressure{2e6, 2e7, 8e7}, []float64{20, 60, 150}},
		"crude":         {fluid.Oil{At60F: 850, Commodity: fluid.Crude}, []unit.Pressure{1e6, 8e6}, []float64{20, 60, 110}},
	} {
		for _, p := range c.p {
			for _, celsius := range c.t {
				at := func(p unit.Pressure, kelvin float64) float64 {
					rho, err := c.f.Density(p, unit.Kelvin(kelvin))
					require.NoError(t, err, name)
					return math.Log(float64(rho))
				}
				five := func(f func(h float64) float64, h float64) float64 {
					return (8*(f(h)-f(-h)) - (f(2*h) - f(-2*h))) / (12 * h)
				}
				k := celsius + 273.15
				alpha, err := c.f.Expansivity(p, unit.Kelvin(k))
				require.NoError(t, err, name)
				kappa, err := c.f.Compressibility(p, unit.Kelvin(k))
				require.NoError(t, err, name)
				require.InEpsilon(t, -five(func(h float64) float64 { return at(p, k+h) }, 0.05), float64(alpha), 1e-7, "%s at %v and %v °C", name, p, celsius)
				require.InEpsilon(t, five(func(h float64) float64 { return at(p+unit.Pressure(h), k) }, 1e-3*float64(p)), float64(kappa), 1e-7, "%s at %v and %v °C", name, p, celsius)
			}
		}
	}
}
