package hydrostatics

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// A pressure that isn't finite is refused by name, whether the column is kept or only carried through: of a constant
// density, and of an exponential one that has no pressure so deep (1 − c·g·ρ·h falls below nought).
func TestPressuresThatAreNotFinite(t *testing.T) {
	for _, p := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, err := reached(p, 1200)
		require.ErrorContains(t, err, "the pressure is not finite at TVD 3937.01 ft")
	}
	p, err := reached(3e7, 1200)
	require.NoError(t, err)
	require.Equal(t, 3e7, p)
	soft := SlightlyCompressible{Reference: 1000, Temperature: unit.Kelvin(300), Compressibility: 1e-6}
	profile, err := NewTemperatureProfile([]TemperaturePoint{{TVD: 0, Temperature: unit.Kelvin(300)}, {TVD: 5000, Temperature: unit.Kelvin(300)}})
	require.NoError(t, err)
	layers := []Layer{{Fluid: soft, BottomTVD: 5000}}
	_, err = NewColumn(layers, profile, Reference{})
	require.ErrorContains(t, err, "the pressure is not finite at TVD")
	c, err := NewColumn([]Layer{{Fluid: soft, BottomTVD: 50}}, profile, Reference{})
	require.NoError(t, err)
	c.layers = layers
	_, err = c.Carry(0, 0, 5000)
	require.ErrorContains(t, err, "the pressure is not finite at TVD")
	for _, p := range []unit.Pressure{-1e9, 1e9} { // e^-1000 of the density is none, and e^1000 too much
		_, err = c.Carry(p, 0, 10)
		require.ErrorContains(t, err, "no density at ")
	}
}

// What stands a rounding beyond the ends of a column is taken for the ends, by every question.
func TestColumnARoundingBeyondItsEnds(t *testing.T) {
	c, err := NewColumn([]Layer{{Fluid: Incompressible(800), BottomTVD: 1000}, {Fluid: Incompressible(1200), TopTVD: 1000, BottomTVD: 2000}}, nil, Reference{})
	require.NoError(t, err)
	for tvd, want := range map[unit.Length]unit.Density{-slackDepth / 2: 800, 0: 800, 1000: 800, 1000.001: 1200, 2000: 1200, 2000 + slackDepth/2: 1200} {
		rho, err := c.Density(tvd)
		require.NoError(t, err, "%v", tvd)
		require.Equal(t, want, rho, "%v", tvd)
	}
	for _, share := range []float64{1, 1 + 4e-15} {
		z, err := c.Depth(unit.Pressure(share * c.pieces[1].pbottom))
		require.NoError(t, err)
		require.Equal(t, unit.Length(2000), z)
	}
	_, err = c.Depth(unit.Pressure((1 + 4e-14) * c.pieces[1].pbottom))
	require.ErrorIs(t, err, ErrOutsideColumn)
	_, err = c.Depth(unit.Pressure(-4e-14 * c.pieces[1].pbottom))
	require.ErrorIs(t, err, ErrOutsideColumn)
	// A leg's last fluid, a rounding below the port.
	u := UTube{PortMD: 1000, Tubing: Leg{Sections: []LegSection{{BottomMD: 1000, Area: 0.01}}, Fluids: []Stretch{{BottomMD: 1000 + slackDepth/2, Density: 1100}}},
		Annulus: Leg{Sections: []LegSection{{BottomMD: 1001, Area: 0.02}}, Fluids: []Stretch{{BottomMD: 1000, Density: 1000}}}}
	_, err = u.Rest()
	require.NoError(t, err)
}

type upTo float64

func (most upTo) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	if float64(p) > float64(most) {
		return 0, errors.New("beyond the table")
	}
	return 1000, nil
}

// Where a fluid's table ends is told: 2e7 Pa at 2,039.43 m, 6,691.05 ft, of water.
func TestDepthAtWhichATableEnds(t *testing.T) {
	profile, err := NewTemperatureProfile([]TemperaturePoint{{TVD: 0, Temperature: unit.Kelvin(300)}, {TVD: 4000, Temperature: unit.Kelvin(300)}})
	require.NoError(t, err)
	_, err = NewColumn([]Layer{{Fluid: upTo(2e7), BottomTVD: 4000}}, profile, Reference{})
	require.ErrorContains(t, err, "layer 1: hydrostatics: at TVD 6691.05 ft: beyond the table")
}

// A cushion that just does it, but for rounding, with no light fluid and with nothing else: 1e-13 beyond is taken, 1e-11 is not.
func TestCushionJustMetAtItsEnds(t *testing.T) {
	const h = 2000
	for _, light := range []Fluid{nil, Incompressible(100)} {
		c := Cushion{Formation: Formation{TVD: h}, Light: light, Heavy: Incompressible(1000)}
		none, all := 1000*gravity*h, 0.0
		if light != nil {
			all = 100 * gravity * h
		}
		for _, surface := range []float64{0, 1e5} {
			c.Surface = unit.Pressure(surface)
			for _, x := range []struct {
				want  float64
				level unit.Length
				ok    bool
			}{
				{(none + surface) * (1 + 1e-13), 0, true}, {(none + surface) * (1 + 1e-11), 0, false},
				{(all+surface)*(1-1e-13) - 1e-13*none, h, true}, {(all+surface)*(1-1e-11) - 1e-11*none, h, false},
			} {
				c.Formation.Pressure = unit.Pressure(x.want)
				a, err := c.Length()
				if !x.ok {
					require.ErrorIs(t, err, ErrNoBalance)
					continue
				}
				require.NoError(t, err)
				require.Equal(t, x.level, a.LevelTVD)
			}
		}
	}
}

