package unit_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func lengthOf(t *testing.T, text string) unit.Length {
	var l unit.Length
	require.NoError(t, l.UnmarshalText([]byte(text)), text)
	return l
}

// Numbers as people write them, each with what it is in metres or what is wrong with it.
func TestNumbersAtTheEdges(t *testing.T) {
	for text, want := range map[string]float64{
		"2 10/16 in":        2.625 * 0.0254,
		"1-9/10 in":         1.9 * 0.0254,
		"40000/65535 in":    40000.0 / 65535 * 0.0254,
		"65535-1/2 in":      65535.5 * 0.0254,
		"0/1 in":            0,
		"5 ½ in":            5.5 * 0.0254,
		"12 500.5 ft":       12500.5 * 0.3048,
		"12 500.125 ft":     12500.125 * 0.3048,
		"12\u00a0500 ft":    12500 * 0.3048,
		"12\t500 ft":        12500 * 0.3048,
		"5e3m":              5000,
		"5e+3m":             5000,
		"5E3 m":             5000,
		"12,500.25 ft":      12500.25 * 0.3048,
		"+1,500 ft":         1500 * 0.3048,
		"1,234,567.5 ft":    1234567.5 * 0.3048,
		"20\u202fft":        20 * 0.3048,
		"12\u2009500 ft\t ": 12500 * 0.3048,
	} {
		require.InDelta(t, want, float64(lengthOf(t, text)), 1e-12*want, text)
	}
	for text, problem := range map[string]string{
		"65536-1/2 in": `"65536-1/2" is neither a decimal number nor a size`,
		"1/65536 in":   `"1/65536" is neither a decimal number nor a size`,
		"1/0 in":       `"1/0" is neither`,
		"3/3 in":       `"3/3" is neither`,
		"5 1 1/2 in":   "length",
		"5 /8 in":      `"/8 in" is not a unit here`,
		"+-3,000 ft":   `"+-3,000" is not a decimal number: a comma parts thousands`,
		"3,000.5e3 ft": "is not a decimal number: a comma parts thousands",
		"3,0000 ft":    "is not a decimal number: a comma parts thousands",
		"3,00 ft":      "is not a decimal number: a comma parts thousands",
		",300 ft":      "is not a decimal number: a comma parts thousands",
		"0,300 ft":     "is not a decimal number: a comma parts thousands",
		"1234,300 ft":  "is not a decimal number: a comma parts thousands",
		"m 5":          `"m" is not a decimal number`,
		"e5 m":         "is not a decimal number",
		"-1e306 km":    "too large",
		"1e306 km":     "too large",
		"12 50 ft":     `"50 ft" is not a unit here`,
		"1,000,00 ft":  "is not a decimal number",
	} {
		var l unit.Length
		require.ErrorContains(t, l.UnmarshalText([]byte(text)), problem, text)
	}
	// what begins with a vowel is read as an, the rest as a
	var a unit.Area
	require.ErrorContains(t, a.UnmarshalText([]byte("x")), " as an area: ")
	var e unit.Expansivity
	require.ErrorContains(t, e.UnmarshalText([]byte("x")), " as an expansivity: ")
	var v unit.Volume
	require.ErrorContains(t, v.UnmarshalText([]byte("x")), " as a volume: ")
	require.Equal(t, `unit: cannot read "5" as a size: odd`, (&unit.ParseError{Quantity: "size", Text: "5", Problem: "odd"}).Error())
	require.Equal(t, `unit: cannot read "5" as a size: odd; write a number with one of m`, (&unit.ParseError{Quantity: "size", Text: "5", Problem: "odd", Units: []string{"m"}}).Error())
	for _, q := range unit.Quantities() {
		for _, s := range q.Spellings {
			require.NotEqual(t, "psia", s.Text, "an absolute pressure is no other spelling of a gauge one")
		}
		if q.Name == "pressure" {
			require.NotEmpty(t, q.Spellings)
		}
	}
}

