package fluid

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// IAPWS R14-08(2011), check value of the melting curve: 138.268 MPa at 260 K.
// Recalled, not read.
func TestMeltingPressure(t *testing.T) {
	require.InDelta(t, 138.268, meltingPressure(260)/1e6, 5e-4)
	require.InDelta(t, triplePressure, meltingPressure(tripleTemperature), 1e-6)
}

// A point of Lange's table that is left out is met by its neighbours.
func TestCrystallisationLeavingOnePointOut(t *testing.T) {
	for _, salt := range []Salt{SodiumChloride, MagnesiumChloride} {
		for _, b := range salt.branches() {
			if b.solid != Ice {
				continue
			}
			for i := 2; i < len(b.fractions)-2; i++ {
				without := branch{solid: b.solid}
				for j := range b.fractions {
					if j != i {
						without.fractions = append(without.fractions, b.fractions[j])
						without.celsius = append(without.celsius, b.celsius[j])
					}
				}
				got, err := without.at(b.fractions[i])
				require.NoError(t, err)
				require.InDelta(t, b.celsius[i], got, 0.2, "%v %g", salt, b.fractions[i])
			}
		}
	}
}

// melinder is the polynomial behind the points of CaCl2, in °C for mass fractions
// of 9 to 29.4 %. Its coefficients are those of Melinder, Properties of Secondary
// Working Fluids, IIR (2010), with 18.7414 % for the middle: the first two and
// the middle from memory, the other four from his freezing points at 10, 15, 20
// and 29 %, which need four-digit figures to seven digits and more.
func melinder(w float64) float64 {
	x, t := 100*w-18.7414, 0.0
	for _, c := range []float64{-4.494e-6, -0.0001726, -0.002624, -0.05496, -1.555, -16.21} {
		t = t*x + c
	}
	return t
}

func TestCrystallisationOfCalciumChloride(t *testing.T) {
	// The reference file's points, which CoolProp's transcription of the book gives.
	for _, p := range [][2]float64{{0.10, -5.84244071225}, {0.15, -11.0545576675}, {0.20, -18.2598625107}, {0.29, -43.201105667}} {
		require.InDelta(t, p[1], melinder(p[0]), 1e-9)
	}
	for w := 0.09; w <= 0.29; w += 0.001 {
		got, err := Crystallisation(CalciumChloride, w, 0)
		require.NoError(t, err)
		require.InDelta(t, melinder(w), got.Temperature.Celsius(), 0.02, "%v", w)
	}
}

// The table of salt out of MgCl2 with a point left out, as its doc says; that of
// NaCl is steep, and the mass fraction is what it holds.
func TestCrystallisationOfSaltLeavingOnePointOut(t *testing.T) {
	for salt, tolerance := range map[Salt]float64{MagnesiumChloride: 0.3, SodiumChloride: 3.2} {
		b := salt.branches()[1]
		worst := 0.0
		for i := 1; i < len(b.fractions)-1; i++ {
			without := branch{solid: b.solid,
				fractions: slices.Delete(slices.Clone(b.fractions), i, i+1), celsius: slices.Delete(slices.Clone(b.celsius), i, i+1)}
			got, err := without.at(b.fractions[i])
			require.NoError(t, err)
			worst = max(worst, math.Abs(got-b.celsius[i]))
		}
		require.Less(t, worst, tolerance, salt)
		require.Greater(t, worst, tolerance/2, salt)
	}
}

func TestCrystallisationSides(t *testing.T) {
	for _, c := range []struct {
		salt    Salt
		w       float64
		celsius float64
		solid   Solid
	}{
		{SodiumChloride, 0, 0, Ice},
		{SodiumChloride, 0.21, -17.78, Ice},
		{SodiumChloride, 0.2331, -21.12, Ice},
		{SodiumChloride, 0.2383, -17.78, SaltCrystals},
		{SodiumChloride, 0.2629, 0, SaltCrystals},
		{SodiumChloride, 0.2652, 26.67, SaltCrystals},
		{MagnesiumChloride, 0.20, -27.4, Ice},
		{MagnesiumChloride, 0.26, -21.1, SaltCrystals},
		{CalciumChloride, 0.20, -18.26, Ice},
	} {
		got, err := Crystallisation(c.salt, c.w, 0)
		require.NoError(t, err)
		require.InDelta(t, c.celsius, got.Temperature.Celsius(), 1e-9, "%+v", c)
		require.Equal(t, c.solid, got.Solid)
		require.NotEmpty(t, got.Source)
		require.NotEmpty(t, got.Solid.String())
	}
}

// Under pressure the ice side falls, as seawater does by the UNESCO formula.
func TestCrystallisationUnderPressure(t *testing.T) {
	at := func(w float64, p unit.Pressure) float64 {
		c, err := Crystallisation(SodiumChloride, w, p)
		require.NoError(t, err)
		return c.Temperature.Celsius()
	}
	s := Seawater{Salinity: StandardSalinity}
	free, err := s.FreezingPoint(0)
	require.NoError(t, err)
	under, err := s.FreezingPoint(5 * unit.Megapascal)
	require.NoError(t, err)
	require.InEpsilon(t, float64(free.Sub(under)), at(0.035, 0)-at(0.035, 5*unit.Megapascal), 0.05)
	require.InDelta(t, 1, at(0.1, 0)-at(0.1, 13*unit.Megapascal), 0.05)
	require.InDelta(t, 0, at(0.1, 0)-at(0.1, 1e-9), 1e-9)
	_, err = Crystallisation(SodiumChloride, 0.25, 1)
	require.ErrorIs(t, err, ErrNoData)
}

func TestCrystallisationErrors(t *testing.T) {
	for _, salt := range []Salt{0, PotassiumChloride, SodiumBromide, CalciumBromide, ZincBromide, SodiumFormate, PotassiumFormate} {
		_, err := Crystallisation(salt, 0.1, 0)
		require.ErrorIs(t, err, ErrNoData)
	}
	_, err := Crystallisation(MagnesiumChloride, 0.21, 0)
	require.ErrorIs(t, err, ErrNoData)
	for _, w := range []float64{-0.01, 0.29, math.NaN()} {
		_, err := Crystallisation(SodiumChloride, w, 0)
		require.ErrorIs(t, err, ErrOutsideRange)
	}
	for _, p := range []unit.Pressure{-1, 151 * unit.Megapascal, unit.Pressure(math.NaN())} {
		_, err := Crystallisation(SodiumChloride, 0.1, p)
		require.ErrorIs(t, err, ErrOutsideRange)
	}
}

func FuzzCrystallisation(f *testing.F) {
	f.Add(int(SodiumChloride), 0.1, 5e7)
	f.Add(int(MagnesiumChloride), 0.25, 0.0)
	f.Fuzz(func(t *testing.T, salt int, w, p float64) {
		c, err := Crystallisation(Salt(salt), w, unit.Pressure(p))
		if err != nil {
			return
		}
		require.True(t, c.Temperature.Celsius() > -80 && c.Temperature.Celsius() < 110)
	})
}
