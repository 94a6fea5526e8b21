package gasflow_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"completion.example/fluid"
	"completion.example/fluid/flow"
	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// ideal is a gas of constant Z: its density over its absolute pressure, in s²/m².
type ideal float64

func (k ideal) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	return unit.Density(float64(k) * float64(p+unit.Atmosphere)), nil
}

func (ideal) Viscosity(unit.Pressure, unit.Temperature) (unit.Viscosity, error) {
	return 0.02 * unit.Centipoise, nil
}

func tubing(g gasflow.Gas) gasflow.Tubing {
	return gasflow.Tubing{Gas: g, Wellhead: unit.Celsius(60), Bottom: unit.Celsius(100),
		Sections: []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 76 * unit.Millimetre, Roughness: 0.015 * unit.Millimetre}, Length: 3000, BottomTVD: 3000}}}
}

// At rest it is the column of the gas: for constant Z an exponential.
func TestAtRest(t *testing.T) {
	nodes, err := tubing(ideal(7e-6)).Down(0, 200*unit.Bar)
	require.NoError(t, err)
	want := (200e5+101325)*math.Exp(7e-6*9.80665*3000) - 101325
	require.InDelta(t, want, float64(nodes[1].Pressure), 1)
	// A real gas, beside the average column by hand (real-gas law at one Z and T).
	g := fluid.Gas{Gravity: 0.65}
	nodes, err = tubing(g).Down(0, 200*unit.Bar)
	require.NoError(t, err)
	z, err := g.ZFactor((200*unit.Bar+nodes[1].Pressure)/2, unit.Celsius(80))
	require.NoError(t, err)
	mean := fluid.AverageGasColumn{Gravity: 0.65, Z: z, Temperature: unit.Celsius(80), Height: 3000}
	require.InEpsilon(t, float64(mean.Bottom(200*unit.Bar)), float64(nodes[1].Pressure), 0.003)
}

// The closed form at constant Z and temperature, by integrating d(p²)/dz = 2κg·p² +
// 4f·G²/(κ·d): pb² = pt² e^s + 2f·G²/(κ²·g·d)·(e^s − 1), s = 2κ·g·L (Katz and others,
// 1959, as every textbook has it; here by hand). Acceleration is not in it.
func TestFlowingClosedForm(t *testing.T) {
	const kappa, rate = 7e-6, 5.0
	tb := tubing(ideal(kappa))
	nodes, err := tb.Down(rate, 100*unit.Bar)
	require.NoError(t, err)
	d := 0.076
	flux := rate / (math.Pi / 4 * d * d)
	x := math.Log10(0.015/76/3.7 + 5.74/math.Pow(flux*d/0.02e-3, 0.9)) // Swamee and Jain 1976: Darcy's factor
	f := 0.25 / (x * x) / 4                                            // Fanning's
	s := 2 * kappa * 9.80665 * 3000
	pt := 100e5 + 101325.0
	pb := math.Sqrt(pt*pt*math.Exp(s) + 2*f*flux*flux/(kappa*kappa*9.80665*d)*(math.Exp(s)-1))
	require.InEpsilon(t, pb-101325, float64(nodes[1].Pressure), 3e-3, "their factor is within a per cent of Colebrook's, and acceleration is a per mille")

	back, err := tb.Up(rate, nodes[1].Pressure)
	require.NoError(t, err)
	require.InEpsilon(t, 100e5, float64(back[0].Pressure), 1e-7, "up is down turned over")
	require.InEpsilon(t, flux/float64(back[0].Density), float64(back[0].Velocity), 1e-12)
}

// Over a short piece it is the friction of a liquid of that density and viscosity.
func TestFrictionIsThatOfALiquid(t *testing.T) {
	tb := tubing(ideal(7e-6))
	tb.Sections[0].Length, tb.Sections[0].BottomTVD = 1, 0
	const rate = 5.0
	for _, p := range []unit.Pressure{100 * unit.Bar, 300 * unit.Bar} {
		nodes, err := tb.Down(rate, p)
		require.NoError(t, err)
		rho := nodes[0].Density
		f, err := flow.Stream{Conduit: tb.Sections[0].Conduit, Rheology: flow.Newtonian(0.02 * unit.Centipoise), Density: rho, Rate: unit.FlowRate(rate / float64(rho))}.Friction()
		require.NoError(t, err)
		v := float64(nodes[0].Velocity)
		accelerated := 1 / (1 - v*v*float64(rho)/float64(p+unit.Atmosphere))
		require.InEpsilon(t, float64(f.Gradient)*accelerated, float64(nodes[1].Pressure-nodes[0].Pressure), 1e-3)
	}
}

