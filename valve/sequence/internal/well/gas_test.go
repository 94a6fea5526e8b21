package well

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"github.com/stretchr/testify/require"
)

func warmth(t testing.TB) *hydrostatics.TemperatureProfile {
	t.Helper()
	p, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(15)}, {TVD: 3000, Temperature: unit.Celsius(90)}})
	require.NoError(t, err)
	return p
}

func straightHole() []Depth {
	var hole []Depth
	for k := range 101 {
		hole = append(hole, Depth{float64(k) * 30, float64(k) * 30})
	}
	return hole
}

// Between the curves a gas is what hydrostatics.Column integrates from just that
// pressure, and its mass what holds it up: in a vertical hole Δp/g.
func TestGasBetweenItsCurves(t *testing.T) {
	for _, f := range []hydrostatics.Fluid{fluid.Nitrogen{}, fluid.Methane{}, fluid.Gas{Gravity: 0.65}, fluid.Gas{Gravity: 0.8, CarbonDioxide: 0.1}} {
		g := NewGas("gas", f, warmth(t), straightHole())
		for _, p := range []float64{0, 1e5, 7.7e5, 3e6, 2.2e7, 6.1e7, 1.1e8} {
			col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, TopTVD: 0, BottomTVD: 3000}}, warmth(t), hydrostatics.Reference{Pressure: unit.Pressure(p), TVD: 100})
			require.NoError(t, err)
			for _, to := range []float64{0, 250, 1234, 2999} {
				want, err := col.At(unit.Length(to))
				require.NoError(t, err)
				got, err := g.carry(p, 100, to)
				require.NoError(t, err)
				require.InEpsilon(t, float64(want)+atmosphere, got+atmosphere, 1e-8, "%T %v Pa to %v m", f, p, to)
				if to <= 100 {
					continue
				}
				m, err := massBetween(g, p, 100, 100, to)
				require.NoError(t, err)
				require.InEpsilon(t, (float64(want)-p)/Gravity, m, 1e-6, "%T %v Pa to %v m", f, p, to)
			}
		}
	}
}

// cushion is a compartment of 3,000 m with gas at a pressure shut in above 1,500 m, of
// water, which joins another at its bottom.
func cushion(t testing.TB, f hydrostatics.Fluid, top float64) *State {
	t.Helper()
	n := &Network{TVD: func(md float64) float64 { return md }, Heat: []affine.Form{{T: []affine.Term{{Symbol: 2, C: 4}}}},
		Symbols: make([]Symbol, 3)}
	hole := straightHole()
	at := func(by float64) *Gas {
		w, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(15 + by)}, {TVD: 3000, Temperature: unit.Celsius(90 + by)}})
		require.NoError(t, err)
		return NewGas("gas", f, w, hole)
	}
	n.Fluids = []Fluid{{Name: "gas", Gases: []*Gases{{Gas: [3]*Gas{at(-4), at(0), at(4)}, Least: -4, Most: 4}}},
		{Name: "brine", Density: affine.Form{C: 1100, T: []affine.Term{{Symbol: 0, C: 15}}}}}
	var depths []Depth
	for k := range 13 {
		depths = append(depths, Depth{float64(k) * 250, float64(k) * 250})
	}
	n.Compartments = []Compartment{
		{Name: "tubing", Depths: depths, Formation: -1, Trapped: affine.Form{C: top, T: []affine.Term{{Symbol: 1, C: 3e5}}},
			Layers: []Layer{{0, Depth{1500, 1500}}, {1, Depth{3000, 3000}}}},
		{Name: "annulus", Depths: depths, Formation: -1, Surface: true, Layers: []Layer{{1, Depth{3000, 3000}}}},
	}
	n.Ports = []Port{{Name: "shoe", A: 0, B: 1, AtA: 12, AtB: 12}}
	n.Prepare()
	s := n.Start()
	require.NoError(t, s.Solve(affine.Form{}))
	require.NoError(t, s.Close())
	return s
}

// narrowed is the state with numbers in place of the symbols.
func narrowed(t testing.TB, s *State, e []float64) *State {
	t.Helper()
	x := s.Network.Narrow(func(k int) (float64, float64, bool) { return e[k], 0, true }).Start()
	require.NoError(t, x.Solve(affine.Form{}))
	require.NoError(t, x.Close())
	x.Open[0] = true
	return x
}

