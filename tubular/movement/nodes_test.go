package movement

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// curved is a string of two pipes on a path of three even bends, with steps of every kind in it, the fluids' densities
// even.
func curved(t *testing.T) (*MadeUp, Assembly, Conditions) {
	stations := []hydrostatics.Station{{MD: 0}, {MD: 400, Inclination: 0.4, Azimuth: 1}, {MD: 900, Inclination: 1.1, Azimuth: 1.4}, {MD: 1200, Inclination: 1, Azimuth: 1.2}}
	path, err := hydrostatics.NewPath(stations)
	require.NoError(t, err)
	steel := tubular.Steel().WithStrength(5.5e8, 6.5e8)
	a := Assembly{Sections: []StringSection{
		{Pipe: tubular.Pipe{OD: 0.09, ID: 0.076, Weight: 140, Material: steel}, BottomMD: 500, Hole: 0.16},
		{Pipe: tubular.Pipe{OD: 0.073, ID: 0.062, Weight: 95, Material: steel}, BottomMD: 1200, Hole: 0.16},
	}, Path: path, Holds: []Hold{{MD: 1200}, {MD: 1100}}, Seals: []Seal{{MD: 1150, Bore: 0.1}, {MD: 400, Bore: 0.1}}, Joints: []Joint{{MD: 1000, Seal: 0.1}}, Plugs: []unit.Length{500, 900}, Spacing: 40}
	m, err := a.MakeUp()
	require.NoError(t, err)
	return m, a, Conditions{
		Inside:  func(_ int, z unit.Length) unit.Pressure { return unit.Pressure(12000*z + 4e7) },
		Outside: func(_ int, z unit.Length) unit.Pressure { return unit.Pressure(10000 * z) },
	}
}

// A node has the shape of the length of pipe that ends there, in its own section; the first of a section that of the
// length that begins there.
func TestANodeHasTheShapeOfItsLength(t *testing.T) {
	m, _, _ := curved(t)
	for i, n := range m.points {
		want := i
		for k := range m.elements {
			if m.elements[k].length > 0 && m.points[k].section == n.section && m.points[k+1].section == n.section && m.points[k+1].md == n.md {
				want = k
			}
		}
		require.Equal(t, want, m.own[i], "node %d", i)
	}
	// as many as there are stations, steps and spaces of at most 40 m between: no survey station is there twice
	require.Len(t, m.points, 1+10+1+3+1+1+10+1+3+1+3+1+2+1+2+1)
}

