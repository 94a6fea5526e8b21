package well

import (
	"testing"

	"completion.example/fluid"
	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"github.com/stretchr/testify/require"
)

// pushed is the cushion in numbers, its level moved by an annulus that presses on it at the shoe.
func pushed(t *testing.T, shoe float64) *State {
	t.Helper()
	s := narrowed(t, cushion(t, fluid.Nitrogen{}, 1e7), []float64{0, 0, 0})
	s.Applied[1] = affine.Flat(affine.Const(shoe - 3000*Gravity*1100))
	require.NoError(t, s.Solve(affine.Form{}))
	return s
}

// Gas that is shut in is refused where what it does isn't followed.
func TestWhatClosedGasIsNotFollowedTo(t *testing.T) {
	s := pushed(t, 3e7)
	s.gas[0].Mass = affine.Const(1e-9)
	require.ErrorContains(t, s.lift(0, 12, affine.Flat(affine.Const(6e7))), "it is pressed to nothing (")

	s = pushed(t, 3e7)
	level := s.gas[0].Level.F.C
	s.Network.Compartments[0].Turn = level - 1
	require.ErrorContains(t, s.Solve(affine.Form{}), "past the low point of the hole at")
	require.ErrorContains(t, s.GasReaches(), "; part the compartment there")
	s.Network.Compartments[0].Turn = level + 1
	require.NoError(t, s.GasReaches())
	s.Network.Ports[0].AtA = 4 // at 1,000 m, in the gas
	require.ErrorContains(t, s.GasReaches(), `and passes through "shoe", open at`)
	s.Open[0] = false
	require.NoError(t, s.GasReaches())

	s = pushed(t, 3e7)
	s.Surface[1] = false
	require.NoError(t, s.Solve(affine.Form{}), "what was cut off together stays together")
	s.Rate = []float64{1e5, 0}
	require.ErrorContains(t, s.Solve(affine.Form{}), "a squeeze of what it presses on isn't modelled: heat it by the step's temperature")
	s.Rate = nil
	s.Fluids[0].Gases = append(s.Fluids[0].Gases, s.Fluids[0].Gases[0])
	s.SetTemperature(1)
	require.ErrorContains(t, s.Solve(affine.Form{}), "it is heated together with others")

	s = pushed(t, 3e7)
	s.SetLayers(0, []Layer{{0, Depth{3000, 3000}}})
	s.SetGasEnd(0, affine.Const(1600))
	_, err := s.At(0, 12)
	require.ErrorContains(t, err, "its level has moved; a liquid must stand under it from 5249.3 ft on: give it one in its layers")
}

// A metre of true vertical depth makes the weight of what stands there: of gas above the level, of brine under it, and
// about it what lies between.
func TestGradientsAboutALevel(t *testing.T) {
	s := pushed(t, 3e7)
	level := s.gas[0].Level.F.C
	for d, at := range s.Compartments[0].Depths {
		g, err := s.gradient(0, d)
		require.NoError(t, err)
		if at.MD > level {
			require.InDelta(t, 1100*Gravity, g.C, 1e-6)
			continue
		}
		p, err := s.At(0, d)
		require.NoError(t, err)
		rho, err := fluid.Nitrogen{}.Density(unit.Pressure(p.F.C), unit.Celsius(15+75*at.MD/3000))
		require.NoError(t, err)
		require.InEpsilon(t, float64(rho)*Gravity, g.C, 0.02, "at %v m", at.MD)
	}
	s.gas[0].Level = affine.Flat(affine.Within(1200, 1800))
	g, err := s.gradient(0, 6)
	require.NoError(t, err)
	require.Less(t, g.Least(), 200*Gravity)
	require.GreaterOrEqual(t, g.Greatest(), 1100*Gravity-1e-6)

	still := narrowed(t, cushion(t, fluid.Nitrogen{}, 1e7), []float64{0, 0, 0})
	still.Open[0] = false
	g, err = still.gradient(0, 6) // at 1,500 m, where the layers have it
	require.NoError(t, err)
	require.Less(t, g.Least(), 200*Gravity)
	require.GreaterOrEqual(t, g.Greatest(), 1100*Gravity-1e-6)

	// About the level of a column that has fallen, of air or of its fluid.
	low := net(1, func(n *Network) { n.Compartments[0].Surface = true })
	low.SetLow(0, 1)
	low.Top[0] = affine.Flat(affine.Const(-60))
	g, err = low.gradient(0, 1)
	require.NoError(t, err)
	require.InDelta(t, 0, g.Least(), 1e-9)
	require.InDelta(t, 1, g.Greatest(), 1e-9)
}

