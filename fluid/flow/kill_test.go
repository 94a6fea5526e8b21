package flow_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

// ideal is an ideal gas by its density over its absolute pressure, in SI.
type ideal float64

func (k ideal) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	return unit.Density(float64(k) * float64(p+unit.Atmosphere) * 300 / t.Kelvin()), nil
}

type refusing struct{}

func (refusing) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	return 0, errors.New("no such gas")
}

// killed is a vertical well of 3,000 m with pipe of 10 L/m and an annulus of 20 L/m.
func killed() flow.Kill {
	bore, outer := unit.Length(math.Sqrt(0.010*4/math.Pi)), 0.2*unit.Metre
	inner := unit.Length(math.Sqrt(0.04 - 0.020*4/math.Pi))
	thin := flow.Newtonian(1e-3 * unit.Centipoise)
	return flow.Kill{
		Well: flow.Well{Pipe: []flow.ConduitSection{{Name: "pipe", Conduit: flow.Conduit{Outer: bore}, Length: 3000, BottomTVD: 3000}},
			Annulus: []flow.ConduitSection{{Name: "annulus", Conduit: flow.Conduit{Outer: outer, Inner: inner}, Length: 3000, BottomTVD: 3000}}},
		InWell: flow.PumpedFluid{Name: "old", Density: 1100, Rheology: thin}, Liquid: flow.PumpedFluid{Name: "kill", Density: 1250, Rheology: thin},
		Rate: 1e-5 * unit.LitrePerMinute, Formation: 360 * unit.Bar, Margin: 10 * unit.Bar, WeakTVD: 2000, Fracture: 300 * unit.Bar,
		Influx: flow.Influx{Volume: 4, Fluid: ideal(1e-12), Surface: unit.Kelvin(300), Bottom: unit.Kelvin(300)},
	}
}

// A gas without weight in a well without friction, by hand: pressure times volume
// stays, and the bubble's top is at the choke when the rest of the annulus is full
// of what was pumped.
func TestKillOfAWeightlessGas(t *testing.T) {
	k := killed()
	s, err := k.Schedule()
	require.NoError(t, err)
	bottom := 370e5
	require.InDelta(t, 360e5-1100*g*3000, float64(s.ShutIn.Pump), 1, "shut in on the pipe")
	require.InDelta(t, 360e5-1100*g*(3000-4/0.020), float64(s.ShutIn.Choke), 50, "and on the annulus: 200 m of it is gas")
	require.InDelta(t, bottom-1100*g*3000, float64(s.Initial()), 1)
	require.InDelta(t, bottom-1250*g*3000, float64(s.Final()), 1)
	require.InDelta(t, 30, float64(s.Through), 1e-9)
	require.InDelta(t, 90, float64(s.Whole), 1e-9)

	// At the choke: h of gas on top. What was pumped, V = A·(3000-h), has 30 m³ of old
	// fluid on top of the rest of kill fluid; with V below 60 m³.
	pv := (360e5 + 101325) * 4.0
	choke := func(h float64) float64 {
		v := 0.020 * (3000 - h)
		kill := math.Max(0, v-30) / 0.020
		return bottom - 1250*g*kill - 1100*g*(3000-h-kill)
	}
	lo, hi := 1.0, 3000.0
	for range 200 {
		if h := (lo + hi) / 2; (choke(h)+101325)*0.020*h < pv {
			lo = h
		} else {
			hi = h
		}
	}
	require.InDelta(t, 0.020*(3000-lo), float64(s.AtSurface), 1e-4)
	found := false
	for _, p := range s.Points {
		if math.Abs(float64(p.Pumped-s.AtSurface)) < 1e-9 {
			found = true
			require.InDelta(t, choke(lo), float64(p.Choke), 100)
			require.InDelta(t, 0, float64(p.TopTVD), 1e-3)
			require.Equal(t, s.GreatestChoke, p, "the choke's pressure is greatest when the gas arrives")
		}
	}
	require.True(t, found, "the arrival is looked at")
	workingtest.Check(t, k.Steps(s))
	last := s.Points[len(s.Points)-1]
	require.InDelta(t, bottom-1250*g*3000, float64(last.Choke), 1)
	require.InDelta(t, bottom-1250*g*1000, float64(last.Weak), 1)
	require.Zero(t, last.Bubble)
}

// Without an influx the losses are those of plain circulation.
func TestKillFrictionIsThatOfCirculation(t *testing.T) {
	for _, reverse := range []bool{false, true} {
		k := killed()
		k.Influx, k.Rate, k.Reverse = flow.Influx{}, 500*unit.LitrePerMinute, reverse
		k.InWell.Rheology, k.Liquid.Rheology = flow.Bingham(20*unit.Centipoise, 5*unit.Pascal), flow.Newtonian(2*unit.Centipoise)
		k.Well.Exit = flow.Orifices{Count: 3, Diameter: 12 * unit.Millimetre, Discharge: flow.DischargeNozzle}
		s, err := k.Schedule()
		require.NoError(t, err)
		require.Equal(t, s.Whole, s.AtSurface)
		for _, c := range []struct {
			liquid flow.PumpedFluid
			point  flow.KillPoint
		}{{k.InWell, s.Points[0]}, {k.Liquid, s.Points[len(s.Points)-1]}} {
			round, err := flow.Circulation{Well: k.Well, Liquid: c.liquid, Rate: k.Rate, Reverse: reverse}.Solve()
			require.NoError(t, err)
			in, out := round.PipeLoss, round.AnnulusLoss
			if reverse {
				in, out = out, in
			}
			column := float64(c.liquid.Density) * g * 3000
			require.InDelta(t, 370e5-column+float64(in+round.ExitLoss), float64(c.point.Pump), 1e-3)
			require.InDelta(t, 370e5-column-float64(out), float64(c.point.Choke), 1e-3)
			toWeak := float64(round.AnnulusLoss) / 3 // a third of the annulus lies below the weak point
			if !reverse {
				toWeak = -toWeak
			}
			require.InDelta(t, 370e5-column/3+toWeak, float64(c.point.Weak), 1e-3)
		}
	}
}

