package unit_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// quantity is one plain quantity, seen through its text.
type quantity struct {
	name   string
	symbol string // one of its units, not SI
	format func(x float64) ([]byte, error)
	parse  func(text string) (float64, error)
	people func(x float64) string
	text   func(x float64) string
	count  func(x, of float64) float64
}

func of[Q unit.Scalar](name, symbol string) quantity {
	return quantity{
		name:   name,
		symbol: symbol,
		format: func(x float64) ([]byte, error) { return Q(x).MarshalText() },
		parse: func(text string) (float64, error) {
			var q Q
			err := any(&q).(encoding.TextUnmarshaler).UnmarshalText([]byte(text))
			return float64(q), err
		},
		people: func(x float64) string { return Q(x).Rounded(4) },
		text:   func(x float64) string { return Q(x).String() },
		count:  func(x, of float64) float64 { return any(Q(x)).(interface{ In(Q) float64 }).In(Q(of)) },
	}
}

func quantities() []quantity {
	return []quantity{
		of[unit.Length]("length", "ft"),
		of[unit.Area]("area", "in2"),
		of[unit.Volume]("volume", "bbl"),
		of[unit.Angle]("angle", "deg"),
		of[unit.Curvature]("curvature", "deg/100ft"),
		of[unit.Mass]("mass", "lb"),
		of[unit.MassRate]("mass rate", "lb/s"),
		of[unit.Force]("force", "lbf"),
		of[unit.WeightPerLength]("weight per length", "lb/ft"),
		of[unit.Pressure]("pressure", "psi"),
		of[unit.Density]("density", "lb/gal"),
		of[unit.Gradient]("pressure gradient", "psi/ft"),
		of[unit.TemperatureDifference]("temperature difference", "degF"),
		of[unit.TemperatureGradient]("temperature gradient", "degF/100ft"),
		of[unit.FlowRate]("flow rate", "bbl/d"),
		of[unit.Velocity]("velocity", "ft/s"),
		of[unit.ShearRate]("shear rate", "1/min"),
		of[unit.Viscosity]("viscosity", "cP"),
		of[unit.Consistency]("consistency index", "lbf.s^n/100ft2"),
		of[unit.Compressibility]("compressibility", "1/psi"),
		of[unit.Expansivity]("expansivity", "1/degF"),
		of[unit.Torque]("torque", "ft-lbf"),
		of[unit.Power]("power", "hp"),
		of[unit.SecondMoment]("second moment of area", "in4"),
		of[unit.Permeability]("permeability", "mD"),
		of[unit.FlowCoefficient]("flow coefficient", "Cv"),
		of[unit.SpecificHeat]("specific heat", "Btu/lb/degF"),
		of[unit.Conductivity]("thermal conductivity", "Btu/h/ft/degF"),
		of[unit.HeatTransfer]("heat transfer coefficient", "Btu/h/ft2/degF"),
		of[unit.Diffusivity]("thermal diffusivity", "ft2/d"),
		of[unit.ProductivityIndex]("productivity index", "bbl/d/psi"),
	}
}

// Text must give back the same bits, whatever the magnitude.
func TestTextRoundTripsToTheBit(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, q := range quantities() {
		values := []float64{0, math.Copysign(0, -1), 1, -1, 0.1, 1e-300, 1e300, math.MaxFloat64, math.SmallestNonzeroFloat64}
		for range 300 {
			values = append(values, math.Float64frombits(r.Uint64()), r.NormFloat64()*math.Pow(10, 20*r.Float64()-10))
		}
		// What people type comes back as typed.
		for _, typed := range []string{"5000", "0.1", "9.2", "12.75", "1e-6", "-40"} {
			text := typed + " " + q.symbol
			x, err := q.parse(text)
			require.NoError(t, err, "%s %q", q.name, text)
			values = append(values, x)
		}
		for _, x := range values {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				continue
			}
			text, err := q.format(x)
			require.NoError(t, err, "%s %g", q.name, x)
			back, err := q.parse(string(text))
			require.NoError(t, err, "%s %q", q.name, text)
			require.Equal(t, math.Float64bits(x), math.Float64bits(back), "%s %g as %q came back as %g", q.name, x, text, back)
			require.NotEmpty(t, q.people(x))
		}
	}
}

