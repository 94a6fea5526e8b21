package production_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/fluid"
	"completion.example/fluid/flow"
	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

func gasWell() production.GasWell {
	return production.GasWell{
		Inflow: inflow.GasDeliverability{Reservoir: 280 * unit.Bar, OpenFlow: 60000 * unit.ThousandCubicFeetPerDay, Exponent: 0.8},
		Tubing: gasflow.Tubing{Gas: fluid.Gas{Gravity: 0.65}, Wellhead: unit.Celsius(50), Bottom: unit.Celsius(100),
			Sections: []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 100 * unit.Millimetre, Roughness: 0.015 * unit.Millimetre}, Length: 3000, BottomTVD: 2800}}},
		Choke: choke.Hole(1, 20*unit.Millimetre), Discharge: 0.85, HeatRatio: 1.27, Line: 70 * unit.Bar, Standard: unit.Fahrenheit(60),
	}
}

// The rate is that of every part by itself.
func TestGasWellIsInBalance(t *testing.T) {
	w := gasWell()
	for _, size := range []unit.Length{5, 12, 20, 40, 90} {
		w.Choke = choke.Hole(1, size*unit.Millimetre)
		f, err := w.Flow()
		require.NoError(t, err, size)
		require.InEpsilon(t, float64(f.Rate), float64(w.Inflow.Rate(f.Sandface)), 1e-8, "the zone gives it")
		nodes, err := w.Tubing.Up(f.Mass, f.Sandface)
		require.NoError(t, err)
		require.InEpsilon(t, float64(f.Wellhead), float64(nodes[0].Pressure), 1e-6, "the tubing brings it")
		n, err := choke.Nozzle(choke.UpstreamGas{Density: nodes[0].Density, HeatRatio: w.HeatRatio}, w.Discharge, w.Choke, f.Wellhead, w.Line)
		require.NoError(t, err)
		require.InEpsilon(t, float64(f.Mass), float64(n.Mass), 1e-4, "the choke passes it")
		require.GreaterOrEqual(t, float64(f.Wellhead), float64(w.Line))
	}
}

// A wider choke passes more, until the tubing and the zone hold it back; a critical
// choke doesn't feel the line.
func TestGasWellLaws(t *testing.T) {
	w := gasWell()
	last := production.GasWellFlow{}
	for _, size := range []unit.Length{4, 8, 16, 32, 64} {
		w.Choke = choke.Hole(1, size*unit.Millimetre)
		f, err := w.Flow()
		require.NoError(t, err)
		require.Greater(t, float64(f.Rate), float64(last.Rate))
		if size > 4 {
			require.Less(t, float64(f.Wellhead), float64(last.Wellhead))
		}
		last = f
	}
	require.False(t, last.Critical)

	w = gasWell()
	w.Choke = choke.Hole(1, 10*unit.Millimetre)
	a, err := w.Flow()
	require.NoError(t, err)
	require.True(t, a.Critical)
	w.Line = 60 * unit.Bar
	b, err := w.Flow()
	require.NoError(t, err)
	require.InEpsilon(t, float64(a.Rate), float64(b.Rate), 1e-9)

	w.Line = 240 * unit.Bar
	_, err = w.Flow()
	require.ErrorIs(t, err, production.ErrDead)
}

// Critical flow as the trade's handbooks have it, in field units and with Z = 1: q =
// 879·Cd·A·p1·√(k/(γ·T)·(2/(k+1))^((k+1)/(k−1))), Mcf/d, in², psia, °R (from memory).
func TestGasWellBesideTheHandbook(t *testing.T) {
	w := gasWell()
	f, err := w.Flow()
	require.NoError(t, err)
	require.True(t, f.Critical)
	z, err := fluid.Gas{Gravity: 0.65}.ZFactor(f.Wellhead, w.Tubing.Wellhead)
	require.NoError(t, err)
	q := 879 * w.Discharge * w.Choke.In(unit.SquareInch) * (f.Wellhead + unit.Atmosphere).In(unit.PSI) *
		math.Sqrt(1.27/(0.65*w.Tubing.Wellhead.Rankine())*math.Pow(2/2.27, 2.27/0.27)) / math.Sqrt(z)
	require.InEpsilon(t, q, f.Rate.In(unit.ThousandCubicFeetPerDay), 0.01)
}

func TestGasWellFaults(t *testing.T) {
	_, err := production.GasWell{Line: -1}.Flow()
	for _, want := range []string{"Sections: are missing", "Choke", "Discharge", "HeatRatio", "Line", "Standard"} {
		require.ErrorContains(t, err, want)
	}
	w := gasWell()
	w.Tubing.Gas = fluid.Gas{}
	_, err = w.Flow()
	require.Error(t, err)
}

func ExampleGasWell_Flow() {
	f, err := gasWell().Flow()
	fmt.Printf("%.0f Mcf/d, wellhead %s, critical %v, %v\n", f.Rate.In(unit.ThousandCubicFeetPerDay), f.Wellhead.Rounded(4), f.Critical, err)
	// Output:
	// 31110 Mcf/d, wellhead 2265 psi, critical true, <nil>
}

// Where the choke could pass more than the tubing brings, the tubing's end decides: the rate is the greatest that still comes
// up, at the speed of sound there or at next to no pressure.
func TestGasWellThatItsTubingHoldsBack(t *testing.T) {
	for _, bore := range []unit.Length{20, 30, 45} {
		w := gasWell()
		w.Tubing.Sections[0].Conduit.Outer = bore * unit.Millimetre
		w.Choke, w.Line = 0.9*unit.SquareMetre, 0
		f, err := w.Flow()
		require.NoError(t, err, "%v", bore)
		up := func(share float64) error {
			q := f.Rate * unit.FlowRate(share)
			p, err := w.Inflow.Pressure(q)
			require.NoError(t, err)
			_, err = w.Tubing.Up(unit.MassRate(share)*f.Mass, p)
			return err
		}
		// No gas leaves the tubing faster than sound, √(p/ρ) at one temperature (Shapiro 1953, ch. 6).
		top := f.Nodes[0]
		mach := float64(top.Velocity) / math.Sqrt(float64(top.Pressure+unit.Atmosphere)/float64(top.Density))
		require.Less(t, mach, 1.0)
		require.Greater(t, mach, 0.8, "and it is the tubing's end that holds it back")
		require.NoError(t, up(1-1e-8))
		require.ErrorIs(t, up(1+1e-6), gasflow.ErrNotReached)
	}
}
