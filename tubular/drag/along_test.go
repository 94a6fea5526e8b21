package drag_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"github.com/stretchr/testify/require"
)

// weightOnly is the effective force without drag of the string of horizontal, from an
// effective force at its lower end: weight times true vertical depth above it.
func weightOnly(t *testing.T, s drag.String, end unit.Force) func(md unit.Length) unit.Force {
	bottom, err := s.Path.TVD(s.BottomMD)
	require.NoError(t, err)
	return func(md unit.Length) unit.Force {
		f, below := end, bottom
		from := s.BottomMD
		for i := len(s.Sections) - 1; i >= 0; i-- {
			from -= s.Sections[i].Length
			tvd, err := s.Path.TVD(max(md, from))
			require.NoError(t, err)
			w := s.Sections[i].Pipe.BuoyedWeight(s.Inside, s.Outside)
			f += unit.Force(float64(w) * float64(below-tvd))
			below = tvd
			if md >= from {
				break
			}
		}
		return f
	}
}

// Three marches to one hook load: HookLoad's from the lower end up, Along from the
// lower end up, and Along from the hook down, which finds the force at the lower end
// that HookLoad began with.
func TestAlongIsHookLoad(t *testing.T) {
	s := horizontal(t, 20)
	p := prepare(t, s)
	for _, m := range []drag.Motion{drag.Pulled, drag.RunIn} {
		for _, end := range []unit.Force{0, 30000 * unit.PoundForce, 90000 * unit.PoundForce} {
			want, still := p.HookLoad(m, end), p.HookLoad(drag.Rotating, end)
			without := weightOnly(t, s, end)
			require.InEpsilon(t, float64(still), float64(without(0)), 1e-9)
			free, err := p.Along(m, 0, s.BottomMD, false, without)
			require.NoError(t, err)
			require.InEpsilon(t, float64(want-still), float64(free.Total), 1e-3, "%v from %v", m, end)
			require.Equal(t, 1.0, free.Share(0))
			require.Zero(t, free.Share(s.BottomMD))
			// From the hook down: without drag the whole string has the drag's force more.
			held, err := p.Along(m, 0, s.BottomMD, true, func(md unit.Length) unit.Force { return without(md) + free.Total })
			require.NoError(t, err)
			require.InEpsilon(t, float64(free.Total), float64(held.Total), 1e-3)
			for _, md := range []unit.Length{2000 * unit.Foot, 6000 * unit.Foot, 10000 * unit.Foot} {
				require.InDelta(t, free.Share(md), held.Share(md), 2e-3)
			}
		}
	}
	turned, err := p.Along(drag.Rotating, 0, s.BottomMD, false, weightOnly(t, s, 0))
	require.NoError(t, err)
	require.Zero(t, turned.Total)
	require.Zero(t, turned.Share(0))
}

// Nothing is taken outside the two depths, and all that is lies between them.
func TestAlongPart(t *testing.T) {
	s := straight(t, 40)
	p := prepare(t, s)
	w := s.Sections[0].Pipe.BuoyedWeight(s.Inside, s.Outside)
	got, err := p.Along(drag.Pulled, 1234*unit.Foot, 7777*unit.Foot, false, weightOnly(t, s, 0))
	require.NoError(t, err)
	// μ·w·L·sinθ of a straight incline, by hand.
	want := 0.25 * float64(w) * float64((7777-1234)*unit.Foot) * math.Sin(40*math.Pi/180)
	require.InEpsilon(t, want, float64(got.Total), 1e-9)
	require.Equal(t, 1.0, got.Share(1234*unit.Foot))
	require.InDelta(t, 0.5, got.Share((7777+1234)/2*unit.Foot), 1e-3)
	require.Zero(t, got.Share(7777*unit.Foot))
	require.Zero(t, got.Share(8000*unit.Foot))
	_, err = p.Along(drag.Pulled, 2, 1, false, weightOnly(t, s, 0))
	require.ErrorContains(t, err, "permitted a force between two depths")
	_, err = p.Along(drag.Pulled, 0, s.BottomMD, false, func(unit.Length) unit.Force { return unit.Force(math.NaN()) })
	require.ErrorContains(t, err, "must be finite")
	_, err = (*drag.Prepared)(nil).Along(drag.Pulled, 0, s.BottomMD, false, weightOnly(t, s, 0))
	require.Error(t, err)
}

// With another friction factor and another fluid it is the string prepared with them.
func TestWithIsPreparedAnew(t *testing.T) {
	s := horizontal(t, 0)
	heavy := s
	heavy.Outside = 12 * unit.PoundPerGallon
	heavy.HoleSections = []drag.HoleSection{{BottomMD: 9500 * unit.Foot, Friction: 0.1, Hole: 8.535 * unit.Inch}, {BottomMD: 12000 * unit.Foot, Friction: 0.4, Hole: 8.5 * unit.Inch}}
	want := prepare(t, heavy)
	got, err := prepare(t, s).With([]float64{0.1, 0.4}, func(md unit.Length) unit.WeightPerLength {
		pipe := s.Sections[0].Pipe
		if md > 9000*unit.Foot {
			pipe = s.Sections[1].Pipe
		}
		return pipe.BuoyedWeight(heavy.Inside, heavy.Outside)
	})
	require.NoError(t, err)
	for _, m := range []drag.Motion{drag.Pulled, drag.RunIn, drag.Rotating} {
		require.InEpsilon(t, float64(want.HookLoad(m, 5000*unit.PoundForce)), float64(got.HookLoad(m, 5000*unit.PoundForce)), 1e-12)
	}
	require.Equal(t, want.SetDown(8000*unit.PoundForce), got.SetDown(8000*unit.PoundForce))
	same, err := prepare(t, s).With(nil, nil)
	require.NoError(t, err)
	require.Equal(t, prepare(t, s).Loads(), same.Loads())
	_, err = want.With([]float64{0.1}, nil)
	require.ErrorContains(t, err, "must have one for each of 2 zones")
	_, err = want.With([]float64{0.1, 2}, nil)
	require.ErrorContains(t, err, "factors[1]")
	_, err = want.With(nil, func(unit.Length) unit.WeightPerLength { return unit.WeightPerLength(math.NaN()) })
	require.ErrorContains(t, err, "must be finite")
}

// A tapered string's narrow pipe may stand in a hole that its wide one doesn't fit.
func TestANarrowHoleForNarrowPipe(t *testing.T) {
	s := horizontal(t, 0)
	s.Sections[0], s.Sections[1] = drag.PipeSection{Pipe: s.Sections[1].Pipe, Length: 9500 * unit.Foot}, drag.PipeSection{Pipe: s.Sections[0].Pipe, Length: 2500 * unit.Foot}
	s.HoleSections[1].Hole = 4 * unit.Inch
	require.NoError(t, s.Validate())
	s.HoleSections[1].Hole = 3.4 * unit.Inch
	require.ErrorContains(t, s.Validate(), "HoleSections[1].Hole")
	s.HoleSections[1].Hole, s.HoleSections[0].Hole = 4*unit.Inch, 4*unit.Inch
	require.ErrorContains(t, s.Validate(), "HoleSections[0].Hole")
}
