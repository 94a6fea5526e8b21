package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

var allSalts = []Salt{SodiumChloride, PotassiumChloride, SodiumBromide, CalciumChloride, MagnesiumChloride, SodiumFormate, PotassiumFormate}

// Laliberté and Cooper (2004): NaCl, w = 0.0037838838 at 0 °C, 1002.62501 kg/m³;
// Kell (1975): water at 25 °C, 997.0448954 kg/m³.
func TestSolutionAgainstPublishedValues(t *testing.T) {
	rho, err := Solution{Salt: SodiumChloride, Fraction: 0.0037838838}.Density(0, unit.Celsius(0))
	require.NoError(t, err)
	require.InDelta(t, 1002.62501, float64(rho), 2e-6) // coefficients of eight or nine digits
	require.InDelta(t, 997.0448954, kellWater(25), 5e-8)
}

func TestSolutionWithoutSaltIsWater(t *testing.T) {
	for _, salt := range allSalts {
		_, least, greatest, err := salt.Limits()
		require.NoError(t, err)
		for _, T := range []unit.Temperature{least, greatest} {
			rho, err := Solution{Salt: salt}.Density(0, T)
			require.NoError(t, err)
			require.InDelta(t, kellWater(T.Celsius()), float64(rho), 1e-9)
			if T.Celsius() < 99 {
				water, err := Water{}.Density(0, T)
				require.NoError(t, err)
				require.InEpsilon(t, float64(water), float64(rho), 3e-5, "Kell against IAPWS at %v", T)
			}
		}
	}
}

// Density rises with composition, so that the inverse is unique; and inverts.
func TestSolutionOfDensityInverts(t *testing.T) {
	for _, salt := range allSalts {
		most, least, greatest, err := salt.Limits()
		require.NoError(t, err)
		for _, T := range []unit.Temperature{least, greatest} {
			before := 0.0
			for i := range 51 {
				w := most * float64(i) / 50
				rho, err := Solution{Salt: salt, Fraction: w}.Density(0, T)
				require.NoError(t, err)
				require.Greater(t, float64(rho), before, "%v %v", salt, T)
				before = float64(rho)
				back, err := SolutionOfDensity(salt, rho, T)
				require.NoError(t, err)
				require.InDelta(t, w, back.Fraction, 1e-12)
			}
		}
	}
}

func TestSolutionSlopes(t *testing.T) {
	for _, salt := range allSalts {
		most, least, greatest, err := salt.Limits()
		require.NoError(t, err)
		T := least.Add(greatest.Sub(least) / 3)
		for _, w := range []float64{0, most / 2, most} {
			checkSlopes(t, Solution{salt, w, 2e-6 * unit.PerPSI}, 5000*unit.PSI, T, 1e-6)
		}
	}
}

// By hand: 10 % NaCl at 20 °C is 1070.7 kg/m³ in handbooks; at 10,000 psi with
// 2e-6 1/psi, 1070.7/0.98 = 1092.6. Its concentration is 107.07 kg/m³.
func TestSolutionByHand(t *testing.T) {
	s := Solution{SodiumChloride, 0.10, 2e-6 * unit.PerPSI}
	rho, err := s.Density(10000*unit.PSI, unit.Celsius(20))
	require.NoError(t, err)
	require.InDelta(t, 1092.6, float64(rho), 0.1)
	c, err := s.Concentration(unit.Celsius(20))
	require.NoError(t, err)
	require.InDelta(t, 107.07, float64(c), 0.01)
}

func TestSolutionErrors(t *testing.T) {
	T := unit.Celsius(25)
	_, err := Solution{Salt: CalciumBromide, Fraction: 0.3}.Density(0, T)
	require.ErrorIs(t, err, ErrNoData)
	_, err = Solution{Salt: SodiumChloride, Fraction: 0.1}.Density(1, T)
	require.ErrorIs(t, err, ErrNoData)
	_, err = Solution{Salt: SodiumChloride, Fraction: 0.1}.Compressibility(0, T)
	require.ErrorIs(t, err, ErrNoData)
	_, err = Solution{}.Density(0, T)
	require.ErrorIs(t, err, ErrNoData)
	for _, c := range []struct {
		s Solution
		p unit.Pressure
		t unit.Temperature
	}{
		{Solution{Salt: SodiumChloride, Fraction: 0.2601}, 0, T},
		{Solution{Salt: SodiumChloride, Fraction: -0.01}, 0, T},
		{Solution{Salt: SodiumChloride, Fraction: math.NaN()}, 0, T},
		{Solution{Salt: SodiumChloride, Fraction: 0.1}, 0, unit.Celsius(-0.1)},
		{Solution{Salt: SodiumChloride, Fraction: 0.1}, 0, unit.Celsius(140.1)},
		{Solution{SodiumChloride, 0.1, 1}, 0, T},
		{Solution{SodiumChloride, 0.1, 2e-6 * unit.PerPSI}, 23000 * unit.PSI, T},
		{Solution{SodiumChloride, 0.1, 2e-6 * unit.PerPSI}, unit.Pressure(math.NaN()), unit.Kelvin(math.NaN())},
	} {
		_, err := c.s.Density(c.p, c.t)
		require.ErrorIs(t, err, ErrOutsideRange)
		_, err = c.s.Compressibility(c.p, c.t)
		require.ErrorIs(t, err, ErrOutsideRange)
		_, err = c.s.Expansivity(c.p, c.t)
		require.ErrorIs(t, err, ErrOutsideRange)
	}
	for _, rho := range []unit.Density{990, 1300, unit.Density(math.NaN())} {
		_, err = SolutionOfDensity(SodiumChloride, rho, T)
		require.ErrorIs(t, err, ErrOutsideRange)
	}
	_, err = SolutionOfDensity(ZincBromide, 2000, T)
	require.ErrorIs(t, err, ErrNoData)
	_, err = SolutionOfDensity(SodiumChloride, 1100, unit.Celsius(150))
	require.ErrorIs(t, err, ErrOutsideRange)
}

func TestSaltText(t *testing.T) {
	for s := SodiumChloride; s <= ZincBromide; s++ {
		text, err := s.MarshalText()
		require.NoError(t, err)
		var back Salt
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, s, back)
	}
	_, err := Salt(0).MarshalText()
	require.Error(t, err)
	var s Salt
	require.ErrorContains(t, s.UnmarshalText([]byte("salt")), "NaCl")
}

func FuzzSolutionOfDensity(f *testing.F) {
	f.Add(1, 1100.0, 298.15)
	f.Add(7, 1500.0, 320.0)
	f.Fuzz(func(t *testing.T, salt int, rho, kelvin float64) {
		s, err := SolutionOfDensity(Salt(salt), unit.Density(rho), unit.Kelvin(kelvin))
		if err != nil {
			return
		}
		back, err := s.Density(0, unit.Kelvin(kelvin))
		require.NoError(t, err)
		require.InEpsilon(t, rho, float64(back), 1e-12)
	})
}
