package fluid

import (
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// What Seawater's doc advises for hot wells: sodium chloride brine of its density
// at 70 °F with its own compressibility at 40 °C and 20 MPa. Held against TEOS-10
// where both reach.
func TestHotSeawater(t *testing.T) {
	sea := Seawater{StandardSalinity}
	at70, err := sea.Density(0, unit.Fahrenheit(70))
	require.NoError(t, err)
	hot, err := SolutionOfDensity(SodiumChloride, at70, unit.Fahrenheit(70))
	require.NoError(t, err)
	hot.Compression, err = sea.Compressibility(20*unit.Megapascal, unit.Celsius(40))
	require.NoError(t, err)
	for _, c := range []float64{20, 30, 40} {
		for _, p := range []float64{0, 10, 20, 40, 70} {
			want, err := sea.Density(unit.Pressure(p)*unit.Megapascal, unit.Celsius(c))
			require.NoError(t, err)
			got, err := hot.Density(unit.Pressure(p)*unit.Megapascal, unit.Celsius(c))
			require.NoError(t, err)
			require.InEpsilon(t, float64(want), float64(got), 1.3e-3, "%g °C %g MPa", c, p)
			if p <= 40 {
				require.InEpsilon(t, float64(want), float64(got), 0.5e-3, "%g °C %g MPa", c, p)
			}
		}
	}
	_, err = hot.Density(40*unit.Megapascal, unit.Celsius(140))
	require.NoError(t, err)
}
