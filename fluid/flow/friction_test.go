package flow_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

var (
	water = flow.PumpedFluid{Name: "water", Density: 998 * unit.KilogramPerCubicMetre, Rheology: flow.Newtonian(1 * unit.Centipoise)}
	heavy = flow.PumpedFluid{Name: "mud", Density: 1500 * unit.KilogramPerCubicMetre, Rheology: mud}
)

func stream(c flow.Conduit, l flow.PumpedFluid, v unit.Velocity) flow.Stream {
	return flow.Stream{Conduit: c, Rheology: l.Rheology, Density: l.Density, Rate: c.Rate(v)}
}

// White, Fluid Mechanics (4th ed.), 6.6: in the annulus the effective diameter
// goes into Reynolds number and roughness of the pipe's law.
func TestTurbulentAnnulusIsWhites(t *testing.T) {
	c := flow.Conduit{Outer: 0.1, Inner: 0.04, Roughness: 50e-6}
	f, err := stream(c, water, 3).Friction()
	require.NoError(t, err)
	// ζ of b/a = 0.4 is 94.71/64 (White, Table 6.3).
	deff := 0.06 * 64 / 94.71
	re := 998 * 3 * deff / 1e-3
	near(t, float64(flow.Colebrook(re, 50e-6/deff)), float64(f.Darcy()), 1e-5)
	near(t, float64(f.Darcy())*998*9/2/0.06, float64(f.Gradient), 1e-12)
	require.Equal(t, flow.FlowTurbulent, f.Regime)
	require.Empty(t, f.Beyond)
}

func TestNewtonianPipe(t *testing.T) {
	c := flow.Conduit{Outer: 0.1}
	f, err := stream(c, water, 2).Friction()
	require.NoError(t, err)
	near(t, 998*2*0.1/1e-3, f.Reynolds, 1e-12)
	near(t, float64(flow.Colebrook(199600, 0)), float64(f.Darcy()), 1e-12)
	near(t, 1e-3, float64(f.EffectiveViscosity()), 1e-12)
	f, err = stream(c, water, 0.01).Friction()
	require.NoError(t, err)
	require.Equal(t, flow.FlowLaminar, f.Regime)
	near(t, 32*1e-3*0.01/0.01, float64(f.Gradient), 1e-12) // Hagen and Poiseuille: 32 μ V/D²
	near(t, float64(f.LaminarStress), float64(f.WallStress), 1e-12)
	near(t, float64(f.Gradient)*7, float64(f.Loss(7)), 1e-15)
}

// Over all regimes: continuous, and the gradient rises with the rate.
func TestFrictionIsContinuousAndRising(t *testing.T) {
	liquids := []flow.PumpedFluid{water, heavy,
		{Density: 1200, Rheology: flow.PowerLaw(0.3, 0.2)}, {Density: 1200, Rheology: flow.PowerLaw(0.02, 1.4)},
		{Density: 1200, Rheology: flow.Bingham(0.02, 8)}}
	for _, c := range []flow.Conduit{{Outer: 0.08}, {Outer: 0.08, Roughness: 0.001}, {Outer: 0.2, Inner: 0.1}} {
		for _, l := range liquids {
			before, regimes := 0.0, map[flow.Regime]bool{}
			const step = 1.01
			for v := 1e-3; v < 60; v *= step {
				f, err := stream(c, l, unit.Velocity(v)).Friction()
				require.NoError(t, err)
				g := float64(f.Gradient)
				regimes[f.Regime] = true
				if before > 0 {
					require.Greater(t, g, before*(1+1e-9), "%v %v at %v", c, l, v)
					// The steepest part is the bridge between the regimes.
					require.Less(t, g, before*math.Pow(step, 10), "%v %v at %v: %v", c, l, v, f.Regime)
				}
				before = g
			}
			require.Len(t, regimes, 3)
		}
	}
}