// Digits of Significant, on both sides of each of its limits.
func TestSignificantAtItsLimits(t *testing.T) {
	for _, c := range []struct {
		v      float64
		digits int
		want   string
	}{
		{5.67, 1, "6"}, {5.67, 0, "6"}, {5.67, -3, "6"}, {5.67e-7, 0, "6e-07"}, {5.67e-7, 1, "6e-07"}, {1.23456e-7, 3, "1.23e-07"},
		{0.12345678901234568, 30, "0.12345678901234568"}, {0.12345678901234568, 16, "0.1234567890123457"}, {0.1, 40, "0.10000000000000001"},
		{1e-4, 3, "0.0001"}, {1.5e-4, 3, "0.00015"}, {9.9e-5, 3, "9.9e-05"}, {2e-5, 3, "2e-05"},
		{2e13, 3, "20000000000000"}, {2e14, 3, "200000000000000"}, {9.9e14, 3, "990000000000000"}, {1e15, 3, "1e+15"}, {-1e15, 17, "-1e+15"}, {math.Nextafter(1e15, 0), 17, "999999999999999.88"},
		{math.Nextafter(1e-4, 0), 17, "9.9999999999999991e-05"}, {2e15, 3, "2e+15"}, {1.25e16, 2, "1.2e+16"},
		{math.NaN(), 3, "NaN"}, {math.Inf(1), 3, "+Inf"}, {math.Inf(-1), 3, "-Inf"}, {0, 3, "0"}, {math.Copysign(0, -1), 3, "0"}, {-5.67, 2, "-5.7"},
	} {
		require.Equal(t, c.want, unit.Significant(c.v, c.digits), "%v to %d", c.v, c.digits)
	}
	require.Equal(t, "NaN in", unit.Length(math.NaN()).Rounded(3))
	require.Equal(t, "-Inf m", unit.Length(math.Inf(-1)).String())
	require.Equal(t, "+Inf m", unit.Length(math.Inf(1)).String())
}

// Another unit that says the same is taken where it does to a millionth of a millionth, whatever the size.
func TestTheSameInAnotherUnitButForRounding(t *testing.T) {
	require.Equal(t, "10 ft", unit.Length(3.048*(1+6e-13)).Rounded(3))
	require.Equal(t, "120 in", unit.Length(3.048*(1+2e-12)).Rounded(3))
	require.Equal(t, "10 ft", unit.Length(3.048*(1-6e-13)).Rounded(3))
	require.Equal(t, "120 in", unit.Length(3.048*(1-2e-12)).Rounded(3))
}

// Where people take the larger unit: feet from 20 ft on, barrels from one.
func TestWhereTheLargerUnitBegins(t *testing.T) {
	for _, x := range []struct {
		rounded        func(k float64) string
		above, beneath string
	}{
		{func(k float64) string { return unit.Length(20 * 0.3048 * k).Rounded(5) }, "20 ft", "240 in"},
		{func(k float64) string { return unit.Volume(0.158987294928 * k).Rounded(5) }, "1 bbl", "42 gal"},
	} {
		require.Equal(t, x.above, x.rounded(1+2e-7))
		require.Equal(t, x.beneath, x.rounded(1-2e-7))
	}
}

