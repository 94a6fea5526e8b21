package confined_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

var warm, hot = unit.Celsius(20), unit.Celsius(80)

// liquid has round figures: c = 4.5e-10 1/Pa, α = 4e-4 1/K.
var liquid = confined.LinearLiquid{Reference: 1000, Temperature: warm, Compressibility: 4.5e-10, Expansivity: 4e-4}

func rigid() confined.Space {
	return confined.Space{Outer: confined.Tube{OD: 0.2, ID: 0.18, Rigid: true}}
}

// ideal is a gas of pV = nRT, absolute.
type ideal struct{}

func (ideal) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	return unit.Density(float64(p+unit.Atmosphere) * 0.028 / (8.314462618 * t.Kelvin())), nil
}

var errRange = errors.New("out of range")

// narrow is a liquid known up to a pressure only.
type narrow struct{ most unit.Pressure }

func (n narrow) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if p > n.most {
		return 0, errRange
	}
	return liquid.Density(p, t)
}

// In a rigid space the exponentials cancel exactly: Δp = α ΔT/c.
func TestRigidSpaceExactly(t *testing.T) {
	o, err := confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Name: "liquid", Fluid: liquid, Volume: 10, From: warm, To: hot}}, Pressure: 1e7}.Solve()
	require.NoError(t, err)
	near(t, 4e-4*60/4.5e-10, float64(o.Rise), 1e-11)
	near(t, 1e7+4e-4*60/4.5e-10, float64(o.After), 1e-11)
	near(t, 10*(math.Exp(0.024)-1), float64(o.FluidExpansion), 1e-9)
	near(t, float64(o.FluidExpansion), float64(o.Compression), 1e-9)
	require.Zero(t, o.Ballooning)
	require.Zero(t, o.WallExpansion)
}

// Gas alone: Gay-Lussac, p2/p1 = T2/T1 absolute.
func TestRigidGas(t *testing.T) {
	o, err := confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Fluid: ideal{}, Volume: 2, From: unit.Kelvin(300), To: unit.Kelvin(400)}}, Pressure: 1e6}.Solve()
	require.NoError(t, err)
	near(t, (1e6+101325)*400/300, float64(o.After)+101325, 1e-10)
	// Squeezed to half the volume at one temperature: Boyle.
	o, err = confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Fluid: ideal{}, Volume: 2, From: warm, To: warm}}, Pressure: 1e6, Squeeze: 1}.Solve()
	require.NoError(t, err)
	near(t, 2*(1e6+101325), float64(o.After)+101325, 1e-10)
}

// With elastic walls the linear formula holds for small differences: liquid and
// pipe warmed alike by a tenth of a degree.
func TestElasticSpaceBecomesLinear(t *testing.T) {
	pipe := tube(0.1778, 0.1594)
	space := confined.Space{Outer: pipe, Ends: confined.EndsClosed}
	o, err := confined.Trapped{Space: space, Fills: []confined.Fill{{Fluid: liquid, Volume: 10, From: warm, To: unit.Celsius(20.1)}}, Pressure: 2e7, HeatOuter: 0.1}.Solve()
	require.NoError(t, err)
	per := confined.PressurePerDegree(4e-4, 3*12.4e-6, 4.5e-10, space.Compliance())
	near(t, per*0.1, float64(o.Rise), 1e-3)
	near(t, float64(o.Rise), float64(o.Estimate), 1e-3)
	near(t, 4.5e-10, float64(o.Compressibility), 1e-3)
	// Its volumes balance: what the fluid grows by is taken up by wall and pressure.
	near(t, float64(o.FluidExpansion), float64(o.WallExpansion+o.Ballooning+o.Compression), 1e-9)
}

