package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

var nacl95 = Brine{At70F: 9.5 * unit.PoundPerGallon, Expansion: 2.54e-4 * unit.PerFahrenheit, Compression: 1.98e-6 * unit.PerPSI}

// By hand: 9.5/(1 + 90 × 2.54e-4) = 9.28768; at 5,000 psi the volume is a
// further 0.99 % smaller: 9.28768/(1 − 0.0099) = 9.38055.
func TestBrineByHand(t *testing.T) {
	rho, err := nacl95.Density(0, unit.Fahrenheit(160))
	require.NoError(t, err)
	require.InDelta(t, 9.28768, rho.In(unit.PoundPerGallon), 5e-6)
	rho, err = nacl95.Density(5000*unit.PSI, unit.Fahrenheit(160))
	require.NoError(t, err)
	require.InDelta(t, 9.38055, rho.In(unit.PoundPerGallon), 5e-6)
	rho, err = nacl95.Density(0, unit.Fahrenheit(70))
	require.NoError(t, err)
	require.InDelta(t, 9.5, rho.In(unit.PoundPerGallon), 1e-12)
}

// The additive form in lb/gal, ρ70 − Ct + Cp, stays within what the doc says.
func TestBrineAgainstAdditiveForm(t *testing.T) {
	rho, err := nacl95.Density(12000*unit.PSI, unit.Fahrenheit(250))
	require.NoError(t, err)
	additive := 9.5 * (1 - 180*2.54e-4 + 12000*1.98e-6)
	require.InEpsilon(t, additive, rho.In(unit.PoundPerGallon), 0.002)
}

func TestBrineSlopes(t *testing.T) {
	for _, p := range []unit.Pressure{0, 3000 * unit.PSI, 20000 * unit.PSI} {
		for _, f := range []float64{40, 70, 340} {
			checkSlopes(t, nacl95, p, unit.Fahrenheit(f), 1e-6)
		}
	}
}

func TestBrineRange(t *testing.T) {
	for _, c := range []struct {
		p  unit.Pressure
		t  unit.Temperature
		ok bool
	}{
		{0, unit.Fahrenheit(32), true},
		{0, unit.Fahrenheit(31.99), false},
		{0, unit.Fahrenheit(345), true},
		{0, unit.Fahrenheit(345.01), false},
		{22000 * unit.PSI, unit.Fahrenheit(70), true},
		{22001 * unit.PSI, unit.Fahrenheit(70), false},
		{-unit.Atmosphere, unit.Fahrenheit(70), true},
		{-2 * unit.Atmosphere, unit.Fahrenheit(70), false},
		{unit.Pressure(math.NaN()), unit.Fahrenheit(70), false},
	} {
		_, err := nacl95.Density(c.p, c.t)
		_, errK := nacl95.Compressibility(c.p, c.t)
		_, errA := nacl95.Expansivity(c.p, c.t)
		for _, e := range []error{err, errK, errA} {
			if c.ok {
				require.NoError(t, e)
			} else {
				require.ErrorIs(t, e, ErrOutsideRange)
			}
		}
	}
	_, err := Brine{At70F: -1, Expansion: 1, Compression: -1}.Density(0, unit.Fahrenheit(70))
	require.ErrorContains(t, err, "At70F: is")
	require.ErrorContains(t, err, "Expansion: is")
	require.ErrorContains(t, err, "Compression: is")
	_, err = Brine{}.Density(0, unit.Fahrenheit(70))
	require.ErrorIs(t, err, ErrOutsideRange)
}
