package choke_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/valve/production/choke"
	"github.com/stretchr/testify/require"
)

// IEC 60534-2-1, examples 1 and 2: hot water, 680 to 220 kPa absolute.
var (
	hotWater      = choke.UpstreamLiquid{Density: 965.4, VapourPressure: 70.1 * kPa, CriticalPressure: 22120 * kPa, Viscosity: 3.1472e-4}
	globe         = choke.Trim{Bore: 150 * mm, Recovery: 0.9, Style: 0.46}
	segmentedBall = choke.Trim{Bore: 100 * mm, Recovery: 0.6, Style: 0.98}
	inlet, outlet = absolute(680 * kPa), absolute(220 * kPa)
	wanted        = 360 * unit.CubicMetrePerHour
)

func ExampleTrim_SizeLiquid() {
	f, err := globe.SizeLiquid(hotWater, inlet, outlet, wanted)
	fmt.Printf("Kv %.1f, choked: %t, FF %.5f, %v\n", f.Coefficient.In(unit.Kv), f.Choked, f.CriticalRatio, err)
	f, err = segmentedBall.SizeLiquid(hotWater, inlet, outlet, wanted)
	fmt.Printf("Kv %.3f, choked: %t, %v\n", f.Coefficient.In(unit.Kv), f.Choked, err)
	// Output:
	// Kv 165.0, choked: false, FF 0.94424, <nil>
	// Kv 238.058, choked: true, <nil>
}

func ExampleTrim_Gas() {
	methane := choke.UpstreamGas{Density: 60, HeatRatio: 1.3}
	t := choke.Trim{Coefficient: 5 * unit.Cv, GasRatio: 0.7}
	for _, downstream := range []unit.Pressure{1200 * unit.PSI, 800 * unit.PSI, 400 * unit.PSI, 100 * unit.PSI} {
		f, err := t.Gas(methane, 1300*unit.PSI, downstream)
		fmt.Println(downstream, "->", f.Mass.Rounded(4), "critical:", f.Critical, err)
	}
	// Output:
	// 1200 psi -> 1.636 lb/s critical: false <nil>
	// 800 psi -> 3.065 lb/s critical: false <nil>
	// 400 psi -> 3.318 lb/s critical: true <nil>
	// 100 psi -> 3.318 lb/s critical: true <nil>
}

// Forward, backward and sizing are the same relation.
func TestThreeWays(t *testing.T) {
	for _, trim := range []choke.Trim{globe, segmentedBall, {Bore: 50 * mm, Upstream: 80 * mm, Downstream: 100 * mm, Recovery: 0.85, Style: 0.42}} {
		trim.Reduced = true // these coefficients are small for their bores
		for _, mu := range []unit.Viscosity{0, 0.0003, 0.05, 2} {
			for _, c := range []unit.FlowCoefficient{1 * unit.Kv, 12 * unit.Kv, 40 * unit.Kv} {
				l, at := hotWater, trim
				l.Viscosity, at.Coefficient = mu, c
				f, err := at.Liquid(l, inlet, absolute(600*kPa))
				require.NoError(t, err)
				back, err := at.LiquidDrop(l, inlet, f.Rate)
				require.NoError(t, err)
				require.InEpsilon(t, float64(f.Drop), float64(back.Drop), 1e-12)
				size, err := trim.SizeLiquid(l, inlet, absolute(600*kPa), f.Rate)
				require.NoError(t, err)
				require.InEpsilon(t, float64(c), float64(size.Coefficient), 1e-9)
			}
		}
	}
}

