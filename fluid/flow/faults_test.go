package flow_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// wire is an annulus about something too thin for a fluid that isn't Newtonian.
var (
	wire = flow.Conduit{Outer: unit.Metre, Inner: 0.1 * unit.Millimetre}
	lazy = flow.PumpedFluid{Name: "gel", Density: 1100, Rheology: flow.PowerLaw(0.5, 0.6)}
)

const thin = "flow: Conduit.Inner: is 0.0001 of Outer; must be at least 0.001 of it for a fluid that isn't Newtonian"

func wired() flow.Well {
	return flow.Well{Pipe: []flow.ConduitSection{{Name: "pipe", Conduit: flow.Conduit{Outer: 0.1}, Length: 100, BottomTVD: 100}},
		Annulus: []flow.ConduitSection{{Name: "gap", Conduit: wire, Length: 100, BottomTVD: 100}}}
}

// What one section can't work out is said with its name, by everything that asks it.
func TestTooThinIsSaidByAll(t *testing.T) {
	s := flow.Stream{Conduit: wire, Rheology: lazy.Rheology, Density: 1100, Rate: 0.01}
	_, err := s.Friction()
	require.EqualError(t, err, thin)
	_, err = wire.Laminar(lazy.Rheology, 1)
	require.EqualError(t, err, thin)
	_, err = wire.LaminarRate(lazy.Rheology, 100)
	require.EqualError(t, err, thin)
	_, err = flow.CriticalRates(wire, lazy.Rheology, 1100)
	require.ErrorContains(t, err, "flow: no velocity up to")

	_, err = flow.Circulation{Well: wired(), Liquid: lazy, Rate: 0.01}.Solve()
	require.EqualError(t, err, `annulus "gap": `+thin)
	_, err = flow.Displacement{Well: wired(), InPipe: lazy, InAnnulus: lazy, Output: 0.01,
		Stages: []flow.Stage{{Liquid: lazy, Volume: 1, Rate: 0.01}}}.Schedule()
	require.EqualError(t, err, `annulus "gap", gel: `+thin)
	_, err = flow.Kill{Well: wired(), InWell: lazy, Liquid: lazy, Rate: 0.01, Formation: 1e7, Fracture: 2e7, WeakTVD: 50}.Schedule()
	require.EqualError(t, err, `annulus "gap": `+thin)
	_, err = flow.Trip{Annulus: wired().Annulus, Liquid: lazy, Speed: 0.3, Peak: 1.5}.Solve()
	require.EqualError(t, err, `annulus "gap": `+thin)
}

// A gradient that no number of the rate can follow.
func TestLaminarRateBeyondNumbers(t *testing.T) {
	r := flow.PowerLaw(1e-6, 0.1)
	_, err := flow.Conduit{Outer: 1}.LaminarRate(r, 1e12)
	require.True(t, err == nil || err.Error() == "flow: the gradient drives no finite laminar rate", "%v", err)
}

func TestRegimesAndSidesAsText(t *testing.T) {
	for _, r := range []flow.Regime{flow.FlowLaminar, flow.FlowTransitional, flow.FlowTurbulent} {
		text, err := json.Marshal(r)
		require.NoError(t, err)
		var back flow.Regime
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, r, back)
	}
	require.Equal(t, "Regime(9)", flow.Regime(9).String())
	_, err := flow.Regime(-1).MarshalText()
	require.EqualError(t, err, "flow: regime is Regime(-1); must be a known one")
	var r flow.Regime
	require.EqualError(t, r.UnmarshalText([]byte("wild")), `flow: regime is "wild"; must be one of ["at rest" "laminar" "transitional" "turbulent"]`)
	for _, s := range []flow.Side{flow.PipeSide, flow.AnnulusSide} {
		text, err := s.MarshalText()
		require.NoError(t, err)
		var back flow.Side
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, s, back)
	}
	var s flow.Side
	require.EqualError(t, s.UnmarshalText([]byte("roof")), `flow: side is "roof"; must be pipe or annulus`)
}

