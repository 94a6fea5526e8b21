package well

import (
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"github.com/stretchr/testify/require"
)

// Densities are so chosen that each unit of TVD of "one" makes 1 Pa: pressures below
// can be added up in the head.
const one = 1 / Gravity

// net is a network with as many compartments as wanted, from 0 to 100 with a depth in
// the middle, filled with a fluid of which a metre makes 1 Pa.
func net(n int, change func(n *Network)) *State {
	w := &Network{Fluids: []Fluid{
		{Name: "one", Density: affine.Const(one)},
		{Name: "two", Density: affine.Const(2 * one)},
		{Name: "about one", Density: affine.Form{C: one, T: []affine.Term{{Symbol: 0, C: 0.1 * one}}}},
	}, Symbols: []Symbol{{Name: "density", Middle: one, Half: 0.1 * one}, {Name: "trapped"}, {Name: "share"}}}
	for i := range n {
		w.Compartments = append(w.Compartments, Compartment{Name: string(rune('a' + i)), Formation: -1, Volume: 1,
			Depths: []Depth{{0, 0}, {50, 50}, {100, 100}}, Layers: []Layer{{Fluid: 0, Bottom: Depth{100, 100}}}})
	}
	change(w)
	w.Prepare()
	return w.Start()
}

// port joins a and b at their depths number 1, in the middle.
func (n *Network) port(a, b int, open bool) {
	n.Ports = append(n.Ports, Port{A: a, B: b, AtA: 1, AtB: 1, Open: open})
}

func at(t *testing.T, s *State, i, depth int) affine.Form {
	t.Helper()
	p, err := s.At(i, depth)
	require.NoError(t, err)
	return p.F
}

func pressure(t *testing.T, s *State, i, depth int) float64 {
	t.Helper()
	f := at(t, s, i, depth)
	require.Zero(t, f.Radius())
	return f.C
}

// A surface of 10 over 50 of "one" meets b, of "two", at the port: 60 there, 60 - 100
// at b's top, 160 at its bottom.
func TestASurfaceFixesItsBody(t *testing.T) {
	s := net(2, func(n *Network) {
		n.Compartments[0].Surface = true
		n.Compartments[1].Layers[0].Fluid = 1
		n.port(0, 1, true)
	})
	s.Applied[0] = affine.Flat(affine.Const(10))
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 10, pressure(t, s, 0, 0), 1e-9)
	require.InDelta(t, 60, pressure(t, s, 1, 1), 1e-9)
	require.InDelta(t, -40, pressure(t, s, 1, 0), 1e-9)
	require.InDelta(t, 160, pressure(t, s, 1, 2), 1e-9)
	// Shut off, b keeps that and a goes on.
	s.Open[0] = false
	s.Applied[0] = affine.Flat(affine.Const(500))
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 160, pressure(t, s, 1, 2), 1e-9)
	require.InDelta(t, 600, pressure(t, s, 0, 2), 1e-9)
}

// A formation of 400 at the bottom of b fixes it and, through the port, a; with a
// surface of 10 on a it gives way, and what it lacks is told.
func TestAFormationFixesUntilASurfaceDoes(t *testing.T) {
	s := net(2, func(n *Network) {
		n.Compartments[1].Formation, n.Compartments[1].FormationAt = 0, 2
		n.Formations = []Formation{{Name: "sand", Pressure: affine.Const(400), Face: 1}}
		n.port(0, 1, true)
	})
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 300, pressure(t, s, 0, 0), 1e-9)
	require.Equal(t, -1, s.SecondReference(1).With)
	s.Surface[0] = true
	s.Applied[0] = affine.Flat(affine.Const(10))
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 110, pressure(t, s, 1, 2), 1e-9)
	require.Equal(t, 0, s.SecondReference(1).With)
	require.InDelta(t, 110-400, s.SecondReference(1).Excess.F.C, 1e-9)
}

// Two surfaces of 0 and 40 on one body: everything lies between the profiles of either,
// by one share, in whatever order they stand in the file.
func TestTwoSurfacesShareTheDifference(t *testing.T) {
	for _, swapped := range []bool{false, true} {
		s := net(2, func(n *Network) {
			n.Compartments[0].Surface, n.Compartments[1].Surface = true, true
			if swapped {
				n.Compartments[0].Name, n.Compartments[1].Name = "b", "a"
			}
			n.port(0, 1, true)
			n.Share(0, 1, 2)
		})
		s.Applied[1] = affine.Flat(affine.Const(40))
		require.NoError(t, s.Solve(affine.Form{}))
		f := at(t, s, 0, 1)
		require.InDelta(t, 50, f.Least(), 1e-9)
		require.InDelta(t, 90, f.Greatest(), 1e-9)
		require.Len(t, f.T, 1, "by a symbol of its own")
		require.InDelta(t, 0, at(t, s, 0, 1).Minus(at(t, s, 1, 1)).Radius(), 1e-9, "at the port both have the same")
		// Nothing but the share: both ends of the symbol are the two profiles.
		require.ElementsMatch(t, []float64{50, 90}, []float64{round(f.At([]float64{0, 0, -1})), round(f.At([]float64{0, 0, 1}))})
	}
}

