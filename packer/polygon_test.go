package packer_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"github.com/stretchr/testify/require"
)

// box is an invented packer of round ratings without any coupling of the two
// loads, so that every margin can be done in the head.
func box() packer.Polygon {
	return packer.Polygon{
		Vertices: []packer.Load{
			{Differential: -5000 * unit.PSI, Axial: -50 * unit.Kilopound},
			{Differential: 5000 * unit.PSI, Axial: -50 * unit.Kilopound},
			{Differential: 5000 * unit.PSI, Axial: 100 * unit.Kilopound},
			{Differential: -5000 * unit.PSI, Axial: 100 * unit.Kilopound},
		},
		Limits: []string{"set-down", "from below", "pull", "from above"},
	}
}

// ratings are of an invented packer for 9-5/8 in casing.
func ratings() packer.Ratings {
	return packer.Ratings{
		FromBelow: 7500 * unit.PSI, FromAbove: 6000 * unit.PSI,
		Tension: 150 * unit.Kilopound, Compression: 100 * unit.Kilopound,
		Up: 300 * unit.Kilopound, Down: 250 * unit.Kilopound,
		Area: 40 * unit.SquareInch,
	}
}

func ExampleEnvelope_Margin() {
	p, err := ratings().Polygon()
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := p.Envelope()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range []packer.Load{
		{Differential: 3000 * unit.PSI, Axial: 75 * unit.Kilopound},
		{Differential: 6000 * unit.PSI, Axial: 75 * unit.Kilopound},
	} {
		m := e.Margin(l)
		fmt.Printf("%s, %s: %.0f %% of %s, inside %v\n", l.Differential, l.Axial, 100*m.Usage, m.Limit, m.Inside())
	}
	// Output:
	// 3000 psi, 75000 lbf: 65 % of slips up, inside true
	// 6000 psi, 75000 lbf: 105 % of slips up, inside false
}

// By hand: of a box every margin is a difference of coordinates.
func TestMarginInABox(t *testing.T) {
	e, err := box().Envelope()
	require.NoError(t, err)
	for _, c := range []struct {
		dp, fa      float64 // psi, klbf
		limit       string
		used        float64
		distance    float64 // in half spans of 5,000 psi and 75 klbf
		nearest     string
		nearDP, nFA float64
	}{
		{0, 0, "set-down", 0, 50. / 75, "set-down", 0, -50},
		{4000, 0, "from below", 0.8, 0.2, "from below", 5000, 0},
		{-4000, 50, "from above", 0.8, 0.2, "from above", -5000, 50},
		{0, 85, "pull", 0.85, 0.2, "pull", 0, 100},
		{5000, 25, "from below", 1, 0, "from below", 5000, 25},
		{6000, 25, "from below", 1.2, -0.2, "from below", 5000, 25},
		{0, -65, "set-down", 1.3, -0.2, "set-down", 0, -50},
		// Past a corner: 1,000 psi is 0.2 and 11.25 klbf is 0.15 of half a span.
		{6000, 111.25, "from below", 1.2, -0.25, "from below", 5000, 100},
	} {
		l := packer.Load{Differential: unit.Pressure(c.dp) * unit.PSI, Axial: unit.Force(c.fa) * unit.Kilopound}
		m := e.Margin(l)
		require.InDelta(t, c.used, m.Usage, 1e-12, "%+v", c)
		require.InDelta(t, c.distance, m.Distance, 1e-12, "%+v", c)
		if c.dp != 0 || c.fa != 0 {
			require.Equal(t, c.limit, m.Limit, "%+v", c)
		}
		require.Equal(t, c.nearest, m.NearestLimit, "%+v", c)
		require.InDelta(t, c.nearDP, m.Nearest.Differential.In(unit.PSI), 1e-9)
		require.InDelta(t, c.nFA, m.Nearest.Axial.In(unit.Kilopound), 1e-9)
		require.Equal(t, c.distance >= 0, m.Inside())
	}
}

