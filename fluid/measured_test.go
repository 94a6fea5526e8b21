package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

func TestMeasuredByHand(t *testing.T) {
	// Specific volumes 1/800, 1/780, 1/840 and 1/820: their mean in the middle is
	// 1.235510e-3, and so 809.382 kg/m³.
	m := Measured{
		Pressures:    []unit.Pressure{0, 10000 * unit.PSI},
		Temperatures: []unit.Temperature{unit.Celsius(20), unit.Celsius(60)},
		Densities:    [][]unit.Density{{800, 780}, {840, 820}},
	}
	require.NoError(t, m.Validate())
	rho, err := m.Density(5000*unit.PSI, unit.Celsius(40))
	require.NoError(t, err)
	require.InDelta(t, 809.382, float64(rho), 5e-4)
	rho, err = m.Density(10000*unit.PSI, unit.Celsius(60))
	require.NoError(t, err)
	require.InDelta(t, 820, float64(rho), 1e-9)
	checkSlopes(t, m, 3000*unit.PSI, unit.Celsius(30), 1e-5)
	_, err = m.Density(10001*unit.PSI, unit.Celsius(19))
	require.ErrorContains(t, err, "pressure")
	require.ErrorContains(t, err, "temperature")
	_, err = m.Compressibility(unit.Pressure(math.NaN()), unit.Celsius(30))
	require.ErrorIs(t, err, ErrOutsideRange)
	_, err = m.Expansivity(0, unit.Kelvin(math.NaN()))
	require.ErrorIs(t, err, ErrOutsideRange)
}

// A table taken from water gives water back, the better the finer it is.
func TestMeasuredFollowsWater(t *testing.T) {
	var m Measured
	for i := range 11 {
		m.Pressures = append(m.Pressures, unit.Pressure(i)*5*unit.Megapascal)
		var row []unit.Density
		for j := range 19 {
			T := unit.Celsius(5 * float64(j))
			if i == 0 {
				m.Temperatures = append(m.Temperatures, T)
			}
			rho, err := Water{}.Density(m.Pressures[i], T)
			require.NoError(t, err)
			row = append(row, rho)
		}
		m.Densities = append(m.Densities, row)
	}
	for _, p := range []unit.Pressure{unit.Megapascal, 23 * unit.Megapascal, 49 * unit.Megapascal} {
		for _, c := range []float64{2, 33, 88} {
			want, err := Water{}.Density(p, unit.Celsius(c))
			require.NoError(t, err)
			got, err := m.Density(p, unit.Celsius(c))
			require.NoError(t, err)
			require.InEpsilon(t, float64(want), float64(got), 1e-4)
		}
	}
}

func TestMeasuredFaults(t *testing.T) {
	for _, m := range []Measured{
		{},
		{Pressures: []unit.Pressure{0, 0}, Temperatures: []unit.Temperature{unit.Celsius(20), unit.Celsius(10)}, Densities: [][]unit.Density{{1, 2}, {3}}},
		{Pressures: []unit.Pressure{0, 1}, Temperatures: []unit.Temperature{unit.Celsius(20), unit.Celsius(30)}, Densities: [][]unit.Density{{800, 0}, {800, 800}}},
		{Pressures: []unit.Pressure{0, unit.Pressure(math.NaN())}, Temperatures: []unit.Temperature{unit.Celsius(20), unit.Celsius(30)}, Densities: [][]unit.Density{{800, 1}, {800, 800}}},
	} {
		require.Error(t, m.Validate())
		_, err := m.Density(0, unit.Celsius(20))
		require.Error(t, err)
	}
}