// Cooling undoes heating, and a gas cap softens both.
func TestHeatingAndCooling(t *testing.T) {
	inner := tube(0.0889, 0.076)
	space := confined.Space{Outer: tube(0.2445, 0.2205), Inner: &inner}
	fills := []confined.Fill{{Name: "liquid", Fluid: liquid, Volume: 10, From: warm, To: hot}}
	heat := confined.Trapped{Space: space, Fills: fills, Pressure: 5e6, HeatOuter: 40, HeatInner: 60}
	o, err := heat.Solve()
	require.NoError(t, err)
	require.Greater(t, o.Rise, 20*unit.Megapascal)
	workingtest.Check(t, o.Steps())
	// Back: the same masses in the space as it is now.
	back := heat
	back.Pressure = o.After
	back.HeatOuter, back.HeatInner = -40, -60
	v := o.Volume + o.WallExpansion + o.Ballooning
	back.Fills = []confined.Fill{{Fluid: liquid, Volume: v, From: hot, To: warm}}
	b, err := back.Solve()
	require.NoError(t, err)
	near(t, 5e6, float64(b.After), 0.02) // the wall's strain counts from another volume
	capped := heat
	capped.Fills = append(capped.Fills, confined.Fill{Name: "nitrogen", Fluid: ideal{}, Volume: 0.5, From: warm, To: hot})
	soft, err := capped.Solve()
	require.NoError(t, err)
	require.Less(t, soft.Rise, o.Rise/4)
	require.Positive(t, soft.Rise)
	// A rigid outer wall gives the higher pressure.
	stiff := heat
	stiff.Space.Outer.Rigid = true
	s, err := stiff.Solve()
	require.NoError(t, err)
	require.Greater(t, s.After, o.After)
	// Nothing changed: nothing rises.
	still := heat
	still.HeatOuter, still.HeatInner = 0, 0
	still.Fills = []confined.Fill{{Fluid: liquid, Volume: 10, From: warm, To: warm}}
	n, err := still.Solve()
	require.NoError(t, err)
	require.Zero(t, n.Rise)
}

func TestBleedVolume(t *testing.T) {
	heat := confined.Trapped{Space: confined.Space{Outer: tube(0.2445, 0.2205)}, Fills: []confined.Fill{{Fluid: liquid, Volume: 10, From: warm, To: hot}}, Pressure: 5e6, HeatOuter: 60}
	o, err := heat.Solve()
	require.NoError(t, err)
	// At the pressure it has come to there is nothing to bleed.
	v, err := heat.BleedVolume(o.After)
	require.NoError(t, err)
	require.InDelta(t, 0, float64(v), 1e-9)
	// Bled to the pressure before: the growth of the fluid less that of the wall.
	v, err = heat.BleedVolume(5e6)
	require.NoError(t, err)
	near(t, float64(o.FluidExpansion-o.WallExpansion), float64(v), 1e-12)
	v, err = heat.BleedVolume(o.After + 1e6)
	require.NoError(t, err)
	require.Negative(t, v)
	_, err = confined.Trapped{}.BleedVolume(-1)
	require.ErrorContains(t, err, "to: is")
	require.ErrorContains(t, err, "Fills")
}

func TestTrappedErrors(t *testing.T) {
	_, err := confined.Trapped{Space: confined.Space{Outer: confined.Tube{OD: 1, ID: 2}, Ends: 9}, Fills: []confined.Fill{{}}, Pressure: -1, HeatOuter: 1e6}.Solve()
	for _, part := range []string{"Space.Outer.ID", "Space.Outer.Young", "Space.Ends", "Fills[0].Fluid: is missing", "Fills[0].Volume", "Fills[0].From: is", "Pressure: is", "HeatOuter: is"} {
		require.ErrorContains(t, err, part)
	}
	cool := confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Name: "brine", Fluid: liquid, Volume: 10, From: hot, To: warm}}, Pressure: 1e6}
	_, err = cool.Solve()
	require.ErrorIs(t, err, confined.ErrVoid)
	require.Regexp(t, `fills the space: 0\.\d+ of its volume is missing`, err.Error())
	// A fluid beyond its range is an error and not an extrapolation.
	_, err = confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Name: "brine", Fluid: narrow{2e7}, Volume: 10, From: warm, To: hot}}, Pressure: 1e7}.Solve()
	require.ErrorIs(t, err, errRange)
	require.ErrorContains(t, err, "brine")
	// Something has to give.
	_, err = confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Fluid: confined.LinearLiquid{Reference: 1000, Temperature: warm, Expansivity: 4e-4}, Volume: 10, From: warm, To: hot}}}.Solve()
	require.ErrorContains(t, err, "no finite pressure")
	_, err = confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Fluid: liquid, Volume: 1, From: warm, To: warm}}, Squeeze: 2}.Solve()
	require.ErrorContains(t, err, "Squeeze")
	inner := tube(0.3, 0.1)
	_, err = confined.Trapped{Space: confined.Space{Outer: tube(0.2, 0.18), Inner: &inner}, Fills: []confined.Fill{{Fluid: liquid, Volume: 1, From: warm, To: warm}}}.Solve()
	require.ErrorContains(t, err, "Space.Inner.OD")
}