// The margin doesn't depend on which corner comes first or which way round.
func TestMarginIsOfTheShapeAlone(t *testing.T) {
	p, err := ratings().Polygon()
	require.NoError(t, err)
	e, err := p.Envelope()
	require.NoError(t, err)
	turned := packer.Polygon{Vertices: slices.Clone(p.Vertices)}
	slices.Reverse(turned.Vertices)
	turned.Vertices = append(turned.Vertices[2:], turned.Vertices[:2]...)
	r, err := turned.Envelope()
	require.NoError(t, err)
	for dp := -8000.; dp <= 9000; dp += 500 {
		for fa := -150.; fa <= 200; fa += 25 {
			l := packer.Load{Differential: unit.Pressure(dp) * unit.PSI, Axial: unit.Force(fa) * unit.Kilopound}
			a, b := e.Margin(l), r.Margin(l)
			require.InDelta(t, a.Usage, b.Usage, 1e-12)
			require.InDelta(t, a.Distance, b.Distance, 1e-12)
		}
	}
}

// Two ways: a load is inside exactly where every rating by itself bears it.
func TestPolygonHoldsWhatTheRatingsHold(t *testing.T) {
	r := ratings()
	r.Limits = []packer.Limit{{Name: "release pins", Area: -5 * unit.SquareInch, AtMost: 90 * unit.Kilopound, AtLeast: 1000 * unit.Kilopound}}
	p, err := r.Polygon()
	require.NoError(t, err)
	e, err := p.Envelope()
	require.NoError(t, err)
	inside := 0
	for dp := -7950.; dp <= 9000; dp += 100 {
		for fa := -149.; fa <= 200; fa += 5 {
			l := packer.Load{Differential: unit.Pressure(dp) * unit.PSI, Axial: unit.Force(fa) * unit.Kilopound}
			slips := fa + dp*40/1000 // klbf, by hand
			pins := fa - dp*5/1000
			holds := dp <= 7500 && dp >= -6000 && fa <= 150 && fa >= -100 && slips <= 300 && slips >= -250 && pins <= 90
			m := e.Margin(l)
			if math.Abs(m.Distance) < 1e-9 {
				continue
			}
			require.Equal(t, holds, m.Inside(), "%v: %+v", l, m)
			require.Equal(t, holds, m.Usage < 1)
			if holds {
				inside++
			}
		}
	}
	require.Greater(t, inside, 1000)
}

func TestChordsEndOnTheEdge(t *testing.T) {
	p, err := ratings().Polygon()
	require.NoError(t, err)
	e, err := p.Envelope()
	require.NoError(t, err)
	for fa := -99.; fa < 150; fa += 10 {
		axial := unit.Force(fa) * unit.Kilopound
		lo, hi, ok := e.DifferentialAt(axial)
		require.True(t, ok)
		require.InDelta(t, 0, e.Margin(packer.Load{Differential: lo, Axial: axial}).Distance, 1e-9)
		require.InDelta(t, 0, e.Margin(packer.Load{Differential: hi, Axial: axial}).Distance, 1e-9)
	}
	for dp := -5900.; dp < 7500; dp += 500 {
		d := unit.Pressure(dp) * unit.PSI
		lo, hi, ok := e.AxialAt(d)
		require.True(t, ok)
		require.InDelta(t, 0, e.Margin(packer.Load{Differential: d, Axial: lo}).Distance, 1e-9)
		require.InDelta(t, 0, e.Margin(packer.Load{Differential: d, Axial: hi}).Distance, 1e-9)
	}
	_, _, ok := e.DifferentialAt(151 * unit.Kilopound)
	require.False(t, ok)
	_, _, ok = e.AxialAt(7501 * unit.PSI)
	require.False(t, ok)
}

// By hand: with 100 klbf of pull the slips leave (300 - 100)/40 = 5,000 psi from
// below; from above the element's 6,000 psi come before the slips' 8,750.
func TestTestPressures(t *testing.T) {
	p, err := ratings().Polygon()
	require.NoError(t, err)
	e, err := p.Envelope()
	require.NoError(t, err)
	above, below, err := e.Tests(100*unit.Kilopound, 0.1)
	require.NoError(t, err)
	require.InDelta(t, 5400, above.In(unit.PSI), 1e-6)
	require.InDelta(t, 4500, below.In(unit.PSI), 1e-6)
	_, _, err = e.Tests(160*unit.Kilopound, 0.1)
	require.ErrorContains(t, err, "160000 lbf is outside the envelope")
	_, _, err = e.Tests(unit.Force(math.NaN()), 2)
	require.ErrorContains(t, err, "share in hand: is 2")
	require.ErrorContains(t, err, "axial load: is NaN")
}