// Viscous flow never exceeds turbulent flow, grows with the drop, and is nearly
// proportional to it where laminar.
func TestViscousFlow(t *testing.T) {
	trim := globe
	trim.Coefficient = 20 * unit.Kv
	l := choke.UpstreamLiquid{Density: 900}
	turbulent, err := trim.Liquid(l, inlet, absolute(600*kPa))
	require.NoError(t, err)
	last := turbulent.Rate
	for _, mu := range []unit.Viscosity{0.0001, 0.01, 0.1, 1, 10, 1000} {
		l.Viscosity = mu
		f, err := trim.Liquid(l, inlet, absolute(600*kPa))
		require.NoError(t, err)
		require.LessOrEqual(t, f.Rate, last, "viscosity %v", mu)
		last = f.Rate
	}
	l.Viscosity = 1000
	one, err := trim.Liquid(l, inlet, absolute(660*kPa))
	require.NoError(t, err)
	two, err := trim.Liquid(l, inlet, absolute(640*kPa))
	require.NoError(t, err)
	require.InEpsilon(t, 2, float64(two.Rate/one.Rate), 1e-9, "laminar: rate goes with the drop")
}

func TestReynoldsFactor(t *testing.T) {
	trim := globe
	trim.Coefficient = 300 * unit.Kv
	require.Equal(t, 1.0, trim.ReynoldsFactor(10000))
	require.Equal(t, 1.0, trim.ReynoldsFactor(math.Inf(1)))
	require.InDelta(t, 1, trim.ReynoldsFactor(9999.999), 1e-6, "continuous at 10,000")
	require.InEpsilon(t, trim.ReynoldsFactor(10), trim.ReynoldsFactor(9.999999), 1e-6, "continuous at 10 for a full trim")
	last := 0.0
	for re := 0.001; re < 2e4; re *= 1.1 {
		f := trim.ReynoldsFactor(re)
		require.GreaterOrEqual(t, f, last)
		last = f
	}
}

// Printed constants of the standard against ours in SI: N2 1.60e-3 and N5
// 1.80e-3 with Kv and mm, N4 7.07e-2 with Kv, m³/h and m²/s.
func TestConstantsOfTheStandard(t *testing.T) {
	trim := choke.Trim{Coefficient: 40 * unit.Kv, Bore: 50 * mm, Upstream: 80 * mm, Downstream: 100 * mm, Recovery: 0.85, GasRatio: 0.6, Style: 0.42}
	const d2, b1, b2 = 2500, 0.390625, 0.25 // d², (d/D1)², (d/D2)²
	inletLoss := 0.5*(1-b1)*(1-b1) + 1 - b1*b1
	sum := inletLoss + (1-b2)*(1-b2) - (1 - b2*b2)
	s := (40.0 / d2) * (40.0 / d2)
	fp := 1 / math.Sqrt(1+sum/0.0016*s)
	require.InDelta(t, fp, trim.PipingFactor(), 1e-4)
	require.InDelta(t, 0.6/fp/fp/(1+0.6*inletLoss/0.0018*s), trim.GasRatioWithFittings(), 2e-4)
	require.InDelta(t, 0.85/math.Sqrt(1+0.85*0.85/0.0016*inletLoss*s), trim.RecoveryWithFittings(), 1e-4)
	trim.Upstream, trim.Downstream = 0, 0
	f, err := trim.Liquid(choke.UpstreamLiquid{Density: 900, Viscosity: 0.2}, inlet, outlet)
	require.NoError(t, err)
	nu := 0.2 / 900
	re := 7.07e-2 * 0.42 * f.Rate.In(unit.CubicMetrePerHour) / (nu * math.Sqrt(40*0.85)) * math.Pow(0.85*0.85*s/0.0016+1, 0.25)
	require.InEpsilon(t, re, f.Reynolds, 1e-3)
}

// A choked liquid passes the same whatever lies downstream, and asking for
// more is an answer: ErrChoked, with the numbers.
func TestChokedLiquid(t *testing.T) {
	trim := segmentedBall
	trim.Coefficient = 100 * unit.Kv
	a, err := trim.Liquid(hotWater, inlet, absolute(220*kPa))
	require.NoError(t, err)
	b, err := trim.Liquid(hotWater, inlet, absolute(100*kPa))
	require.NoError(t, err)
	require.True(t, a.Choked && b.Choked)
	require.Equal(t, a.Rate, b.Rate)
	_, err = trim.LiquidDrop(hotWater, inlet, a.Rate*1.01)
	require.ErrorIs(t, err, choke.ErrChoked)
	require.ErrorContains(t, err, "32.049 psi")
	at, err := trim.LiquidDrop(hotWater, inlet, a.Rate*0.999999)
	require.NoError(t, err)
	require.InEpsilon(t, float64(a.ChokedDrop), float64(at.Drop), 1e-5)
}