// Sections add up, and a deviated well weighs by its vertical depth.
func TestSections(t *testing.T) {
	one := tubing(fluid.Gas{Gravity: 0.7})
	two := one
	two.Sections = []flow.ConduitSection{one.Sections[0], one.Sections[0]}
	two.Sections[0].Length, two.Sections[0].BottomTVD = 1000, 1000
	two.Sections[1].Length = 2000
	a, err := one.Down(3, 150*unit.Bar)
	require.NoError(t, err)
	b, err := two.Down(3, 150*unit.Bar)
	require.NoError(t, err)
	require.InEpsilon(t, float64(a[1].Pressure), float64(b[2].Pressure), 1e-8)
	require.Equal(t, 1000*unit.Metre, b[1].MD)

	flat := one
	flat.Sections = []flow.ConduitSection{one.Sections[0]}
	flat.Sections[0].BottomTVD = 0
	c, err := flat.Down(3, 150*unit.Bar)
	require.NoError(t, err)
	still, err := flat.Down(0, 150*unit.Bar)
	require.NoError(t, err)
	require.InDelta(t, 150e5, float64(still[1].Pressure), 1e-3, "a level pipe weighs nothing")
	require.Less(t, float64(c[1].Pressure), float64(a[1].Pressure))
}

func TestFaults(t *testing.T) {
	_, err := gasflow.Tubing{}.Down(-1, -1)
	for _, want := range []string{"Sections: are missing", "Gas: is missing", "Wellhead", "rate", "pressure"} {
		require.ErrorContains(t, err, want)
	}
	tb := tubing(ideal(7e-6))
	_, err = tb.Up(50, 100*unit.Bar)
	require.ErrorIs(t, err, gasflow.ErrNotReached)
	tb.Sections[0].Conduit.Inner, tb.Sections[0].BottomTVD = 40*unit.Millimetre, 4000
	_, err = tb.Up(1, 100*unit.Bar)
	require.ErrorContains(t, err, "nothing in it")
	require.ErrorContains(t, err, "Bottom")
	_, err = tubing(fluid.Gas{}).Down(1, 100*unit.Bar)
	require.Error(t, err)
	require.False(t, errors.Is(err, gasflow.ErrNotReached))
}

func ExampleTubing_Up() {
	g := fluid.Gas{Gravity: 0.65}
	nodes, err := tubing(g).Up(4, 250*unit.Bar)
	fmt.Println(nodes[0].Pressure.Rounded(4), err)
	// Output:
	// 2753 psi <nil>
}

func BenchmarkUp(b *testing.B) {
	tb := tubing(fluid.Gas{Gravity: 0.65})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tb.Up(4, 250*unit.Bar); err != nil {
			b.Fatal(err)
		}
	}
}

// A tubing told in several sections is the tubing told in one, down and up, bent hole included.
func TestSectionsOfOneTubing(t *testing.T) {
	whole := tubing(fluid.Gas{Gravity: 0.65})
	whole.Sections[0].Length, whole.Sections[0].BottomTVD = 3000, 2400
	parts := whole
	parts.Sections = nil
	for _, end := range []unit.Length{700, 1900, 2200, 3000} {
		s := whole.Sections[0]
		last := unit.Length(0)
		for _, x := range parts.Sections {
			last += x.Length
		}
		s.Length, s.BottomTVD = end-last, 0.8*end
		parts.Sections = append(parts.Sections, s)
	}
	down, err := whole.Down(4, 150*unit.Bar)
	require.NoError(t, err)
	several, err := parts.Down(4, 150*unit.Bar)
	require.NoError(t, err)
	require.Len(t, several, 5)
	require.InEpsilon(t, float64(down[1].Pressure), float64(several[4].Pressure), 1e-6)
	for i, end := range []unit.Length{0, 700, 1900, 2200, 3000} {
		require.InDelta(t, float64(end), float64(several[i].MD), 1e-9)
		require.InDelta(t, 0.8*float64(end), float64(several[i].TVD), 1e-9)
		require.InDelta(t, 60+40*float64(end)/3000, several[i].Temperature.Celsius(), 1e-9)
	}
	up, err := parts.Up(4, several[4].Pressure)
	require.NoError(t, err)
	for i := range up {
		require.InEpsilon(t, float64(several[i].Pressure), float64(up[i].Pressure), 1e-5)
	}
	for celsius, ok := range map[float64]bool{-60.001: false, -60: true, 350: true, 350.001: false} {
		hot := whole
		hot.Wellhead = unit.Celsius(celsius)
		require.Equal(t, ok, hot.Validate() == nil, celsius)
		hot = whole
		hot.Bottom = unit.Celsius(celsius)
		require.Equal(t, ok, hot.Validate() == nil, celsius)
	}
	// a section can't go deeper than it is long
	whole.Sections[0].BottomTVD = 3000
	require.NoError(t, whole.Validate())
	whole.Sections[0].BottomTVD = 3000 * (1 + 2e-9)
	require.Error(t, whole.Validate())
}
