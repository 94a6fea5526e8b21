package flow

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
)

// What is said of a regime beyond the experiments: Colebrook's chart ends at Re 1e8 and ε/D 0.05
// (White, Fluid Mechanics, 6.6), Dodge and Metzner's experiments at n 0.36 to 1 and Re 36,000.
func TestBeyondOnBothSidesOfItsRanges(t *testing.T) {
	const colebrook, dodge = "Colebrook's law", "Dodge and Metzner's experiments"
	for _, x := range []struct {
		n, re, e float64
		says     string
	}{
		{1, 1e8, 0.05, ""}, {1, 1.0000001e8, 0.05, colebrook}, {1, 1e8, math.Nextafter(0.05, 1), colebrook},
		{0.36, 36000, 0, ""}, {0.3599999, 36000, 0, dodge}, {0.36, 36000.01, 0, dodge}, {1.0000001, 5000, 0, dodge},
		{0.9999999, 5000, 0, ""}, {0.5, 5000, 1e-9, "no experiments with rough walls"},
	} {
		got := beyond(x.n, x.re, x.e, FlowTurbulent)
		require.Contains(t, got, x.says, "%v", x)
		require.Equal(t, x.says == "", got == "", "%v", x)
		require.Empty(t, beyond(x.n, x.re, x.e, FlowLaminar))
		require.Contains(t, beyond(x.n, x.re, x.e, FlowTransitional), "interpolated")
	}
}

func TestBlasiusOnBothSidesOfItsRanges(t *testing.T) {
	taken := func(re, n float64) bool { return !math.IsNaN(float64(Blasius(re, n))) }
	require.True(t, taken(1e20, 2))
	require.False(t, taken(math.Nextafter(1e20, 2e20), 1))
	require.False(t, taken(1e5, math.Nextafter(2, 3)))
	require.False(t, taken(0, 1))
	require.False(t, taken(1e5, 0))
	least := math.Pow(10, -3.93) // where a is nothing
	require.True(t, taken(1e5, least*1.000001))
	require.False(t, taken(1e5, least*0.999999))
	require.True(t, !math.IsNaN(float64(Turbulent(2, 1e5, 0))))
	require.True(t, math.IsNaN(float64(Turbulent(math.Nextafter(2, 3), 1e5, 0))))
	require.True(t, !math.IsNaN(float64(Turbulent(0.1, 1e5, 1))))
	require.True(t, math.IsNaN(float64(Turbulent(math.Nextafter(0.1, 0), 1e5, 0))))
}

// A gas bubble that fills a pipe, White and Beardmore (1962), worked; with a gas heavier than the
// liquid it goes down.
func TestBubbleRiseWorked(t *testing.T) {
	precise.Equal(t, float64(BubbleRise(0.1, 1000, 50)), "0.345*sqrt(9.80665*0.1*0.95)", nil)
	precise.Equal(t, float64(BubbleRise(0.1, 1000, 1200)), "-0.345*sqrt(9.80665*0.1*0.2)", nil)
}

// n' is the slope of ln τw over ln V: here by Richardson's difference of the stress itself, in
// pipe, slot and annulus.
func TestIndexIsTheSlopeOfTheStress(t *testing.T) {
	slope := func(stress func(v float64) float64) float64 {
		d := func(h float64) float64 {
			return (math.Log(stress(1+h)) - math.Log(stress(1-h))) / (math.Log1p(h) - math.Log1p(-h))
		}
		const h = 2e-3
		return (4*d(h/2) - d(h)) / 3
	}
	for _, r := range []Rheology{{Yield: 3, Consistency: 0.4, Index: 0.7}, {Yield: 5, Consistency: 0.02, Index: 1}, {Consistency: 0.5, Index: 0.6}} {
		for _, s := range []shape{round, slot} {
			l := r.laminar(300, s)
			want := slope(func(v float64) float64 { return float64(r.laminar(300*v, s).WallStress) })
			require.InEpsilon(t, want, l.Index, 2e-9, "%v", r)
			precise.Within(t, 1e-12, float64(l.WallRate), "pow((τ - τ0)/K, 1/n)", precise.Values{"τ": float64(l.WallStress), "τ0": float64(r.Yield), "K": float64(r.Consistency), "n": r.Index})
		}
		for _, c := range []Conduit{{Outer: 0.2, Inner: 0.1}, {Outer: 0.2, Inner: 0.004}} {
			l, err := c.laminar(r, 0.5)
			require.NoError(t, err)
			want := slope(func(v float64) float64 {
				l, err := c.laminar(r, 0.5*v)
				require.NoError(t, err)
				return float64(l.WallStress)
			})
			require.InEpsilon(t, want, l.Index, 1e-5, "%v in %v", r, c)
		}
	}
}