// Gas: smooth and flat at the critical ratio, Y two thirds there; as an
// incompressible liquid for a small drop; the isentropic nozzle agrees.
func TestGasLimits(t *testing.T) {
	g := choke.UpstreamGas{Density: 50, HeatRatio: 1.4}
	trim := choke.Trim{Coefficient: 10 * unit.Cv, GasRatio: 0.7}
	p1 := absolute(70 * unit.Bar)
	at := func(x float64) choke.GasFlow {
		f, err := trim.Gas(g, p1, absolute(unit.Pressure(1-x)*70*unit.Bar))
		require.NoError(t, err)
		return f
	}
	require.InDelta(t, 2.0/3, at(0.7).Expansion, 1e-12)
	require.True(t, at(0.70001).Critical)
	require.False(t, at(0.6999).Critical)
	require.InEpsilon(t, float64(at(0.7).Mass), float64(at(0.699).Mass), 1e-5)
	require.Equal(t, at(0.8).Mass, at(1).Mass, "vacuum downstream")
	small := at(1e-6)
	require.InEpsilon(t, float64(choke.LiquidRate(10*unit.Cv, 50, small.Drop)), float64(small.Rate), 1e-6)

	a := choke.Hole(1, 0.5*unit.Inch)
	trim.Coefficient = choke.Coefficient(0.9, a)
	for x := 0.02; x < 0.45; x += 0.05 {
		n, err := choke.Nozzle(g, 0.9, a, p1, absolute(unit.Pressure(1-x)*70*unit.Bar))
		require.NoError(t, err)
		require.InEpsilon(t, float64(n.Mass), float64(at(x).Mass), 0.1, "x = %v", x)
	}
}

// NACA Report 1135 (1953), table for γ = 1.4, from memory: p/pt 0.5283 at Mach
// one, 0.8430 with A/A* 1.3398 at Mach 0.5.
func TestNozzle(t *testing.T) {
	require.InDelta(t, 0.5283, choke.CriticalRatio(1.4), 5e-5)
	g := choke.UpstreamGas{Density: 10, HeatRatio: 1.4}
	flow := func(r float64) choke.NozzleFlow {
		f, err := choke.Nozzle(g, 1, unit.SquareInch, absolute(10*unit.Bar), absolute(unit.Pressure(r)*10*unit.Bar))
		require.NoError(t, err)
		return f
	}
	require.InDelta(t, 1.3398, float64(flow(0.1).Mass/flow(0.8430).Mass), 2e-4)
	require.True(t, flow(0.5).Critical)
	require.False(t, flow(0.53).Critical)
	tiny := flow(1 - 1e-9)
	require.InEpsilon(t, math.Sqrt(2*10*10e5*1e-9)*float64(unit.SquareInch), float64(tiny.Mass), 1e-5, "no cancellation near no drop")
}

func TestTrimFaults(t *testing.T) {
	_, err := globe.Liquid(hotWater, outlet, inlet)
	require.ErrorIs(t, err, choke.ErrNoFlow)
	require.ErrorContains(t, err, "upstream 17.212 psi is below downstream 83.93 psi")
	_, err = choke.Trim{Coefficient: -1, Recovery: 2}.Liquid(choke.UpstreamLiquid{Density: -3}, -20*unit.Bar, 0)
	for _, text := range []string{"Coefficient: is", "Recovery: is 2", "Density: is", "upstream: is"} {
		require.ErrorContains(t, err, text)
	}
	_, err = globe.Liquid(choke.UpstreamLiquid{Density: 965, VapourPressure: 800 * kPa, CriticalPressure: 22 * unit.Megapascal}, inlet, outlet)
	require.ErrorContains(t, err, "boils before the choke")
	_, err = choke.Trim{GasRatio: 0.7, Coefficient: 1}.Gas(choke.UpstreamGas{Density: 1, HeatRatio: 1}, 1, 0)
	require.ErrorContains(t, err, "HeatRatio: is 1")
	_, err = choke.Trim{Bore: 20 * mm, Upstream: 40 * mm, Downstream: 40 * mm, Recovery: 0.9, Style: 0.4}.SizeLiquid(hotWater, inlet, outlet, wanted)
	require.ErrorIs(t, err, choke.ErrNoSize)
	_, err = choke.Trim{Bore: 50 * mm, Upstream: 40 * mm, Recovery: 0.9}.Liquid(hotWater, inlet, outlet)
	require.ErrorContains(t, err, "Upstream: is")
}

