package movement_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// TestLocatorAndLatchAgreeWithTheClosedForm: seals between two stops, on random
// tapered strings in vertical wells.
func TestLocatorAndLatchAgreeWithTheClosedForm(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 5))
	stood, pulled := 0, 0
	for range 300 {
		v := movement.Vertical{Sections: randomSections(r), Initial: randomCondition(r), Final: randomCondition(r),
			Warming: unit.TemperatureDifference(100*r.Float64()-50) * unit.FahrenheitDifference,
			Seals: movement.SealBore{Bore: unit.Length(2.5+3*r.Float64()) * unit.Inch, Restraint: movement.Limited,
				Up: unit.Length(r.Float64()*4) * unit.Foot, Down: unit.Length(r.Float64()*4) * unit.Foot}}
		latch := r.IntN(2) == 0
		if !latch {
			v.Seals.Up = unit.Length(math.Inf(1))
		}
		want, err := v.Analyse()
		require.NoError(t, err)
		end := v.Sections[len(v.Sections)-1].BottomMD
		path, err := hydrostatics.Vertical(end)
		require.NoError(t, err)
		m := made(t, movement.Assembly{Sections: v.Sections, Path: path, Spacing: 1000 * unit.Foot,
			Seals: []movement.Seal{{MD: end, Bore: v.Seals.Bore, Up: v.Seals.Up, Down: v.Seals.Down, Locator: true, Latch: latch}}})
		s, err := m.Land(openBelow(v.Initial, 0, end, len(v.Sections)))
		require.NoError(t, err)
		got, err := m.Load(s, openBelow(v.Final, v.Warming, end, len(v.Sections)))
		require.NoError(t, err)
		require.InDelta(t, float64(want.PackerForce), float64(got.Seals[0].Load), 1e-3)
		require.InDelta(t, float64(want.SealMovement), float64(got.Seals[0].Travel), 1e-9)
		require.Equal(t, want.PackerForce < 0, got.Seals[0].Stands)
		require.Equal(t, want.PackerForce > 0, got.Seals[0].Pulls)
		if got.Seals[0].Stands {
			stood++
		}
		if got.Seals[0].Pulls {
			pulled++
		}
	}
	require.Greater(t, stood, 20)
	require.Greater(t, pulled, 20)
}

// TestSlackOffStandsOnTheLocator: the hook shows 20,000 lbf less than the string
// weighs: they stand on the locator, with 2,000 lbf of drag on the way down 18,000.
// Hung off so, the hanger's load is what the hook had.
func TestSlackOffStandsOnTheLocator(t *testing.T) {
	a := snug(t)
	a.Holds, a.Seals[0].Locator = nil, true
	m := made(t, a)
	s, err := m.Land(warm(100))
	require.NoError(t, err)
	c := warm(100)
	c.Top, c.Reading = movement.OnHookOpen, unit.Force(9000*buoyed()+15000-20000)*unit.PoundForce
	l, err := m.Load(s, c)
	require.NoError(t, err)
	require.False(t, l.Free)
	require.True(t, l.Seals[0].Stands)
	require.InDelta(t, -20000, lbf(l.Seals[0].Load), 1e-2)
	require.InDelta(t, 0, float64(l.Seals[0].ToShoulder), 1e-12)
	// The top came down by the 4 ft to the locator and by what the weight squeezes.
	steel := inch2(handPipe.OD) - inch2(handPipe.ID)
	require.InDelta(t, 48+20000*9000*12/(30e6*steel), l.TopMoved.In(unit.Inch), 1e-6)

	c.Drag = -2000 * unit.PoundForce
	l, err = m.Load(s, c)
	require.NoError(t, err)
	require.InDelta(t, -18000, lbf(l.Seals[0].Load), 1e-2)

	c.Drag = 0
	s, err = m.HangOff(s, c)
	require.NoError(t, err)
	l, err = m.Load(s, warm(100))
	require.NoError(t, err)
	require.InDelta(t, -20000, lbf(l.Seals[0].Load), 1e-2)
	// Pulled at a latch 2 ft up, the hook shows more than the string weighs.
	a.Seals[0].Latch = true
	latched := made(t, a)
	c.Reading = unit.Force(9000*buoyed()+15000+30000) * unit.PoundForce
	up, err := latched.Load(s, c)
	require.NoError(t, err)
	require.True(t, up.Seals[0].Pulls)
	require.InDelta(t, 30000, lbf(up.Seals[0].Load), 1e-2)
	require.InDelta(t, -24, up.Seals[0].Travel.In(unit.Inch), 1e-6)
	// It cools: 20,000 lbf of squeeze is 26.8 degF of cooling; at 60 the string has
	// left its locator.
	l, err = m.Load(s, warm(60))
	require.NoError(t, err)
	require.False(t, l.Seals[0].Stands)
	require.Zero(t, l.Seals[0].Load)
	require.InDelta(t, 40*6.9e-6*9000*12-20000*9000*12/(30e6*steel), l.Seals[0].ToShoulder.In(unit.Inch), 1e-6)
}