// The name of each value of an enumeration, and of what is none.
func TestNamesOfEnumerations(t *testing.T) {
	for v, name := range map[Regime]string{-1: "Regime(-1)", FlowStatic: "at rest", FlowTurbulent: "turbulent", 4: "Regime(4)"} {
		require.Equal(t, name, v.String())
		text, err := v.MarshalText()
		require.Equal(t, v == -1 || v == 4, err != nil)
		require.Equal(t, err == nil, string(text) == name)
	}
	for v, name := range map[Model]string{-1: "Model(-1)", ModelNewtonian: "newtonian", ModelHerschelBulkley: "herschel-bulkley", 4: "Model(4)"} {
		require.Equal(t, name, v.String())
		text, err := v.MarshalText()
		require.Equal(t, v == -1 || v == 4, err != nil)
		require.Equal(t, err == nil, string(text) == name)
	}
}

// A fit's figures: R² by gonum's own, the law's fixed index exactly one, and how many constants
// each law asks for.
func TestFitFiguresWorked(t *testing.T) {
	readings := []Reading{{600, 70}, {300, 45}, {200, 35}, {100, 23}, {6, 7}, {3, 6}}
	for model, constants := range map[Model]int{ModelNewtonian: 1, ModelBingham: 2, ModelPowerLaw: 2, ModelHerschelBulkley: 3} {
		f, err := Fit(model, readings)
		require.NoError(t, err)
		require.Equal(t, 6-constants, f.Freedom)
		if model == ModelNewtonian || model == ModelBingham {
			require.Equal(t, 1.0, f.Rheology.Index)
		}
		var measured, fitted []float64
		worst := 0.0
		for _, r := range readings {
			measured = append(measured, float64(r.Stress()))
			fitted = append(fitted, float64(f.Rheology.Stress(r.Rate())))
			worst = max(worst, math.Abs(measured[len(measured)-1]-fitted[len(fitted)-1]))
		}
		require.InDelta(t, stat.RSquaredFrom(fitted, measured, nil), f.R2, 1e-12)
		require.InEpsilon(t, worst, math.Abs(float64(f.Worst)), 1e-12)
		_, err = Fit(model, readings[:constants])
		require.NoError(t, err, "%v", model)
		_, err = Fit(model, readings[:constants-1])
		require.ErrorContains(t, err, fmt.Sprintf("must have, for a %v fluid, at least %d", model, constants))
	}
	// A dial that stands at one figure: all yield stress where the law has one, nothing explained.
	flat := []Reading{{600, 20}, {300, 20}, {100, 20}}
	for _, model := range []Model{ModelBingham, ModelHerschelBulkley} {
		f, err := Fit(model, flat)
		require.NoError(t, err)
		require.InEpsilon(t, 0.511*20, float64(f.Rheology.Yield), 1e-6)
		require.Equal(t, leastK, f.Rheology.Consistency)
		require.True(t, f.AtBound)
		require.Zero(t, f.R2)
	}
}

// A stretch in which the inlet's pressure is below nought runs from crossing to crossing, on
// straight lines, with the first of its lowest points.
func TestUTubesBetweenCrossings(t *testing.T) {
	var points []Point
	for i, p := range []unit.Pressure{2, -2, -4, -4, 0, 3, -1} {
		points = append(points, Point{Volume: unit.Volume(i), PumpPressure: p})
	}
	require.Equal(t, []UTube{{From: 0.5, To: 4, Least: -4, At: 2}, {From: 5.75, To: 6, Least: -1, At: 6}}, uTubes(points))
	require.Equal(t, []UTube{{From: 0, To: 0, Least: -1}}, uTubes([]Point{{PumpPressure: -1}}))
	require.Empty(t, uTubes([]Point{{}, {Volume: 1}}))
}

// Which step of working a factor gets: one that is held at the laminar line is 16/Re, whatever its
// regime.
func TestWorkingOfAHeldFactor(t *testing.T) {
	equation := func(f Friction) string { return f.Steps()[2].Equation }
	f := Friction{Regime: FlowTurbulent, Index: 0.4, Reynolds: 5000, Factor: 16.0 / 5000, EffectiveDiameter: 1}
	require.Equal(t, "16/Re", equation(f))
	f.Reynolds, f.Factor = 49, 16.0/49 // whose product isn't 16 to the last bit
	require.Equal(t, "16/Re", equation(f))
	f.Factor *= 1.0000005
	require.Contains(t, equation(f), "1.255")
	f.Regime = FlowLaminar
	require.Equal(t, "16/Re", equation(f))
	f.Regime = FlowTransitional
	require.Contains(t, equation(f), "3470")
}

