package hydrostatics

import (
	"errors"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// idealGas has ρ = pM/(ZRT) at constant Z, p absolute.
type idealGas struct{ molar, z float64 }

func (g idealGas) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	const r = 8.31446261815324 // J/(mol·K), CODATA 2018
	absolute := float64(p + unit.Atmosphere)
	if absolute <= 0 {
		return 0, errors.New("no gas below vacuum")
	}
	return unit.Density(absolute * g.molar / (g.z * r * t.Kelvin())), nil
}

// hidden keeps a column from seeing that a fluid has a closed form.
type hidden struct{ f Fluid }

func (h hidden) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	return h.f.Density(p, t)
}

func straight(t testing.TB, surface, gradient float64) *TemperatureProfile {
	t.Helper()
	p, err := NewTemperatureProfile([]TemperaturePoint{
		{0, unit.Celsius(surface)}, {10000, unit.Celsius(surface + 10000*gradient)},
	})
	require.NoError(t, err)
	return p
}

func TestConstantDensityIsExact(t *testing.T) {
	mud := 10 * unit.PoundPerGallon
	c, err := NewColumn([]Layer{{Incompressible(mud), 0, 10000 * unit.Foot}}, nil, Reference{Pressure: 500 * unit.PSI})
	require.NoError(t, err)
	p, err := c.At(8000 * unit.Foot)
	require.NoError(t, err)
	require.Equal(t, 500*unit.PSI+Pressure(mud, 8000*unit.Foot), p)
}

// A gas at constant Z and temperature has p = p0·exp(M·g·z/(Z·R·T)); with a
// temperature straight in depth, (T/T0)^(M·g/(Z·R·G)).
func TestGasColumnClosedForm(t *testing.T) {
	const r = 8.31446261815324
	for _, gradient := range []float64{0, 0.03, -0.02} {
		for _, molar := range []float64{0.016, 0.028, 0.044} {
			for _, depth := range []float64{10, 1000, 4000, 6000} {
				g := idealGas{molar, 0.9}
				profile := straight(t, 20, gradient)
				c, err := NewColumn([]Layer{{g, 0, unit.Length(depth)}}, profile, Reference{Pressure: 20 * unit.Megapascal})
				require.NoError(t, err)
				p, err := c.At(unit.Length(depth))
				require.NoError(t, err)
				absolute := float64(20*unit.Megapascal + unit.Atmosphere)
				want := absolute * math.Exp(molar*gravity*depth/(0.9*r*293.15))
				if gradient != 0 {
					want = absolute * math.Pow(1+gradient*depth/293.15, molar*gravity/(0.9*r*gradient))
				}
				require.InEpsilon(t, want-absolute, float64(p)-float64(20*unit.Megapascal), 1e-9, "G %g M %g z %g", gradient, molar, depth)
			}
		}
	}
}
