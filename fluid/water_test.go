package fluid

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// IAPWS R7-97(2012) Table 5, v and the derivatives of IAPWS AN3-07 at the same
// states.
func TestRegion1AgainstVerificationTable(t *testing.T) {
	for _, c := range []struct{ p, t, v float64 }{
		{3e6, 300, 0.100215168e-2},
		{80e6, 300, 0.971180894e-3},
		{3e6, 500, 0.120241800e-2},
	} {
		require.InDelta(t, c.v, 1/region1Density(c.p, c.t), 0.5e-11*1.01, "v(%g Pa, %g K)", c.p, c.t)
	}
	k, err := Water{}.Compressibility(gauge(3e6), unit.Kelvin(500))
	require.NoError(t, err)
	require.InDelta(t, 0.00112892188, k.In(unit.PerMegapascal), 0.5e-11)
	a, err := Water{}.Expansivity(gauge(3e6), unit.Kelvin(500))
	require.NoError(t, err)
	require.InDelta(t, 0.00164118128, float64(a), 0.5e-11)
}

// IAPWS R12-08 Table 4.
func TestWaterViscosityAgainstVerificationTable(t *testing.T) {
	for _, c := range []struct{ t, rho, mu float64 }{
		{298.15, 998, 889.735100}, {298.15, 1200, 1437.649467}, {433.15, 1, 14.538324}, {433.15, 1000, 217.685358},
		{873.15, 1, 32.619287}, {873.15, 600, 77.430195}, {1173.15, 1, 44.217245}, {1173.15, 100, 47.640433},
	} {
		require.InDelta(t, c.mu, WaterViscosity(unit.Density(c.rho), unit.Kelvin(c.t)).In(unit.MicropascalSecond), 0.51e-6, "%+v", c)
	}
}

// The grouped powers and the table are one equation.
func TestRegion1GroupedIsTable(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		T := waterTLeast + r.Float64()*(waterTGreatest-waterTLeast)
		p := boilingPressure(T) + r.Float64()*(waterPGreatest-boilingPressure(T))
		gp, _, _ := region1Slopes(p, T)
		require.InEpsilon(t, region1Pressure/(region1Gas*T*gp), region1Density(p, T), 1e-13)
	}
}

// Compressibility and expansivity are the slopes of the density.
func TestWaterSlopes(t *testing.T) {
	for _, p := range []unit.Pressure{1 * unit.Megapascal, 30 * unit.Megapascal, 90 * unit.Megapascal} {
		for _, c := range []float64{1, 4, 40, 150} {
			checkSlopes(t, Water{}, p, unit.Celsius(c), 1e-6)
		}
	}
}

// slopes are what checkSlopes compares.
type slopes interface {
	Density(unit.Pressure, unit.Temperature) (unit.Density, error)
	Compressibility(unit.Pressure, unit.Temperature) (unit.Compressibility, error)
	Expansivity(unit.Pressure, unit.Temperature) (unit.Expansivity, error)
}

// checkSlopes holds a fluid's coefficients against central differences of its
// density, to a relative tolerance of the coefficient or of 1e-4 of typical
// liquids' ones.
func checkSlopes(t *testing.T, f slopes, p unit.Pressure, T unit.Temperature, tolerance float64) {
	t.Helper()
	density := func(p unit.Pressure, T unit.Temperature) float64 {
		rho, err := f.Density(p, T)
		require.NoError(t, err)
		return math.Log(float64(rho))
	}
	k, err := f.Compressibility(p, T)
	require.NoError(t, err)
	a, err := f.Expansivity(p, T)
	require.NoError(t, err)
	const dp, dT = 1e3, 0.05
	kn := (density(p+dp, T) - density(p-dp, T)) / (2 * dp)
	an := -(density(p, T.Add(dT)) - density(p, T.Add(-dT))) / (2 * dT)
	require.InDelta(t, kn, float64(k), tolerance*math.Abs(kn)+1e-15, "compressibility at %v, %v", p, T)
	require.InDelta(t, an, float64(a), tolerance*math.Abs(an)+1e-9, "expansivity at %v, %v", p, T)
}

// IAPWS R7-97(2012) Table 35.
func TestBoilingPressure(t *testing.T) {
	for _, c := range []struct{ t, p float64 }{{300, 0.353658941e-2}, {500, 0.263889776e1}, {600, 0.123443146e2}} {
		require.InEpsilon(t, c.p, boilingPressure(c.t)/1e6, 1e-8)
	}
	p, err := Water{}.BoilingPressure(unit.Celsius(99.974)) // normal boiling point of IAPWS-IF97
	require.NoError(t, err)
	require.InDelta(t, 0, float64(p), 10)
	_, err = Water{}.BoilingPressure(unit.Celsius(351))
	require.ErrorIs(t, err, ErrOutsideRange)
}

func TestWaterRange(t *testing.T) {
	for _, c := range []struct {
		p  unit.Pressure
		t  unit.Temperature
		ok bool
	}{
		{0, unit.Celsius(0), true},
		{0, unit.Celsius(-0.01), false},
		{0, unit.Celsius(99.9), true},
		{0, unit.Celsius(100), false}, // boils at 99.974 °C
		{1 * unit.Bar, unit.Celsius(100), true},
		{gauge(waterPGreatest), unit.Celsius(20), true},
		{gauge(waterPGreatest) + 1, unit.Celsius(20), false},
		{17 * unit.Megapascal, unit.Celsius(350), true},
		{17 * unit.Megapascal, unit.Celsius(350.01), false},
		{16 * unit.Megapascal, unit.Celsius(350), false},
		{-unit.Atmosphere, unit.Celsius(20), false},
		{unit.Pressure(math.NaN()), unit.Celsius(20), false},
		{0, unit.Kelvin(math.NaN()), false},
		{unit.Pressure(math.Inf(1)), unit.Kelvin(math.Inf(-1)), false},
		{0, unit.Temperature{}, false},
	} {
		rho, err := Water{}.Density(c.p, c.t)
		_, errK := Water{}.Compressibility(c.p, c.t)
		_, errA := Water{}.Expansivity(c.p, c.t)
		_, errM := Water{}.Viscosity(c.p, c.t)
		for _, e := range []error{err, errK, errA, errM} {
			if c.ok {
				require.NoError(t, e, "%v %v", c.p, c.t)
			} else {
				require.ErrorIs(t, e, ErrOutsideRange, "%v %v", c.p, c.t)
			}
		}
		require.False(t, math.IsNaN(float64(rho)))
	}
}

func BenchmarkRegion1Density(b *testing.B) {
	p, s := 30e6, 0.0
	for b.Loop() {
		s += region1Density(p, 330)
		if p++; p > 40e6 { // stay in range however long it runs
			p = 30e6
		}
	}
	_ = s
}

func BenchmarkWaterDensity(b *testing.B) {
	p, t := 30*unit.Megapascal, unit.Celsius(60)
	var s unit.Density
	for b.Loop() {
		rho, _ := Water{}.Density(p, t)
		s += rho
		if p++; p > 40*unit.Megapascal {
			p = 30 * unit.Megapascal
		}
	}
	_ = s
}

func BenchmarkWaterViscosity(b *testing.B) {
	p, t := 30*unit.Megapascal, unit.Celsius(60)
	var s unit.Viscosity
	for b.Loop() {
		mu, _ := Water{}.Viscosity(p, t)
		s += mu
		p += 1
	}
	_ = s
}
