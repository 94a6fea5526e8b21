package fluid

import (
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
)

func TestBrineState(t *testing.T) {
	s, err := nacl95.State(5000*unit.PSI, unit.Fahrenheit(160))
	require.NoError(t, err)
	require.InDelta(t, 9.38055, s.Density.In(unit.PoundPerGallon), 5e-6)
	workingtest.Check(t, s.Steps())
	_, err = Brine{}.State(0, unit.Fahrenheit(70))
	require.ErrorIs(t, err, ErrOutsideRange)
}

func TestGasState(t *testing.T) {
	for _, g := range []interface {
		State(unit.Pressure, unit.Temperature) (GasState, error)
		ZFactor(unit.Pressure, unit.Temperature) (float64, error)
	}{Gas{Gravity: 0.7, CarbonDioxide: 0.04}, GasMixture{Methane: 0.9, Nitrogen: 0.1}} {
		s, err := g.State(2000*unit.PSI, unit.Fahrenheit(250))
		require.NoError(t, err)
		workingtest.Check(t, s.Steps())
		z, err := ZFactor(s.Ppr, s.Tpr)
		require.NoError(t, err)
		require.InEpsilon(t, z, s.Z, 1e-12)
		_, err = g.State(1e9, unit.Fahrenheit(250))
		require.ErrorIs(t, err, ErrOutsideRange)
	}
	_, err := Gas{}.State(0, unit.Fahrenheit(100))
	require.ErrorIs(t, err, ErrOutsideRange)
	_, err = GasMixture{}.State(0, unit.Fahrenheit(100))
	require.ErrorIs(t, err, ErrOutsideRange)
}