// Every pressure is written in psi, also those that no float64 times a psi
// meets, and in SI only near the ends of what a float64 holds.
func TestTextStaysInTheTradesUnit(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	longest, unmet := 0, 0
	for range 20000 {
		p := unit.Pressure(r.ExpFloat64() * 3e7)
		text := p.String()
		require.True(t, strings.HasSuffix(text, " psi"), "%g Pa is written %q", float64(p), text)
		var back unit.Pressure
		require.NoError(t, back.UnmarshalText([]byte(text)))
		require.Equal(t, p, back, text)
		longest = max(longest, len(text))
		v := p.In(unit.PSI)
		if unit.Pressure(v)*unit.PSI != p && unit.Pressure(math.Nextafter(v, 0))*unit.PSI != p && unit.Pressure(math.Nextafter(v, 1e300))*unit.PSI != p {
			unmet++
		}
	}
	require.LessOrEqual(t, longest, len("12345.6789012345678 psi")+3)
	require.Positive(t, unmet, "without them the test shows nothing")
	t.Logf("%d of 20000 are met by no float64 in psi", unmet)

	// As GNU units has it, 1 psi = 6894.75729316836 Pa: a long number is taken to
	// all of its digits, and one beyond reason as any other.
	for _, text := range []string{"4300.0000000000000000 psi", "4300." + strings.Repeat("0", 500) + "1 psi", "0004300.0000 psi", "+4.3E3 psi"} {
		var p unit.Pressure
		require.NoError(t, p.UnmarshalText([]byte(text)))
		require.InEpsilon(t, float64(4300*unit.PSI), float64(p), 2e-16, text)
	}
}

// A number typed in a trade unit is printed in as few digits as it was typed.
func TestTypedTextIsPrintedAsTyped(t *testing.T) {
	read := 0
	for _, text := range []string{"5000 psi", "9.2 lb/gal", "0.052 psi/ft", "12000 ft", "4.1 deg/100ft", "0.3 cP", "17 lb/ft", "3e-06 1/psi", "35 bar", "150.3 mm", "0.424886 L", "965.4 kg/m3"} {
		for _, q := range quantities() {
			x, err := q.parse(text)
			if err != nil || q.name == "density" && text == "0.052 psi/ft" { // a density is written as one
				continue
			}
			got, err := q.format(x)
			require.NoError(t, err)
			require.Equal(t, text, string(got))
			read++
		}
	}
	require.Equal(t, 12, read, "each is read by its own quantity")
}

func TestWhatIsNotAQuantity(t *testing.T) {
	for _, q := range quantities() {
		for _, text := range []string{
			"", " ", "5", "5 ", q.symbol, " " + q.symbol, "NaN " + q.symbol, "Inf " + q.symbol, "-Inf " + q.symbol,
			"nan" + q.symbol, "infinity " + q.symbol, "0x10 " + q.symbol, "1_000 " + q.symbol, "1,00 " + q.symbol, "0,100 " + q.symbol, "1,0000 " + q.symbol, "1,000e3 " + q.symbol, "1e999 " + q.symbol,
			"1.7e308 parsec", "5 furlong", "5 5 " + q.symbol, "5 " + q.symbol + q.symbol, "--5 " + q.symbol, "1e " + q.symbol, "5/0 " + q.symbol,
		} {
			_, err := q.parse(text)
			var e *unit.ParseError
			require.ErrorAs(t, err, &e, "%s %q", q.name, text)
			require.Equal(t, text, e.Text)
			require.Equal(t, q.name, e.Quantity)
			require.NotEmpty(t, e.Units)
			require.Contains(t, err.Error(), fmt.Sprintf("%q", text))
		}
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			_, err := q.format(x)
			require.Error(t, err, "%s %g", q.name, x)
		}
	}
}

// A unit of another quantity is refused, and the error says whose it is.
func TestUnitsOfAnotherQuantity(t *testing.T) {
	for _, q := range quantities() {
		for _, other := range quantities() {
			if q.name == other.name {
				continue
			}
			_, err := q.parse("5 " + other.symbol)
			switch [2]string{q.name, other.symbol} {
			case [2]string{"density", "psi/ft"}, [2]string{"force", "lb"}: // as the trade has it
				require.NoError(t, err)
				continue
			}
			require.ErrorContains(t, err, "is a unit of "+other.name, "%s read from %s", q.name, other.symbol)
		}
	}
	var p unit.Pressure
	require.ErrorContains(t, p.UnmarshalText([]byte("5 PSI")), `"psi" is (case counts)`)
}

// A failed read leaves the old value.
func TestFailedReadLeavesTheValue(t *testing.T) {
	p := 5 * unit.PSI
	require.Error(t, p.UnmarshalText([]byte("7 ft")))
	require.Equal(t, 5*unit.PSI, p)
	temperature := unit.Fahrenheit(70)
	require.Error(t, temperature.UnmarshalText([]byte("70")))
	require.Equal(t, unit.Fahrenheit(70), temperature)
}

