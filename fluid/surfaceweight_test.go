package fluid

import (
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
)

// Well Control for Completions and Interventions (2018), pp. 194–195: 9.5 lb/gal
// with 0.386 lb/gal per 100 °F and 0.0188 per 1,000 psi, 80 °F at surface, 260 °F
// and 4,940 psi at the bottom: Ct 0.3474, Cp 0.0463 (cut off, 0.04644).
func TestSurfaceWeightAgainstBook(t *testing.T) {
	b, err := Bridges(SystemNaCl, 9.5*unit.PoundPerGallon)
	require.NoError(t, err)
	s, err := b.SurfaceWeight(WellAverage{9.5 * unit.PoundPerGallon, unit.Fahrenheit(80), unit.Fahrenheit(260), 4940 * unit.PSI})
	require.NoError(t, err)
	require.InDelta(t, 0.3474, s.Thermal.In(unit.PoundPerGallon), 5e-5)
	require.InDelta(t, 0.0463, s.Squeeze.In(unit.PoundPerGallon), 1.5e-4)
	require.InDelta(t, 9.8011, s.Weight.In(unit.PoundPerGallon), 2e-4)
	workingtest.Check(t, s.Steps())
}

func TestSurfaceWeightErrors(t *testing.T) {
	b := nacl95
	for _, w := range []WellAverage{
		{},
		{9.5 * unit.PoundPerGallon, unit.Fahrenheit(20), unit.Fahrenheit(260), 0},
		{9.5 * unit.PoundPerGallon, unit.Fahrenheit(80), unit.Fahrenheit(400), 0},
		{9.5 * unit.PoundPerGallon, unit.Fahrenheit(80), unit.Fahrenheit(200), 30000 * unit.PSI},
		{-1, unit.Fahrenheit(80), unit.Fahrenheit(200), 3000 * unit.PSI},
	} {
		_, err := b.SurfaceWeight(w)
		require.ErrorIs(t, err, ErrOutsideRange)
	}
}