func TestBadPolygons(t *testing.T) {
	square := func(points ...float64) packer.Polygon {
		var p packer.Polygon
		for i := 0; i < len(points); i += 2 {
			p.Vertices = append(p.Vertices, packer.Load{Differential: unit.Pressure(points[i]) * unit.PSI, Axial: unit.Force(points[i+1]) * unit.Kilopound})
		}
		return p
	}
	for name, c := range map[string]struct {
		p    packer.Polygon
		want error
		text string
	}{
		"two corners":   {square(1, 1, 2, 2), packer.ErrTooFewVertices, "there are 2"},
		"a line":        {square(-1, -1, 0, 0, 1, 1), packer.ErrNotConvex, ""},
		"flat":          {square(-1, 0, 0, 0, 1, 0), packer.ErrNotConvex, "0 lbf"},
		"reflex corner": {square(-5, -5, 5, -5, 1, 1, 5, 5, -5, 5), packer.ErrNotConvex, "corner 3, 1 psi"},
		"crossed":       {square(-5, -5, 5, 5, 5, -5, -5, 5), packer.ErrNotConvex, ""},
		"star": {square(0, 10, 5.9, -8.1, -9.5, 3.1, 9.5, 3.1, -5.9, -8.1),
			packer.ErrNotConvex, "goes round 2 times"},
		"doubled":         {square(-5, -5, 5, -5, 5, -5, 5, 5, -5, 5), packer.ErrNotConvex, "corners 2 and 3"},
		"rest outside":    {square(1, -5, 5, -5, 5, 5, 1, 5), packer.ErrNoRest, "edge 4"},
		"rest on an edge": {square(0, -5, 5, -5, 5, 5, 0, 5), packer.ErrNoRest, ""},
		"not finite":      {square(-5, -5, math.Inf(1), -5, 5, math.NaN(), -5, 5), nil, "Vertices[2].Axial"},
	} {
		_, err := c.p.Envelope()
		require.Error(t, err, name)
		require.ErrorContains(t, err, c.text, name)
		if c.want != nil {
			require.ErrorIs(t, err, c.want, name)
		}
	}
	p := box()
	p.Limits = p.Limits[:2]
	_, err := p.Envelope()
	require.ErrorContains(t, err, "2 names for 4 corners")
	_, err = packer.Ratings{Limits: []packer.Limit{{}}}.Polygon()
	for _, field := range []string{"FromBelow", "FromAbove", "Tension", "Compression", "Up", "Down", "Limits[0].Name", "Limits[0].AtMost"} {
		require.ErrorContains(t, err, field+": is")
	}
	var none packer.Envelope
	require.False(t, none.Margin(packer.Load{}).Inside())
	_, _, ok := none.AxialAt(0)
	require.False(t, ok)
}

// A limit through a corner makes no edge without length.
func TestCutThroughACorner(t *testing.T) {
	r := ratings()
	r.Up = r.Tension + packer.Push(r.FromBelow, r.Area)
	p, err := r.Polygon()
	require.NoError(t, err)
	require.NotContains(t, p.Limits, "slips up")
}

func TestMarginsAllocateNothing(t *testing.T) {
	e, err := box().Envelope()
	require.NoError(t, err)
	loads := make([]packer.Load, 100)
	dst := make([]packer.Margin, 0, len(loads))
	require.Zero(t, testing.AllocsPerRun(10, func() { dst = e.Margins(dst[:0], loads) }))
	require.Len(t, dst, 100)
}

func BenchmarkMargin(b *testing.B) {
	p, err := ratings().Polygon()
	require.NoError(b, err)
	e, err := p.Envelope()
	require.NoError(b, err)
	l := packer.Load{Differential: 3000 * unit.PSI, Axial: 75 * unit.Kilopound}
	var m packer.Margin
	for b.Loop() {
		m = e.Margin(l)
	}
	_ = m
}