// Rates that narrow sections end: 100 m/s in the narrowest.
func TestFastestRate(t *testing.T) {
	w := Well{Pipe: []ConduitSection{{Conduit: Conduit{Outer: 0.05}}, {Conduit: Conduit{Outer: 0.02}}}, Annulus: []ConduitSection{{Conduit: Conduit{Outer: 0.2, Inner: 0.1}}}}
	r := &run{}
	r.legs, _, _ = w.legs(false)
	precise.Equal(t, float64(r.fastest()), "pi/4*0.02*0.02*100", nil)
	require.Equal(t, 1e-6*unit.MetrePerSecond, slowest)
	require.Equal(t, 20*unit.MetrePerSecond, fastest)
}

// Swab and surge of a string without fittings, and with: ρ·ξ·V²/2 on top; the trade's peak of half
// as much again where none is given; no equivalent density at no depth.
func TestTripWithFittings(t *testing.T) {
	trip := Trip{Annulus: []ConduitSection{{Name: "a", Conduit: Conduit{Outer: 0.2, Inner: 0.1}, Length: 500, BottomTVD: 500}},
		Liquid: PumpedFluid{Name: "mud", Density: 1200, Rheology: PowerLaw(0.4, 0.7)}, Speed: 0.8, Cling: 0.4}
	plain, err := trip.Solve()
	require.NoError(t, err)
	trip.Annulus[0].Minor = 20
	s, err := trip.Solve()
	require.NoError(t, err)
	v := 0.8 * 1.5 * (0.01/(0.04-0.01) + 0.4)
	require.InEpsilon(t, v, float64(s.Sections[0].Velocity), 1e-12, "Burkhardt, at half as much again")
	require.InDelta(t, 1200*20*v*v/2, float64(s.Loss-plain.Loss), 1e-6)
	require.InEpsilon(t, float64(s.Running)/(9.80665*500), float64(s.RunningEquivalent), 1e-12)
	for depth, has := range map[unit.Length]bool{0: false, 1e-6: false, 1.000001e-6: true} {
		trip.Annulus[0].BottomTVD = depth
		s, err := trip.Solve()
		require.NoError(t, err)
		require.Equal(t, has, s.RunningEquivalent != 0, "%v", depth)
	}
	trip.Open = true
	for bore, ok := range map[unit.Length]bool{0: false, 0.09: true, 0.1: false} {
		trip.Bores = []unit.Length{bore}
		_, err := trip.Solve()
		require.Equal(t, ok, err == nil, "%v", bore)
	}
}

// Where the turbulent law lies below the laminar line even at its end, what is between lies on that line:
// a flow index so low that Dodge and Metzner's factor is less than 16/Re.
func TestTransitionOnTheLaminarLine(t *testing.T) {
	const n = 0.15
	lo, hi := LaminarReynolds(n), TurbulentReynolds(n)
	require.Less(t, float64(Turbulent(n, hi, 0)), 16/hi)
	for _, re := range []float64{lo * 1.01, (lo + hi) / 2, hi * 0.99} {
		f, regime := factor(n, re, 0)
		require.Equal(t, FlowTransitional, regime)
		require.InEpsilon(t, 16/re, float64(f), 1e-12)
	}
	require.True(t, math.IsNaN(float64(Turbulent(0.7, 1e5, math.Nextafter(1, 2)))))
	require.False(t, math.IsNaN(float64(Turbulent(0.7, 1e5, 1))))
}

// A fit's index ends at 0.1 and 1.2, agreed against nonsense.
func TestFitEndsAtItsBounds(t *testing.T) {
	readings := func(n float64) (all []Reading) {
		for _, speed := range []float64{600, 300, 200, 100} {
			all = append(all, Reading{Speed: speed, Dial: 100 * math.Pow(speed/600, n)})
		}
		return all
	}
	for n, want := range map[float64]float64{1.6: 1.2, 0.03: 0.1} {
		f, err := Fit(ModelPowerLaw, readings(n))
		require.NoError(t, err)
		require.Equal(t, want, f.Rheology.Index)
		require.True(t, f.AtBound)
	}
}

// A fluid that begins to leave laminar flow below the greatest velocity, and would be turbulent only
// above it, has no critical rates.
func TestCriticalRatesBeyondTheGreatestVelocity(t *testing.T) {
	at := func(reynolds float64) error { // at the greatest velocity
		_, err := CriticalRates(Conduit{Outer: 0.1}, Newtonian(unit.Viscosity(1000*float64(mostVelocity)*0.1/reynolds)), 1000)
		return err
	}
	require.NoError(t, at(2901))
	require.ErrorContains(t, at(2899), "makes the fluid turbulent here")
	require.ErrorContains(t, at(2101), "makes the fluid turbulent here")
}

// The least inner pipe that a fault names is a share of the outer one.
func TestFaultOfAThinInnerPipe(t *testing.T) {
	require.ErrorContains(t, Conduit{Outer: 1, Inner: 1e-6}.Validate(), "must be from 0.000393701 in to 39.3307 in")
}
