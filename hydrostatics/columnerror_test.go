package hydrostatics

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// The promised 1e-8 of the pressure difference from the reference, over random
// liquids and gases that have a closed form, and at every depth of the column:
// near the reference too, where the difference is small.
func TestErrorOfNumericalColumns(t *testing.T) {
	const promised, r = 1e-8, 8.31446261815324
	random := rand.New(rand.NewPCG(5, 6))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*random.Float64() }
	for range 500 {
		depth := math.Exp(between(math.Log(10), math.Log(9000)))
		gradient := between(-0.01, 0.05)
		profile := straight(t, 15, gradient)
		liquid := SlightlyCompressible{
			Reference: 1000, Temperature: unit.Celsius(20),
			Compressibility: unit.Compressibility(between(0, 4e-9)), Expansivity: unit.Expansivity(between(0, 2e-3)),
		}
		closed, err := NewColumn([]Layer{{liquid, 0, unit.Length(depth)}}, profile, Reference{})
		require.NoError(t, err)
		numerical, err := NewColumn([]Layer{{hidden{liquid}, 0, unit.Length(depth)}}, profile, Reference{})
		require.NoError(t, err)
		molar := between(0.002, 0.09)
		gas, err := NewColumn([]Layer{{idealGas{molar, 0.9}, 0, unit.Length(depth)}}, profile, Reference{Pressure: 2e7})
		require.NoError(t, err)
		for i := 1; i <= 20; i++ {
			z := depth * float64(i) / 20
			want, err := closed.At(unit.Length(z))
			require.NoError(t, err)
			got, err := numerical.At(unit.Length(z))
			require.NoError(t, err)
			require.InEpsilon(t, float64(want), float64(got), promised, "%+v to %g m at %g m", liquid, depth, z)
			absolute := float64(2e7 + unit.Atmosphere)
			rise := absolute * math.Expm1(molar*gravity/(0.9*r*gradient)*math.Log1p(gradient*z/288.15))
			got, err = gas.At(unit.Length(z))
			require.NoError(t, err)
			require.InDelta(t, rise, float64(got)-2e7, promised*rise+1e-8, "M %g, G %g to %g m at %g m", molar, gradient, depth, z)
		}
	}
}
