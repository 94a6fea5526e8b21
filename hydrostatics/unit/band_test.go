package unit_test

import (
	"math"
	"strconv"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

type pressures = unit.Band[unit.Pressure]

func TestBandText(t *testing.T) {
	psi := func(least, nominal, greatest float64) pressures {
		return pressures{
			Least:    unit.Pressure(least) * unit.PSI,
			Nominal:  unit.Pressure(nominal) * unit.PSI,
			Greatest: unit.Pressure(greatest) * unit.PSI,
		}
	}
	for text, want := range map[string]pressures{
		"3000 psi":                           psi(3000, 3000, 3000),
		"2850 psi .. 3150 psi":               psi(2850, 3000, 3150),
		"2800 psi..3000 psi..3150 psi":       psi(2800, 3000, 3150),
		"3000 psi +/- 5 %":                   psi(2850, 3000, 3150),
		"3000 psi ± 5%":                      psi(2850, 3000, 3150),
		"3000 psi +/- 150 psi":               psi(2850, 3000, 3150),
		"-3000 psi +/- 5 %":                  psi(-3150, -3000, -2850),
		"0 psi +/- 0 %":                      {},
		"-10 psi .. 0 psi .. 10 psi":         psi(-10, 0, 10),
		"1 psi .. 1 psi .. 1 psi":            psi(1, 1, 1),
		"3000 psi +/- 1034.2135939752575kPa": psi(2850, 3000, 3150),
	} {
		var got pressures
		require.NoError(t, got.UnmarshalText([]byte(text)), text)
		for _, pair := range [][2]unit.Pressure{{want.Least, got.Least}, {want.Nominal, got.Nominal}, {want.Greatest, got.Greatest}} {
			require.InDelta(t, float64(pair[0]), float64(pair[1]), 1e-8, text)
		}
		out, err := got.MarshalText()
		require.NoError(t, err)
		var back pressures
		require.NoError(t, back.UnmarshalText(out), "%s", out)
		require.Equal(t, got, back, "%s", out)
	}
	for _, text := range []string{
		"", "..", "3000", "3000 psi +/- 5", "3000 psi +/- -5 %", "3000 psi +/- 101 %", "3000 psi +/- NaN %", "3000 psi +/- -5 psi",
		"3150 psi .. 2850 psi", "1 psi .. 3 psi .. 2 psi", "1 psi .. 2 psi .. 3 psi .. 4 psi", "1 psi .. 2 ft", "3000 ft", "3000 psi +/- 5 ft",
	} {
		var got pressures
		require.Error(t, got.UnmarshalText([]byte(text)), text)
		require.Zero(t, got, text)
	}
}

func TestBandArithmetic(t *testing.T) {
	b := unit.Within(1000*unit.PSI, 0.1)
	require.True(t, b.Contains(900*unit.PSI) && b.Contains(1100*unit.PSI) && !b.Contains(1101*unit.PSI))
	require.False(t, b.Exact())
	require.True(t, unit.Exactly(5*unit.PSI).Exact())
	require.Equal(t, 1000*unit.PSI+50*unit.PSI, b.Shift(50*unit.PSI).Nominal)
	turned := b.Times(-2)
	require.NoError(t, turned.Validate())
	require.Equal(t, -2*b.Greatest, turned.Least)
	require.NoError(t, unit.Within(-1000*unit.PSI, -0.1).Validate())

	require.Error(t, pressures{Least: 2, Nominal: 1, Greatest: 3}.Validate())
	require.Error(t, pressures{Least: 1, Nominal: 4, Greatest: 3}.Validate())
	nan := unit.Pressure(math.NaN())
	require.Error(t, pressures{Least: nan, Nominal: 1, Greatest: 3}.Validate())
	require.Error(t, pressures{Least: 1, Nominal: 1, Greatest: unit.Pressure(math.Inf(1))}.Validate())
	_, err := pressures{Least: nan}.MarshalText()
	require.Error(t, err)
	require.False(t, b.Contains(nan))
}

// The ends of a tolerance read as somebody would have typed them.
func TestToleranceEndsReadAsTyped(t *testing.T) {
	for text, want := range map[string]string{
		"4300 psi +/- 5 %":      "4085 psi .. 4300 psi .. 4515 psi",
		"4300 psi +/- 7.5 %":    "3977.5 psi .. 4300 psi .. 4622.5 psi",
		"4300 psi +/- 215 psi":  "4085 psi .. 4300 psi .. 4515 psi",
		"1.1 ksi +/- 5 %":       "1.045 ksi .. 1.1 ksi .. 1155 psi",
		"-4300 psi +/- 5 %":     "-4515 psi .. -4300 psi .. -4085 psi",
		"0 psi +/- 20 psi":      "-20 psi .. 0 psi .. 20 psi",
		"3300 psi .. 3500 psi":  "3300 psi .. 3400 psi .. 3500 psi",
		"-1 bar .. 5 bar":       "-1 bar .. 2 bar .. 5 bar",
		"0.1 psi +/- 3 %":       "0.097 psi .. 0.1 psi .. 0.103 psi",
		"3206.25 psi +/- 100 %": "0 psi .. 3206.25 psi .. 6412.5 psi",
	} {
		var got pressures
		require.NoError(t, got.UnmarshalText([]byte(text)), text)
		require.Equal(t, want, got.String(), text)
		require.NoError(t, got.Validate(), text)
	}
	for _, text := range []string{"57000 lbf", "3800 lbf"} {
		for percent := 1; percent <= 99; percent++ {
			var b unit.Band[unit.Force]
			require.NoError(t, b.UnmarshalText([]byte(text+" +/- "+strconv.Itoa(percent)+" %")))
			require.Less(t, len(b.String()), len("57000.12 lbf .. 57000.12 lbf .. 57000.12 lbf")+1, "%s", b)
		}
	}
	var size unit.Band[unit.Length]
	require.NoError(t, size.UnmarshalText([]byte("2-7/8 in +/- 1 %")))
	require.InDelta(t, 2.875*1.01, size.Greatest.In(unit.Inch), 1e-12)
}