// Up through several liquids under a level that has moved is down and back.
func TestThroughLiquidsUnderALevelAndBack(t *testing.T) {
	s := pushed(t, 3e7)
	s.Fluids = append(append([]Fluid{}, s.Fluids...), Fluid{Name: "water", Density: affine.Const(1000)})
	gas := s.gas[0]
	s.SetLayers(0, []Layer{{0, Depth{1500, 1500}}, {1, Depth{2400, 2400}}, {2, Depth{3000, 3000}}})
	s.gas[0] = gas
	top := affine.Flat(affine.Const(1e7))
	down, err := s.across(0, top, 0, 12)
	require.NoError(t, err)
	up, err := s.across(0, down, 12, 0)
	require.NoError(t, err)
	require.InDelta(t, top.F.C, up.F.C, 1)
	part, err := s.across(0, down, 12, 10) // to 2,500 m: water alone
	require.NoError(t, err)
	require.InDelta(t, down.F.C-500*Gravity*1000, part.F.C, 1e-6)
	same, err := s.across(0, top, 0, 0)
	require.NoError(t, err)
	require.Equal(t, top, same)

	w, err := s.Fluids[0].Gases[0].Gas[1].place(1e7, 0)
	require.NoError(t, err)
	nothing, err := s.Fluids[0].Gases[0].Gas[1].mass(w, 500, 500)
	require.NoError(t, err)
	require.Zero(t, nothing)
}

// Gas in two wells is the same if all of it is: mass and level count.
func TestSameGas(t *testing.T) {
	a, b := pushed(t, 3e7), pushed(t, 3e7)
	require.True(t, a.SameGas(b, 1e-3))
	b.gas[0].Level = b.gas[0].Level.PlusForm(affine.Const(1))
	require.False(t, a.SameGas(b, 1e-3))
}

// A liquid that feels its temperature, which may be off by h: at the ends of that it makes what the columns there make, and in the middle
// what the middle one does.
func TestALiquidBetweenTheEndsOfItsTemperature(t *testing.T) {
	s := net(1, func(n *Network) {
		n.Heat = []affine.Form{{C: 1, T: []affine.Term{{Symbol: 0, C: 3}}}}
		column := func(rho float64) *hydrostatics.Column {
			c, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(rho), BottomTVD: 200}}, nil, hydrostatics.Reference{})
			require.NoError(t, err)
			return c
		}
		n.Fluids[0].Columns, n.Fluids[0].Cold, n.Fluids[0].Warm = []*hydrostatics.Column{column(1000)}, []*hydrostatics.Column{column(1010)}, []*hydrostatics.Column{column(985)}
		n.SetHeat(n.Heat)
	})
	for h, rho := range map[float64]float64{-2: 1010, 1: 1000, 4: 985} {
		p, err := s.pour(0, 1, 1e5, 0, 100, h)
		require.NoError(t, err)
		require.InDelta(t, 1e5+100*Gravity*rho, p, 1e-6, "off by %v K", h)
	}
	p, err := s.pour(0, 1, 1e5, 50, 50, 1)
	require.NoError(t, err)
	require.InDelta(t, 1e5, p, 1e-12)
	require.InDelta(t, 100, s.tvd(0, 150), 1e-12, "below the last depth it is that")
}

// A boundary of two liquids that feel pressure between two depths of a compartment: 70 m of one and 30 m of the other, by hand.
func TestABoundaryBetweenTwoDepths(t *testing.T) {
	s := net(1, func(n *Network) {
		for i := range 2 {
			c, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(float64(i+1) * one), BottomTVD: 200}}, nil, hydrostatics.Reference{})
			require.NoError(t, err)
			n.Fluids[i].Columns, n.Fluids[i].Scale = []*hydrostatics.Column{c}, affine.Const(1)
		}
		n.Compartments[0].Surface = true
		n.Compartments[0].Layers = []Layer{{0, Depth{70, 70}}, {1, Depth{100, 100}}}
	})
	s.Applied[0] = affine.Flat(affine.Const(5))
	require.NoError(t, s.Solve(affine.Form{}))
	require.InDelta(t, 5+70+60, pressure(t, s, 0, 2), 1e-9)
	back, err := s.carry(0, affine.Flat(affine.Const(135)), 2, 0)
	require.NoError(t, err)
	require.InDelta(t, 5, back.F.C, 1e-9)
	level, err := s.gain(0, affine.Flat(affine.Const(7)), 30, 30)
	require.NoError(t, err)
	require.InDelta(t, 7, level.F.C, 1e-12)
}