// Whatever density, pressure of the gas, temperature and place on the leg, pressures
// above, at and under the level lie in what encloses them.
func TestClosedGasIsEnclosed(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	for _, f := range []hydrostatics.Fluid{fluid.Nitrogen{}, fluid.Methane{}, fluid.Gas{Gravity: 0.7}} {
		for _, top := range []float64{2e6, 1.2e7, 3e7} {
			s := cushion(t, f, top)
			s.Open[0] = true
			balance := top + 1500*Gravity*1100*0.15 // where the level stands about where it was
			const way = 1.7e6
			s.Applied[1] = affine.Line{F: affine.Const(math.Max(balance-1500*Gravity*1100, 0) + 2e6), S: 1}
			s.Span = way
			require.NoError(t, s.Solve(affine.Form{}))
			for range 12 {
				e := []float64{2*random.Float64() - 1, 2*random.Float64() - 1, 2*random.Float64() - 1}
				at := way * random.Float64()
				x := narrowed(t, s, e)
				x.Applied[1] = affine.Flat(affine.Const(s.Applied[1].F.C + at))
				require.NoError(t, x.Solve(affine.Form{}))
				require.InDelta(t, x.gas[0].Level.F.C, s.gas[0].Level.F.At(e)+s.gas[0].Level.S*at, s.gas[0].Level.F.R+1e-4, "level")
				for d := range s.Compartments[0].Depths {
					p, err := s.At(0, d)
					require.NoError(t, err)
					q, err := x.At(0, d)
					require.NoError(t, err)
					require.InDelta(t, q.F.C, p.F.At(e)+p.S*at, p.F.R+p.D*at+1, "%T at %v, depth %d, e %v, s %v", f, top, d, e, at)
				}
			}
		}
	}
}

// Gas keeps its mass at another temperature, alone: what a search in
// hydrostatics.Column for the pressure of that mass says.
func TestClosedGasIsHeated(t *testing.T) {
	s := cushion(t, fluid.Nitrogen{}, 1e7)
	s = narrowed(t, s, []float64{0, 0, 0})
	s.Open[0] = false
	mass, err := s.GasMass(0)
	require.NoError(t, err)
	hot := NewGas("gas", fluid.Nitrogen{}, warmth(t), straightHole())
	hot.warmth = func() *hydrostatics.TemperatureProfile {
		p, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(70)}, {TVD: 3000, Temperature: unit.Celsius(110)}})
		require.NoError(t, err)
		return p
	}()
	s.Fluids[0].Gases = append(s.Fluids[0].Gases, &Gases{Gas: [3]*Gas{nil, hot, nil}})
	s.SetTemperature(1)
	require.NoError(t, s.Solve(affine.Form{}))
	col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: fluid.Nitrogen{}, TopTVD: 0, BottomTVD: 1500}}, hot.warmth, hydrostatics.Reference{Pressure: unit.Pressure(s.Top[0].F.C)})
	require.NoError(t, err)
	foot, err := col.At(1500)
	require.NoError(t, err)
	require.InEpsilon(t, mass, (float64(foot)-s.Top[0].F.C)/Gravity, 1e-6)
	require.Greater(t, s.Top[0].F.C, 1.1e7)
}

// What isn't modelled says so.
func TestGasThatIsRefused(t *testing.T) {
	s := cushion(t, fluid.Nitrogen{}, 1e7)
	top, level, bottom := Depth{0, 0}, Depth{1500, 1500}, Depth{3000, 3000}
	require.ErrorContains(t, s.Sweep(0, 1, top, bottom, true), "shut in at the top")
	s.Reopen(0)
	require.NoError(t, s.Sweep(0, 1, top, bottom, true))
	require.NoError(t, s.Sweep(0, 0, level, bottom, false))
	require.NoError(t, s.Sweep(0, 1, level, bottom, false))
	require.ErrorContains(t, s.Sweep(0, 1, top, bottom, false), `write "up": true`)
	require.ErrorContains(t, s.Sweep(0, 1, top, Depth{700, 700}, true), "liquid would stand in it")
	require.ErrorContains(t, s.Sweep(0, 0, Depth{2000, 2000}, bottom, false), "under liquid")
	require.ErrorContains(t, s.Sweep(0, 0, top, bottom, true), "rises through liquid")

	s = cushion(t, fluid.Nitrogen{}, 1e7)
	s.Network.Ports[0].AtA, s.Network.Ports[0].AtB = 4, 4 // at 1,000 m, in the gas
	s.Open[0] = true
	require.ErrorContains(t, s.Solve(affine.Form{}), "reaches down to")
	s = cushion(t, fluid.Nitrogen{}, 1e7)
	s.Surface[1], s.Open[0] = false, true
	require.ErrorContains(t, s.Solve(affine.Form{}), "meets others")
	require.ErrorContains(t, s.RaiseTrapped(map[int]float64{0: 1e5}, nil), "squeeze")
	s.Open[0] = false
	s.Surface[1] = true
	s.Applied[1] = affine.Flat(affine.Const(-2.9e7))
	s.Open[0] = true
	require.Error(t, s.Solve(affine.Form{}), "it would have to fill more than the tubing")
}

// massBetween is what stands between two measured depths, in kg for each m² of the
// section, with a pressure at a true vertical depth.
func massBetween(g *Gas, p, tvd, top, bottom float64) (float64, error) {
	w, err := g.place(p, tvd)
	if err != nil {
		return 0, err
	}
	return g.mass(w, top, bottom)
}

// Beyond its curves a gas is refused by its name, on both ends.
func TestGasBeyondItsCurves(t *testing.T) {
	g := NewGas("nitrogen", fluid.Nitrogen{}, warmth(t), straightHole())
	_, err := g.place(-atmosphere, 100)
	require.ErrorContains(t, err, "is too near to a vacuum")
	_, err = g.place(1e13, 100)
	require.ErrorContains(t, err, "is more than its equation of state is good for")
	_, err = g.place(2e7, 100)
	require.NoError(t, err)
}
