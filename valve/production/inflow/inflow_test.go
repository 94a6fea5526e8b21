package inflow_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

const (
	psi = unit.PSI
	bpd = unit.BarrelPerDay
)

var saturated = inflow.LiquidDeliverability{Reservoir: 2000 * psi, Index: 2 * unit.BarrelPerDayPSI, Bubble: 2000 * psi}

func ExampleLiquidFromTest() {
	// 65 bbl/d at 1,500 psi from a saturated reservoir of 2,000 psi: Vogel.
	zone, err := inflow.LiquidFromTest(2000*psi, 2000*psi, 1500*psi, 65*bpd)
	fmt.Println(zone.OpenFlow().Rounded(4), err)
	fmt.Println("at 500 psi:", zone.Rate(500*psi).Rounded(5))
	_, err = zone.Pressure(200 * bpd)
	fmt.Println(err)
	// Output:
	// 162.5 bbl/d <nil>
	// at 500 psi: 146.25 bbl/d
	// inflow: beyond the zone's open flow: 200 bbl/d is wanted; the zone gives 162.5 bbl/d
}

func ExampleDamageSkin() {
	s := inflow.DamageSkin(20*unit.Millidarcy, 2*unit.Millidarcy, 4*unit.Inch, 6*unit.Inch)
	fmt.Printf("%.3f\n", s)
	// Output: 3.649
}

func ExampleFormation_Index() {
	j, err := inflow.Formation{Permeability: 100 * unit.Millidarcy, Thickness: 50 * unit.Foot, Viscosity: unit.Centipoise, VolumeFactor: 1.2,
		Hole: 0.354 * unit.Foot, Boundary: 1000 * unit.Foot, Skin: 5, Regime: inflow.SteadyAverage}.Index()
	fmt.Println(j.Rounded(4), err)
	// Output: 2.371 bbl/d/psi <nil>
}

func ExampleGasFromTests() {
	fit, err := inflow.GasFromTests(3000*psi,
		inflow.Test{Flowing: 2800 * psi, Rate: 2000 * unit.ThousandCubicFeetPerDay},
		inflow.Test{Flowing: 2500 * psi, Rate: 4100 * unit.ThousandCubicFeetPerDay},
		inflow.Test{Flowing: 2000 * psi, Rate: 6500 * unit.ThousandCubicFeetPerDay})
	fmt.Printf("n = %.3f, open flow %.0f Mcf/d, R² = %.4f, %v\n", fit.Exponent, fit.OpenFlow.In(unit.ThousandCubicFeetPerDay), fit.RSquared, err)
	// Output: n = 0.808, open flow 10573 Mcf/d, R² = 0.9996, <nil>
}

// By hand: 5 bbl/d/psi, 1,000 psi of drawdown; above reservoir pressure it takes.
func TestStraightLine(t *testing.T) {
	l := inflow.LiquidDeliverability{Reservoir: 4000 * psi, Index: 5 * unit.BarrelPerDayPSI}
	require.NoError(t, l.Validate())
	require.InEpsilon(t, 5000, l.Rate(3000*psi).In(bpd), 1e-14)
	require.InEpsilon(t, -500, l.Rate(4100*psi).In(bpd), 1e-14, "crossflow is negative")
	require.InEpsilon(t, 20000, l.OpenFlow().In(bpd), 1e-14)
	require.Equal(t, 4000*psi, l.Static())
}

// Composite: straight and Vogel meet at the bubble point with one slope, and the
// limits are the two of them.
func TestComposite(t *testing.T) {
	c := inflow.LiquidDeliverability{Reservoir: 4000 * psi, Index: 2 * unit.BarrelPerDayPSI, Bubble: 1800 * psi}
	pb := float64(c.Bubble)
	above, slopeAbove := c.At(pb)
	below, slopeBelow := c.At(math.Nextafter(pb, 0))
	require.InEpsilon(t, above, below, 1e-12)
	require.InEpsilon(t, slopeAbove, slopeBelow, 1e-12)
	// J(pr-pb) = 4,400; J·pb/1.8 = 2,000 (by hand)
	require.InEpsilon(t, 6400, c.OpenFlow().In(bpd), 1e-14)
	require.InEpsilon(t, 4400+2000*(1-0.1-0.2), c.Rate(900*psi).In(bpd), 1e-14)
	v := saturated
	for p := unit.Pressure(0); p <= v.Reservoir; p += 100 * psi {
		require.InDelta(t, inflow.VogelRatio(p, v.Reservoir), float64(v.Rate(p)/v.OpenFlow()), 1e-14)
	}
	v.Bubble = 5000 * psi
	require.Equal(t, saturated.OpenFlow(), v.OpenFlow(), "a bubble point above the reservoir is the reservoir")
}

