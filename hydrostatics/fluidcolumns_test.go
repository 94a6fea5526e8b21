package hydrostatics_test

import (
	"testing"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Real fluids in a deviated well: the column against a Runge–Kutta integration
// of dp/dz = ρ·g in steps of a metre, and its inverses.
func TestColumnsOfRealFluidsInADeviatedWell(t *testing.T) {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{
		{}, {MD: 900}, {MD: 1700, Inclination: 55 * unit.Degree, Azimuth: 40 * unit.Degree},
		{MD: 5200, Inclination: 62 * unit.Degree, Azimuth: 65 * unit.Degree},
	})
	require.NoError(t, err)
	ground, err := hydrostatics.Geothermal{Ground: unit.Celsius(12), Gradient: 0.032}.Profile(4000)
	require.NoError(t, err)
	brine, err := fluid.KrookBoyce(fluid.SystemCaBr2, 14.2*unit.PoundPerGallon)
	require.NoError(t, err)
	for name, x := range map[string]struct {
		f      hydrostatics.Fluid
		top    unit.Pressure
		bottom unit.Length // MD
	}{
		"water":    {fluid.Water{}, 15 * unit.Megapascal, 5200},
		"seawater": {fluid.Seawater{Salinity: fluid.StandardSalinity}, 0, 800}, // 104 °F are its limit
		"brine":    {brine, 15 * unit.Megapascal, 5200},
		"solution": {fluid.Solution{Salt: fluid.SodiumChloride, Fraction: 0.2, Compression: 2e-6 * unit.PerPSI}, 0, 5200},
		"oil":      {fluid.Oil{At60F: 850, Commodity: fluid.Crude}, 0, 1200}, // 1,500 psi are its limit
		"gas":      {fluid.Gas{Gravity: 0.68, CarbonDioxide: 0.02}, 15 * unit.Megapascal, 5200},
		"nitrogen": {fluid.Nitrogen{}, 15 * unit.Megapascal, 5200},
		"methane":  {fluid.Methane{}, 15 * unit.Megapascal, 5200},
	} {
		t.Run(name, func(t *testing.T) {
			f, top := x.f, x.top
			layers, err := hydrostatics.LayersAlong(path, []hydrostatics.MeasuredLayer{{Fluid: f, BottomMD: x.bottom}})
			require.NoError(t, err)
			c, err := hydrostatics.NewColumn(layers, ground, hydrostatics.Reference{Pressure: top})
			require.NoError(t, err)
			tvd, err := path.TVD(x.bottom)
			require.NoError(t, err)
			want := float64(top)
			steps := int(tvd)
			h := float64(tvd) / float64(steps)
			slope := func(p, z float64) float64 {
				rho, err := f.Density(unit.Pressure(p), ground.At(unit.Length(z)))
				require.NoError(t, err)
				return float64(hydrostatics.Gradient(rho))
			}
			for i := range steps {
				z := float64(i) * h
				k1 := slope(want, z)
				k2 := slope(want+h/2*k1, z+h/2)
				k3 := slope(want+h/2*k2, z+h/2)
				k4 := slope(want+h*k3, z+h)
				want += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
			}
			got, err := c.At(tvd)
			require.NoError(t, err)
			require.InDelta(t, 0, (float64(got)-want)/(want-float64(top)), 1e-8)

			// The depth of a pressure, and the length of this fluid on brine that
			// leaves a pressure at the bottom.
			cushion := hydrostatics.Cushion{
				Formation: hydrostatics.Formation{TVD: tvd}, Surface: top, Light: f, Heavy: hydrostatics.Incompressible(1900), Temperature: ground,
			}
			half, err := c.At(tvd / 2)
			require.NoError(t, err)
			z, err := c.Depth(half)
			require.NoError(t, err)
			require.InEpsilon(t, float64(tvd/2), float64(z), 1e-12)
			cushion.Formation.Pressure = half + hydrostatics.Pressure(1900, tvd/2)
			a, err := cushion.Length()
			require.NoError(t, err)
			require.InEpsilon(t, float64(tvd/2), float64(a.LevelTVD), 1e-8)
		})
	}
}
