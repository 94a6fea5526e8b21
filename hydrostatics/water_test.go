package hydrostatics_test

import (
	"testing"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
)

func waterColumn(t testing.TB, depth unit.Length) (*hydrostatics.Column, *hydrostatics.TemperatureProfile) {
	t.Helper()
	profile, err := hydrostatics.Geothermal{Ground: unit.Celsius(15), Gradient: 0.03}.Profile(depth)
	require.NoError(t, err)
	c, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: fluid.Water{}, BottomTVD: depth}}, profile, hydrostatics.Reference{})
	require.NoError(t, err)
	return c, profile
}

// A real equation of state: the pressure the column gives must be the integral
// of the density along itself.
func TestWaterColumnIsTheIntegralOfItsDensity(t *testing.T) {
	c, profile := waterColumn(t, 4000)
	for _, depth := range []unit.Length{10, 500, 2000, 4000} {
		p, err := c.At(depth)
		require.NoError(t, err)
		weight := func(z float64) float64 {
			at, err := c.At(unit.Length(z))
			require.NoError(t, err)
			rho, err := fluid.Water{}.Density(at, profile.At(unit.Length(z)))
			require.NoError(t, err)
			return float64(hydrostatics.Gradient(rho))
		}
		want := quad.Fixed(weight, 0, float64(depth), 60, quad.Legendre{}, 0)
		require.InEpsilon(t, want, float64(p), 5e-9, "%v", depth)
	}
}

func BenchmarkWaterColumn4000m(b *testing.B) {
	c, _ := waterColumn(b, 4000)
	b.ReportAllocs()
	for b.Loop() {
		_, _ = c.Carry(0, 0, 4000)
	}
}
