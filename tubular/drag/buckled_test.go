package drag_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"github.com/stretchr/testify/require"
)

// What a weight set down loses on its way down by the march of SetDown is what Along takes from the forces that the
// push and the weight alone make, buckled pipe and its contact counted in both: two ways of stepping.
func TestSetDownAgainstAlong(t *testing.T) {
	for _, inclination := range []unit.Angle{0, 0.5, 1.2} {
		p, c := slant(t, inclination, 3000, 5, 0.3)
		along := float64(c.Weight) * math.Cos(float64(inclination))
		for _, w := range []unit.Force{5000, 20000, 60000} {
			s := p.SetDown(w)
			without := func(md unit.Length) unit.Force { return -w + unit.Force(along*float64(3000-md)) }
			taken, err := p.Along(drag.RunIn, 0, 3000, false, without)
			require.NoError(t, err)
			require.InDelta(t, float64(s.HookLoad-without(0)), float64(taken.Total), 1e-2*math.Abs(float64(taken.Total)), "%v %v", inclination, w)
			pulled, err := p.Along(drag.Pulled, 0, 3000, false, without)
			require.NoError(t, err)
			require.InDelta(t, 0.3*3000*float64(c.Weight)*math.Sin(float64(inclination)), float64(pulled.Total), 1e-6*(1+float64(pulled.Total)), "a pull straightens it: its weight's contact alone")
			require.LessOrEqual(t, s.Helical, s.Buckled)
			require.LessOrEqual(t, s.Buckled, unit.Length(3000))
			if inclination == 0 || s.Helical > 0 {
				require.Positive(t, s.Buckled)
			}
		}
	}
}

// Somewhere in it a string buckles while it is run in, if any of its places does.
func TestBucklesSomewhere(t *testing.T) {
	some := 0
	for _, friction := range []float64{0, 0.2, 0.35, 0.5, 0.8} {
		s := horizontal(t, 20)
		for i := range s.HoleSections {
			s.HoleSections[i].Friction = friction
		}
		p := prepare(t, s)
		buckles := false
		for _, n := range p.Profile(drag.RunIn, 0) {
			buckles = buckles || n.Buckles
		}
		require.Equal(t, buckles, p.Loads().Buckles)
		if buckles {
			some++
		}
	}
	require.Positive(t, some)
	require.Less(t, some, 5)
}

// Locked up is what passes on less than a hundredth; of a spread the factor may be either end.
func TestLimitsOfDrag(t *testing.T) {
	require.False(t, drag.SetDown{Passes: drag.LockUp}.Locked())
	require.True(t, drag.SetDown{Passes: math.Nextafter(drag.LockUp, 0)}.Locked())
}
