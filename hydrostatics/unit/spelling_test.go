package unit_test

import (
	"encoding"
	"math"
	"reflect"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// What each text says is common practice; the sizes are held against GNU Units
// by the test of factors.
func TestTheTradesSpellings(t *testing.T) {
	type text interface {
		encoding.TextUnmarshaler
		String() string
	}
	for _, c := range []struct {
		in   string
		into text
		want string
	}{
		{"1.35 SG", new(unit.Density), "1.35 g/cm3"},
		{"9.2 ppg", new(unit.Density), "9.2 lb/gal"},
		{"9.2lbm/gal", new(unit.Density), "9.2 lb/gal"},
		{"68 pcf", new(unit.Density), "68 lb/ft3"},
		{"965 kg/m³", new(unit.Density), "965 kg/m3"},
		{"500 psig", new(unit.Pressure), "500 psi"},
		{"35 barg", new(unit.Pressure), "35 bar"},
		{"35 bar(g)", new(unit.Pressure), "35 bar"},
		{"7000 kPag", new(unit.Pressure), "7 MPa"},
		{"3,000 psi", new(unit.Pressure), "3000 psi"},
		{"-1,234.5 psi", new(unit.Pressure), "-1234.5 psi"},
		{"12 500 ft", new(unit.Length), "12500 ft"},
		{"12 500.3 ft", new(unit.Length), "12500.3 ft"},
		{"5-1/2 in", new(unit.Length), "5.5 in"},
		{"5 1/2 in", new(unit.Length), "5.5 in"},
		{`5 1/2"`, new(unit.Length), "5.5 in"},
		{"5½ in", new(unit.Length), "5.5 in"},
		{"5 ½ in", new(unit.Length), "5.5 in"},
		{"9⅝″", new(unit.Length), "9.625 in"},
		{"½ in", new(unit.Length), "0.5 in"},
		{`4.5"`, new(unit.Length), "4.5 in"},
		{"6'", new(unit.Length), "6 ft"},
		{"2 bpm", new(unit.FlowRate), "2 bbl/min"},
		{"250 gpm", new(unit.FlowRate), "250 gal/min"},
		{"300 L/min", new(unit.FlowRate), "300 L/min"},
		{"1500 stb/d", new(unit.FlowRate), "1500 bbl/d"},
		{"900 Sm3/d", new(unit.FlowRate), "900 m3/d"},
		{"900 m³/d", new(unit.FlowRate), "900 m3/d"},
		{"12 MMscf/d", new(unit.FlowRate), "12000 Mcf/d"},
		{"120 klbf", new(unit.Force), "120000 lbf"},
		{"500 kN", new(unit.Force), "500 kN"},
		{"17 ppf", new(unit.WeightPerLength), "17 lb/ft"},
		{"90 °C", new(unit.Temperature), "90 degC"},
		{"200°F", new(unit.Temperature), "200 degF"},
		{"90 deg C", new(unit.Temperature), "90 degC"},
		{"20 °F", new(unit.TemperatureDifference), "20 degF"},
		{"3 °/30m", new(unit.Curvature), "3 deg/30m"},
		{"3 °/100 ft", new(unit.Curvature), "3 deg/100ft"},
		{"3 microsip", new(unit.Compressibility), "3e-06 1/psi"},
		{"6.9e-6 1/°F", new(unit.Expansivity), "6.9e-06 1/degF"},
	} {
		require.NoError(t, c.into.UnmarshalText([]byte(c.in)), c.in)
		plain := reflect.New(reflect.TypeOf(c.into).Elem()).Interface().(text)
		require.NoError(t, plain.UnmarshalText([]byte(c.want)), c.want)
		require.Equal(t, plain, c.into, c.in)
	}
	var weight unit.Force
	require.NoError(t, weight.UnmarshalText([]byte("50 t")))
	require.InEpsilon(t, 50*9806.65, float64(weight), 1e-15, "the weight of 50 tonnes")
	var mud unit.Density // a gradient of 0.052 psi/ft is not quite a pound per gallon: 77/4 times it
	require.NoError(t, mud.UnmarshalText([]byte("0.052 psi/ft")))
	require.InEpsilon(t, 0.052*77/4, mud.In(unit.PoundPerGallon), 1e-15)
	require.NoError(t, mud.UnmarshalText([]byte("9.80665 kPa/m")))
	require.InEpsilon(t, 1000, float64(mud), 1e-15)
}

// A gauge reads nought in the open air, 101.325 kPa or 14.6959 psi absolute
// (standard atmosphere, 10th CGPM, 1954).
func TestAbsolutePressuresAreTurnedToGauge(t *testing.T) {
	var p unit.Pressure
	for text, want := range map[string]unit.Pressure{
		"101.325 kPaa": 0, "1.01325 bara": 0, "5014.69594877551 psia": 5000 * unit.PSI, "0 psia": -unit.Atmosphere, "11.01325 bar(a)": 10 * unit.Bar, "3,014.69594877551 psi a": 3000 * unit.PSI,
	} {
		require.NoError(t, p.UnmarshalText([]byte(text)), text)
		require.InDelta(t, float64(want), float64(p), 1e-7, text)
	}
	require.ErrorContains(t, p.UnmarshalText([]byte("-1 psia")), "below a vacuum")

	for text, want := range map[string]unit.Pressure{
		"70.1 kPa": 70.1 * unit.Kilopascal, "70.1 kPaa": 70.1 * unit.Kilopascal, "0 barg": unit.Atmosphere, "3207 psia": 3207 * unit.PSI, "0 psi": 0,
	} {
		got, err := unit.ParseAbsolute(text)
		require.NoError(t, err, text)
		require.InDelta(t, float64(want), float64(got), 1e-7, text)
	}
	for _, text := range []string{"-2 barg", "-1 psi", "5 ft", "-1 psia"} {
		_, err := unit.ParseAbsolute(text)
		require.Error(t, err, text)
	}

	var b unit.Band[unit.Pressure]
	require.NoError(t, b.UnmarshalText([]byte("5000 psia +/- 100 psi")))
	require.InDelta(t, 4985.304, b.Nominal.In(unit.PSI), 1e-3)
	require.InDelta(t, 200, (b.Greatest - b.Least).In(unit.PSI), 1e-9)
	require.NoError(t, b.UnmarshalText([]byte("5,000 psig +/- 5 %")))
	require.InDelta(t, 5250, b.Greatest.In(unit.PSI), 1e-9)
	for _, text := range []string{"5000 psia +/- 5 %", "5000 psi +/- 100 psia"} {
		require.ErrorContains(t, b.UnmarshalText([]byte(text)), "absolute", text)
	}
}

func TestWhatStandsForTwoThingsIsRefusedWithBoth(t *testing.T) {
	for _, c := range []struct {
		in   string
		into encoding.TextUnmarshaler
		want []string
	}{
		{"50 ton", new(unit.Force), []string{"short ton", "long ton", "tonne"}},
		{"50 tons", new(unit.Mass), []string{"short ton", "tonne"}},
		{"2 MSm3/d", new(unit.FlowRate), []string{"thousand", "million"}},
		{"2 mscf/d", new(unit.FlowRate), []string{"thousand", "thousandth"}},
		{"10 Mpsi", new(unit.Pressure), []string{"thousand", "million"}},
		{"5 ppb", new(unit.Density), []string{"pounds per barrel", "parts per billion"}},
		{"35 °API", new(unit.Density), []string{"141.5/(131.5 + degAPI)"}},
		{"30 mils", new(unit.Length), []string{"thousandths of an inch", "millimetres"}},
		{"12,345 m", new(unit.Length), []string{"12345", "12.345"}},
		{"9,625 in", new(unit.Length), []string{"9625", "9.625"}},
		{"1,350 SG", new(unit.Density), []string{"1350", "1.350"}},
		{"3,5 psi", new(unit.Pressure), []string{"decimal sign is a point"}},
		{"0,500 psi", new(unit.Pressure), []string{"decimal sign is a point"}},
		{"1,234,56 psi", new(unit.Pressure), []string{"three digits a group"}},
		{"12,34.5 psi", new(unit.Pressure), []string{"three digits a group"}},
		{"5 ppg", new(unit.Pressure), []string{"is a unit of density"}},
		{"5 bpm", new(unit.Volume), []string{"is a unit of flow rate"}},
		{"5 PSI", new(unit.Pressure), []string{`"psi" is (case counts)`}},
		{"5 1/2 psi", new(unit.Pressure), []string{"not a decimal number"}},
		{"5 8/8 in", new(unit.Length), []string{"nor a size such as 2-7/8"}},
		{"5 1/2 1/4 in", new(unit.Length), []string{"not a unit here"}},
		{"3 00 psi", new(unit.Pressure), []string{"not a unit here"}},
		{"0 300 psi", new(unit.Pressure), []string{"not a decimal number"}},
		{"5' 6\"", new(unit.Length), []string{"not a unit here"}},
	} {
		err := c.into.UnmarshalText([]byte(c.in))
		require.Error(t, err, c.in)
		for _, want := range c.want {
			require.ErrorContains(t, err, want, c.in)
		}
	}
	// Two commas leave one reading.
	var v unit.Volume
	require.NoError(t, v.UnmarshalText([]byte("1,250,000 m3")))
	require.InEpsilon(t, 1.25e6, float64(v), 1e-15)
}

// Every spelling that the programme says it reads, each as its quantity, held against a
// value in SI worked by hand from the definitions.
func TestEverySpellingThatIsPromised(t *testing.T) {
	const psi, pound, foot, barrel, gallon = 4.4482216152605 / 0.00064516, 0.45359237, 0.3048, 0.158987294928, 0.003785411784
	for _, c := range []struct {
		in   string
		into encoding.TextUnmarshaler
		want float64
	}{
		{"1.35 SG", new(unit.Density), 1350}, {"1.35 sg", new(unit.Density), 1350},
		{"11.3 ppg", new(unit.Density), 11.3 * pound / gallon}, {"11.3 lbm/gal", new(unit.Density), 11.3 * pound / gallon}, {"84.3 pcf", new(unit.Density), 84.3 * pound / (foot * foot * foot)},
		{"0.6 psi/ft", new(unit.Density), 0.6 * psi / foot / 9.80665}, {"13 kPa/m", new(unit.Density), 13000 / 9.80665},
		{"3000 psig", new(unit.Pressure), 3000 * psi}, {"250 barg", new(unit.Pressure), 25e6}, {"3000 psia", new(unit.Pressure), 3000*psi - 101325},
		{"250 bara", new(unit.Pressure), 25e6 - 101325}, {"25000 kPaa", new(unit.Pressure), 25e6 - 101325},
		{"3,000 psi", new(unit.Pressure), 3000 * psi},
		{"2 bpm", new(unit.FlowRate), 2 * barrel / 60}, {"84 gpm", new(unit.FlowRate), 84 * gallon / 60}, {"300 L/min", new(unit.FlowRate), 0.3 / 60},
		{"900 m³/d", new(unit.FlowRate), 900.0 / 86400}, {"900 Sm3/d", new(unit.FlowRate), 900.0 / 86400}, {"1500 stb/d", new(unit.FlowRate), 1500 * barrel / 86400},
		{"12 MMscf/d", new(unit.FlowRate), 12e6 * foot * foot * foot / 86400},
		{"120 klbf", new(unit.Force), 120e3 * pound * 9.80665}, {"500 kN", new(unit.Force), 5e5}, {"50 t", new(unit.Force), 50e3 * 9.80665},
		{"12.6 ppf", new(unit.WeightPerLength), 12.6 * pound / foot * 9.80665},
		{"2 deg/30m", new(unit.Curvature), 2 * math.Pi / 180 / 30}, {"2 deg/100ft", new(unit.Curvature), 2 * math.Pi / 180 / (100 * foot)},
		{"5-1/2 in", new(unit.Length), 0.1397}, {"5 1/2 in", new(unit.Length), 0.1397}, {`4.5"`, new(unit.Length), 0.1143},
	} {
		require.NoError(t, c.into.UnmarshalText([]byte(c.in)), c.in)
		require.InEpsilon(t, c.want, reflect.ValueOf(c.into).Elem().Float(), 1e-13, c.in)
	}
	for in, kelvin := range map[string]float64{"90 °C": 363.15, "212 °F": 373.15} {
		var warm unit.Temperature
		require.NoError(t, warm.UnmarshalText([]byte(in)), in)
		require.InEpsilon(t, kelvin, warm.Kelvin(), 1e-13, in)
	}
	// No prefix is read before a unit that the tables haven't with it.
	for _, in := range []string{"3 Mbar", "3 kbarg", "3 Gpsi", "3 mpsi"} {
		require.Error(t, new(unit.Pressure).UnmarshalText([]byte(in)), in)
	}
}