// What was typed in another unit than the trade's is written in whichever of all units has few digits: one in which it
// is 0.1 to 1000 if there is any, and of those the shortest.
func TestTheHandiestUnit(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 30))
	for _, q := range unit.Quantities() {
		if q.Name != "pressure" && q.Name != "volume" && q.Name != "length" {
			continue
		}
		for range 400 {
			u := q.Units[r.IntN(len(q.Units))]
			number := strconv.Itoa(1+r.IntN(9999)) + "e" + strconv.Itoa(r.IntN(5)-3)
			x, err := unit.ParseNamed(q.Name, number+" "+u.Text)
			require.NoError(t, err)
			var text string
			switch q.Name {
			case "pressure":
				text = unit.Pressure(x).String()
			case "volume":
				text = unit.Volume(x).String()
			default:
				text = unit.Length(x).String()
			}
			handy, shortest := map[string]int{}, map[string]int{}
			for _, u := range q.Units {
				s := strconv.FormatFloat(x/u.Size, 'g', 8, 64)
				v, err := strconv.ParseFloat(s, 64)
				require.NoError(t, err)
				if v*u.Size != x || strings.Contains(s, "e-") {
					continue
				}
				shortest[s+" "+u.Text] = len(s + " " + u.Text)
				if math.Abs(x/u.Size) >= 0.1 && math.Abs(x/u.Size) < 1000 {
					handy[s+" "+u.Text] = len(s + " " + u.Text)
				}
			}
			if len(handy) == 0 {
				handy = shortest
			}
			number, symbol, _ := strings.Cut(text, " ")
			if slices.Contains([]string{"psi", "bbl", "gal", "ft", "in"}, symbol) { // the trade's: in few digits, or because none has few
				require.True(t, len(handy) == 0 || len(strings.Trim(strings.ReplaceAll(number, ".", ""), "0")) <= 12, "%s, and not one of %v", text, handy)
				continue
			}
			require.Contains(t, handy, text)
			for other, long := range handy {
				require.LessOrEqual(t, len(text), long, "%s for %s", text, other)
			}
		}
	}
	for text, want := range map[string]string{
		"35 bar": "35 bar", "0.05 bar": "5 kPa", "5 kPa": "5 kPa", "3.7 MPa": "37 bar", "12.345678 bar": "1.2345678 MPa", "4321 bar": "432.1 MPa", "1.25 kPa": "1.25 kPa", "37 Pa": "37 Pa",
	} {
		var p unit.Pressure
		require.NoError(t, p.UnmarshalText([]byte(text)))
		require.Equal(t, want, p.String(), text)
	}
	var p unit.Pressure
	require.NoError(t, p.UnmarshalText([]byte("12.3456789 bar")))
	require.True(t, strings.HasSuffix(p.String(), " psi"), "nine digits: the trade's unit")
	require.Equal(t, "4.5e-10 1/Pa", unit.Compressibility(4.5e-10).String())
	require.NotContains(t, unit.Length(1.5e-5).String(), "km")
}

// What 17 digits in psi miss is written in 18 wherever 18 do, by exact arithmetic.
func TestNoMoreDigitsThanNeeded(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 31))
	size := new(big.Float).SetPrec(300).SetFloat64(float64(unit.PSI))
	longer := 0
	for range 3000 {
		x := math.Ldexp(1+r.Float64(), 10+r.IntN(15))
		number, ok := unit.Count(x, float64(unit.PSI))
		require.True(t, ok)
		digits := len(strings.Trim(strings.ReplaceAll(strings.Split(number, "e")[0], ".", ""), "0"))
		if digits <= 17 {
			continue
		}
		longer++
		exact := new(big.Float).SetPrec(300).SetFloat64(x)
		short := new(big.Float).Quo(exact, size).Text('g', 18)
		back, _, err := big.ParseFloat(short, 10, 300, big.ToNearestEven)
		require.NoError(t, err)
		if v, _ := back.Mul(back, size).Float64(); v == x && len(strings.Trim(strings.ReplaceAll(strings.Split(short, "e")[0], ".", ""), "0")) == 18 { // fewer are read as a float64
			require.LessOrEqual(t, digits, 18, number)
		}
	}
	require.Greater(t, longer, 100)
}

// A Duration holds 292 years, either way.
func TestHowLongAVolumeMayTake(t *testing.T) {
	for _, sign := range []float64{1, -1} {
		took, ok := unit.Volume(sign * 9.2e9).Takes(1)
		require.True(t, ok)
		require.InDelta(t, sign*9.2e18, float64(took), 1e4)
		took, ok = unit.Volume(sign * 9.3e9).Takes(1)
		require.False(t, ok)
		require.Zero(t, took)
		took, ok = unit.Volume(sign * 5e9).Takes(1)
		require.True(t, ok)
		require.InDelta(t, sign*5e18, float64(took), 1e4)
	}
	took, ok := unit.Volume(2.5).Takes(0.5)
	require.True(t, ok)
	require.Equal(t, 5*time.Second, took)
	took, ok = unit.Volume(0).Takes(0)
	require.False(t, ok)
	require.Zero(t, took)
}