// Where nothing but the place changes, the load at which a pipe snakes is the same at the end of one length and at the
// beginning of the next, and is that of the node.
func TestOnsetsMeetAtTheNodes(t *testing.T) {
	m, _, c := curved(t)
	s, err := m.Land(c)
	require.NoError(t, err)
	l, err := m.Load(s, c)
	require.NoError(t, err)
	met := 0
	for i, e := range m.elements {
		if e.length == 0 || e.curvature == 0 || m.points[i].section != m.points[i+1].section {
			continue
		}
		fa, fb := -float64(l.Nodes[i].Effective), -float64(l.Nodes[i+1].Effective)
		at := ends{fa: fa, fb: fb}
		m.onsets(l.Nodes, i, &at)
		require.InEpsilon(t, float64(l.Nodes[i+1].Onset), at.pb, 1e-12, "node %d", i+1)
		if m.own[i] == i-1 && math.Abs(m.elements[i-1].build-e.build) < 1e-5 && m.elements[i-1].turn != 0 {
			require.InEpsilon(t, float64(l.Nodes[i].Onset), at.pa, 0.1, "node %d", i)
			met++
		}
		buckled, helical := m.measure(l.Nodes, i)
		own := contact(m.across(l.Nodes, i), e.build, e.turn, fa)
		pa := math.Sqrt(m.bars[e.section].lateral.k * own)
		require.InDelta(t, e.length*share(fa-pa, fb-at.pb), float64(buckled), 1e-9)
		require.InDelta(t, e.length*share(fa-m.ratio*pa, fb-m.ratio*at.pb), float64(helical), 1e-9)
	}
	require.Greater(t, met, 5)
	// whatever the forces are, also where they fall with depth
	r := rand.New(rand.NewPCG(9, 22))
	for range 20 {
		for i := range l.Nodes {
			l.Nodes[i].Effective = unit.Force(3e5*r.Float64() - 2e5)
			m.bend(&l.Nodes[i], &m.elements[m.own[i]], m.across(l.Nodes, i))
		}
		for i, e := range m.elements {
			fa, fb := -float64(l.Nodes[i].Effective), -float64(l.Nodes[i+1].Effective)
			pa, pb := math.Sqrt(m.bars[e.section].lateral.k*contact(m.across(l.Nodes, i), e.build, e.turn, fa)), float64(l.Nodes[i+1].Onset)
			buckled, helical := m.measure(l.Nodes, i)
			require.InDelta(t, e.length*share(fa-pa, fb-pb), float64(buckled), 1e-9)
			require.InDelta(t, e.length*share(fa-m.ratio*pa, fb-m.ratio*pb), float64(helical), 1e-9)
		}
	}
	l, err = m.Load(s, c)
	require.NoError(t, err)
	// how the shortening changes with a force is the slope that the search goes by
	for _, f := range []float64{-2e5, -8e4, -3e4, -1e4, 0, 2e4} {
		for _, x := range [][2]int{{0, len(m.elements)}, {3, 9}, {20, 30}} {
			h := 1.0
			up, down := m.buckled(l.Nodes, x[0], x[1], f+h).shortening, m.buckled(l.Nodes, x[0], x[1], f-h).shortening
			got := m.buckled(l.Nodes, x[0], x[1], f).slope
			require.InDelta(t, (up-down)/(2*h), got, 1e-2*math.Abs(got)+1e-15, "%v from %v", f, x)
		}
	}
}

// share is the part of a straight line from a to b that is above nought.
func share(a, b float64) float64 {
	if (a > 0) == (b > 0) {
		return math.Max(0, math.Copysign(1, a))
	}
	return math.Max(a, b) / math.Abs(a-b)
}

// Turned upside down a length takes the same load; the two formulas of a line's positive part and share as well.
func TestALengthUpsideDown(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 21))
	for range 2000 {
		e := ends{5000*r.Float64() - 1500, 5000*r.Float64() - 1500, 1500 * r.Float64(), 1500 * r.Float64(), r.Float64(), r.Float64()}
		load, slope := e.equivalentLoad(2)
		other, change := (&ends{e.fb, e.fa, e.pb, e.pa, e.qb, e.qa}).equivalentLoad(2)
		require.InDelta(t, load, other, 1e-9*(1+load))
		require.InDelta(t, slope, change, 1e-9*(1+slope))
		// never more than a helix all along, never less than the least of what its places take
		require.LessOrEqual(t, load, positivePart(e.fa, e.fb)*(1+1e-12))
		const pieces = 200
		sum := 0.0
		for k := range pieces {
			f, p, q := e.at((float64(k) + 0.5) / pieces)
			switch mode(f, p, 2) {
			case Helical:
				sum += f / pieces
			case Sinusoidal:
				s, _ := snaking(f, p, q)
				sum += s / pieces
			}
		}
		if x := mode(e.fa, e.pa, 2); x != Sinusoidal || mode(e.fb, e.pb, 2) != Sinusoidal {
			require.InDelta(t, sum, load, 40)
		}
	}
	for _, c := range [][4]float64{{3, -1, 0.75, 9. / 8}, {-1, 3, 0.75, 9. / 8}, {2, 2, 1, 2}, {-2, -1, 0, 0}} {
		require.Equal(t, c[2], positiveShare(c[0], c[1]))
		require.Equal(t, c[3], positivePart(c[0], c[1]))
	}
}

// A pipe on its load is straight, on that of the helix a helix.
func TestModesOnTheirLimits(t *testing.T) {
	require.Equal(t, []Mode{Straight, Straight, Straight, Sinusoidal, Sinusoidal, Helical, Helical, Helical},
		[]Mode{mode(0, 0, 2), mode(-1, 0, 2), mode(5, 5, 2), mode(math.Nextafter(5, 6), 5, 2), mode(9.99, 5, 2), mode(10, 5, 2), mode(1e-9, 0, 2), mode(11, 5, 2)})
	require.Zero(t, shape(5, 5))
}

