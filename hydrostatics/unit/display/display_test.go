package display

import (
	"encoding"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// sample is 1 in SI of every quantity.
var sample = []any{unit.Length(1), unit.Pressure(1), unit.Volume(1), unit.FlowRate(1), unit.Area(1), unit.Velocity(1), unit.Angle(1), unit.Curvature(1),
	unit.Mass(1), unit.MassRate(1), unit.Force(1), unit.WeightPerLength(1), unit.Density(1), unit.Gradient(1), unit.TemperatureDifference(1),
	unit.TemperatureGradient(1), unit.ShearRate(1), unit.Viscosity(1), unit.Consistency(1), unit.Compressibility(1), unit.Expansivity(1), unit.Power(1), unit.Torque(1),
	unit.SecondMoment(1), unit.Permeability(1), unit.FlowCoefficient(1), unit.SpecificHeat(1), unit.Conductivity(1), unit.HeatTransfer(1), unit.Diffusivity(1),
	unit.ProductivityIndex(1), unit.Kelvin(1)}

// Every unit of every row reads as its size; every quantity of package unit has a
// row and is measured.
func TestRowsAgainstTheUnits(t *testing.T) {
	sizes := map[[2]string]float64{}
	covered := map[string]bool{}
	for _, q := range unit.Quantities() {
		for _, u := range append(q.Units, q.Spellings...) {
			sizes[[2]string{q.Name, u.Text}] = u.Size
		}
	}
	for p := Usual + 1; p < purposes; p++ {
		r := rows[p]
		covered[r.quantity] = true
		require.GreaterOrEqual(t, len(r.choices), 2, "%v has a field and an SI unit", p)
		for _, c := range r.choices {
			size, ok := sizes[[2]string{r.quantity, c.symbol}]
			require.True(t, ok, "%v: %q is no unit of %s", p, c.symbol, r.quantity)
			require.InEpsilon(t, size, c.size, 1e-15, "%v %s", p, c.symbol)
		}
		require.NotEmpty(t, p.String())
	}
	measured := map[string]bool{}
	for _, v := range sample {
		si, usual, ok := measure(v)
		require.True(t, ok, "%T", v)
		require.Equal(t, 1.0, si)
		measured[rows[usual].quantity] = true
	}
	for _, q := range unit.Quantities() {
		require.True(t, covered[q.Name], "%s has no row", q.Name)
		require.True(t, measured[q.Name], "%s is not measured", q.Name)
	}
}

// One unit whatever the size, to the digits that can be used.
func TestFormat(t *testing.T) {
	for _, c := range []struct {
		v         any
		p         Purpose
		field, si string
	}{
		{9186.35 * unit.Foot, Depth, "9186.4 ft", "2800 m"},
		{2 * unit.Inch, Depth, "0.167 ft", "0.0508 m"},
		{3 * unit.Kilometre, Usual, "9842.5 ft", "3000 m"},
		{5.5 * unit.Inch, Diameter, "5.5 in", "139.7 mm"},
		{52.317 * unit.Inch, Stroke, "52.3 in", "1329 mm"},
		{3000.4 * unit.PSI, Pressure, "3000 psi", "206.9 bar"},
		{80000 * unit.PSI, Stress, "80000 psi", "551.6 MPa"},
		{0.01 * unit.Barrel, Volume, "0.01 bbl", "0.00159 m3"},
		{0.5 * unit.Litre, SmallVolume, "0.132 gal", "0.5 L"},
		{9.2 * unit.PoundPerGallon, Usual, "9.2 lb/gal", "1102 kg/m3"},
		{120 * unit.Kilopound, Usual, "120000 lbf", "533.8 kN"},
		{unit.Fahrenheit(212), Usual, "212 degF", "100 degC"},
		{180 * unit.FahrenheitDifference, Usual, "180 degF", "100 degC"},
		{2 * unit.BarrelPerMinute, Usual, "2 bbl/min", "318 L/min"},
		{1500 * unit.BarrelPerDay, ProductionRate, "1500 bbl/d", "238.5 m3/d"},
		{unit.Pressure(1e-9), Usual, "0 psi", "0 bar"},
		{-unit.Pressure(1e-9), Usual, "0 psi", "0 bar"},
		{unit.Length(0), Depth, "0 ft", "0 m"},
		{3e-6 * unit.PerPSI, Usual, "3e-06 1/psi", "4.351e-05 1/bar"},
		{unit.Within(3000*unit.PSI, 0.05), Usual, "2850 psi .. 3000 psi .. 3150 psi", "196.5 bar .. 206.8 bar .. 217.2 bar"},
		{unit.Exactly(3000 * unit.PSI), Usual, "3000 psi", "206.8 bar"},
		{3000 * unit.PSI, Depth, "3000 psi", "206.8 bar"}, // a purpose of another quantity
		{3000 * unit.PSI, 255, "3000 psi", "206.8 bar"},
		{"shut", Usual, "shut", "shut"},
	} {
		require.Equal(t, c.field, Field().Format(c.v, c.p), "%v as %v", c.v, c.p)
		require.Equal(t, c.si, SI().Format(c.v, c.p), "%v as %v", c.v, c.p)
	}
	require.Equal(t, "9186.4", Field().Number(9186.35*unit.Foot, Depth))
	require.Equal(t, "2999.7 m", SI().Significant(2999.7345*unit.Metre, Depth, 5))
	require.Equal(t, "m", SI().UnitOf(unit.Exactly(5*unit.Foot), Usual))
	require.InEpsilon(t, 100, SI().In(unit.Fahrenheit(212), Usual), 1e-14)
	require.True(t, math.IsNaN(SI().In("shut", Usual)))
	require.Equal(t, "NaN psi", Field().Format(unit.Pressure(math.NaN()), Usual))
	require.Equal(t, "depth in m, pressure in bar", SI().Legend(Depth, Usual, Pressure))
}

// Exact reads back to the same bits and stays in its unit.
func TestExactRoundTrips(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for _, s := range []System{Field(), SI()} {
		for p := Usual + 1; p < purposes; p++ {
			for _, v := range sample {
				if _, usual, _ := measure(v); rows[usual].quantity != rows[p].quantity {
					continue
				}
				for range 200 {
					var q any
					x := math.Ldexp(r.NormFloat64(), r.IntN(40)-20)
					if _, is := v.(unit.Temperature); is {
						q = unit.Kelvin(math.Abs(x))
					} else {
						q = reflect.ValueOf(x).Convert(reflect.TypeOf(v)).Interface()
					}
					text := s.Exact(q, p)
					back := reflect.New(reflect.TypeOf(v))
					require.NoError(t, back.Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(text)), text)
					require.Equal(t, q, back.Elem().Interface(), text)
					if p != Temperature {
						require.True(t, strings.HasSuffix(text, " "+s.Unit(p)), text)
					}
				}
			}
		}
	}
	require.Equal(t, "NaN Pa", Field().Exact(unit.Pressure(math.NaN()), Usual))
	require.Equal(t, "true", Field().Exact(true, Usual))
}

