package flow_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

// Burkhardt's clinging constant is the mean of v(r) = Vp ln(r/Ro)/ln(Ri/Ro) over
// the gap: here by the midpoint rule.
func TestClingIsTheMeanOfTheDrag(t *testing.T) {
	for _, a := range []float64{0.01, 0.3, 0.57, 0.9} {
		const n = 200_000
		sum := 0.0
		for i := range n {
			x := a + (1-a)*(float64(i)+0.5)/n
			sum += x * math.Log(x) / math.Log(a)
		}
		mean := sum * 2 * (1 - a) / n / (1 - a*a)
		near(t, mean, flow.Cling(flow.Conduit{Outer: 1, Inner: unit.Length(a)}), 1e-8, a)
	}
	near(t, 0.5, flow.Cling(flow.Conduit{Outer: 1, Inner: 0.999}), 1e-3)
}

// A Newtonian fluid in a closed-end trip, exactly: Poiseuille flow and the drag
// of the wall superposed carry the volume that the pipe displaces.
func TestSurgeOfANewtonianFluidIsExact(t *testing.T) {
	const D, d, vp, μ, L = 0.2, 0.12, 0.3, 0.2, 1000.0
	ri, ro := d/2, D/2
	l := math.Log(ri / ro)
	drag := 2 * math.Pi * vp / l * (-ro*ro/4 - ri*ri/2*l + ri*ri/4) // downwards with the pipe
	need := math.Pi*ri*ri*vp + drag
	shape := math.Pi / 8 / μ * (math.Pow(ro, 4) - math.Pow(ri, 4) + math.Pow(ro*ro-ri*ri, 2)/l)
	r, err := flow.Trip{
		Annulus: []flow.ConduitSection{{Conduit: flow.Conduit{Outer: D, Inner: d}, Length: L, BottomTVD: L}},
		Liquid:  flow.PumpedFluid{Density: 1200, Rheology: flow.Newtonian(μ)}, Speed: vp, Peak: 1,
	}.Solve()
	require.NoError(t, err)
	require.Equal(t, flow.FlowLaminar, r.Sections[0].Friction.Regime)
	near(t, need/shape*L, float64(r.Loss), 1e-9)
	near(t, 1200*g*L, float64(r.Static), 1e-14)
	near(t, float64(r.Static+r.Loss), float64(r.Running), 1e-15)
	near(t, float64(r.Static-r.Loss), float64(r.Pulling), 1e-15)
	near(t, float64(r.Running)/(g*L), float64(r.RunningEquivalent), 1e-14)
	require.Less(t, r.PullingEquivalent, r.RunningEquivalent)
}

func TestOpenPipeSurgesLess(t *testing.T) {
	trip := flow.Trip{
		Annulus: []flow.ConduitSection{
			{Name: "upper", Conduit: flow.Conduit{Outer: 0.22, Inner: 0.0889}, Length: 1000, BottomTVD: 1000},
			{Name: "lower", Conduit: flow.Conduit{Outer: 0.157, Inner: 0.073}, Length: 500, BottomTVD: 1400},
		},
		Liquid: heavy, Speed: 0.5,
	}
	closed, err := trip.Solve()
	require.NoError(t, err)
	workingtest.Check(t, trip.Steps(closed))
	require.Empty(t, trip.Steps(flow.Surge{}))
	trip.Open, trip.Bores = true, []unit.Length{0.076, 0.062}
	open, err := trip.Solve()
	require.NoError(t, err)
	workingtest.Check(t, trip.Steps(open))
	require.Less(t, open.Loss, closed.Loss)
	require.Positive(t, open.Loss)
	// Without a bore an open pipe is a closed one.
	near(t, float64(flow.ClosedPipeVelocity(trip.Annulus[0].Conduit, 1, 0.45)), float64(flow.OpenPipeVelocity(trip.Annulus[0].Conduit, 0, 1, 0.45)), 1e-15)
	trip.Speed = 0
	still, err := trip.Solve()
	require.NoError(t, err)
	require.Zero(t, still.Loss)
}

func TestTripErrors(t *testing.T) {
	_, err := flow.Trip{Annulus: []flow.ConduitSection{{Conduit: flow.Conduit{Outer: 0.2}, Length: 10}}, Open: true, Speed: -1, Cling: 2, Peak: 0.5}.Solve()
	for _, part := range []string{"Annulus[0].Conduit.Inner: is 0", "0 bores for 1 sections", "Speed: is", "Cling: is 2", "Peak: is 0.5", "Liquid.Density"} {
		require.ErrorContains(t, err, part)
	}
	_, err = flow.Trip{Annulus: []flow.ConduitSection{{Conduit: flow.Conduit{Outer: 0.2, Inner: 0.1}, Length: 10}}, Open: true, Bores: []unit.Length{0.1}, Liquid: water}.Solve()
	require.ErrorContains(t, err, "Bores[0]: is")
}

func ExampleClosedPipeVelocity() {
	// Lapeyrouse, chapter 5: 378 ft/min.
	v := flow.ClosedPipeVelocity(flow.Conduit{Outer: 7.875 * unit.Inch, Inner: 4.5 * unit.Inch}, 1.5*270*unit.FootPerMinute, 0.45)
	fmt.Printf("%.1f ft/min\n", v.In(unit.FootPerMinute))
	// Output: 378.6 ft/min
}

// A completion run in closed-ended at two minutes a stand.
func ExampleTrip() {
	trip := flow.Trip{
		Annulus: []flow.ConduitSection{{Name: "annulus", Conduit: flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: 9000 * unit.Foot, BottomTVD: 9000 * unit.Foot}},
		Liquid:  flow.PumpedFluid{Density: 9.2 * unit.PoundPerGallon, Rheology: flow.Newtonian(1.2 * unit.Centipoise)},
		Speed:   45 * unit.FootPerMinute,
	}
	s, err := trip.Solve()
	fmt.Println(s.Loss.Rounded(2), s.RunningEquivalent.Rounded(4), s.PullingEquivalent.Rounded(4), err)
	// Output: 8.5 psi 9.218 lb/gal 9.182 lb/gal <nil>
}