// The neutral point is the lowest depth below which a string is compressed; nought is not compressed.
func TestNeutralPointOnItsLimits(t *testing.T) {
	for _, c := range []struct{ forces, want []float64 }{
		{[]float64{10, -5, 0}, []float64{200, 200.0 / 3}},
		{[]float64{-5, 0, -5}, []float64{100, 100}},
		{[]float64{5, -5}, []float64{50, 50}},
		{[]float64{5, 5, -5}, []float64{150, 150}},
		{[]float64{5, -5, 3}, []float64{200, 50}},
		{[]float64{-1, 4, 3}, []float64{200, 0}},
		{[]float64{-1, -4}, []float64{0, 0}},
		{[]float64{0, -4}, []float64{0, 0}},
		{[]float64{1, 2, 3}, []float64{200, 200}},
	} {
		var nodes []Node
		for i, f := range c.forces {
			nodes = append(nodes, Node{MD: unit.Length(100 * i), Effective: unit.Force(f)})
		}
		require.InDelta(t, c.want[0], float64(neutralDepth(nodes)), 1e-12, "%v", c.forces)
		m := &MadeUp{spans: []span{{0, len(nodes) - 1, 0}}}
		require.InDelta(t, c.want[1], float64(m.neutral(&Loading{Nodes: nodes, segments: []segment{{from: 0, to: 1}}})), 1e-12, "%v", c.forces)
	}
}

// Fluids: slopes that differ by less than a hundredth are alike; a density is asked of the metre above, at the top of
// the well of that below. Drag spread from a hanger that lies deep.
func TestSlopesAskedCloseBy(t *testing.T) {
	for _, b := range []float64{100.5, 101.0101} {
		require.True(t, alike(100, b) && alike(b, 100) && alike(-100, -b))
	}
	require.False(t, alike(100, 101.010102) || alike(101.010102, 100) || alike(100, -100))
	square := func(part int, z unit.Length) unit.Pressure { return unit.Pressure(part) * unit.Pressure(z*z) }
	require.InDelta(t, 3*199/gravity, densityIn(square, 3, 100), 1e-9)
	require.InDelta(t, 3*1/gravity, densityIn(square, 3, 1), 1e-12)
	require.InDelta(t, 3*2/gravity, densityIn(square, 3, 0.5), 1e-12)
	require.Zero(t, densityIn(func(int, unit.Length) unit.Pressure { return unit.Pressure(math.NaN()) }, 0, 100))
	require.Equal(t, []float64{1, 0.75, 0.5, 0}, []float64{even(100, 100, 200), even(125, 100, 200), even(150, 100, 200), even(200, 100, 200)})
}

// A loading that lacks anything isn't one of this string; nor is a standing.
func TestLoadingsOfOtherStrings(t *testing.T) {
	m, _, c := curved(t)
	s, err := m.Land(c)
	require.NoError(t, err)
	l, err := m.Load(s, c)
	require.NoError(t, err)
	require.NoError(t, m.loaded(&l))
	for i, change := range []func(*Loading){
		func(l *Loading) { l.Nodes = l.Nodes[1:] },
		func(l *Loading) { l.Joints = nil },
		func(l *Loading) { l.Holds = l.Holds[1:] },
		func(l *Loading) { l.Seals = l.Seals[1:] },
		func(l *Loading) { l.segments = nil },
		func(l *Loading) { l.Nodes[3].Section = 2 },
		func(l *Loading) { l.Nodes[3].Section = -1 },
		func(l *Loading) { *l = Loading{} },
	} {
		other := l.Clone()
		change(&other)
		require.ErrorContains(t, m.loaded(&other), "another string's", "%d", i)
	}
	require.Error(t, m.loaded(nil))
	for _, change := range []func(*Standing){
		func(s *Standing) { s.landed = s.landed[1:] },
		func(s *Standing) { s.held = s.held[1:] },
		func(s *Standing) { s.parted = nil },
	} {
		other := s
		change(&other)
		require.ErrorIs(t, m.checkStanding(other), errNotLanded)
	}
}
