package unit_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Every quantity that has a unit writes itself with it, counts itself in it, and is
// not written as text where it is no number.
func TestEveryQuantityIsItsOwnText(t *testing.T) {
	for _, q := range quantities() {
		one, err := q.parse("1 " + q.symbol)
		require.NoError(t, err, q.name)
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			_, err = q.format(bad)
			require.ErrorContains(t, err, ""+q.name+": not a finite number", "%s", q.name)
		}
		require.InEpsilon(t, 12, q.count(12*one, one), 1e-15, q.name)
		written, err := q.format(12 * one)
		require.NoError(t, err)
		require.Equal(t, string(written), q.text(12*one), q.name)
		require.NotEmpty(t, q.people(one))
		_, err = q.parse("1")
		require.ErrorContains(t, err, q.name, "%s", q.name)
	}
}

func TestFaultsOfBands(t *testing.T) {
	for text, want := range map[string]string{
		"1000 psi .. 900 psi .. 1200 psi":  "1000 psi",
		"100 psi +/- 5 ft":                 `unit: cannot read "5 ft" as a pressure: "ft" is a unit of length`,
		"100 ft +/- 5 psi":                 `unit: cannot read "100 ft" as a pressure`,
		"100 psi +/- -5 psi":               "unit: tolerance -5 psi is negative",
		"100 psi +/- 120 %":                `unit: cannot read " 120 %" as a tolerance: write 0 % to 100 %`,
		"100 psi +/- x %":                  `unit: cannot read " x %" as a tolerance: write 0 % to 100 %`,
		"1.7e308 Pa +/- 1e308 Pa":          "is a band that holds +Inf Pa; must be finite",
		"1 psi .. 2 psi .. 3 psi .. 4 psi": "as a band: more than three values",
		"2000 psia +/- 5 %":                "a part of an absolute pressure is no part of a gauge one",
	} {
		var b pressures
		err := b.UnmarshalText([]byte(text))
		require.ErrorContains(t, err, want, text)
		require.Zero(t, b, text)
	}
}

// A band that is one value is written as that value, for people too.
func TestRoundedBands(t *testing.T) {
	require.Equal(t, "5000 psi", unit.Exactly(5000*unit.PSI).Rounded(4))
	require.Equal(t, "4750 psi .. 5000 psi .. 5250 psi", unit.Within(5000*unit.PSI, 0.05).Rounded(4))
}

func TestTemperatureOnNoScale(t *testing.T) {
	var got unit.Temperature
	require.ErrorContains(t, got.UnmarshalText([]byte("20 degX")), "unit: cannot read \"20 degX\" as a temperature")
}

// A tolerance of the whole is the greatest.
func TestGreatestTolerance(t *testing.T) {
	var b pressures
	require.NoError(t, b.UnmarshalText([]byte("10 psi +/- 100 %")))
	require.Equal(t, unit.Pressure(0), b.Least)
	require.ErrorContains(t, b.UnmarshalText([]byte("10 psi +/- 100.00001 %")), "write 0 % to 100 %")
}