func TestInverse(t *testing.T) {
	for _, l := range []inflow.LiquidDeliverability{saturated, {4000 * psi, 2 * unit.BarrelPerDayPSI, 1800 * psi}, {4000 * psi, 2 * unit.BarrelPerDayPSI, 0}} {
		for p := -1000 * psi; p < 6000*psi; p += 37 * psi {
			q, slope := l.At(float64(p))
			back, inverse := l.Inverse(q)
			require.InDelta(t, float64(p), back, 1e-8*float64(psi), "%v at %v", l, p)
			require.InEpsilon(t, 1, slope*inverse, 1e-10)
			h := 1e-3 * float64(psi)
			hi, _ := l.At(float64(p) + h)
			lo, _ := l.At(float64(p) - h)
			require.InEpsilon(t, slope, (hi-lo)/2/h, 1e-5)
		}
		p, err := l.Pressure(l.OpenFlow())
		require.NoError(t, err)
		require.InDelta(t, 0, float64(p), 1e-6)
	}
	g := inflow.GasDeliverability{Reservoir: 3000 * psi, OpenFlow: 10000 * unit.ThousandCubicFeetPerDay, Exponent: 0.8}
	for p := unit.Pressure(0); p < 5000*psi; p += 37 * psi {
		back, err := g.Pressure(g.Rate(p))
		require.NoError(t, err)
		require.InDelta(t, float64(p), float64(back), 1e-6*float64(psi))
		_, slope := g.At(float64(p))
		h := 1e-3 * float64(psi)
		hi, _ := g.At(float64(p) + h)
		lo, _ := g.At(float64(p) - h)
		require.InEpsilon(t, slope, (hi-lo)/2/h, 1e-5)
	}
	require.InEpsilon(t, float64(g.OpenFlow), float64(g.Rate(0)), 1e-14, "open flow is against one atmosphere")
	require.Zero(t, g.Rate(g.Reservoir))
	_, slope := g.At(float64(g.Reservoir))
	require.True(t, math.IsInf(slope, -1))
}

// With n = 1 and points made from the law the fit finds the law again.
func TestGasFit(t *testing.T) {
	for _, n := range []float64{0.5, 0.7, 1} {
		g := inflow.GasDeliverability{Reservoir: 3000 * psi, OpenFlow: 10000 * unit.ThousandCubicFeetPerDay, Exponent: n}
		var tests []inflow.Test
		for _, p := range []unit.Pressure{2900 * psi, 2500 * psi, 1900 * psi} {
			tests = append(tests, inflow.Test{Flowing: p, Rate: g.Rate(p)})
		}
		fit, err := inflow.GasFromTests(3000*psi, tests...)
		if err == nil { // at the ends the last bit may lie outside
			require.InEpsilon(t, n, fit.Exponent, 1e-10)
			require.InEpsilon(t, float64(g.OpenFlow), float64(fit.OpenFlow), 1e-10)
			require.InDelta(t, 1, fit.RSquared, 1e-12)
		} else {
			require.NotEqual(t, 0.7, n, err)
		}
	}
}

// The field's 141.2: kh/(141.2 μB(ln re/rw + s)).
func TestIndexInFieldUnits(t *testing.T) {
	f := inflow.Formation{Permeability: 100 * unit.Millidarcy, Thickness: 50 * unit.Foot, Viscosity: unit.Centipoise, VolumeFactor: 1.2,
		Hole: 0.354 * unit.Foot, Boundary: 1000 * unit.Foot, Skin: 5}
	for regime, offset := range map[inflow.Regime]float64{inflow.SteadyBoundary: 0, inflow.SteadyAverage: 0.5, inflow.PseudoSteady: 0.75} {
		f.Regime = regime
		j, err := f.Index()
		require.NoError(t, err)
		require.InEpsilon(t, 100*50/(141.2*1.2*(math.Log(1000/0.354)-offset+5)), j.In(unit.BarrelPerDayPSI), 2e-4)
	}
}

func TestHomogeneous(t *testing.T) {
	dimension.Check(t, dimension.Free, inflow.LiquidDeliverability.OpenFlow, saturated)
	dimension.Check(t, dimension.Free, inflow.VogelRatio, 1500*psi, 2000*psi)
}

