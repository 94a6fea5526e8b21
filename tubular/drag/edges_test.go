package drag_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// A string of one element is a string; one that wasn't prepared is none.
func TestStringOfOneElement(t *testing.T) {
	one, _ := slant(t, 30*unit.Degree, 5, 10, 0.3)
	require.Equal(t, 2, one.Size())
	require.Zero(t, (*drag.Prepared)(nil).Size())
	_, err := one.With([]float64{0.2}, nil)
	require.NoError(t, err)
	_, err = one.Along(drag.Pulled, 0, 5, false, func(unit.Length) unit.Force { return 100 })
	require.NoError(t, err)
	_, err = one.Taken(drag.Pulled, 0)
	require.NoError(t, err)
	_, err = one.Arrives(1)
	require.NoError(t, err)
	_, err = one.MostSetDown()
	require.NoError(t, err)
	for _, none := range []*drag.Prepared{nil, {}} {
		_, err := none.With(nil, nil)
		require.ErrorContains(t, err, "prepare")
		_, err = none.Along(drag.Pulled, 0, 5, false, func(unit.Length) unit.Force { return 100 })
		require.ErrorContains(t, err, "prepare")
		_, err = none.Taken(drag.Pulled, 0)
		require.ErrorContains(t, err, "prepare")
		_, err = none.Arrives(1)
		require.ErrorContains(t, err, "prepare")
		_, err = none.MostSetDown()
		require.ErrorContains(t, err, "prepare")
	}
}

// Factors for all zones, and for no zone too few; weights that are numbers, and which one isn't.
func TestWithOtherFactorsAndWeights(t *testing.T) {
	p, c := slant(t, 40*unit.Degree, 300, 10, 0.3)
	_, err := p.With([]float64{}, nil)
	require.ErrorContains(t, err, "factors: has 0; must have one for each of 1 zones")
	same, err := p.With([]float64{0.3}, nil)
	require.NoError(t, err)
	require.Equal(t, p.HookLoad(drag.Pulled, 5000), same.HookLoad(drag.Pulled, 5000))
	heavy, err := p.With(nil, func(unit.Length) unit.WeightPerLength { return 2 * c.Weight })
	require.NoError(t, err)
	for _, m := range []drag.Motion{drag.Pulled, drag.RunIn, drag.Rotating} {
		require.InEpsilon(t, 2*float64(p.HookLoad(m, 0)), float64(heavy.HookLoad(m, 0)), 1e-9)
	}
	// what has been made of it doesn't change what it was made from
	before := p.SetDown(30000)
	_, err = p.With(nil, func(unit.Length) unit.WeightPerLength { return 5 * c.Weight })
	require.NoError(t, err)
	require.Equal(t, before, p.SetDown(30000))
	require.NotEqual(t, before.HookLoad, heavy.SetDown(30000).HookLoad)
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, err := p.With(nil, func(md unit.Length) unit.WeightPerLength {
			if md > 100 && md < 110 {
				return unit.WeightPerLength(bad)
			}
			return c.Weight
		})
		require.ErrorContains(t, err, fmt.Sprintf("effective weight at %v is", unit.Length(100)))
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, err := p.Along(drag.Pulled, 0, 100, false, func(unit.Length) unit.Force { return unit.Force(bad) })
		require.ErrorContains(t, err, "must be finite")
	}
	t0, err := p.With([]float64{0}, nil)
	require.NoError(t, err)
	taken, err := t0.Taken(drag.Pulled, 0)
	require.NoError(t, err)
	require.Zero(t, taken.Total)
}

// How much of what is set down lies in a helix and how much is bent at all, counted by the nodes: those
// of a straight inclined hole by movement.Confined under the force there.
func TestBuckledLengthOfASetDown(t *testing.T) {
	const spacing = 5.0
	p, c := slant(t, 60*unit.Degree, 1500, spacing, 0.25)
	for _, w := range []unit.Force{20000, 45000, 60000} {
		s := p.SetDown(w)
		helical, bent := 0.0, 0.0
		f := -float64(w)
		for range 300 { // elements from the lower end up, each by its middle
			contact := func(f float64) (float64, movement.Mode) {
				lies := c.Under(unit.Force(f))
				side := float64(c.Weight) * math.Sin(math.Pi/3)
				if f >= 0 {
					return side, movement.Straight
				}
				return math.Max(side, float64(lies.Contact)), lies.Mode
			}
			n, _ := contact(f)
			half := spacing / 2 * (float64(c.Weight)*math.Cos(math.Pi/3) - 0.25*n)
			n, mode := contact(f + half)
			f += spacing * (float64(c.Weight)*math.Cos(math.Pi/3) - 0.25*n)
			if mode == movement.Helical {
				helical += spacing
			}
			if mode != movement.Straight {
				bent += spacing
			}
		}
		require.InDelta(t, helical, float64(s.Helical), 2*spacing, "%v", w)
		require.InDelta(t, bent, float64(s.Buckled), 2*spacing, "%v", w)
		require.InDelta(t, f, float64(s.HookLoad), 0.002*math.Abs(f)+50, "%v", w)
		require.GreaterOrEqual(t, s.Buckled, s.Helical)
	}
	require.Zero(t, p.SetDown(0).Buckled)
}

// Least and greatest factors number as many as there are zones.
func TestSpreadNeedsAFactorForEachZone(t *testing.T) {
	path, err := hydrostatics.Vertical(100)
	require.NoError(t, err)
	s := drag.String{Path: path, BottomMD: 100, Sections: []drag.PipeSection{{Pipe: tubular.Pipe{OD: 0.073, ID: 0.062, Material: tubular.Steel()}, Length: 100}},
		HoleSections: []drag.HoleSection{{BottomMD: 100, Friction: 0.2, Hole: 0.15}}, Inside: 1000, Outside: 1000}
	for _, x := range []struct{ least, greatest []float64 }{{nil, []float64{0.3}}, {[]float64{0.1}, nil}, {[]float64{0.1, 0.1}, []float64{0.3}}} {
		_, err := s.PrepareSpread(x.least, x.greatest)
		require.ErrorContains(t, err, "must be one for each of 1 sections of hole")
	}
	_, err = s.PrepareSpread([]float64{0.1}, []float64{0.3})
	require.NoError(t, err)
}