func TestRegimeLimits(t *testing.T) {
	require.Equal(t, 2100.0, flow.LaminarReynolds(1))
	require.Equal(t, 2900.0, flow.TurbulentReynolds(1))
	for _, l := range []flow.PumpedFluid{water, heavy} {
		for _, c := range []flow.Conduit{{Outer: 0.08}, {Outer: 0.2, Inner: 0.1}} {
			k, err := flow.CriticalRates(c, l.Rheology, l.Density)
			require.NoError(t, err)
			at := func(q unit.FlowRate) flow.Friction {
				f, err := flow.Stream{Conduit: c, Rheology: l.Rheology, Density: l.Density, Rate: q}.Friction()
				require.NoError(t, err)
				return f
			}
			require.Equal(t, flow.FlowLaminar, at(k.Laminar*(1-1e-8)).Regime)
			require.Equal(t, flow.FlowTransitional, at(k.Laminar*(1+1e-8)).Regime)
			require.Equal(t, flow.FlowTransitional, at(k.Turbulent*(1-1e-8)).Regime)
			require.Equal(t, flow.FlowTurbulent, at(k.Turbulent*(1+1e-8)).Regime)
			near(t, k.LaminarReynolds, at(k.Laminar).Reynolds, 1e-8)
			near(t, k.TurbulentReynolds, at(k.Turbulent).Reynolds, 1e-8)
			near(t, float64(at(k.Laminar*(1-1e-9)).Gradient), float64(at(k.Laminar*(1+1e-9)).Gradient), 1e-7)
			near(t, float64(at(k.Turbulent*(1-1e-9)).Gradient), float64(at(k.Turbulent*(1+1e-9)).Gradient), 1e-7)
		}
	}
	// By hand: water in 0.08 m, Re = 2100: V = 2100·0.001/(998·0.08).
	k, err := flow.CriticalRates(flow.Conduit{Outer: 0.08}, water.Rheology, water.Density)
	require.NoError(t, err)
	near(t, 2100*0.001/(998*0.08)*math.Pi/4*0.0064, float64(k.Laminar), 1e-9)
	_, err = flow.CriticalRates(flow.Conduit{Outer: 1e-4}, flow.PowerLaw(1e4, 1), 1)
	require.ErrorContains(t, err, "no velocity")
	_, err = flow.CriticalRates(flow.Conduit{}, flow.Rheology{}, 0)
	require.ErrorContains(t, err, "Conduit.Outer")
	require.ErrorContains(t, err, "density")
}

func TestFrictionAtRest(t *testing.T) {
	f, err := stream(flow.Conduit{Outer: 0.1}, heavy, 0).Friction()
	require.NoError(t, err)
	require.Equal(t, flow.FlowStatic, f.Regime)
	require.Zero(t, f.Gradient)
	require.Zero(t, f.Factor)
	require.Equal(t, 4*unit.Pascal, f.WallStress)
	require.Zero(t, f.EffectiveViscosity())
	require.Empty(t, f.Steps())
	f, err = stream(flow.Conduit{Outer: 0.1, Inner: 0.05}, heavy, 0).Friction()
	require.NoError(t, err)
	require.Zero(t, f.Gradient)
}

func TestFrictionErrorsAllAtOnce(t *testing.T) {
	_, err := flow.Stream{Conduit: flow.Conduit{Outer: -1, Roughness: -1}, Density: 0, Rate: -1}.Friction()
	for _, part := range []string{"Conduit.Outer", "Rheology.Index", "Density", "Rate"} {
		require.ErrorContains(t, err, part)
	}
	_, err = flow.Stream{Conduit: flow.Conduit{Outer: 0.001}, Rheology: water.Rheology, Density: 1000, Rate: 1}.Friction()
	require.ErrorContains(t, err, "velocity Rate/area")
	_, err = flow.Stream{Conduit: flow.Conduit{Outer: 0.1, Inner: 0.05, Roughness: 0.01}, Rheology: water.Rheology, Density: 1000, Rate: 1}.Friction()
	require.ErrorContains(t, err, "Conduit.Roughness: is")
}

