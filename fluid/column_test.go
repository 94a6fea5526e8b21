package fluid_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// Every fluid fills a column as it is.
var _ = []hydrostatics.Fluid{
	fluid.Constant{}, fluid.Water{}, fluid.Seawater{}, fluid.Brine{}, fluid.Solution{}, fluid.Oil{}, fluid.Gas{},
	fluid.GasMixture{}, fluid.Nitrogen{}, fluid.Methane{}, fluid.ControlFluid{}, fluid.Measured{},
}

// Constant tells a column that it may use the closed form.
var _ interface {
	UniformDensity() (unit.Density, bool)
} = fluid.Constant{}

func bottom(t *testing.T, f hydrostatics.Fluid, absoluteTop unit.Pressure, top unit.Temperature, gradient float64, depth unit.Length) unit.Pressure {
	t.Helper()
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{
		{TVD: 0, Temperature: top},
		{TVD: depth, Temperature: top.Add(unit.TemperatureDifference(gradient * float64(depth)))},
	})
	require.NoError(t, err)
	c, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, TopTVD: 0, BottomTVD: depth}}, profile,
		hydrostatics.Reference{Pressure: absoluteTop - unit.Atmosphere})
	require.NoError(t, err)
	p, err := c.At(depth)
	require.NoError(t, err)
	return p + unit.Atmosphere
}

// Integrated elsewhere with IAPWS-IF97 (python3-iapws 1.5.3) and, recomputed, with
// the reference equations of nitrogen and methane.
func TestColumns(t *testing.T) {
	for _, c := range []struct {
		f             hydrostatics.Fluid
		top, celsius  float64
		gradient, tvd float64
		bottom        float64
	}{
		{fluid.Water{}, 0.101325, 15, 0.03, 1000, 9.883186},
		{fluid.Water{}, 35, 60, 0.02, 4000, 73.491624},
		{fluid.Nitrogen{}, 20, 15, 0.03, 3000, 26.301767},
		{fluid.Nitrogen{}, 50, 20, 0.025, 5000, 69.462011},
		{fluid.Methane{}, 10, 15, 0.03, 1000, 10.756348},
		{fluid.Methane{}, 7, 15.5556, 0, 2000, 8.147385},
	} {
		got := bottom(t, c.f, unit.Pressure(c.top)*unit.Megapascal, unit.Celsius(c.celsius), c.gradient, unit.Length(c.tvd))
		require.InDelta(t, c.bottom, got.In(unit.Megapascal), 0.51e-6, "%T", c.f)
	}
}

// Natural gas of 0.75 gravity, 2,014.7 psia at surface, 9,000 ft at 160 °F:
// 2,585.51 psia by Sutton, Dranchuk and Abou-Kassem and an integration elsewhere,
// whose molar mass of air and gas constant are rounded.
func TestNaturalGasColumn(t *testing.T) {
	got := bottom(t, fluid.Gas{Gravity: 0.75}, 2014.7*unit.PSI, unit.Rankine(619.67), 0, 9000*unit.Foot)
	require.InDelta(t, 2585.51, got.In(unit.PSI), 0.2)
}

// At a pressure so low that Z is 1, a gas column is an exponential.
func TestThinGasColumnIsExponential(t *testing.T) {
	const depth = 2000.0
	T := unit.Celsius(60)
	for _, g := range []struct {
		f hydrostatics.Fluid
		m float64
	}{{fluid.Nitrogen{}, fluid.Nitrogen{}.MolarMass()}, {fluid.Gas{Gravity: 0.65}, fluid.Gas{Gravity: 0.65}.MolarMass()}} {
		top := 100 * unit.Pascal
		got := bottom(t, g.f, top, T, 0, depth)
		want := float64(top) * math.Exp(g.m*9.80665*depth/(8.31446261815324*T.Kelvin()))
		require.InEpsilon(t, want, float64(got), 1e-5)
	}
}

// A brine with expansion and compression lies between the columns of its lightest
// and heaviest density.
func TestBrineColumn(t *testing.T) {
	b, err := fluid.KrookBoyce(fluid.SystemCaCl2, 11.3*unit.PoundPerGallon)
	require.NoError(t, err)
	p := bottom(t, b, unit.Atmosphere, unit.Fahrenheit(70), 0.03, 3000)
	hot, err := b.Density(0, unit.Celsius(21.11+90))
	require.NoError(t, err)
	tight, err := b.Density(p, unit.Fahrenheit(70))
	require.NoError(t, err)
	mean := float64(p-unit.Atmosphere) / (9.80665 * 3000)
	require.Greater(t, mean, float64(hot))
	require.Less(t, mean, float64(tight))
}