// The handbook's figures in all three regimes: at the ends of the middle one the
// factors are those of its neighbours, and in its middle their mean.
func TestAPIFiguresFromLaminarToTurbulent(t *testing.T) {
	s := flow.Stream{Conduit: flow.Conduit{Outer: 0.1}, Rheology: flow.Newtonian(unit.Centipoise), Density: 1000}
	at := func(reynolds float64) flow.APIFigures {
		s.Rate = s.Conduit.Rate(unit.Velocity(reynolds * 0.001 / 1000 / 0.1))
		f, err := s.APIFigures()
		require.NoError(t, err)
		require.InEpsilon(t, reynolds, f.Reynolds, 1e-9)
		return f
	}
	lo, hi := 3470.0-1370, 4270.0-1370
	below, above, middle := at(lo*(1-1e-9)), at(hi*(1+1e-9)), at((lo+hi)/2)
	require.Equal(t, flow.FlowLaminar, below.Regime)
	require.Equal(t, flow.FlowTurbulent, above.Regime)
	require.Equal(t, flow.FlowTransitional, middle.Regime)
	require.InEpsilon(t, 16/lo, float64(below.Factor), 1e-8)
	require.InEpsilon(t, (math.Log10(1)+3.93)/50*math.Pow(hi, -(1.75-math.Log10(1))/7), float64(above.Factor), 1e-8)
	require.InEpsilon(t, float64(below.Factor+above.Factor)/2, float64(middle.Factor), 1e-8)

	_, err := flow.Stream{}.APIFigures()
	require.ErrorContains(t, err, "flow: ")
	_, err = flow.TwoPointBingham(flow.Reading{}, flow.Reading{})
	require.ErrorContains(t, err, "flow: ")
}

// counted gives a density so many times, and then an error or another one.
type counted struct {
	left *int
	err  error
	then unit.Density
}

func (c counted) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if *c.left--; *c.left < 0 {
		return c.then, c.err
	}
	return ideal(1e-6).Density(p, t)
}

// An influx that refuses at any moment of the job ends it with what it said.
func TestKillEndsWhenTheInfluxRefuses(t *testing.T) {
	k := killed()
	calls := 1 << 20
	k.Influx.Fluid = counted{left: &calls}
	_, err := k.Schedule()
	require.NoError(t, err)
	used := 1<<20 - calls
	require.LessOrEqual(t, used, 3850, "densities asked for")
	for n := 0; n < used; n += max(1, used/60) {
		left := n
		k.Influx.Fluid = counted{left: &left, err: errors.New("no such gas")}
		_, err := k.Schedule()
		require.EqualError(t, err, "flow: influx: no such gas", "after %d", n)
		left = n
		k.Influx.Fluid = counted{left: &left, then: -1}
		_, err = k.Schedule()
		require.ErrorContains(t, err, "flow: influx has a density of ", "after %d", n)
	}
	k.Influx.Fluid = &swinging{}
	_, err = k.Schedule()
	require.ErrorContains(t, err, "flow: the bubble's volume doesn't settle")
}

// swinging never gives one density twice, once its mass is known.
type swinging struct{ n int }

func (s *swinging) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	s.n++
	if s.n%2 == 0 {
		return 300, nil
	}
	return 100, nil
}

// Nothing falls where the columns balance or the imbalance is the other way.
func TestFallRateFaults(t *testing.T) {
	s, err := job().Schedule()
	require.NoError(t, err)
	for _, v := range []unit.Volume{-1, s.Pumped + 1, unit.Volume(math.NaN())} {
		_, err = s.FallRate(v)
		require.ErrorContains(t, err, "flow: pumped: is ")
	}
	_, err = flow.Schedule{}.FallRate(0)
	require.ErrorContains(t, err, "flow: pumped: is 0 bbl")
	// All is pumped: what runs is the last stage's.
	_, err = s.FallRate(s.Pumped)
	require.ErrorIs(t, err, flow.ErrNoFall)
}