func FuzzTrim(f *testing.F) {
	f.Add(1e-3, 0.9, 0.7, 0.46, 0.15, 0.2, 0.2, 965.4, 7e4, 3e-4, 6e5, 2e5, 0.1)
	f.Add(1e-9, 0.9, 0.7, 0.46, 0.15, 0.0, 0.0, 965.4, 0.0, 30.0, 6e5, 2e5, 1e-9)
	f.Fuzz(func(t *testing.T, c, fl, xt, fd, d, d1, d2, rho, pv, mu, p1, p2, q float64) {
		trim := choke.Trim{Coefficient: unit.FlowCoefficient(c), Recovery: fl, GasRatio: xt, Style: fd,
			Bore: unit.Length(d), Upstream: unit.Length(d1), Downstream: unit.Length(d2), Reduced: c < d}
		up, down := unit.Pressure(p1), unit.Pressure(p2)
		l := choke.UpstreamLiquid{Density: unit.Density(rho), VapourPressure: unit.Pressure(pv), CriticalPressure: 22.12e6, Viscosity: unit.Viscosity(mu)}
		g := choke.UpstreamGas{Density: unit.Density(rho), HeatRatio: 1.3, Viscosity: unit.Viscosity(mu)}
		number := func(what string, x float64, err error) {
			if err == nil && (math.IsNaN(x) || math.IsInf(x, 0) || x < 0) {
				t.Fatalf("%s is %v without an error", what, x)
			}
		}
		a, err := trim.Liquid(l, up, down)
		number("liquid rate", float64(a.Rate), err)
		a, err = trim.LiquidDrop(l, up, unit.FlowRate(q))
		number("liquid drop", float64(a.Drop), err)
		b, err := trim.Gas(g, up, down)
		number("gas rate", float64(b.Mass), err)
		a, err = trim.SizeLiquid(l, up, down, unit.FlowRate(q))
		number("liquid size", float64(a.Coefficient), err)
		b, err = trim.SizeGas(g, up, down, unit.MassRate(q))
		number("gas size", float64(b.Coefficient), err)
	})
}

func BenchmarkTrimLiquid(b *testing.B) {
	trim := globe
	trim.Coefficient = 165 * unit.Kv
	for b.Loop() {
		trim.Liquid(hotWater, inlet, outlet) //nolint:errcheck // timed only
	}
}

func BenchmarkTrimGas(b *testing.B) {
	trim := choke.Trim{Coefficient: 5 * unit.Cv, GasRatio: 0.7}
	for b.Loop() {
		trim.Gas(choke.UpstreamGas{Density: 60, HeatRatio: 1.3}, 1300*unit.PSI, 800*unit.PSI) //nolint:errcheck // timed only
	}
}

func TestSteps(t *testing.T) {
	f, err := segmentedBall.SizeLiquid(hotWater, inlet, outlet, wanted)
	require.NoError(t, err)
	workingtest.Check(t, f.Steps())
	require.Len(t, f.Steps(), 3)
	trim := choke.Trim{Coefficient: 5 * unit.Cv, GasRatio: 0.7}
	for _, downstream := range []unit.Pressure{100 * unit.PSI, 1200 * unit.PSI} {
		g, err := trim.Gas(choke.UpstreamGas{Density: 60, HeatRatio: 1.3}, 1300*unit.PSI, downstream)
		require.NoError(t, err)
		workingtest.Check(t, g.Steps())
	}
}
