package display

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Decimals end three places beyond those of the unit.
func TestWhereDecimalsEnd(t *testing.T) {
	require.Equal(t, "0.005 psi", Field().Format(0.00456*unit.PSI, Usual))
	require.Equal(t, "0 psi", Field().Format(0.000123*unit.PSI, Usual))
	require.Equal(t, "0.0003 bar", SI().Format(0.00456*unit.PSI, Usual))
}

// A band is written as one only where all its three values are.
func TestBandsInPart(t *testing.T) {
	for _, c := range []struct {
		least, nominal, greatest unit.Pressure
		want                     string
	}{
		{3000, 3000, 3100, "3000 psi .. 3000 psi .. 3100 psi"},
		{2900, 3000, 3000, "2900 psi .. 3000 psi .. 3000 psi"},
		{3000, 3100, 3000, "3000 psi .. 3100 psi .. 3000 psi"}, // no band, and written as it is
		{3000, 3000, 3000, "3000 psi"},
	} {
		b := unit.Band[unit.Pressure]{Least: c.least * unit.PSI, Nominal: c.nominal * unit.PSI, Greatest: c.greatest * unit.PSI}
		require.Equal(t, c.want, Field().Format(b, Usual))
	}
}

// A temperature is written exactly on its own scale wherever a number there reads back to it, in 17 digits if it must.
func TestExactTemperatures(t *testing.T) {
	require.Equal(t, "212.3 degF", Field().Exact(unit.Fahrenheit(212.3), Usual))
	require.Equal(t, "37.7 degC", SI().Exact(unit.Celsius(37.7), Usual))
	random := rand.New(rand.NewPCG(11, 12))
	long := 0
	for range 3000 {
		warm := unit.Celsius(300 * random.Float64())
		number := strconv.FormatFloat(warm.Celsius(), 'g', -1, 64)
		var back unit.Temperature
		if err := back.UnmarshalText([]byte(number + " degC")); err != nil || back != warm {
			continue
		}
		text := SI().Exact(warm, Usual)
		require.True(t, strings.HasSuffix(text, " degC"), text)
		if len(strings.ReplaceAll(strings.TrimSuffix(text, " degC"), ".", "")) == 17 {
			long++
		}
	}
	require.Positive(t, long)
}

// A number that isn't a purpose's has no name and no unit, and is the usual purpose.
func TestNoSuchPurpose(t *testing.T) {
	for _, p := range []Purpose{purposes, purposes + 1} {
		require.Equal(t, "unknown", p.String())
		require.Empty(t, SI().Unit(p))
		require.Equal(t, "2 m", SI().Format(unit.Length(2), p))
	}
}

func TestOneTextIsEnough(t *testing.T) {
	require.Equal(t, "bar", Plan("2 m").Unit(Pressure))
	require.Equal(t, "psi", Plan("2 ft").Unit(Pressure))
	require.Equal(t, "kPa", PlanOf([]string{"30 deg"}, []string{"680 kPa"}).Unit(Pressure))
	require.Equal(t, "psi", Plan("1 bar", "1 psi").Unit(Pressure), "of equals the field's")
	require.Equal(t, "bar", Plan("1 MPa", "1 kPa", "1 bar").Unit(Pressure), "of equals SI's")
	require.Equal(t, "kPa", Plan("1 MPa", "1 kPa", "1 bar", "2 kPa").Unit(Pressure))
}

// A unit belongs to its own quantity: by its text, else by its size; but a tonne may be a force and a
// difference of temperatures tells the scale.
func TestWhoseUnitItIs(t *testing.T) {
	written := func(quantity, text string, size float64) one {
		return one{quantity, unit.Symbol{Text: text, Size: size}}
	}
	for _, c := range []struct {
		p    Purpose
		w    one
		want int
	}{
		{Density, written("density", "SG", 1000), 3},
		{Density, written("density", "another spelling", 1000), 2},
		{Density, written("density", "another spelling", 1001), -1},
		{Density, written("pressure", "another spelling", 1000), -1},
		{Force, written("mass", "t", 1000), 4},
		{Force, written("density", "t", 1000), -1},
		{Force, written("mass", "N", 1), -1},
		{Mass, written("mass", "t", 1000), 2},
		{Density, written("mass", "SG", 1), -1},
		{Temperature, written("temperature difference", "degC", 1), 1},
		{Temperature, written("temperature difference", "another spelling", 1), -1},
		{Temperature, written("pressure", "degC", 1), -1},
		{TemperatureDifference, written("temperature", "degC", 1), -1},
		{Pressure, written("temperature difference", "psi", 1), -1},
		{Permeability, written("flow coefficient", "m2", 1), -1},
	} {
		require.Equal(t, c.want, index(rows[c.p], c.w), "%v %v", c.p, c.w)
	}
	require.Equal(t, 1, leaning(written("shear rate", "1/min", 1./60)))
	require.Zero(t, leaning(written("shear rate", "1/s", 1)))
	require.Equal(t, 1, leaning(written("permeability", "D", 9.869233e-13)))
	require.Zero(t, leaning(written("length", "km", 1000)))
	require.Equal(t, -1, leaning(written("pressure", "ksi", 6894757.293168361)))
	require.Equal(t, 1, leaning(written("mass", "t", 1000)))
}

// SI's own unit of a purpose stands before a further one of the purposes before it.
func TestWhatAUnitImplies(t *testing.T) {
	require.Equal(t, Stress, Implied(unit.PSI, "MPa"))
	require.Equal(t, Pressure, Implied(unit.PSI, "kPa"))
	require.Equal(t, Depth, Implied(unit.Foot, "km"))
	require.Equal(t, Usual, Implied(unit.Foot, "furlong"))
	require.Equal(t, Usual, Implied(unit.PSI, "km"))
	for p := Usual + 1; p < purposes; p++ {
		for _, c := range rows[p].choices {
			implied := impliedBy(rows[p].quantity, c.symbol)
			require.Equal(t, rows[p].quantity, rows[implied].quantity)
			_, u, ok := unit.Written("5 " + c.symbol)
			require.True(t, ok)
			require.Equal(t, c.symbol, u.Text, "a row's unit is read as itself, so Rewrite need not ask")
		}
	}
}

// What is shown in its unit anyway keeps its zeros; a name may be the first of all; a unit of one letter may be the last.
func TestRewriteAtTheEdges(t *testing.T) {
	for in, want := range map[string]string{
		"held at 35.00 bar":             "held at 35.00 bar",
		"“plug 3 ft” at 3 ft":           "“plug 3 ft” at 0.914 m",
		"“plug 3 ft”“gun 3 ft” at 3 ft": "“plug 3 ft”“gun 3 ft” at 0.914 m",
		"19.9999 ft":                    "6.09597 m",
		"0.0190e+05 ft":                 "579 m",
		"1e+ ft":                        "1e+ ft",
		"1e+":                           "1e+",
		"3 ":                            "3 ",
		"3":                             "3",
		"-":                             "-",
		"- ft":                          "- ft",
		"3 é":                           "3 é",
	} {
		require.Equal(t, want, SI().Rewrite(in))
	}
	require.Equal(t, "9.84 ft", Field().Rewrite("3 m"))
	for c := range 256 {
		require.Equal(t, c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z', letter(byte(c)), "%q", c)
	}
}
