package unit_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Fixed points. Sources: NIST Special Publication 811 (2008), B.8 for the
// scales; the ice and steam points of the Fahrenheit scale by definition.
func TestFixedPointsOfTheScales(t *testing.T) {
	for _, row := range []struct{ k, c, f, r float64 }{
		{0, -273.15, -459.67, 0},
		{273.15, 0, 32, 491.67},
		{373.15, 100, 212, 671.67},
		{233.15, -40, -40, 419.67},
		{288.15, 15, 59, 518.67},
	} {
		for _, at := range []unit.Temperature{unit.Kelvin(row.k), unit.Celsius(row.c), unit.Fahrenheit(row.f), unit.Rankine(row.r)} {
			require.InDelta(t, row.k, at.Kelvin(), 1e-12)
			require.InDelta(t, row.c, at.Celsius(), 1e-12)
			require.InDelta(t, row.f, at.Fahrenheit(), 2e-12)
			require.InDelta(t, row.r, at.Rankine(), 2e-12)
		}
	}
}

func TestTemperatureDifferences(t *testing.T) {
	d := unit.Fahrenheit(170).Sub(unit.Fahrenheit(70))
	require.InDelta(t, 100, d.In(unit.FahrenheitDifference), 1e-11)
	require.InDelta(t, 500./9, d.In(unit.KelvinDifference), 1e-12)
	require.InDelta(t, 170, unit.Fahrenheit(70).Add(100*unit.FahrenheitDifference).Fahrenheit(), 1e-11)
	require.Negative(t, float64(unit.Celsius(4).Sub(unit.Celsius(20))))
}

func TestTemperatureText(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	values := []unit.Temperature{{}, unit.Fahrenheit(70), unit.Celsius(15), unit.Kelvin(300), unit.Celsius(-12.3), unit.Fahrenheit(209.9)}
	for range 500 {
		values = append(values, unit.Kelvin(1000*r.Float64()), unit.Kelvin(math.Exp(100*r.Float64()-50)))
	}
	for _, want := range values {
		text, err := want.MarshalText()
		require.NoError(t, err)
		var got unit.Temperature
		require.NoError(t, got.UnmarshalText(text), "%s", text)
		require.Equal(t, math.Float64bits(want.Kelvin()), math.Float64bits(got.Kelvin()), "%s", text)
	}
	require.Equal(t, "70 degF", unit.Fahrenheit(70).String())
	require.Equal(t, "15 degC", unit.Celsius(15).String())
	require.Equal(t, "158 degF", unit.Celsius(70).Rounded(4))
	for _, text := range []string{"70", "70 F", "70 degC/100m", "70 psi", "-460 degF", "-1 K", "-274 degC", "NaN degF", "1e400 K", ""} {
		var got unit.Temperature
		require.Error(t, got.UnmarshalText([]byte(text)), text)
	}
	for _, k := range []float64{math.NaN(), math.Inf(1)} {
		_, err := unit.Kelvin(k).MarshalText()
		require.Error(t, err)
	}
}

func FuzzTemperature(f *testing.F) {
	for _, seed := range []string{"70 degF", "-40degC", "0 K", "1e-300 degR", "-459.67 degF", "5 degX"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var got, back unit.Temperature
		if got.UnmarshalText([]byte(text)) != nil {
			return
		}
		if !(got.Kelvin() >= 0) || math.IsInf(got.Kelvin(), 0) {
			t.Fatalf("%q read as %g K", text, got.Kelvin())
		}
		out, err := got.MarshalText()
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if err := back.UnmarshalText(out); err != nil || back != got {
			t.Fatalf("%q was written %q and read as %g K, not %g K: %v", text, out, back.Kelvin(), got.Kelvin(), err)
		}
	})
}