// What another fluid makes of a piece of a compartment whose pressure something else fixes is felt by the piece itself: the swap is
// wider there than where what is applied at its top leads.
func TestASwapOfGasFeelsItself(t *testing.T) {
	from, to := Depth{500, 500}, Depth{1400, 1400}
	gain := func(lead bool) affine.Form {
		s := pushed(t, 3e7)
		if lead {
			s.Reopen(0)
			s.Open[0] = false
			require.NoError(t, s.Solve(affine.Form{}))
		}
		g, err := s.Gain(0, 0, 1, from, to)
		require.NoError(t, err)
		return g
	}
	leads, follows := gain(true), gain(false)
	require.InEpsilon(t, leads.C, follows.C, 0.2)
	require.InDelta(t, 900*Gravity*1000, leads.C, 900*Gravity*80, "brine of 1,100 kg/m³ for gas of about a hundred")
	require.Greater(t, follows.Radius(), leads.Radius()+1e4)
}

// A squeeze of what is trapped beside a formation is refused, and one of bodies whose volumes nobody knows.
func TestSqueezesThatAreRefused(t *testing.T) {
	s := net(2, func(n *Network) {
		n.Formations = []Formation{{Name: "sand", Depth: Depth{100, 100}, Pressure: affine.Const(500)}}
		n.Compartments[1].Formation, n.Compartments[1].FormationAt = 0, 2
		n.port(0, 1, true)
	})
	require.NoError(t, s.Solve(affine.Form{}))
	require.ErrorContains(t, s.RaiseTrapped(map[int]float64{0: 1}, nil), `"a" can't be squeezed: sand fixes its pressure`)
	s = net(2, func(n *Network) {
		n.Compartments[1].Volume = 0
		n.port(0, 1, false)
	})
	require.NoError(t, s.Solve(affine.Form{}))
	require.NoError(t, s.RaiseTrapped(map[int]float64{0: 1}, nil))
	s.Open[0] = true // it meets another whose volume isn't known
	require.ErrorContains(t, s.Solve(affine.Form{}), "b")
}

// Columns that may differ by what isn't certain go round by themselves for all that is known: 0.5 psi in the middle and ten percent.
func TestRingsOfWhatIsNotCertain(t *testing.T) {
	for about, rings := range map[float64]bool{0.5: false, 1e5: true} {
		s := net(2, func(n *Network) {
			n.Fluids[2].Density = affine.Form{C: one, T: []affine.Term{{Symbol: 0, C: about * one}}}
			n.Compartments[0].Surface = true
			n.Compartments[1].Layers[0].Fluid = 2
			n.Ports = []Port{{Name: "up", A: 0, B: 1, Open: true}, {Name: "down", A: 0, B: 1, AtA: 2, AtB: 2, Open: true}}
		})
		require.NoError(t, s.Solve(affine.Form{}))
		err := s.Rings()
		if rings {
			require.ErrorContains(t, err, "goes round by itself")
		} else {
			require.NoError(t, err)
		}
	}
}

// Where two fluids meet a metre makes what either of them does, and nothing beyond.
func TestTheGradientWhereTwoFluidsMeet(t *testing.T) {
	s := net(1, func(n *Network) {
		n.Compartments[0].Surface = true
		n.Compartments[0].Layers = []Layer{{0, Depth{50, 50}}, {1, Depth{100, 100}}}
	})
	require.NoError(t, s.Solve(affine.Form{}))
	g, err := s.gradient(0, 1)
	require.NoError(t, err)
	require.InDelta(t, 1, g.Least(), 1e-9)
	require.InDelta(t, 2, g.Greatest(), 1e-9)
}

// The pressure where gas ends is that of the gas there: pressed on from below that of the liquid, at rest that of the gas from the top
// down; and the level lies between the two depths around it, at the bottom between the last two.
func TestThePressureWhereGasEnds(t *testing.T) {
	s := pushed(t, 3e7)
	level := s.gas[0].Level.F.C
	above, below, ok := s.Bracket(0, 0)
	require.True(t, ok)
	require.Equal(t, []int{int(level / 250), int(level/250) + 1}, []int{above, below})
	p, err := s.AtLevel(0, 0, above, below)
	require.NoError(t, err)
	require.InDelta(t, 3e7-(3000-level)*1100*Gravity, p.F.C, 1)
	still := narrowed(t, cushion(t, fluid.Nitrogen{}, 1e7), []float64{0, 0, 0})
	still.Open[0] = false
	still.gas[0].Level, still.gas[0].Anchor = affine.Flat(affine.Const(1400)), -1
	q, err := still.AtLevel(0, 0, 5, 6)
	require.NoError(t, err)
	want, err := still.Fluids[0].Gases[0].Gas[1].carry(1e7, 0, 1400)
	require.NoError(t, err)
	require.InDelta(t, want, q.F.C, 1)

	s.gas[0].Level = affine.Flat(affine.Within(2900, 3100))
	above, below, ok = s.Bracket(0, 0)
	require.True(t, ok)
	require.Equal(t, []int{11, 12}, []int{above, below})
	s.gas[0].Level = affine.Flat(affine.Within(-10, 20))
	above, below, ok = s.Bracket(0, 0)
	require.True(t, ok)
	require.Equal(t, []int{0, 1}, []int{above, below})
	_, _, ok = s.Bracket(1, 0)
	require.True(t, ok)
	s.gas[0].Level = affine.Flat(affine.Within(3050, 3100))
	_, _, ok = s.Bracket(0, 0)
	require.False(t, ok)
}

