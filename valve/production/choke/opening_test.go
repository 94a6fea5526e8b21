package choke_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"completion.example/valve/production/choke"
	"github.com/stretchr/testify/require"
)

const (
	water = 8.338 * unit.PoundPerGallon // of relative density one
	mm    = unit.Millimetre
	kPa   = unit.Kilopascal
)

// absolute turns a printed absolute pressure into gauge.
func absolute(p unit.Pressure) unit.Pressure { return p - unit.Atmosphere }

func TestOpeningAndCoefficientAreInverse(t *testing.T) {
	for _, cd := range []float64{0.6, 0.85, 0.95} {
		for _, a := range []unit.Area{unit.SquareMillimetre, 0.1117 * unit.SquareInch, 3 * unit.SquareInch} {
			require.InEpsilon(t, float64(a), float64(choke.Opening(choke.Coefficient(cd, a), cd)), 1e-15)
		}
	}
}

// A sharp opening has Cv = 29.84·Cd·d² (a formula page; reference CH10), d in inches.
func TestCvOfAHole(t *testing.T) {
	c := choke.Coefficient(1, choke.Hole(1, unit.Inch))
	require.InDelta(t, 29.84, c.In(unit.Cv), 0.01)
}

// The plain law by hand: Cv of 10, 100 psi, water: 10·sqrt(100) = 100 gal/min.
func TestLiquidByHand(t *testing.T) {
	q := choke.LiquidRate(10*unit.Cv, 999.1026, 100*unit.PSI)
	require.InEpsilon(t, 100, q.In(unit.GallonPerMinute), 1e-14)
	require.InEpsilon(t, 100, choke.LiquidDrop(10*unit.Cv, 999.1026, q).In(unit.PSI), 1e-14)
	require.InEpsilon(t, -100, choke.LiquidDrop(10*unit.Cv, 999.1026, -q).In(unit.PSI), 1e-14, "the drop has the rate's sign")
	require.InEpsilon(t, 10, choke.LiquidCoefficient(q, 999.1026, 100*unit.PSI).In(unit.Cv), 1e-14)
}

func TestSeriesAndParallel(t *testing.T) {
	// Two equal chokes: in series 1/√2 of one, side by side twice one.
	require.InEpsilon(t, 10/math.Sqrt2, choke.Series(10*unit.Cv, 10*unit.Cv).In(unit.Cv), 1e-14)
	require.InEpsilon(t, 20, choke.Parallel(10*unit.Cv, 10*unit.Cv).In(unit.Cv), 1e-14)
	require.Zero(t, choke.Series(10*unit.Cv, 0))
	q := 500 * unit.BarrelPerDay
	sum := choke.LiquidDrop(10*unit.Cv, water, q) + choke.LiquidDrop(4*unit.Cv, water, q)
	require.InEpsilon(t, float64(sum), float64(choke.LiquidDrop(choke.Series(10*unit.Cv, 4*unit.Cv), water, q)), 1e-14)
}

func TestHomogeneous(t *testing.T) {
	dimension.Check(t, dimension.Free, func(cd float64, a unit.Area) unit.Area { return unit.Area(choke.Coefficient(cd, a)) }, 0.95, 0.11*unit.SquareInch)
	dimension.Check(t, dimension.Free, func(a unit.Area, r unit.Density, dp unit.Pressure) unit.FlowRate {
		return choke.LiquidRate(unit.FlowCoefficient(a), r, dp)
	}, 1e-4*unit.SquareMetre, water, 400*unit.PSI)
	dimension.Check(t, dimension.Free, func(a unit.Area, r unit.Density, q unit.FlowRate) unit.Pressure {
		return choke.LiquidDrop(unit.FlowCoefficient(a), r, q)
	}, 1e-4*unit.SquareMetre, water, 3000*unit.BarrelPerDay)
	dimension.Check(t, dimension.Free, choke.JetVelocity, 0.95, water, 400*unit.PSI)
}

func ExampleLiquidCoefficient() {
	// A zone held to 3,000 bbl/d of oil with 400 psi across its choke.
	oil := 0.85 * 999.1 * unit.KilogramPerCubicMetre
	c := choke.LiquidCoefficient(3000*unit.BarrelPerDay, oil, 400*unit.PSI)
	a := choke.Opening(c, choke.NozzleDischarge)
	fmt.Println(c.Rounded(4), "or an opening of", a.Rounded(4))
	// Output: 4.034 Cv or an opening of 0.1118 in2
}

func ExampleCoefficient() {
	fmt.Println(choke.Coefficient(choke.NozzleDischarge, choke.Hole(4, 0.25*unit.Inch)).Rounded(4))
	// Output: 7.086 Cv
}

func ExampleErosionalVelocity() {
	v := choke.ErosionalVelocity(choke.ErosionContinuous, 40*unit.PoundPerCubicFoot)
	now := choke.ErosionalVelocity(choke.ErosionIntermittent, 40*unit.PoundPerCubicFoot)
	fmt.Printf("%.2f ft/s, now and then %.2f\n", v.In(unit.FootPerSecond), now.In(unit.FootPerSecond))
	// Output: 15.81 ft/s, now and then 19.76
}

// Twice the area, twice the rate; a hundred times the density, a tenth of the speed.
func TestErosion(t *testing.T) {
	require.InEpsilon(t, 10.0, choke.ErosionalVelocity(100, 100*unit.PoundPerCubicFoot).In(unit.FootPerSecond), 1e-14)
	a, q := 4*unit.SquareInch, 2000*unit.BarrelPerDay
	require.InEpsilon(t, float64(q), float64(choke.ErosionalRate(125, water, choke.ErosionalArea(125, water, q))), 1e-14)
	require.InEpsilon(t, 2*float64(choke.ErosionalRate(100, water, a)), float64(choke.ErosionalRate(100, water, 2*a)), 1e-15)
}

func BenchmarkLiquidRate(b *testing.B) {
	drop := 400 * unit.PSI
	for b.Loop() {
		drop += unit.Pressure(choke.LiquidRate(10*unit.Cv, water, drop)) // each waits for the one before
	}
}