func TestFaults(t *testing.T) {
	err := inflow.LiquidDeliverability{Reservoir: -1, Index: unit.ProductivityIndex(math.NaN()), Bubble: unit.Pressure(math.Inf(1))}.Validate()
	for _, text := range []string{"Reservoir: is", "Index: is NaN", "Bubble: is"} {
		require.ErrorContains(t, err, text)
	}
	err = inflow.GasDeliverability{Exponent: 2}.Validate()
	for _, text := range []string{"Reservoir: is", "OpenFlow: is", "Exponent: is 2; must be from 0.5 to 1"} {
		require.ErrorContains(t, err, text)
	}
	_, err = inflow.LiquidFromTest(2000*psi, 0, 2100*psi, 5*bpd)
	require.ErrorIs(t, err, inflow.ErrNoDrawdown)
	_, err = inflow.GasFromTests(2000*psi, inflow.Test{Flowing: 2100 * psi, Rate: 1})
	require.ErrorIs(t, err, inflow.ErrNoDrawdown)
	require.ErrorContains(t, err, "two or more")
	_, err = inflow.Formation{Regime: 9}.Index()
	for _, text := range []string{"Permeability: is", "Thickness: is", "Viscosity: is", "Hole: is", "VolumeFactor: is", "Boundary: is", "Regime: is"} {
		require.ErrorContains(t, err, text)
	}
	_, err = inflow.Formation{Permeability: 1, Thickness: 1, Viscosity: 1, VolumeFactor: 1, Hole: 1, Boundary: 2, Skin: -3}.Index()
	require.ErrorContains(t, err, "must be above -0.693")
	_, err = saturated.Pressure(unit.FlowRate(math.NaN()))
	require.ErrorIs(t, err, inflow.ErrBeyondOpenFlow)
}

func FuzzInflow(f *testing.F) {
	f.Add(2000.0, 2000.0, 1500.0, 65.0, 0.8)
	f.Fuzz(func(t *testing.T, pr, pb, p, q, n float64) {
		number := func(what string, x float64, err error) {
			if err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
				t.Fatalf("%s is %v without an error", what, x)
			}
		}
		l, err := inflow.LiquidFromTest(unit.Pressure(pr), unit.Pressure(pb), unit.Pressure(p), unit.FlowRate(q))
		number("index", float64(l.Index), err)
		g, err := inflow.GasFromTests(unit.Pressure(pr), inflow.Test{Flowing: unit.Pressure(p), Rate: unit.FlowRate(q)}, inflow.Test{Flowing: unit.Pressure(pb), Rate: unit.FlowRate(n)})
		number("open flow", float64(g.OpenFlow), err)
		back, err := inflow.GasDeliverability{Reservoir: unit.Pressure(pr), OpenFlow: unit.FlowRate(pb), Exponent: n}.Pressure(unit.FlowRate(q))
		number("gas pressure", float64(back), err)
		back, err = inflow.LiquidDeliverability{Reservoir: unit.Pressure(pr), Index: unit.ProductivityIndex(n), Bubble: unit.Pressure(pb)}.Pressure(unit.FlowRate(q))
		number("pressure", float64(back), err)
	})
}

func BenchmarkLiquid(b *testing.B) {
	p := 1000.0
	for b.Loop() {
		q, _ := saturated.At(p)
		p = 1000 + q
	}
}

func ExampleVogelRatio() {
	fmt.Printf("%.3f\n", inflow.VogelRatio(1500*psi, 2000*psi))
	// Output: 0.400
}

func ExampleLiquidDeliverability_Rate() {
	zone := inflow.LiquidDeliverability{Reservoir: 4000 * psi, Index: 2 * unit.BarrelPerDayPSI, Bubble: 1800 * psi}
	fmt.Println(zone.Rate(3000*psi).Rounded(4), zone.Rate(900*psi).Rounded(4), zone.OpenFlow().Rounded(4))
	// Output: 2000 bbl/d 5800 bbl/d 6400 bbl/d
}

func ExampleGasDeliverability_Pressure() {
	zone := inflow.GasDeliverability{Reservoir: 3000 * psi, OpenFlow: 10000 * unit.ThousandCubicFeetPerDay, Exponent: 0.8}
	p, err := zone.Pressure(4000 * unit.ThousandCubicFeetPerDay)
	fmt.Println(p.Rounded(4), err)
	fmt.Printf("%.0f Mcf/d\n", zone.Rate(p).In(unit.ThousandCubicFeetPerDay))
	// Output:
	// 2475 psi <nil>
	// 4000 Mcf/d
}