func TestBeyondIsSaid(t *testing.T) {
	c := flow.Conduit{Outer: 0.1}
	say := func(c flow.Conduit, l flow.PumpedFluid, v unit.Velocity) string {
		f, err := stream(c, l, v).Friction()
		require.NoError(t, err)
		return f.Beyond
	}
	require.Empty(t, say(c, heavy, 0.1))
	require.Contains(t, say(c, water, 0.025), "interpolated")
	require.Contains(t, say(c, heavy, 40), "Dodge and Metzner")
	require.Contains(t, say(flow.Conduit{Outer: 0.1, Roughness: 1e-4}, heavy, 8), "rough walls")
	require.Contains(t, say(flow.Conduit{Outer: 0.1, Roughness: 0.009}, water, 8), "Colebrook")
}

func TestFrictionSteps(t *testing.T) {
	for _, l := range []flow.PumpedFluid{water, heavy, {Density: 1200, Rheology: flow.PowerLaw(0.3, 0.2)}} {
		for _, c := range []flow.Conduit{{Outer: 0.08, Roughness: 1e-4}, {Outer: 0.2, Inner: 0.1}} {
			for v := unit.Velocity(0.003); v < 30; v *= 1.5 {
				f, err := stream(c, l, v).Friction()
				require.NoError(t, err)
				steps := f.Steps()
				require.Len(t, steps, 4, "%v", f.Regime)
				workingtest.Check(t, steps)
			}
		}
	}
}

// The formulas know no metre, kilogram or second. (With n other than 1 the
// consistency index has no dimension of its own to scale.)
func TestFrictionIsHomogeneous(t *testing.T) {
	f := func(outer, inner, roughness unit.Length, μ unit.Viscosity, ρ unit.Density, q unit.FlowRate) (unit.Pressure, unit.Velocity) {
		f, err := flow.Stream{Conduit: flow.Conduit{Outer: outer, Inner: inner, Roughness: roughness}, Rheology: flow.Newtonian(μ), Density: ρ, Rate: q}.Friction()
		require.NoError(t, err)
		return f.Loss(outer), f.Velocity
	}
	dimension.Check(t, dimension.Free, func(f float64, ρ unit.Density, v unit.Velocity, d unit.Length) unit.Gradient {
		return flow.FanningGradient(flow.FanningFactor(f), ρ, v, d)
	}, 0.005, unit.Density(1000), unit.Velocity(2), unit.Length(0.1))
	dimension.Check(t, dimension.Free, flow.OrificeLoss, unit.Density(1000), unit.FlowRate(0.01), unit.Area(1e-4), 0.95)
	dimension.Check(t, dimension.Free, flow.OrificeRate, unit.Density(1000), unit.Pressure(-2e5), unit.Area(1e-4), 0.95)
	dimension.Check(t, dimension.Free, flow.MinorLoss, 0.7, unit.Density(1000), unit.Velocity(2))
	dimension.Check(t, dimension.Free, flow.ClosedPipeVelocity, flow.Conduit{Outer: 0.2, Inner: 0.1}, unit.Velocity(1), 0.45)
	// Diameters, density and viscosity of one octave stay inside the limits.
	p, v := f(0.1, 0.05, 1e-5, 1e-3, 1000, 0.02)
	p2, v2 := f(0.2, 0.1, 2e-5, 2e-3, 1000, 0.08)
	near(t, float64(p), float64(p2), 1e-12)
	near(t, float64(v), float64(v2), 1e-12)
}

