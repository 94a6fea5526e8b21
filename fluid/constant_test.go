package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

func TestConstant(t *testing.T) {
	c := Constant{Value: 9.2 * unit.PoundPerGallon}
	rho, err := c.Density(5000*unit.PSI, unit.Fahrenheit(200))
	require.NoError(t, err)
	require.Equal(t, c.Value, rho)
	rho, ok := c.UniformDensity()
	require.True(t, ok)
	require.Equal(t, c.Value, rho)
	checkSlopes(t, c, unit.Megapascal, unit.Celsius(20), 1e-9)
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err := Constant{Value: unit.Density(v)}.Density(0, unit.Celsius(20))
		require.ErrorIs(t, err, ErrOutsideRange)
		_, ok := Constant{Value: unit.Density(v)}.UniformDensity()
		require.False(t, ok)
	}
}
