package production_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"completion.example/valve/production"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// The solver doesn't care how long the metre is: scaled by powers of two, every
// pressure and rate scales to the bit, search included.
func TestScaling(t *testing.T) {
	for _, bubble := range []unit.Pressure{0, 3000 * psi, 4500 * psi} {
		for _, outflow := range []production.Outflow{
			production.FixedPressure{Pressure: 3500 * psi},
			production.FixedRate{Rate: 2000 * bpd},
			many(1, 0).Outflow,
		} {
			w := many(4, bubble)
			w.Outflow = outflow
			opening := unit.Area(float64(3 * unit.Cv)) // a flow coefficient is an area
			dimension.Check(t, dimension.Gravity, func(w production.Well, a unit.Area) (production.Flow, error) {
				w.Zones = append([]production.Zone(nil), w.Zones...)
				for i := range w.Zones {
					w.Zones[i].Chokes = append(w.Zones[i].Chokes[:0:0], w.Zones[i].Chokes[0], w.Zones[i].Chokes[1])
					w.Zones[i].Chokes[1].Coefficient = unit.FlowCoefficient(a)
				}
				f, err := w.Flow()
				f.Passes = 0 // tests against a share of a pressure may fall either way
				return f, err
			}, w, opening)
		}
	}
}

// What must rise when something is opened or weakened, rises.
func TestMonotone(t *testing.T) {
	w := twoZones()
	last := unit.FlowRate(-1)
	for a := 1; a < 5; a++ { // the lower choke opens step by step
		f, err := w.Flow(a, 3)
		require.NoError(t, err)
		require.Greater(t, f.Zones[0].Rate, last)
		last = f.Zones[0].Rate
	}
	f, err := w.Flow(2, 3)
	require.NoError(t, err)
	g, err := w.Flow(4, 3)
	require.NoError(t, err)
	require.Greater(t, g.Rate, f.Rate, "an opened choke gives more in all")
	require.Less(t, g.Zones[1].Rate, f.Zones[1].Rate, "and less from the other zone")
	last = unit.FlowRate(1e9)
	for surface := 100 * psi; surface < 900*psi; surface += 100 * psi {
		tubing := w.Outflow.(production.Tubing)
		tubing.Surface = surface
		w.Outflow = tubing
		f, err := w.Flow(3, 3)
		require.NoError(t, err)
		require.Less(t, f.Rate, last, "a higher wellhead pressure gives less")
		last = f.Rate
	}
}

// Two zones of half the index are one of the whole, where nothing parts them.
func TestHalvesAddUp(t *testing.T) {
	one := many(1, 3000*psi)
	whole, err := one.Flow()
	require.NoError(t, err)
	two := many(1, 3000*psi)
	a := two.Zones[0]
	l := halfOf(a)
	a.Inflow, a.Above = l, production.Interval{}
	for i := range a.Chokes {
		a.Chokes[i].Coefficient /= 2
	}
	b := a
	b.Name = "other half"
	two.Zones = []production.Zone{a, b}
	halves, err := two.Flow()
	require.NoError(t, err)
	require.InEpsilon(t, float64(whole.Rate), float64(halves.Rate), 1e-13)
	require.InEpsilon(t, float64(halves.Zones[0].Rate), float64(halves.Zones[1].Rate), 1e-14)
}

func halfOf(z production.Zone) inflow.LiquidDeliverability {
	l := z.Inflow.(inflow.LiquidDeliverability)
	l.Index /= 2
	return l
}
