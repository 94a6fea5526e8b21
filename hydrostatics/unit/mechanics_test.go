package unit_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
)

// Values by GNU Units 2.22, a general reference program, from the same texts.
func TestProductsAgainstGNUUnits(t *testing.T) {
	near := func(want, got float64) { t.Helper(); require.InEpsilon(t, want, got, 2e-14) }
	near(30000, (5000 * unit.PSI).On(6*unit.SquareInch).In(unit.PoundForce))
	near(6250, (75 * unit.Kilopound).Over(12*unit.SquareInch).In(unit.PSI))
	near(57.9, (0.00579 * unit.BarrelPerFoot).Along(10_000*unit.Foot).In(unit.Barrel))
	near(10017.2711571675, (58 * unit.Barrel).Fills(0.00579*unit.BarrelPerFoot).In(unit.Foot))
	near(83700, (9.3 * unit.PoundPerFoot).Along(9000*unit.Foot).In(unit.PoundForce))
	near(4050, (0.45 * unit.PSIPerFoot).Along(9000*unit.Foot).In(unit.PSI))
	near(6, (4 * unit.BarrelPerMinute).During(90*time.Second).In(unit.Barrel))
	near(700, (3000 * unit.PSI).Power(400*unit.GallonPerMinute).In(unit.Horsepower))
	d, ok := (58 * unit.Barrel).Takes(4 * unit.BarrelPerMinute)
	require.True(t, ok)
	require.InDelta(t, 870, d.Seconds(), 1e-8)
}

func TestNoTimeWithoutRate(t *testing.T) {
	for _, q := range []unit.FlowRate{0, unit.FlowRate(math.NaN()), 1e-12} {
		_, ok := unit.Barrel.Takes(q)
		require.False(t, ok, q)
	}
	require.True(t, math.IsNaN(float64(unit.Pressure(math.NaN()).On(1))))
}

func TestInverses(t *testing.T) {
	p, a, l := 3210*unit.PSI, 5.5*unit.SquareInch, 777*unit.Foot
	require.InEpsilon(t, float64(p), float64(p.On(a).Over(a)), 1e-15)
	require.InEpsilon(t, float64(l), float64(a.Along(l).Fills(a)), 1e-15)
	// The standard atmosphere and, at Denver's 1,609 m, one of 83.4 kPa (U.S.
	// Standard Atmosphere, 1976, by its formula).
	for _, atmosphere := range []unit.Pressure{unit.Atmosphere, 83.4 * unit.Kilopascal} {
		require.InEpsilon(t, float64(p), float64(p.Absolute(atmosphere).Gauge(atmosphere)), 1e-15)
		require.Equal(t, atmosphere, unit.Pressure(0).Absolute(atmosphere))
	}
}

func TestProductsAreHomogeneous(t *testing.T) {
	dimension.Check(t, dimension.Free, unit.Pressure.On, unit.PSI, unit.SquareInch)
	dimension.Check(t, dimension.Free, unit.Force.Over, unit.PoundForce, unit.SquareInch)
	dimension.Check(t, dimension.Free, unit.Area.Along, unit.SquareInch, unit.Foot)
	dimension.Check(t, dimension.Free, unit.Volume.Fills, unit.Barrel, unit.SquareInch)
	dimension.Check(t, dimension.Free, unit.WeightPerLength.Along, unit.PoundPerFoot, unit.Foot)
	dimension.Check(t, dimension.Free, unit.Gradient.Along, unit.PSIPerFoot, unit.Foot)
	dimension.Check(t, dimension.Free, unit.Pressure.Power, unit.PSI, unit.BarrelPerDay)
}

func TestMust(t *testing.T) {
	require.Equal(t, 35*unit.Bar, unit.Must(unit.Read[unit.Pressure]("35 bar")))
	require.Equal(t, unit.Fahrenheit(60), unit.Must(unit.Read[unit.Temperature]("60 degF")))
	require.PanicsWithError(t, `unit: cannot read "35" as a power: no unit given; write a number with one of W, kW, hp`, func() {
		unit.Must(unit.Read[unit.Power]("35"))
	})
}

func ExamplePressure_On() {
	fmt.Println((5000 * unit.PSI).On(6 * unit.SquareInch))
	// Output: 30000 lbf
}

func ExampleForce_Over() {
	fmt.Println((75 * unit.Kilopound).Over(12 * unit.SquareInch))
	// Output: 6250 psi
}

func ExampleArea_Along() {
	capacity := 0.00579 * unit.BarrelPerFoot
	fmt.Println(capacity.Along(10_000 * unit.Foot).Rounded(4))
	// Output: 57.9 bbl
}

func ExampleVolume_Fills() {
	fmt.Println((58 * unit.Barrel).Fills(0.00579 * unit.BarrelPerFoot).Rounded(6))
	// Output: 10017.3 ft
}

func ExampleWeightPerLength_Along() {
	fmt.Println((9.3 * unit.PoundPerFoot).Along(9000 * unit.Foot).Rounded(4))
	// Output: 83700 lbf
}

func ExampleGradient_Along() {
	fmt.Println((0.45 * unit.PSIPerFoot).Along(9000 * unit.Foot).Rounded(4))
	// Output: 4050 psi
}

func ExampleFlowRate_During() {
	fmt.Println((4 * unit.BarrelPerMinute).During(90 * time.Second).Rounded(4))
	// Output: 6 bbl
}

func ExampleVolume_Takes() {
	t, ok := (58 * unit.Barrel).Takes(4 * unit.BarrelPerMinute)
	fmt.Println(t.Round(time.Second), ok)
	// Output: 14m30s true
}

func ExamplePressure_Power() {
	fmt.Println((3000 * unit.PSI).Power(400 * unit.GallonPerMinute).Rounded(4))
	// Output: 700 hp
}

func ExamplePressure_Absolute() {
	fmt.Println((100 * unit.PSI).Absolute(unit.Atmosphere).Rounded(6))
	// Output: 114.696 psi
}

func ExamplePressure_Gauge() {
	fmt.Println((14.7 * unit.PSI).Gauge(12.1 * unit.PSI).Rounded(3)) // at 5,000 ft
	// Output: 2.6 psi
}

func ExampleMust() {
	depth := unit.Must(unit.Read[unit.Length]("2800 m"))
	fmt.Println(depth.Rounded(6))
	// Output: 9186.35 ft
}

func ExampleRead() {
	_, err := unit.Read[unit.Band[unit.Pressure]]("3000 psi +/- 5 ft")
	fmt.Println(err != nil)
	// Output: true
}