// The working of a cushion shows constant densities as they are, to the last bit.
func TestWorkingOfACushionShowsItsDensities(t *testing.T) {
	for rho := unit.Density(100); rho < 900; rho += 37 {
		c := Cushion{Formation: Formation{Pressure: 15e6, TVD: 2111}, Light: Incompressible(rho), Heavy: Incompressible(rho + 400)}
		s := c.inputs(CushionAnswer{LevelTVD: 777, Interface: unit.Pressure(float64(rho) * gravity * 777), Well: 15e6})
		require.Equal(t, float64(rho), s.rl.Value.SI())
		require.Equal(t, float64(rho+400), s.rh.Value.SI())
	}
}

// Each station of a hole that winds is found again by its depth, once, and so is each middle between two; so of a hole that
// only falls, where the arcs are in order of depth.
func TestStationsAreFoundByTheirDepths(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for k := range 6 {
		steepest := 1.2
		if k%2 == 1 {
			steepest = 0.9 // to 1.5 rad: it falls all the way
		}
		stations := []Station{{}}
		for md := unit.Length(0); md < 6000; {
			md += unit.Length(0.5 + 60*r.Float64())
			stations = append(stations, Station{MD: md, Inclination: unit.Angle(steepest + 0.6*r.Float64()), Azimuth: unit.Angle(r.Float64())})
		}
		p, err := NewPath(stations)
		require.NoError(t, err)
		positions := p.Positions()
		for i := range positions[1:] {
			middle, err := p.At((positions[i].MD + positions[i+1].MD) / 2)
			require.NoError(t, err)
			positions = append(positions, middle)
		}
		for _, at := range positions {
			mds := p.MDs(at.TVD)
			near := slices.DeleteFunc(slices.Clone(mds), func(md unit.Length) bool { return math.Abs(float64(md-at.MD)) > 1e-3 })
			require.Len(t, near, 1, "at MD %v of %v", at.MD, mds)
			require.InDelta(t, float64(at.MD), float64(near[0]), 1e-6)
			for _, md := range mds {
				tvd, err := p.TVD(md)
				require.NoError(t, err)
				require.InDelta(t, float64(at.TVD), float64(tvd), 1e-8)
			}
		}
	}
	// A hole that falls by 45 nm in 30 m isn't level: its middle is found.
	slow := Station{Inclination: math.Pi/2 - 1.5e-9}
	p, err := NewPath([]Station{slow, {MD: 30, Inclination: slow.Inclination}})
	require.NoError(t, err)
	mds := p.MDs(22.5e-9)
	require.Len(t, mds, 1)
	require.InDelta(t, 15, float64(mds[0]), 1e-3)
}

// An azimuth may be a full turn either way, and a rounding more, as text comes.
func TestAzimuthARoundingBeyondAFullTurn(t *testing.T) {
	for _, x := range []struct {
		over float64
		ok   bool
	}{{5e-10, true}, {2e-9, false}} {
		for _, sign := range []float64{1, -1} {
			_, err := NewPath([]Station{{}, {MD: 100, Inclination: 0.1, Azimuth: unit.Angle(sign * (2*math.Pi + x.over))}})
			require.Equal(t, x.ok, err == nil, "%v: %v", sign*x.over, err)
		}
	}
}

// A layer without any length is none.
func TestLayerOfNoLength(t *testing.T) {
	p, err := Vertical(3000)
	require.NoError(t, err)
	for bottom, ok := range map[unit.Length]bool{1000: false, 1000.001: true} {
		_, err := LayersAlong(p, []MeasuredLayer{{Fluid: Incompressible(1000), BottomMD: 1000}, {Fluid: Incompressible(1100), TopMD: 1000, BottomMD: bottom}})
		require.Equal(t, ok, err == nil, "%v", err)
	}
}

// Depths that should be equal may differ by a thousandth of a millimetre, and by no more.
func TestDepthsThatShouldBeEqual(t *testing.T) {
	for gap, ok := range map[unit.Length]bool{1e-6 * (1 - 4e-7): true, 1e-6 * (1 + 4e-7): false, -1e-6 * (1 - 4e-7): true, -1e-6 * (1 + 4e-7): false} {
		_, err := NewColumn([]Layer{{Fluid: Incompressible(1000), TopTVD: -100}, {Fluid: Incompressible(1100), TopTVD: gap, BottomTVD: 50}}, nil, Reference{})
		require.Equal(t, ok, err == nil, "%v: %v", float64(gap), err)
	}
}

// A well that is empty to the formation stands at no pressure at all where none is wanted there, and at less it can't.
func TestCushionWithoutAnyPressure(t *testing.T) {
	for _, light := range []Fluid{nil, Incompressible(0)} {
		for want, ok := range map[unit.Pressure]bool{0: true, -1: false, 1: true} {
			a, err := Cushion{Formation: Formation{Pressure: 1e7 + want, TVD: 2000}, Underbalance: 1e7, Light: light, Heavy: Incompressible(1000)}.Pressure(2000)
			if !ok {
				require.ErrorIs(t, err, ErrNoBalance)
				continue
			}
			require.NoError(t, err)
			require.Equal(t, want, a.Surface)
		}
	}
}