func TestPlanTakesTheUnitsOfItsTexts(t *testing.T) {
	s := Plan("2800 m", "300 bar", "35 barg", "4000 psi", "9.2 lb/gal to 3000 m", "1.35 SG", "1.4 sg", "139.7 mm", "a name", "90 °C", "12 MMscf/d")
	require.Equal(t, "plan", s.String())
	for p, want := range map[Purpose]string{Depth: "m", PipeLength: "m", Pressure: "bar", Stress: "psi", Density: "SG", Diameter: "mm", Stroke: "mm",
		Temperature: "degC", TemperatureDifference: "degC", GasRate: "MMscf/d", Volume: "m3", SmallVolume: "L", Force: "kN", Dogleg: "deg/30m"} {
		require.Equal(t, want, s.Unit(p), p)
	}
	require.Equal(t, "1.35 SG", s.Format(1350*unit.KilogramPerCubicMetre, Usual))

	s = Plan("9000 ft", "5000 psi", "20 t", "30 t", "90 degC", "2 klbf")
	require.Equal(t, "t", s.Unit(Force))
	require.Equal(t, "ft", s.Unit(Depth))
	require.Equal(t, "bbl", s.Unit(Volume))

	defaults := []string{"680 kPa", "360 m3/h", "150 mm"}
	s = PlanOf([]string{"9 in", "30 deg"}, defaults)
	require.Equal(t, "in", s.Unit(Diameter))
	require.Equal(t, "psi", s.Unit(Pressure), "what was typed leans to field")
	s = PlanOf([]string{"30 deg"}, defaults)
	require.Equal(t, "kPa", s.Unit(Pressure), "what was typed leans nowhere")
	require.Equal(t, "m3", s.Unit(Volume))
	s = PlanOf([]string{"3000 psi", "2 m"}, defaults)
	require.Equal(t, "psi", s.Unit(Pressure))
	require.Equal(t, "mm", s.Unit(Diameter))

	for _, empty := range []System{Plan(), Plan("", "5", "psi", "3 deg", "1,0 bar")} {
		require.Equal(t, Field().chosen, empty.chosen)
	}
}

