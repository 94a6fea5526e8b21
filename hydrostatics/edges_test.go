package hydrostatics

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// A column that is none, and one without layers.
func TestColumnWithoutLayers(t *testing.T) {
	for _, c := range []*Column{nil, {}} {
		require.Zero(t, c.Top())
		require.Zero(t, c.Bottom())
		require.Empty(t, c.Steps())
	}
	mud := Incompressible(1100)
	c, err := NewColumn([]Layer{{mud, 5, 100}, {mud, 100, 300}}, nil, Reference{TVD: 5})
	require.NoError(t, err)
	require.Equal(t, unit.Length(5), c.Top())
	require.Equal(t, unit.Length(300), c.Bottom())
	for i, s := range c.Steps() {
		require.Equal(t, fmt.Sprintf("bottom of layer %d", i+1), s.Name)
		require.Equal(t, fmt.Sprintf("p%d+r*g*h", i), s.Equation)
		require.Equal(t, fmt.Sprintf("p%d", i+1), s.Symbol)
	}
	require.Len(t, c.Steps(), 2)
	one, err := NewColumn([]Layer{{mud, 5, 100}}, nil, Reference{TVD: 5})
	require.NoError(t, err)
	require.Equal(t, unit.Length(5), one.Top())
	require.Equal(t, unit.Length(100), one.Bottom())
}

// A density that overflows, or is lost, is none.
func TestDensityThatOverflows(t *testing.T) {
	f := SlightlyCompressible{Reference: 1000, Compressibility: 1e-7, Temperature: unit.Kelvin(300)}
	_, err := f.Density(1e10, unit.Kelvin(300))
	require.ErrorContains(t, err, "no density at")
	_, err = f.Density(-1e10, unit.Kelvin(300))
	require.ErrorContains(t, err, "no density at")
}

// A horizontal well that rises again: where its path is at a depth, in each part of it, and how deep and
// how high it goes between two of its depths.
func TestPathThatRisesAgain(t *testing.T) {
	deg := unit.Degree
	// down, round to level at 90°, on to 120° and so rising, back to level and down again
	p, err := NewPath([]Station{{}, {MD: 1000}, {MD: 1600, Inclination: 90 * deg}, {MD: 1800, Inclination: 120 * deg}, {MD: 2300, Inclination: 120 * deg}, {MD: 2700, Inclination: 40 * deg}, {MD: 3200, Inclination: 40 * deg}})
	require.NoError(t, err)
	for _, md := range []unit.Length{0, 400, 1000, 1234, 1600, 1700, 1800, 2000, 2300, 2400, 2650, 2700, 3000, 3200} {
		tvd, err := p.TVD(md)
		require.NoError(t, err)
		found := false
		for _, x := range p.MDs(tvd) {
			back, err := p.TVD(x)
			require.NoError(t, err)
			require.InDelta(t, float64(tvd), float64(back), 1e-6, "at %v: %v", md, x)
			found = found || math.Abs(float64(x-md)) < 2e-3
		}
		require.True(t, found, "%v is at %v, found %v", md, tvd, p.MDs(tvd))
	}
	// the passages of a depth, counted along a fine walk
	for tvd := unit.Length(900.11); tvd < 1700; tvd += 7.3 {
		passages := 0
		last, _ := p.TVD(0)
		for md := unit.Length(0.25); md <= 3200; md += 0.25 {
			now, err := p.TVD(md)
			require.NoError(t, err)
			if (now-tvd)*(last-tvd) < 0 {
				passages++
			}
			last = now
		}
		require.Len(t, p.MDs(tvd), passages, "%v", tvd)
	}
	for _, span := range [][2]unit.Length{{0, 3200}, {1500, 1700}, {1650, 1750}, {2200, 2600}, {1590, 2500}, {100, 900}, {2350, 2450}, {1600, 1800}} {
		most, least := math.Inf(-1), math.Inf(1)
		for i := range 4001 {
			h, err := p.TVD(span[0] + (span[1]-span[0])*unit.Length(i)/4000)
			require.NoError(t, err)
			most, least = math.Max(most, float64(h)), math.Min(least, float64(h))
		}
		high, low := p.extent(span[0], span[1])
		require.InDelta(t, most, float64(high), 2e-3, "%v", span)
		require.InDelta(t, least, float64(low), 2e-3, "%v", span)
	}
	require.Nil(t, (*Path)(nil).MDs(10))
	require.Nil(t, p.MDs(unit.Length(math.NaN())))
	short, err := NewPath([]Station{{}, {MD: 10}})
	require.NoError(t, err)
	require.Equal(t, []unit.Length{5}, short.MDs(5))
	// level all along: everywhere at its own depth, nowhere at another
	level, err := NewPath([]Station{{MD: 0, Inclination: 90 * deg}, {MD: 100, Inclination: 90 * deg}})
	require.NoError(t, err)
	require.Equal(t, []unit.Length{0, 100}, level.MDs(0))
	require.Empty(t, level.MDs(1))
}

// Layers along a path follow each other; which one doesn't is told with the bottom of the one above.
func TestLayersThatDontFollow(t *testing.T) {
	p, err := Vertical(1000)
	require.NoError(t, err)
	mud := Incompressible(1000)
	_, err = LayersAlong(p, []MeasuredLayer{{mud, 0, 100}, {mud, 100, 300}, {mud, 310, 400}})
	require.ErrorContains(t, err, "layers[2].TopMD: is "+unit.Length(310).String()+"; must be the bottom of the layer above, "+unit.Length(300).String())
	_, err = LayersAlong(p, []MeasuredLayer{{mud, 0, 100}, {mud, 110, 300}})
	require.ErrorContains(t, err, "layers[1].TopMD")
	_, err = LayersAlong(p, []MeasuredLayer{{mud, 50, 100}})
	require.NoError(t, err)
}

// Times and profiles that are none.
func TestFlowingWithoutTimeOrGround(t *testing.T) {
	h := HeatExchange{}
	require.ErrorContains(t, h.Validate(), "Time: is 0s; must be above 0 s")
	h.Time = 1
	require.NotContains(t, h.Validate().Error(), "Time")
	for _, ground := range []*TemperatureProfile{nil, {}} {
		_, err := Flowing{Ground: ground}.profile(0, 1, 1)
		require.ErrorContains(t, err, "Ground: is missing")
	}
}

// The volume of a leg of several sizes below a depth, and back: sections that the port cuts off don't count.
func TestBoreOfSeveralSizes(t *testing.T) {
	p, err := Vertical(3000)
	require.NoError(t, err)
	l := Leg{Sections: []LegSection{{BottomMD: 800, Area: 0.03}, {BottomMD: 1500, Area: 0.02}, {BottomMD: 2600, Area: 0.01}, {BottomMD: 3000, Area: 5}},
		Fluids: []Stretch{{BottomMD: 2500, Density: 1000}}}
	b := l.bore(p, 2500)
	for md, want := range map[float64]float64{2500: 0, 2000: 5, 1500: 10, 1000: 20, 800: 24, 300: 39, 0: 48} {
		require.InDelta(t, want, b.at(md), 1e-12, "%v", md)
		require.InDelta(t, md, b.md(want), 1e-9, "%v", md)
	}
	require.Equal(t, 48.0, b.whole)
}