func TestPipeSizes(t *testing.T) {
	for text, inches := range map[string]float64{"9-5/8 in": 9.625, "2-7/8in": 2.875, "7/8 in": 0.875, "7 in": 7, "13-3/8 in": 13.375} {
		var d unit.Length
		require.NoError(t, d.UnmarshalText([]byte(text)), text)
		require.InDelta(t, inches, d.In(unit.Inch), 1e-14, text)
	}
	for _, text := range []string{"9-8/8 in", "9-9/8 in", "9-/8 in", "-5/8 in", "9-5/0 in", "9-5/8", "9-5/8-1 in", "5/8/2 in", "1.5-5/8 in"} {
		var d unit.Length
		require.Error(t, d.UnmarshalText([]byte(text)), text)
	}
}

func TestJSONAndFlags(t *testing.T) {
	type well struct {
		Depth       unit.Length
		Temperature unit.Temperature
		Pins        unit.Band[unit.Pressure]
	}
	in := well{9000 * unit.Foot, unit.Fahrenheit(210), unit.Band[unit.Pressure]{Least: 2850 * unit.PSI, Nominal: 3000 * unit.PSI, Greatest: 3150 * unit.PSI}}
	text, err := json.Marshal(in)
	require.NoError(t, err)
	require.JSONEq(t, `{"Depth":"9000 ft","Temperature":"210 degF","Pins":"2850 psi .. 3000 psi .. 3150 psi"}`, string(text))
	var back well
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, in, back)

	var p unit.Pressure
	set := flag.NewFlagSet("", flag.ContinueOnError)
	set.SetOutput(io.Discard)
	set.TextVar(&p, "p", 100*unit.PSI, "")
	require.NoError(t, set.Parse([]string{"-p", "5 bar"}))
	require.Equal(t, 5*unit.Bar, p)
	require.Error(t, set.Parse([]string{"-p", "5"}))
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"5000 psi", "9-5/8 in", "1e-6 1/psi", "-0 ft", "5e", "1e5e5 m", "+.5\u00a0bar", "NaN psi", "±5", "1e-400 m", "4300.00000000000013724 psi", "5 1/2 in", "9⅝\"", "3,000 psig", "-1,234,567.8 lbf", "12 500 ft", "1.35 SG", "14.6959487755134 psia", "5-1/2\"", "20 100°C", "1 MMscf/d", "5 ton", ",5 m", "1 000 1/psi", "12345678901234567890123e-5 lbf"} {
		f.Add(seed)
	}
	all := quantities()
	f.Fuzz(func(t *testing.T, text string) {
		for _, q := range all {
			x, err := q.parse(text)
			if err != nil {
				var e *unit.ParseError
				if !errors.As(err, &e) {
					t.Fatalf("%s %q: %v is no ParseError", q.name, text, err)
				}
				continue
			}
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%s %q read as %g", q.name, text, x)
			}
			out, err := q.format(x)
			if err != nil {
				t.Fatalf("%s %q: %v", q.name, text, err)
			}
			if back, err := q.parse(string(out)); err != nil || math.Float64bits(back) != math.Float64bits(x) {
				t.Fatalf("%s %q = %g was written %q and read as %g, %v", q.name, text, x, out, back, err)
			}
		}
	})
}

func FuzzBand(f *testing.F) {
	for _, seed := range []string{"3000 psi", "2850 psi .. 3150 psi", "1 psi..2 psi..3 psi", "3000 psi +/- 5 %", "3000 psi ± 150 psi", "1 psi .. ", "-5 psi +/- 200%"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var b, back unit.Band[unit.Pressure]
		if b.UnmarshalText([]byte(text)) != nil {
			return
		}
		if err := b.Validate(); err != nil {
			t.Fatalf("%q read as a bad band: %v", text, err)
		}
		out, err := b.MarshalText()
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if err := back.UnmarshalText(out); err != nil || back != b {
			t.Fatalf("%q = %v was written %q and read as %v, %v", text, b, out, back, err)
		}
	})
}

// Rounded stays in the unit that a person would take, unless another says the
// same shorter.
func TestRoundedUnit(t *testing.T) {
	for want, got := range map[string]string{
		"10 ft":     (120 * unit.Inch).Rounded(5),
		"5775 ft":   (5775 * unit.Foot).Rounded(4), // not 69300 in
		"9.625 in":  (9.625 * unit.Inch).Rounded(5),
		"8 bbl/min": (8 * unit.BarrelPerMinute).Rounded(5), // not 11520 bbl/d

		"0 ft":       unit.Length(0).Rounded(5), // a depth, as most noughts are
		"0 bbl":      unit.Volume(0).String(),
		"2e+300 psi": (2e300 * unit.PSI).Rounded(3), // and not 300 digits
		"1.5e+15 ft": (1.5e15 * unit.Foot).Rounded(3),
	} {
		if got != want {
			t.Errorf("rounded to %q, want %q", got, want)
		}
	}
}