func TestRewrite(t *testing.T) {
	for in, want := range map[string]string{
		"the pump needs 3000 psi, above the limit of 5000 psi": "the pump needs 206.8 bar, above the limit of 344.7 bar",
		"at 9000 ft (2.87 in) it is 1e-06 1/psi":               "at 2743 m (72.9 mm) it is 1e-06 1/psi",
		"held -200 psi.":                                       "held -13.8 bar.",
		"0 psi":                                                "0 bar",
		"warmed by 20 degF, 50 lb of it, 6 pins, 5 t":          "warmed by 20 degF, 50 lb of it, 6 pins, 5 t",
		"already 35 bar":                                       "already 35 bar",
		"5 furlongs, 1 in":                                     "5 furlongs, 25.4 mm",
		"above 404 psi “plug, 3 ft” is lost at 3 ft":           "above 27.9 bar “plug, 3 ft” is lost at 0.914 m",
		"“never closed 3 ft":                                   "“never closed 0.914 m",
		"":                                                     "",
	} {
		require.Equal(t, want, SI().Rewrite(in))
		require.Equal(t, want, SI().Rewrite(want), "twice is once")
	}
	require.Equal(t, "held at 507.6 psi", Field().Rewrite("held at 35 bar"[:8]+"35.00 bar"))
}

func TestNamed(t *testing.T) {
	for _, name := range Names() {
		s, err := Named(name, "5 m")
		require.NoError(t, err)
		require.Equal(t, name, s.String())
	}
	_, err := Named("metric")
	require.ErrorContains(t, err, "field, si, plan")
	require.Equal(t, "field", System{}.String())
}

func FuzzPlan(f *testing.F) {
	f.Add("9.2 lb/gal to 3000 m")
	f.Add("2850 psi .. 3150 psi")
	f.Add("held 1e-7 psi. 1e300 ft (-3 in)")
	f.Fuzz(func(t *testing.T, text string) {
		s := Plan(text)
		if twice := SI().Rewrite(SI().Rewrite(text)); len(twice) > 4*len(text)+100 {
			t.Fatalf("%q grew to %q", text, twice)
		}
		for p := Usual + 1; p < purposes; p++ {
			if s.Unit(p) == "" {
				t.Fatalf("%q leaves %v without a unit", text, p)
			}
		}
	})
}

func ExampleSystem_Format() {
	depth, bore, applied := 9186.4*unit.Foot, 4.75*unit.Inch, 3000*unit.PSI
	for _, s := range []System{Field(), SI(), Plan("3000 m", "20 MPa", "4.75 in")} {
		fmt.Println(s.Format(depth, Depth), s.Format(bore, Diameter), s.Format(applied, Usual))
	}
	// Output:
	// 9186.4 ft 4.75 in 3000 psi
	// 2800 m 120.65 mm 206.8 bar
	// 2800 m 4.75 in 20.68 MPa
}

func ExampleSystem_Rewrite() {
	fmt.Println(SI().Rewrite("the valve feels 1500 psi at 9000 ft"))
	// Output:
	// the valve feels 103.4 bar at 2743 m
}