func round(x float64) float64 { return float64(int(x*1e6+0.5)) / 1e6 }

// Trapped bodies keep what they have; where they meet, it is shared by volume: 3 of 100
// and 1 of 200 at the same depths make 125, and with b of "two" the columns stay
// consistent: at the port 150 in a (its top 100), 300 in b (its top 200). The sum of
// volume times change is nothing: 3·(q - 150) + 1·(q - 300) = 0, q = 187.5.
func TestTrappedBodiesMeetByVolume(t *testing.T) {
	for fluid, want := range map[int]float64{0: 125 + 50, 1: 187.5} {
		s := net(2, func(n *Network) {
			n.Compartments[0].Trapped, n.Compartments[1].Trapped = affine.Const(100), affine.Const(200)
			n.Compartments[0].Volume = 3
			n.Compartments[1].Layers[0].Fluid = fluid
			n.port(0, 1, false)
		})
		require.NoError(t, s.Solve(affine.Form{}))
		require.InDelta(t, 200, pressure(t, s, 1, 0), 1e-9, "apart")
		s.Open[0] = true
		require.NoError(t, s.Solve(affine.Form{}))
		require.InDelta(t, want, pressure(t, s, 0, 1), 1e-9)
		require.InDelta(t, want, pressure(t, s, 1, 1), 1e-9)
		// Solving again changes nothing, and cutting off neither.
		s.Open[0] = false
		require.NoError(t, s.Solve(affine.Form{}))
		require.InDelta(t, want, pressure(t, s, 0, 1), 1e-9)
		require.InDelta(t, want, pressure(t, s, 1, 1), 1e-9)
	}
}

// A third body meets two that have met: (3·100 + 1·200 + 4·500)/8 at equal columns,
// whatever the order in which they meet.
func TestThreeBodiesMeetInAnyOrder(t *testing.T) {
	for _, order := range [][]int{{0, 1}, {1, 0}} {
		s := net(3, func(n *Network) {
			for i, v := range []float64{3, 1, 4} {
				n.Compartments[i].Volume = v
				n.Compartments[i].Trapped = affine.Const([]float64{100, 200, 500}[i])
			}
			n.port(0, 1, false)
			n.port(1, 2, false)
		})
		require.NoError(t, s.Solve(affine.Form{}))
		for _, p := range order {
			s.Open[p] = true
			require.NoError(t, s.Solve(affine.Form{}))
		}
		for i := range 3 {
			require.InDelta(t, 2500.0/8, pressure(t, s, i, 0), 1e-9)
		}
	}
}

// The same with what is trapped in a band: linear in it, by the shares of the volumes.
func TestMeetingIsLinearInItsBands(t *testing.T) {
	s := net(2, func(n *Network) {
		n.Compartments[0].Trapped = affine.Form{C: 100, T: []affine.Term{{Symbol: 1, C: 8}}}
		n.Compartments[1].Trapped = affine.Const(200)
		n.Compartments[0].Volume = 3
		n.Compartments[1].Layers[0].Fluid = 2
		n.port(0, 1, true)
	})
	require.NoError(t, s.Solve(affine.Form{}))
	f := at(t, s, 0, 1)
	// 3·(q - 150 - 8 e1) + 1·(q - 250 - 5 e0) = 0
	require.InDelta(t, (3*150+250)/4.0, f.C, 1e-9)
	require.Len(t, f.T, 2)
	require.InDelta(t, 5.0/4, f.T[0].C, 1e-9)
	require.InDelta(t, 6, f.T[1].C, 1e-9)
	require.Zero(t, f.R)
}

// Nobody knows how bodies share whose size nobody knows.
func TestBodiesWithoutVolume(t *testing.T) {
	s := net(2, func(n *Network) {
		n.Compartments[0].Trapped, n.Compartments[1].Trapped = affine.Const(100), affine.Const(200)
		n.Compartments[1].Volume = 0
		n.port(0, 1, false)
	})
	require.NoError(t, s.Solve(affine.Form{}))
	s.Open[0] = true
	err := s.Solve(affine.Form{})
	require.ErrorAs(t, err, &Unstated{})
	require.ErrorContains(t, err, `["b"]`)

	// With one pressure there is nothing to share.
	s = net(2, func(n *Network) {
		n.Compartments[0].Trapped, n.Compartments[1].Trapped = affine.Const(100), affine.Const(100)
		n.Compartments[1].Volume = 0
		n.port(0, 1, true)
	})
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 100, pressure(t, s, 1, 0), 1e-9)
}
