package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
)

// By hand with handbook densities: 10 % NaCl (1070.7 kg/m³ at 20 °C) to 20 %
// (1147.8). One m³ weighs 1070.7 kg and takes 1070.7·0.1/0.8 = 133.8 kg of salt;
// 1204.5 kg then fill 1.0494 m³.
func TestTreatByHand(t *testing.T) {
	tr, err := Treat(SodiumChloride, Batch{1, 1070.7}, 1147.8, unit.Celsius(20))
	require.NoError(t, err)
	require.InDelta(t, 133.8, float64(tr.SaltAdded), 0.5)
	require.InDelta(t, 1.0494, float64(tr.After.Volume), 5e-4)
	require.Zero(t, tr.WaterAdded)
	workingtest.Check(t, tr.Steps())
}

// Salt and water balance to rounding, up, back and not at all; and the way back
// with water undoes the way up with salt up to that salt.
func TestTreatBalances(t *testing.T) {
	T := unit.Celsius(25)
	for _, salt := range allSalts {
		most, _, _, err := salt.Limits()
		require.NoError(t, err)
		light, err := Solution{Salt: salt, Fraction: most / 3}.Density(0, T)
		require.NoError(t, err)
		heavy, err := Solution{Salt: salt, Fraction: most * 0.9}.Density(0, T)
		require.NoError(t, err)
		for _, c := range [][2]unit.Density{{light, heavy}, {heavy, light}, {light, light}} {
			tr, err := Treat(salt, Batch{7, c[0]}, c[1], T)
			require.NoError(t, err)
			before, after := float64(tr.Before.Mass()), float64(tr.After.Mass())
			require.InEpsilon(t, before*tr.Fractions[0]+float64(tr.SaltAdded), after*tr.Fractions[1], 1e-14)
			require.InEpsilon(t, before*(1-tr.Fractions[0])+float64(tr.WaterAdded), after*(1-tr.Fractions[1]), 1e-14)
			workingtest.Check(t, tr.Steps())
		}
	}
}

func TestTreatErrors(t *testing.T) {
	T := unit.Celsius(25)
	for _, c := range []struct {
		have   Batch
		wanted unit.Density
	}{{Batch{1, 900}, 1100}, {Batch{1, 1100}, 1500}, {Batch{0, 1100}, 1150}, {Batch{1, unit.Density(math.NaN())}, 1100}, {Batch{1, 1100}, unit.Density(kellWater(25))}} {
		_, err := Treat(SodiumChloride, c.have, c.wanted, T)
		require.ErrorIs(t, err, ErrOutsideRange)
	}
	_, err := Treat(ZincBromide, Batch{1, 2000}, 2100, T)
	require.ErrorIs(t, err, ErrNoData)
}

// What the doc of Adjust says of volumes that shrink on mixing.
func TestTreatAgainstAdjust(t *testing.T) {
	T := unit.Fahrenheit(70)
	have := Batch{200 * unit.Barrel, 11 * unit.PoundPerGallon}
	tr, err := Treat(CalciumChloride, have, 10*unit.PoundPerGallon, T)
	require.NoError(t, err)
	a, err := Adjust(have, 10*unit.PoundPerGallon, unit.Density(kellWater(T.Celsius())))
	require.NoError(t, err)
	require.InDelta(t, 1.13, float64(tr.WaterVolume/a.Added.Volume), 0.005)
	require.InDelta(t, 0.992, float64(tr.After.Volume/(have.Volume+tr.WaterVolume)), 0.0005)
}

func FuzzTreat(f *testing.F) {
	f.Add(int(SodiumChloride), 1.0, 1070.0, 1150.0, 298.15)
	f.Add(int(CalciumChloride), 30.0, 1320.0, 1100.0, 300.0)
	f.Fuzz(func(t *testing.T, salt int, volume, have, wanted, kelvin float64) {
		tr, err := Treat(Salt(salt), Batch{unit.Volume(volume), unit.Density(have)}, unit.Density(wanted), unit.Kelvin(kelvin))
		if err != nil {
			return
		}
		for _, x := range []float64{float64(tr.SaltAdded), float64(tr.WaterAdded), float64(tr.WaterVolume), float64(tr.After.Volume)} {
			require.True(t, x >= 0 && x <= math.MaxFloat64, "%+v", tr)
		}
	})
}
