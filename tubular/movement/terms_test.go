package movement

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// What the sums are made of, each with 256 bits.
func TestPartsOfTheSumsWorked(t *testing.T) {
	precise.Equal(t, positivePart(3, 5), "4", nil)
	precise.Equal(t, positivePart(3, -5), "3*3/8/2", nil)
	precise.Equal(t, positivePart(-3, 5), "5*5/8/2", nil)
	require.Zero(t, positivePart(-3, -5))

	// sin(β/2) of a turn, by the haversine: build and turn per length.
	a := hydrostatics.Position{MD: 100, Inclination: 0.5, Azimuth: 0.2, TVD: 90}
	b := hydrostatics.Position{MD: 140, Inclination: 0.62, Azimuth: 0.9, TVD: 123}
	e := between(0, a, b)
	of := precise.Values{"a": 0.5, "b": 0.62, "p": 0.2, "q": 0.9}
	precise.Equal(t, math.Sin(e.turn*40/2), "sqrt(sin(a)*sin(b))*sin((q - p)/2)", of)
	precise.Equal(t, e.build, "(b - a)/40", of)
	precise.Equal(t, e.perDrop, "1/(9.80665*33)", of)
	b.TVD = 91
	require.NotZero(t, between(0, a, b).perDrop, "a metre is enough")
	b.TVD = unit.Length(math.Nextafter(91, 0))
	require.Zero(t, between(0, a, b).perDrop)

	// upright is what is straight and vertical, not what begins to bend there
	plumb := hydrostatics.Position{MD: 100, TVD: 100}
	require.True(t, between(0, plumb, hydrostatics.Position{MD: 140, TVD: 140}).upright)
	require.False(t, between(0, plumb, hydrostatics.Position{MD: 140, TVD: 139, Inclination: 0.1}).upright)
	require.False(t, between(0, hydrostatics.Position{MD: 100, Inclination: 0.1}, hydrostatics.Position{MD: 140, Inclination: 0.1}).upright)

	// A bar's prepared figures.
	s := StringSection{Pipe: tubular.Pipe{OD: 0.1, ID: 0.08, Weight: 200, Material: tubular.Steel()}, Hole: 0.2, BottomMD: 10}
	bar := newBar(0, s)
	of = precise.Values{"E": float64(s.Pipe.Material.Young), "D": 0.1, "d": 0.08, "H": 0.2}
	precise.Equal(t, bar.perEA, "1/(E*pi/4*(D*D - d*d))", of)
	precise.Equal(t, bar.fibre, "E*D/2", of)
	precise.Equal(t, bar.r, "(H - D)/2", of)
	precise.Equal(t, bar.outerDrag, "pi/2*(H - D)/2*D", of)

	// How the sinusoidal load changes with the compression on a curve: p² = k·wc.
	e = element{build: 2e-4, turn: 3e-4}
	of = precise.Values{"g": 60, "f": 80000, "B": 2e-4, "T": 3e-4, "p": 90000}
	wc := precise.Float(t, "sqrt(pow(g + f*B, 2) + pow(f*T, 2))", of)
	of["wc"] = wc
	precise.Equal(t, e.rate(90000, wc, 60, 80000), "p/(2*wc)*((g + f*B)*B + f*T*T)/wc", of)
	require.Zero(t, e.rate(90000, 0, 60, 80000))
	require.Zero(t, shape(3, 4))
	load, slope := snaking(3, 4, 0)
	require.Zero(t, load+slope)
}

// Limits, on them and just beyond.
func TestLimitsOfBuckling(t *testing.T) {
	c := confinedPipe()
	most := float64(c.HelicalMost())
	require.Equal(t, Helical, c.Under(unit.Force(-most*(1+1e-9))).Mode)
	require.Equal(t, Sinusoidal, c.Under(unit.Force(-most*(1-1e-9))).Mode)
	onset := float64(c.Sinusoidal())
	require.Equal(t, Sinusoidal, c.Under(unit.Force(-onset*(1+1e-9))).Mode)
	require.Equal(t, Straight, c.Under(unit.Force(-onset*(1-1e-9))).Mode)

	path, err := hydrostatics.Vertical(1000)
	require.NoError(t, err)
	s := String{Sections: []StringSection{{Pipe: c.Pipe, Hole: c.Hole, BottomMD: 1000}}, Path: path, Seals: SealBore{Bore: 0.08, Restraint: Anchored}}
	state := WellProfiles{Inside: func(z unit.Length) unit.Pressure { return unit.Pressure(1e4 * z) }, Outside: func(z unit.Length) unit.Pressure { return unit.Pressure(1e4 * z) }}
	for ratio, ok := range map[float64]bool{1: true, 2 * math.Sqrt2: true, math.Nextafter(1, 0): false, math.Nextafter(2*math.Sqrt2, 3): false} {
		s.HelicalOnset = ratio
		_, err := s.Land(state, 0)
		if ok {
			require.NoError(t, err)
		} else {
			require.ErrorContains(t, err, "movement: HelicalOnset: is ")
		}
	}

	// A helix lets anything pass that fits along its axis.
	h := Helix{Pipe: tubular.Pipe{OD: 0.12, ID: 0.1, Material: c.Pipe.Material}, Hole: c.Hole, Compression: 45000}
	r := float64(h.Hole-h.Pipe.OD) / 2
	_, limited := h.LongestTool(unit.Length(0.1 - 2*r*(1+1e-9)))
	require.False(t, limited)
	length, limited := h.LongestTool(unit.Length(0.1 - 2*r*(1-1e-9)))
	require.True(t, limited)
	precise.Within(t, 1e-8, float64(length), "sqrt(8*2*r*(1 - 1e-9)/κ)", precise.Values{"r": r, "κ": float64(h.Curvature())})
}

// Half way down, a drag that is spread evenly is half of it; an element bears the mean
// of its ends. Below where it is taken there is none.
func TestDragOfAnElement(t *testing.T) {
	require.Equal(t, []float64{1, 0.5, 0, 0}, []float64{even(0, 0, 100), even(50, 0, 100), even(100, 0, 100), even(150, 0, 100)})
	require.Equal(t, 1.0, even(-10, 0, 100), "all of it above the top")
	require.Zero(t, even(50, 100, 100))
}
