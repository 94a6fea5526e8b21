package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// In-situ density of the exact Gibbs function: TEOS-10 Gibbs SeaWater toolbox
// 3.0, check values of its reference cast. A decibar is 10 kPa.
func TestSeawaterAgainstReferenceCast(t *testing.T) {
	for _, c := range []struct{ sa, t, dbar, rho float64 }{
		{34.537494144, 27.774000000, 50, 1022.214140962},
		{34.986878129, 18.178000000, 176, 1025.868593388},
		{34.648148396, 8.433100000, 404, 1028.640273473},
		{34.762487891, 3.375000000, 1416, 1034.052226417},
		{34.832276551, 1.771300000, 2534, 1039.358962101},
		{34.867276032, 1.436000000, 3812, 1045.075246051},
		{34.885520647, 1.564200000, 5872, 1053.837714748},
	} {
		rho, err := Seawater{Salinity: c.sa / 1000}.Density(unit.Pressure(c.dbar*1e4), unit.Celsius(c.t))
		require.NoError(t, err)
		require.InDelta(t, c.rho, float64(rho), 2e-9, "%+v", c)
	}
}

func TestSeawaterSlopes(t *testing.T) {
	for _, s := range []Seawater{{}, {Salinity: StandardSalinity}} {
		for _, p := range []unit.Pressure{unit.Megapascal, 60 * unit.Megapascal} {
			for _, c := range []float64{-1, 10, 39} {
				checkSlopes(t, s, p, unit.Celsius(c), 1e-6)
			}
		}
	}
}

// Without salt it is the water of IAPWS-IF97, but for what the two formulations
// differ.
func TestSeawaterWithoutSaltIsWater(t *testing.T) {
	for _, p := range []unit.Pressure{0, 30 * unit.Megapascal, 99 * unit.Megapascal} {
		for _, c := range []float64{0, 4, 20, 40} {
			a, err := Seawater{}.Density(p, unit.Celsius(c))
			require.NoError(t, err)
			b, err := Water{}.Density(p, unit.Celsius(c))
			require.NoError(t, err)
			require.InEpsilon(t, float64(b), float64(a), 2e-5)
		}
	}
}

// UNESCO Technical Papers in Marine Science 44 (1983): Tf(40, 500 dbar) =
// −2.588567 °C. Recalled, not read.
func TestSeawaterFreezing(t *testing.T) {
	tf, err := Seawater{Salinity: 40 * 35.16504 / 35 / 1000}.FreezingPoint(5 * unit.Megapascal)
	require.NoError(t, err)
	require.InDelta(t, -2.588567, tf.Celsius(), 5e-7)
	_, err = Seawater{Salinity: 0.001}.FreezingPoint(6 * unit.Megapascal)
	require.ErrorIs(t, err, ErrOutsideRange)
	require.ErrorContains(t, err, "Salinity: is")
	require.ErrorContains(t, err, "pressure")
}

func TestSeawaterRange(t *testing.T) {
	s := Seawater{Salinity: StandardSalinity}
	for _, c := range []struct {
		s  Seawater
		p  unit.Pressure
		t  unit.Temperature
		ok bool
	}{
		{s, 0, unit.Celsius(-6), true},
		{s, 0, unit.Celsius(-6.01), false},
		{s, 100 * unit.Megapascal, unit.Celsius(40), true},
		{s, 100.1 * unit.Megapascal, unit.Celsius(40), false},
		{s, 0, unit.Celsius(40.01), false},
		{s, -1, unit.Celsius(10), false},
		{Seawater{0.042}, 0, unit.Celsius(10), true},
		{Seawater{0.0421}, 0, unit.Celsius(10), false},
		{Seawater{-0.001}, 0, unit.Celsius(10), false},
		{Seawater{math.NaN()}, unit.Pressure(math.NaN()), unit.Kelvin(math.NaN()), false},
	} {
		_, err := c.s.Density(c.p, c.t)
		_, errK := c.s.Compressibility(c.p, c.t)
		_, errA := c.s.Expansivity(c.p, c.t)
		for _, e := range []error{err, errK, errA} {
			if c.ok {
				require.NoError(t, e)
			} else {
				require.ErrorIs(t, e, ErrOutsideRange)
			}
		}
	}
}

func BenchmarkSeawaterDensity(b *testing.B) {
	s, p := Seawater{Salinity: StandardSalinity}, 30*unit.Megapascal
	for b.Loop() {
		_, _ = s.Density(p, unit.Celsius(10))
	}
}
