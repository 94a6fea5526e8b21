package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// An invented water-glycol fluid.
func glycol() ControlFluid {
	return ControlFluid{
		Points: []ControlPoint{
			{unit.Celsius(0), 1085, 8 * unit.Centipoise},
			{unit.Celsius(20), 1075, 4 * unit.Centipoise},
			{unit.Celsius(60), 1050, 1 * unit.Centipoise},
			{unit.Celsius(120), 1005, 0},
		},
		Compression: 3e-6 * unit.PerPSI,
	}
}

// By hand: half way from 20 to 60 °C the density is 1062.5 and the viscosity
// √(4·1) = 2 cP; at 10,000 psi 1062.5/0.97 = 1095.361.
func TestControlFluidByHand(t *testing.T) {
	c := glycol()
	require.NoError(t, c.Validate())
	for _, point := range c.Points {
		rho, err := c.Density(0, point.Temperature)
		require.NoError(t, err)
		require.InDelta(t, float64(point.Density), float64(rho), 1e-9)
	}
	rho, err := c.Density(0, unit.Celsius(40))
	require.NoError(t, err)
	require.InDelta(t, 1062.5, float64(rho), 1e-9)
	rho, err = c.Density(10000*unit.PSI, unit.Celsius(40))
	require.NoError(t, err)
	require.InDelta(t, 1095.361, float64(rho), 5e-4)
	mu, err := c.Viscosity(0, unit.Celsius(40))
	require.NoError(t, err)
	require.InDelta(t, 2, mu.In(unit.Centipoise), 1e-9)
	for _, celsius := range []float64{10, 40, 100} {
		checkSlopes(t, c, 5000*unit.PSI, unit.Celsius(celsius), 1e-6)
	}
}

func TestControlFluidErrors(t *testing.T) {
	c := glycol()
	_, err := c.Viscosity(0, unit.Celsius(90))
	require.ErrorIs(t, err, ErrNoData)
	for _, s := range []struct {
		p unit.Pressure
		t float64
	}{{0, -0.01}, {0, 120.01}, {40000 * unit.PSI, 20}, {-20 * unit.PSI, 20}, {0, math.NaN()}} {
		_, err := c.Density(s.p, unit.Celsius(s.t))
		require.ErrorIs(t, err, ErrOutsideRange)
		_, err = c.Compressibility(s.p, unit.Celsius(s.t))
		require.ErrorIs(t, err, ErrOutsideRange)
		_, err = c.Expansivity(s.p, unit.Celsius(s.t))
		require.ErrorIs(t, err, ErrOutsideRange)
		_, err = c.Viscosity(s.p, unit.Celsius(s.t))
		require.ErrorIs(t, err, ErrOutsideRange)
	}
	for _, bad := range []ControlFluid{
		{},
		{Points: c.Points[:1]},
		{Points: []ControlPoint{c.Points[1], c.Points[0]}},
		{Points: []ControlPoint{{unit.Celsius(0), math.MaxFloat64, 0}, {unit.Celsius(1), 1000, -1}}},
		{Points: c.Points, Compression: -1},
		{Points: []ControlPoint{{unit.Celsius(0), unit.Density(math.NaN()), 0}, {unit.Celsius(1), 1000, 0}}},
	} {
		require.Error(t, bad.Validate())
		_, err := bad.Density(0, unit.Celsius(0.5))
		require.Error(t, err)
	}
}
