package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// U.S. Army QM5097: Table 6B, 56.5 °API at 67.5 °F, factor 0.9950.
func TestVolumeCorrectionAgainstTable6B(t *testing.T) {
	o := Oil{RefinedProduct, hydrostatics.DensityOfAPIGravity(56.5)}
	v, err := o.VolumeCorrection(0, unit.Fahrenheit(67.5))
	require.NoError(t, err)
	require.InDelta(t, 0.9950, v.Total(), 0.5e-4)
}

// By hand, crude of 35 °API at 150 °F and 1,000 psi: ρ60 849.0136;
// α60 341.0957/849.0136² = 4.73199e-4; Δt 90: CTL exp(−0.0425879·(1 + 0.8 ×
// 0.0425879)) = exp(−0.0440389) = 0.956917, within the change of scale.
func TestVolumeCorrectionByHand(t *testing.T) {
	v, err := Oil{Crude, hydrostatics.DensityOfAPIGravity(35)}.VolumeCorrection(0, unit.Fahrenheit(150))
	require.NoError(t, err)
	require.InDelta(t, 0.956917, v.Temperature, 2e-5)
	require.Equal(t, 1.0, v.Pressure)
	require.InDelta(t, 4.73199e-4, v.Expansion.In(unit.PerFahrenheit), 1e-8)
	v, err = Oil{Crude, hydrostatics.DensityOfAPIGravity(35)}.VolumeCorrection(0, unit.Fahrenheit(60))
	require.NoError(t, err)
	require.InDelta(t, 1, v.Temperature, 5e-8)
}

// The two packages count °API alike.
func TestOilGravity(t *testing.T) {
	for _, api := range []float64{-10, 0, 10, 35, 100} {
		require.InDelta(t, api, Oil{At60F: hydrostatics.DensityOfAPIGravity(api)}.gravity(), 1e-10)
	}
}

func TestOilSlopes(t *testing.T) {
	for _, o := range []Oil{{Crude, hydrostatics.DensityOfAPIGravity(35)}, {RefinedProduct, hydrostatics.DensityOfAPIGravity(36)}, {RefinedProduct, hydrostatics.DensityOfAPIGravity(50)}, {LubricatingOil, hydrostatics.DensityOfAPIGravity(35)}} {
		for _, p := range []unit.Pressure{100 * unit.PSI, 1400 * unit.PSI} {
			for _, f := range []float64{-20, 60, 250} {
				checkSlopes(t, o, p, unit.Fahrenheit(f), 1e-6)
			}
		}
	}
}

// By hand, Beggs and Robinson, 35 °API at 150 °F: exp(6.9824 − 1.6303) =
// 211.05; 150^−1.163 = 2.9459e-3; x = 0.62173; μ = 10^x − 1 = 3.185 cP.
func TestDeadOilViscosityByHand(t *testing.T) {
	mu, err := Oil{Crude, hydrostatics.DensityOfAPIGravity(35)}.Viscosity(0, unit.Fahrenheit(150))
	require.NoError(t, err)
	require.InDelta(t, 3.185, mu.In(unit.Centipoise), 5e-3)
	_, err = Oil{RefinedProduct, hydrostatics.DensityOfAPIGravity(35)}.Viscosity(0, unit.Fahrenheit(150))
	require.ErrorIs(t, err, ErrNoData)
	_, err = Oil{Crude, hydrostatics.DensityOfAPIGravity(10)}.Viscosity(1, unit.Fahrenheit(60))
	require.ErrorContains(t, err, "At60F: is 10 degAPI")
	require.ErrorContains(t, err, "temperature")
	require.ErrorContains(t, err, "pressure")
	_, err = Oil{Crude, hydrostatics.DensityOfAPIGravity(35)}.Viscosity(-1, unit.Fahrenheit(60))
	require.ErrorIs(t, err, ErrOutsideRange)
}

// The groups of refined products meet where their densities do.
func TestVolumeCorrectionIsContinuous(t *testing.T) {
	for _, rho := range []unit.Density{838.3127, 787.5195, 770.3520} {
		above, err := Oil{RefinedProduct, rho}.VolumeCorrection(0, unit.Fahrenheit(100))
		require.NoError(t, err)
		below, err := Oil{RefinedProduct, rho - 1e-6}.VolumeCorrection(0, unit.Fahrenheit(100))
		require.NoError(t, err)
		require.InDelta(t, above.Total(), below.Total(), 1e-6)
	}
}

func TestOilRange(t *testing.T) {
	crude := Oil{Crude, hydrostatics.DensityOfAPIGravity(35)}
	for _, c := range []struct {
		o  Oil
		p  unit.Pressure
		t  unit.Temperature
		ok bool
	}{
		{crude, 1500 * unit.PSI, unit.Fahrenheit(302), true},
		{crude, 1500.1 * unit.PSI, unit.Fahrenheit(60), false},
		{crude, -1, unit.Fahrenheit(60), false},
		{crude, 0, unit.Fahrenheit(-58), true},
		{crude, 0, unit.Fahrenheit(-58.1), false},
		{crude, 0, unit.Fahrenheit(302.1), false},
		{Oil{Crude, 610.6}, 0, unit.Fahrenheit(60), true},
		{Oil{Crude, 610.5}, 0, unit.Fahrenheit(60), false},
		{Oil{RefinedProduct, 1163.6}, 0, unit.Fahrenheit(60), false},
		{Oil{LubricatingOil, 800.8}, 0, unit.Fahrenheit(60), false},
		{Oil{LubricatingOil, 800.9}, 0, unit.Fahrenheit(60), true},
		{Oil{Commodity(7), 850}, 0, unit.Fahrenheit(60), false},
		{Oil{}, 0, unit.Fahrenheit(60), false},
		{crude, unit.Pressure(math.NaN()), unit.Kelvin(math.NaN()), false},
	} {
		_, err := c.o.Density(c.p, c.t)
		_, errK := c.o.Compressibility(c.p, c.t)
		_, errA := c.o.Expansivity(c.p, c.t)
		for _, e := range []error{err, errK, errA} {
			if c.ok {
				require.NoError(t, e, "%+v", c)
			} else {
				require.ErrorIs(t, e, ErrOutsideRange, "%+v", c)
			}
		}
	}
}

func TestCommodityText(t *testing.T) {
	for c := Crude; c <= LubricatingOil; c++ {
		text, err := c.MarshalText()
		require.NoError(t, err)
		var back Commodity
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, c, back)
	}
	_, err := Commodity(9).MarshalText()
	require.Error(t, err)
	var c Commodity
	require.ErrorContains(t, c.UnmarshalText([]byte("mud")), "crude oil")
}

func BenchmarkOilDensity(b *testing.B) {
	o := Oil{Crude, hydrostatics.DensityOfAPIGravity(35)}
	for b.Loop() {
		_, _ = o.Density(500*unit.PSI, unit.Fahrenheit(150))
	}
}