// Bands: each of their values, ends that are not in order, tolerances typed to fifteen digits.
func TestBandsAtTheEdges(t *testing.T) {
	require.Equal(t, unit.Band[unit.Length]{Least: 8, Nominal: 12, Greatest: 20}, unit.Band[unit.Length]{Least: 2, Nominal: 3, Greatest: 5}.Times(4))
	require.Equal(t, unit.Band[unit.Length]{Least: -20, Nominal: -12, Greatest: -8}, unit.Band[unit.Length]{Least: 2, Nominal: 3, Greatest: 5}.Times(-4))
	require.Equal(t, unit.Band[unit.Length]{}, unit.Band[unit.Length]{Least: 2, Nominal: 3, Greatest: 5}.Times(0))
	for _, c := range []struct {
		least, nominal, greatest unit.Length
		want                     string
	}{
		{3, 3, 4, "3 m .. 3 m .. 4 m"}, {2, 3, 3, "2 m .. 3 m .. 3 m"}, {3, 4, 3, "3 m .. 4 m .. 3 m"}, {3, 3, 3, "3 m"},
	} {
		require.Equal(t, c.want, unit.Band[unit.Length]{Least: c.least, Nominal: c.nominal, Greatest: c.greatest}.String())
		rounded := unit.Band[unit.Length]{Least: c.least * unit.Foot, Nominal: c.nominal * unit.Foot, Greatest: c.greatest * unit.Foot}.Rounded(3)
		require.Equal(t, strings.ReplaceAll(c.want, " m", " ft"), rounded)
	}
	for _, x := range []float64{math.Inf(-1), math.Inf(1), math.NaN()} {
		require.ErrorContains(t, unit.Band[unit.Length]{Least: unit.Length(x), Nominal: 1, Greatest: 2}.Validate(), "must be finite")
	}
	var b unit.Band[unit.Length]
	require.NoError(t, b.UnmarshalText([]byte("999999999.999999 ft +/- 0 %")))
	require.Equal(t, b.Nominal, b.Least)
	require.Equal(t, b.Nominal, b.Greatest)
	for k := 1; k < 400; k++ { // the middle reads as typed
		high := 1 + float64(k)/1000
		require.NoError(t, b.UnmarshalText([]byte("1 m .. "+strconv.FormatFloat(high, 'g', -1, 64)+" m")))
		middle, err := strconv.ParseFloat(strconv.FormatFloat(1+float64(k)/2000, 'g', 15, 64), 64)
		require.NoError(t, err)
		require.Equal(t, unit.Length(middle), b.Nominal, "%v", high)
	}
}

// A temperature is written on a scale on which 17 digits read back to it, Fahrenheit of two alike.
func TestTemperaturesAtTheEdges(t *testing.T) {
	require.Equal(t, "50 degF", unit.Celsius(10).String())
	require.Equal(t, "37.5 degC", unit.Celsius(37.5).String())
	for _, x := range []float64{math.Inf(-1), math.Inf(1), math.NaN()} {
		_, err := unit.Kelvin(x).MarshalText()
		require.ErrorContains(t, err, "not a finite number")
	}
	r := rand.New(rand.NewPCG(3, 32))
	long := 0
	for range 3000 {
		warm := unit.Kelvin(250 + 300*r.Float64())
		met := false
		for symbol, v := range map[string]float64{"degF": warm.Fahrenheit(), "degC": warm.Celsius()} {
			var back unit.Temperature
			require.NoError(t, back.UnmarshalText([]byte(strconv.FormatFloat(v, 'e', 16, 64)+" "+symbol)))
			met = met || back == warm
		}
		text := warm.String()
		require.Equal(t, !met, strings.HasSuffix(text, " K"), text)
		if digits := strings.ReplaceAll(strings.Split(text, " ")[0], ".", ""); met && len(digits) == 17 {
			long++
		}
	}
	require.Positive(t, long)
}