func FuzzTrapped(f *testing.F) {
	f.Add(0.2, 0.18, 2e11, 0.3, 10.0, 1.0, 293.0, 353.0, 1e7, 60.0, 0.0)
	f.Add(0.2, 0.18, 2e11, 0.3, 10.0, 0.0, 353.0, 293.0, 1e7, -60.0, 1.0)
	f.Fuzz(func(t *testing.T, od, id, young, poisson, v, gas, from, to, p, heat, squeeze float64) {
		x := confined.Trapped{
			Space:    confined.Space{Outer: confined.Tube{OD: unit.Length(od), ID: unit.Length(id), Young: unit.Pressure(young), Poisson: poisson, Expansion: 1e-5}},
			Fills:    []confined.Fill{{Fluid: liquid, Volume: unit.Volume(v), From: unit.Kelvin(from), To: unit.Kelvin(to)}},
			Pressure: unit.Pressure(p), HeatOuter: unit.TemperatureDifference(heat), Squeeze: unit.Volume(squeeze),
		}
		if gas > 0 {
			x.Fills = append(x.Fills, confined.Fill{Fluid: ideal{}, Volume: unit.Volume(gas), From: unit.Kelvin(from), To: unit.Kelvin(to)})
		}
		o, err := x.Solve()
		if err != nil {
			return
		}
		for _, y := range []float64{float64(o.After), float64(o.Rise), float64(o.Ballooning), float64(o.Compression), float64(o.Estimate)} {
			if math.IsNaN(y) || math.IsInf(y, 0) {
				t.Fatalf("%+v: %+v", x, o)
			}
		}
		if o.After < 0 {
			t.Fatalf("%+v: below zero: %+v", x, o)
		}
	})
}

func BenchmarkTrapped(b *testing.B) {
	b.ReportAllocs()
	x := confined.Trapped{Space: confined.Space{Outer: tube(0.2445, 0.2205)}, Fills: []confined.Fill{{Fluid: liquid, Volume: 10, From: warm, To: hot}}, Pressure: 5e6, HeatOuter: 60}
	for b.Loop() {
		_, _ = x.Solve()
	}
}

func ExamplePressurePerDegree() {
	// Published with 0.19 MPa/K: water in a thin tube of D/t = 100.
	c := confined.ThinCompliance(100, 2e5*unit.Megapascal)
	p := unit.Pressure(confined.PressurePerDegree(210e-6, 36e-6, 4e-4*unit.PerMegapascal, c))
	fmt.Printf("%.2f MPa\n", p.In(unit.Megapascal))
	// Output: 0.19 MPa
}

func ExampleTrapped_Solve() {
	inner := confined.Tube{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28, Expansion: 6.9e-6 * unit.PerFahrenheit}
	t := confined.Trapped{
		Space: confined.Space{
			Outer: confined.Tube{OD: 9.625 * unit.Inch, ID: 8.681 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28, Expansion: 6.9e-6 * unit.PerFahrenheit},
			Inner: &inner,
		},
		Fills: []confined.Fill{{
			Name:   "brine",
			Fluid:  confined.LinearLiquid{Reference: 9.5 * unit.PoundPerGallon, Temperature: unit.Fahrenheit(100), Compressibility: 2.8e-6 * unit.PerPSI, Expansivity: 2.5e-4 * unit.PerFahrenheit},
			Volume: 550 * unit.Barrel, From: unit.Fahrenheit(100), To: unit.Fahrenheit(160),
		}},
		Pressure:  2000 * unit.PSI,
		HeatOuter: 50 * unit.FahrenheitDifference, HeatInner: 70 * unit.FahrenheitDifference,
	}
	o, err := t.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	bleed, err := t.BleedVolume(2000 * unit.PSI)
	fmt.Println("from", o.Before.Rounded(4), "to", o.After.Rounded(4), "bleed", bleed.Rounded(3), err)
	// Output: from 2000 psi to 5928 psi bleed 7.86 bbl <nil>
}