// Between two depths of a hole that bends true vertical depth goes straight with the measured one.
func TestTrueDepthBetweenDepths(t *testing.T) {
	s := net(1, func(n *Network) {
		n.Compartments[0].Depths = []Depth{{0, 0}, {50, 40}, {100, 60}}
		n.Compartments[0].Layers[0].Bottom = Depth{100, 60}
	})
	for md, tvd := range map[float64]float64{0: 0, 25: 20, 50: 40, 75: 50, 100: 60, 200: 60} {
		require.InDelta(t, tvd, s.tvd(0, md), 1e-12, "%v m", md)
	}
	share, err := s.ShareAt(0, 0, 0, 1)
	require.NoError(t, err)
	require.GreaterOrEqual(t, share.F.Least(), 0.0)
	require.LessOrEqual(t, share.F.Greatest(), 1.0)
}

// Friction of a fluid whose density isn't certain lies between what package flow makes of its ends; of one that isn't known there it is an error.
func TestFrictionOfAnUncertainDensity(t *testing.T) {
	s := net(1, func(n *Network) {
		n.Fluids[2].Density = affine.Form{C: 1200, T: []affine.Term{{Symbol: 0, C: 100}}}
		n.Fluids[2].Rheology = new(flow.Newtonian(1e-3))
	})
	c, at := flow.Conduit{Outer: 0.076}, func(density float64) float64 {
		x, err := flow.Stream{Conduit: flow.Conduit{Outer: 0.076}, Rheology: flow.Newtonian(1e-3), Density: unit.Density(density), Rate: 0.01}.Friction()
		require.NoError(t, err)
		return float64(x.Gradient)
	}
	w := &Way{gradients: map[gradientKey]affine.Form{}}
	f, err := s.friction(w, 2, c, 0.01)
	require.NoError(t, err)
	require.InEpsilon(t, at(1100), f.Least(), 1e-12)
	require.InEpsilon(t, at(1300), f.Greatest(), 1e-12)
	require.Greater(t, at(1300), 1.1*at(1100))
	none, err := s.friction(w, 2, c, 0)
	require.NoError(t, err)
	require.Zero(t, none.C)
	s.Fluids[2].Density.T[0].C = 1199.5 // down to 0.5 kg/m³
	_, err = s.friction(&Way{gradients: map[gradientKey]affine.Form{}}, 2, c, 0.01)
	require.ErrorContains(t, err, "Density: is ")
	s.Fluids[2].Density = affine.Const(0.5)
	_, err = s.friction(&Way{gradients: map[gradientKey]affine.Form{}}, 2, c, 0.01)
	require.ErrorContains(t, err, "Density: is ")
}

// While something is pumped past a depth a metre makes what it does above or below it, at the ends what it does there: 30 Pa in the first 50 m, 70 in
// the next, and 20 less in the last, which rises.
func TestGradientsWhileItIsPumped(t *testing.T) {
	s := net(1, func(n *Network) {
		n.Compartments[0].Depths = []Depth{{0, 0}, {50, 50}, {100, 100}, {150, 100}, {200, 80}}
		n.Compartments[0].Layers[0].Bottom = Depth{200, 80}
	})
	s.Still(map[int]Profile{0: {{}, affine.Const(30), affine.Const(100), affine.Const(110), affine.Const(90)}})
	for depth, want := range map[int][2]float64{0: {0.6, 0.6}, 1: {0.6, 1.4}, 2: {1.4, 1.4}, 3: {1, 1}, 4: {1, 1}} {
		g := s.flowingGradient(0, depth)
		require.InDelta(t, want[0], g.Least(), 1e-12, "depth %d", depth)
		require.InDelta(t, want[1], g.Greatest(), 1e-12, "depth %d", depth)
	}
	h := &hop{end: 7, marks: []station{{0, 0}, {50, 3}, {100, 7}}}
	require.InDelta(t, 25, h.depth(1.5), 1e-12)
	require.InDelta(t, 100, h.depth(99), 1e-12, "no further than its end")
	require.InDelta(t, 5, h.volume(75), 1e-12)
	require.InDelta(t, 7, h.volume(300), 1e-12)
	k := &Compartment{Bores: []Bore{{Bottom: 10}, {Bottom: 20}}}
	require.Equal(t, &k.Bores[0], k.bore(10))
	require.Equal(t, &k.Bores[1], k.bore(10.5))
	require.Equal(t, &k.Bores[1], k.bore(25), "under the last it is the last")
}
