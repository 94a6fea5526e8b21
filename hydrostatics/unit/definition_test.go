package unit_test

import (
	"encoding/json"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestQuantitiesListEveryUnit(t *testing.T) {
	all := unit.Quantities()
	require.Len(t, all, len(quantities())+1, "temperature is the one more")
	for _, q := range all {
		require.Equal(t, 1.0, q.Units[0].Size, q.Name)
		for _, u := range append(q.Units, q.Spellings...) {
			require.Positive(t, u.Size, "%s %s", q.Name, u.Text)
			if u.Text == "degF" && q.Name == "temperature" { // NIST SP 811 (2008), B.8: the ice point is 32 degF
				require.InDelta(t, 273.15, u.Zero+32*u.Size, 1e-12)
			}
		}
	}
}

func TestWritten(t *testing.T) {
	for text, want := range map[string][2]string{
		"35 barg": {"pressure", "bar"}, "1.35 SG": {"density", "SG"}, "1.35 sg": {"density", "SG"}, "12 MMscf/d": {"flow rate", "MMscf/d"},
		"9-5/8 in": {"length", "in"}, "12,500 ft": {"length", "ft"}, "90 °C": {"temperature difference", "degC"}, "20 lb": {"mass", "lb"},
		"5,5 m": {}, "psi": {}, "5": {}, "": {}, "5 furlong": {}, "x psi": {}, "9 8/8 in": {},
	} {
		quantity, u, ok := unit.Written(text)
		require.Equal(t, want[0] != "", ok, text)
		require.Equal(t, want, [2]string{quantity, u.Text}, text)
	}
}

// No float64 times 1e5 is 7.36e6, and 73.6 is read as one: what is written reads back all
// the same, in the unit that was asked for.
func TestCountOfWhatFewDigitsMiss(t *testing.T) {
	for _, bar := range []float64{73.6, 82.8, 0.7, 1.1, 4.7, 9.3, 331.2} {
		x := float64(unit.Pressure(bar*1e6)) / 10 // of MPa
		number, ok := unit.Count(x, float64(unit.Bar))
		require.True(t, ok, bar)
		var back unit.Pressure
		require.NoError(t, back.UnmarshalText([]byte(number+" bar")))
		require.Equal(t, x, float64(back), number)
	}
	number, ok := unit.Count(7.36e6, float64(unit.Bar))
	require.True(t, ok)
	require.NotEqual(t, 7.36e6, 73.6*float64(unit.Bar), "else this test is of nothing")
	require.Contains(t, number, "73.60000000000000000")
	require.Equal(t, "7.36 MPa", unit.Pressure(7.36e6).String(), "a person is shown few digits")
}

func TestCount(t *testing.T) {
	number, ok := unit.Count(float64(35*unit.Bar), float64(unit.Bar))
	require.True(t, ok)
	require.Equal(t, "35", number)
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, ok := unit.Count(x, 1)
		require.False(t, ok)
	}
	_, ok = unit.Count(1, 0)
	require.False(t, ok)
}

func TestBandValues(t *testing.T) {
	var b unit.Band[unit.Pressure]
	require.NoError(t, json.Unmarshal([]byte(`"2850 psi .. 3150 psi"`), &b))
	require.Equal(t, [3]any{2850 * unit.PSI, 3000 * unit.PSI, 3150 * unit.PSI}, b.Values())
}

func TestParseByName(t *testing.T) {
	x, err := unit.ParseNamed("density", "0.052 psi/ft")
	require.NoError(t, err)
	require.InEpsilon(t, 0.052*77/4*119.826427316897, x, 1e-12) // lb/gal in kg/m3: NIST SP 811 (2008), B.8
	x, err = unit.ParseNamed("temperature", "212 °F")
	require.NoError(t, err)
	require.InDelta(t, 373.15, x, 1e-12)
	_, err = unit.ParseNamed("density", "5 psi")
	require.ErrorContains(t, err, "is a unit of pressure")
	_, err = unit.ParseNamed("temperature", "5 psi")
	require.Error(t, err)
	_, err = unit.ParseNamed("colour", "5 psi")
	require.ErrorContains(t, err, "there is no such quantity")
}
