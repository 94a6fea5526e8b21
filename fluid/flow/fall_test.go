package flow_test

import (
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Heavy mud after brine: the mud falls, and the schedule says from where to where.
func TestUTubing(t *testing.T) {
	d := job()
	d.InPipe, d.InAnnulus, d.BackPressure = brine, brine, 0
	d.Well.Exit = flow.Orifices{}
	d.Stages = []flow.Stage{{Liquid: heavy, Volume: 60, Rate: 0.002}}
	s, err := d.Schedule()
	require.NoError(t, err)
	require.Len(t, s.UTubes, 1)
	u := s.UTubes[0]
	require.Positive(t, u.From)
	require.Less(t, u.From, u.To)
	require.Negative(t, u.Least)
	// Worst where the tubing is full of mud and the annulus full of brine: the
	// columns less the friction.
	near(t, float64(d.Well.PipeVolume()), float64(u.At), 1e-9)
	p := s.Points[0]
	for _, x := range s.Points {
		if x.Volume == u.At {
			p = x
		}
	}
	near(t, -(1500-1120)*g*2300, float64(p.Static), 1e-9)
	near(t, float64(p.Static+p.Friction), float64(u.Least), 1e-9)
	near(t, -float64(u.Least), float64(s.HoldBack), 1e-12)
	// At its ends the inlet pressure is nothing.
	for _, v := range []unit.Volume{u.From, u.To} {
		d.Every = v
		at, err := d.Schedule()
		require.NoError(t, err)
		found := false
		for _, x := range at.Points {
			if math.Abs(float64(x.Volume-v)) < 1e-12 {
				require.InDelta(t, 0, float64(x.PumpPressure), 1)
				found = true
			}
		}
		require.True(t, found)
	}
	// Held back by that much it doesn't.
	d.BackPressure = s.HoldBack + 1
	s, err = d.Schedule()
	require.NoError(t, err)
	require.Empty(t, s.UTubes)
}

// At the rate of the fall the friction is the imbalance.
func TestFallRate(t *testing.T) {
	d := job()
	d.InPipe, d.InAnnulus, d.BackPressure = brine, brine, 0
	d.Stages = []flow.Stage{{Liquid: heavy, Volume: 60, Rate: 0.002}}
	s, err := d.Schedule()
	require.NoError(t, err)
	u := s.UTubes[0]
	q, err := s.FallRate(u.At)
	require.NoError(t, err)
	require.Greater(t, q, 3*d.Stages[0].Rate)
	d.Stages[0].Rate = q
	again, err := d.Schedule()
	require.NoError(t, err)
	found := false
	for _, p := range again.Points {
		if math.Abs(float64(p.Volume-u.At)) < 1e-9 {
			// Of the two sides of the jump at the exit one is nothing.
			found = found || math.Abs(float64(p.PumpPressure)) < 1e-6*float64(-u.Least)
		}
	}
	require.True(t, found)
	// Nothing falls before the mud is in, and none of it in a balanced well.
	_, err = s.FallRate(0)
	require.ErrorIs(t, err, flow.ErrNoFall)
	_, err = s.FallRate(61)
	require.ErrorContains(t, err, "pumped: is")
	_, err = flow.Schedule{}.FallRate(0)
	require.Error(t, err)
	// Held back by the greatest pressure that keeps it, it stays.
	d.BackPressure = s.HoldBack + 2e7
	held, err := d.Schedule()
	require.NoError(t, err)
	_, err = held.FallRate(u.At)
	require.ErrorIs(t, err, flow.ErrNoFall)
}