// The third edition's figures beside the exact ones, as far apart as its doc says.
func TestAPIFiguresBesideFriction(t *testing.T) {
	r := flow.PowerLaw(0.5*unit.PascalSecondN, 0.6)
	for _, v := range []unit.Velocity{0.3, 1, 4, 8} {
		s := stream(flow.Conduit{Outer: 0.1}, flow.PumpedFluid{Density: 1400, Rheology: r}, v)
		a, err := s.APIFigures()
		require.NoError(t, err)
		f, err := s.Friction()
		require.NoError(t, err)
		near(t, f.Reynolds, a.Reynolds, 1e-12)
		require.Equal(t, f.Regime, a.Regime)
		near(t, float64(f.EffectiveViscosity()), float64(a.EffectiveViscosity), 1e-12)
		tolerance := 1e-12
		if f.Regime != flow.FlowLaminar {
			tolerance = 0.1
		}
		near(t, float64(f.Gradient), float64(a.Gradient), tolerance, v)
		s.Conduit.Inner = 0.05
		a, err = s.APIFigures()
		require.NoError(t, err)
		f, err = s.Friction()
		require.NoError(t, err)
		if f.Regime == flow.FlowLaminar && a.Regime == flow.FlowLaminar {
			require.Greater(t, a.Gradient, f.Gradient)
			near(t, float64(f.Gradient), float64(a.Gradient), 0.03)
		}
	}
	_, err := stream(flow.Conduit{Outer: 0.1}, heavy, 0).APIFigures()
	require.ErrorContains(t, err, "Rheology.Yield")
	require.ErrorContains(t, err, "Rate: is")
}

func FuzzFriction(f *testing.F) {
	f.Add(0.1, 0.05, 1e-5, 4.0, 0.6, 0.62, 1500.0, 0.02)
	f.Add(0.1, 0.0, 0.0, 0.0, 0.001, 1.0, 998.0, 0.0)
	f.Add(10.0, 0.01, 0.9, 1e4, 1e4, 0.1, 1.0, 1e-30)
	f.Add(1e-4, 0.0, 0.0, 0.0, 1e-6, 2.0, 1e4, 1e-6)
	f.Add(1e-4, 0.0, 0.0, 56.0, 1e-6, 0.2, 1e4, 1e-6)
	f.Add(10.0, 0.0, 1.0, 0.0, 1e-6, 1.0, 1e4, 7e4)
	f.Add(10.0, 0.0, 1.0, 0.0, 1e-6, 0.5, 1e4, 7e4)
	f.Fuzz(func(t *testing.T, outer, inner, roughness, τ0, k, n, ρ, q float64) {
		s := flow.Stream{
			Conduit:  flow.Conduit{Outer: unit.Length(outer), Inner: unit.Length(inner), Roughness: unit.Length(roughness)},
			Rheology: flow.Rheology{Yield: unit.Pressure(τ0), Consistency: unit.Consistency(k), Index: n},
			Density:  unit.Density(ρ), Rate: unit.FlowRate(q),
		}
		x, err := s.Friction()
		if err != nil {
			return
		}
		for _, v := range []float64{float64(x.Gradient), float64(x.Factor), x.Reynolds, float64(x.WallStress), float64(x.EffectiveDiameter), float64(x.LaminarRate), float64(x.EffectiveViscosity())} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				t.Fatalf("%+v: %+v", s, x)
			}
		}
	})
}

func BenchmarkFrictionPipeNewtonian(b *testing.B) {
	b.ReportAllocs()
	s := stream(flow.Conduit{Outer: 0.1}, water, 2)
	for b.Loop() {
		_, _ = s.Friction()
	}
}

func BenchmarkFrictionPipeHerschelBulkley(b *testing.B) {
	b.ReportAllocs()
	s := stream(flow.Conduit{Outer: 0.1}, heavy, 2)
	for b.Loop() {
		_, _ = s.Friction()
	}
}

func ExampleStream_Friction() {
	s := flow.Stream{
		Conduit:  flow.Conduit{Outer: 8.835 * unit.Inch, Inner: 4.5 * unit.Inch},
		Rheology: flow.Newtonian(1 * unit.Centipoise),
		Density:  8.6 * unit.PoundPerGallon,
		Rate:     335 * unit.GallonPerMinute,
	}
	f, err := s.Friction()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v, Re %.0f, f %.5f, %.2f psi in 10,000 ft\n", f.Regime, f.Reynolds, f.Factor, f.Loss(10_000*unit.Foot).In(unit.PSI))
	// Output: turbulent, Re 54989, f 0.00511, 22.03 psi in 10,000 ft
}