// A trade's rule for water-base mud, 0.2·√(P·V·W/C), is printed as 1,344 psi for 25
// bbl of gas from 6,378 psi, 13.0 lb/gal and 0.0459 bbl/ft (web worked example,
// drilling formulas site). An ideal gas of one temperature with kill mud below it
// gives 0.228 in place of 0.2; the rule allows for cooling and for the lighter mud
// that is still there.
func TestKillBesideTheRuleOfThumb(t *testing.T) {
	k := killed()
	depth := unit.Length(6378 * unit.PSI / unit.Pressure(13*unit.PoundPerGallon*g)) // where it balances
	k.Well.Pipe[0].Length, k.Well.Pipe[0].BottomTVD = depth, depth
	k.Well.Annulus[0].Length, k.Well.Annulus[0].BottomTVD = depth, depth
	hole := 8.5 * unit.Inch
	area := float64(0.0459 * unit.BarrelPerFoot)
	k.Well.Annulus[0].Conduit = flow.Conduit{Outer: hole, Inner: unit.Length(math.Sqrt(float64(hole*hole) - area*4/math.Pi))}
	k.InWell.Density, k.Liquid.Density = 13*unit.PoundPerGallon, 13*unit.PoundPerGallon
	k.Formation, k.Margin, k.WeakTVD = 6378*unit.PSI, 0, 4000*unit.Foot
	k.Influx.Volume = 25 * unit.Barrel
	s, err := k.Schedule()
	require.NoError(t, err)
	require.InDelta(t, 0.228/0.2*1344, s.GreatestChoke.Choke.In(unit.PSI), 12)
}

// The heavier gas makes less pressure at surface, and a bubble never weighs more
// than it did.
func TestKillLaws(t *testing.T) {
	light, heavy := killed(), killed()
	heavy.Influx.Fluid = ideal(8e-6)
	a, err := light.Schedule()
	require.NoError(t, err)
	b, err := heavy.Schedule()
	require.NoError(t, err)
	require.Less(t, float64(b.ShutIn.Choke), float64(a.ShutIn.Choke))
	require.Less(t, float64(b.GreatestChoke.Choke), float64(a.GreatestChoke.Choke))
	for i, p := range b.Points {
		require.False(t, math.IsNaN(float64(p.Choke+p.Weak+p.Pump)), i)
		if p.Pumped < b.AtSurface && i > 0 {
			require.Greater(t, float64(p.Bubble), float64(b.Points[i-1].Bubble)*0.999999, "it grows on its way up")
			require.Less(t, float64(p.TopTVD), float64(b.Points[i-1].TopTVD))
		}
	}
	require.GreaterOrEqual(t, float64(b.GreatestWeak.Weak), float64(b.Points[0].Weak))
}

func TestKillFaults(t *testing.T) {
	require.True(t, math.IsNaN(float64(flow.Killing{}.Initial())))
	require.True(t, math.IsNaN(float64(flow.Killing{}.Final())))
	require.Empty(t, flow.Kill{}.Steps(flow.Killing{}))
	_, err := flow.Kill{Influx: flow.Influx{Volume: -1}}.Schedule()
	require.Error(t, err)
	k := killed()
	k.Rate, k.Formation, k.Margin, k.WeakTVD, k.Influx.Fluid, k.Influx.Bottom = 0, -1, -1, 4000, nil, unit.Kelvin(0)
	_, err = k.Schedule()
	for _, want := range []string{"Rate", "Formation", "Margin", "WeakTVD", "Influx.Fluid", "Influx.Bottom"} {
		require.ErrorContains(t, err, want)
	}
	k = killed()
	k.Influx.Fluid = refusing{}
	_, err = k.Schedule()
	require.ErrorContains(t, err, "no such gas")
	k.Influx.Fluid = ideal(0)
	_, err = k.Schedule()
	require.ErrorContains(t, err, "influx has a density of")
}

func ExampleKill_Schedule() {
	s, err := killed().Schedule()
	fmt.Println("from", s.Initial().Rounded(4), "to", s.Final().Rounded(4))
	fmt.Println("greatest at the choke", s.GreatestChoke.Choke.Rounded(4), "with", s.GreatestChoke.Pumped.Rounded(4), "pumped", err)
	// Output:
	// from 672.7 psi to 32.64 psi
	// greatest at the choke 1546 psi with 293 bbl pumped <nil>
}
