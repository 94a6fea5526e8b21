package well

import (
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"github.com/stretchr/testify/require"
)

// A squeeze of 80 over a way of 1 raises its body by that; where another body of the
// same size joins it half-way, the rest goes with half of the rate.
func TestSqueezeGoesWithTheVolume(t *testing.T) {
	s := net(2, func(n *Network) { n.port(0, 1, false) })
	require.NoError(t, s.Solve(affine.Form{}))
	require.NoError(t, s.RaiseTrapped(map[int]float64{0: 80}, nil))
	s.Span = 1
	require.NoError(t, s.Solve(affine.Form{}))
	p, err := s.At(0, 0)
	require.NoError(t, err)
	require.InDelta(t, 80, p.S, 1e-9)
	require.InDelta(t, 40, p.At(affine.Const(0.5)).C, 1e-9)
	other, err := s.At(1, 0)
	require.NoError(t, err)
	require.Zero(t, other.S)

	s.Open[0] = true
	half := affine.Const(0.5)
	require.NoError(t, s.Solve(half)) // they meet: 40 and 0 make 20
	for i := range 2 {
		p, err := s.At(i, 0)
		require.NoError(t, err)
		require.InDelta(t, 20, p.At(half).C, 1e-9)
		require.InDelta(t, 40, p.S, 1e-9)
		require.InDelta(t, 40, p.At(affine.Const(1)).C, 1e-9, "80 into twice the volume")
	}
	s.EndLeg(affine.Const(1))
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 40, pressure(t, s, 0, 0), 1e-9, "and it stays so")
}

func TestWhatIsHeldIsNotSqueezed(t *testing.T) {
	s := net(2, func(n *Network) {
		n.Compartments[1].Surface = true
		n.port(0, 1, true)
	})
	require.NoError(t, s.Solve(affine.Form{}))
	require.ErrorContains(t, s.RaiseTrapped(map[int]float64{0: 80}, nil), `"a" can't be squeezed: b fixes its pressure`)
}

// A front in the upper half of a changes what is beyond it by the pressure it gains,
// and nothing above.
func TestAFrontGainsBeyondIt(t *testing.T) {
	s := net(1, func(n *Network) { n.Compartments[0].Surface = true })
	require.NoError(t, s.Solve(affine.Form{}))
	gain, err := s.Gain(0, 0, 1, Depth{0, 0}, Depth{50, 50})
	require.NoError(t, err)
	require.InDelta(t, 50, gain.C, 1e-9)
	s.Front, s.Span = Front{Compartment: 0, Beyond: 50, Sign: 1}, 50
	require.NoError(t, s.Solve(affine.Form{}))
	for depth, slope := range []float64{0, 1, 1} {
		p, err := s.At(0, depth)
		require.NoError(t, err)
		require.Equal(t, slope, p.S, "depth %d", depth)
	}
	s.EndLeg(affine.Const(50))
	s.SetLayers(0, []Layer{{Fluid: 1, Bottom: Depth{50, 50}}, {Fluid: 0, Bottom: Depth{100, 100}}})
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 150, pressure(t, s, 0, 2), 1e-9)
	require.Equal(t, 1, s.FluidAt(0, 10))
	require.Equal(t, 0, s.FluidAt(0, 50))
}

// A trapped body that nothing fixes keeps the pressure at its top through a swap, alone;
// joined to another of the same size, what the two gain is shared: 50 more below the
// port in a alone lowers nothing else.
func TestASwapInATrappedBody(t *testing.T) {
	s := net(1, func(n *Network) { n.Compartments[0].Trapped = affine.Const(100) })
	require.NoError(t, s.Solve(affine.Form{}))
	s.SetLayers(0, []Layer{{Fluid: 1, Bottom: Depth{100, 100}}})
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 100, pressure(t, s, 0, 0), 1e-9)
	require.InDelta(t, 300, pressure(t, s, 0, 2), 1e-9)
}

// A compartment may lie level, or rise with depth along it: pressures go with the true
// vertical depth and volumes with nothing but what is said of them.
func TestLevelAndRisingCompartments(t *testing.T) {
	s := net(1, func(n *Network) {
		n.Compartments[0].Surface = true
		n.Compartments[0].Depths = []Depth{{0, 0}, {100, 100}, {200, 100}, {300, 80}}
		n.Compartments[0].Layers = []Layer{{Fluid: 0, Bottom: Depth{100, 100}}, {Fluid: 1, Bottom: Depth{300, 80}}}
	})
	require.NoError(t, s.Solve(affine.Form{}))
	for depth, want := range []float64{0, 100, 100, 100 - 2*20} {
		require.InDelta(t, want, pressure(t, s, 0, depth), 1e-9, "depth %d", depth)
	}
	gain, err := s.Gain(0, 1, 0, Depth{200, 100}, Depth{300, 80})
	require.NoError(t, err)
	require.InDelta(t, 20, gain.C, 1e-9, "lighter below a rise: more at its upper end")
}

// What fixes one body again and again gives the same each time, and a clone goes its
// own way.
func TestClonesGoTheirOwnWay(t *testing.T) {
	s := net(2, func(n *Network) {
		n.Compartments[0].Surface = true
		n.Compartments[1].Trapped = affine.Const(7)
		n.port(0, 1, false)
	})
	require.NoError(t, s.Solve(affine.Form{}))
	c := s.Clone()
	c.Open[0] = true
	c.Applied[0] = affine.Flat(affine.Const(30))
	require.NoError(t, c.Solve(affine.Form{}))
	require.InDelta(t, 30, pressure(t, c, 1, 0), 1e-9)
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 7, pressure(t, s, 1, 0), 1e-9)
	require.ElementsMatch(t, []int{0, 1}, c.Body(1))
	require.ElementsMatch(t, []int{1}, s.Body(1))
}
