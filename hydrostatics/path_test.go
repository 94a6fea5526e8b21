package hydrostatics

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func degrees(inc, azi float64) (unit.Angle, unit.Angle) {
	return unit.Angle(inc) * unit.Degree, unit.Angle(azi) * unit.Degree
}

func path(t testing.TB, md, inc, azi []float64) *Path {
	t.Helper()
	s := make([]Station, len(md))
	for i := range s {
		s[i].MD = unit.Length(md[i])
		s[i].Inclination, s[i].Azimuth = degrees(inc[i], azi[i])
	}
	p, err := NewPath(s)
	require.NoError(t, err)
	return p
}

// A build of constant rate in one plane is a circle: at inclination I, with
// R = 1/rate, TVD = R·sin I and displacement = R·(1 − cos I).
func TestBuildIsACircle(t *testing.T) {
	const r = 500.0
	p := path(t, []float64{0, r * math.Pi / 6, r * math.Pi / 2}, []float64{0, 30, 90}, []float64{60, 60, 60})
	for _, theta := range []float64{0, 0.01, 0.3, math.Pi / 6, 1, 1.5, math.Pi / 2} {
		at, err := p.At(unit.Length(r * theta))
		require.NoError(t, err)
		require.InDelta(t, r*math.Sin(theta), float64(at.TVD), 1e-10)
		out, azimuth := at.Closure()
		require.InDelta(t, r*(1-math.Cos(theta)), float64(out), 1e-10)
		require.InDelta(t, theta, float64(at.Inclination), 1e-12)
		if theta > 0 {
			require.InDelta(t, 60, azimuth.In(unit.Degree), 1e-9)
			require.InDelta(t, 1/r, float64(at.DoglegSeverity), 1e-15)
		}
	}
}

func TestMDsOfARisingHole(t *testing.T) {
	// Vertical, build through level up to 120°, hold up, then back down.
	p := path(t, []float64{0, 1000, 2000, 2500, 3200, 3900}, []float64{0, 0, 120, 120, 60, 20}, []float64{10, 10, 10, 40, 40, 10})
	for _, md := range []float64{1, 999, 1000, 1500, 1700, 1900, 2000, 2222, 2500, 2800, 3000, 3900} {
		h, err := p.TVD(unit.Length(md))
		require.NoError(t, err)
		found := false
		for _, m := range p.MDs(h) {
			back, err := p.TVD(m)
			require.NoError(t, err)
			require.InDelta(t, float64(h), float64(back), 1e-9)
			found = found || math.Abs(float64(m)-md) < 1e-6
		}
		require.True(t, found, "MD %g not among %v", md, p.MDs(h))
	}
}

// tangentIntegral is the position by integrating the tangent, whose direction
// turns at a constant rate in the plane of the two end tangents.
func tangentIntegral(l float64, t1, t2 vector) vector {
	beta := math.Atan2(cross(t1, t2), t1.dot(t2))
	at := func(s float64) vector {
		a, b := math.Sin(beta*(1-s))/math.Sin(beta), math.Sin(beta*s)/math.Sin(beta)
		return t1.times(a).plus(t2.times(b)) // slerp
	}
	var sum vector
	const n = 4000
	for i := range n { // Simpson
		a, b := float64(i)/n, float64(i+1)/n
		sum = sum.plus(at(a).plus(at((a + b) / 2).times(4)).plus(at(b)).times(l / n / 6))
	}
	return sum
}

func cross(a, b vector) float64 {
	c := vector{a.e*b.v - a.v*b.e, a.v*b.n - a.n*b.v, a.n*b.e - a.e*b.n}
	return math.Sqrt(c.dot(c))
}

func TestArcIsTheIntegralOfItsTangent(t *testing.T) {
	for _, row := range [][4]float64{{3, 20, 25, 45}, {0, 0, 90, 130}, {45, 130, 52, 139}, {5, 0, 5, 180}, {88, 359, 95, 1}, {10, 40, 150, 80}, {0, 10, 179, 10}} {
		i1, a1 := degrees(row[0], row[1])
		i2, a2 := degrees(row[2], row[3])
		t1, t2 := direction(i1, a1), direction(i2, a2)
		got, xx := chord(100, t1, t2)
		want := tangentIntegral(100, t1, t2)
		require.InDelta(t, math.Atan2(cross(t1, t2), t1.dot(t2)), bend(xx), 1e-13, "%v", row)
		for _, d := range []float64{got.n - want.n, got.e - want.e, got.v - want.v} {
			require.InDelta(t, 0, d, 1e-9, "%v", row)
		}
	}
}

// The textbook's arc cosine and ratio factor, where they keep their digits.
// Source: Taylor and Mason, SPE Journal, February 1972; the form of Bourgoyne
// et al. 1986, ch. 8.
func TestTextbookForm(t *testing.T) {
	i1, a1 := degrees(15, 20)
	i2, a2 := degrees(25, 45)
	d, xx := chord(100, direction(i1, a1), direction(i2, a2))
	cos := math.Cos(float64(i2-i1)) - math.Sin(float64(i1))*math.Sin(float64(i2))*(1-math.Cos(float64(a2-a1)))
	beta := math.Acos(cos)
	rf := 2 / beta * math.Tan(beta/2)
	require.InDelta(t, beta, bend(xx), 1e-14)
	require.InDelta(t, 50*rf*(math.Cos(float64(i1))+math.Cos(float64(i2))), d.v, 1e-11)
}

// The two branches of the ratio factor meet.
func TestRatioFactor(t *testing.T) {
	for _, xx := range []float64{0, 1e-12, 1e-6, 5e-4, 9.99999e-4, 1.00001e-3, 0.01, 1, 1e6} {
		x := math.Sqrt(xx)
		want := 1.0
		if x > 0 {
			want = x / math.Atan(x)
		}
		require.InEpsilon(t, want, ratioFactor(xx), 5e-16, "%g", xx)
	}
}

func TestAddedStationsChangeNothing(t *testing.T) {
	md := []float64{100, 400, 900, 1500, 2200, 3000}
	inc := []float64{0, 5, 35, 80, 95, 60}
	azi := []float64{0, 350, 10, 60, 80, 200}
	p := path(t, md, inc, azi)
	var dense []Station
	for m := 50.0; m <= 3000; m += 50 {
		at, err := p.At(unit.Length(m))
		require.NoError(t, err)
		dense = append(dense, Station{at.MD, at.Inclination, at.Azimuth})
	}
	q, err := NewPath(dense)
	require.NoError(t, err)
	for m := 0.0; m <= 3000; m += 7.3 {
		a, err := p.At(unit.Length(m))
		require.NoError(t, err)
		b, err := q.At(unit.Length(m))
		require.NoError(t, err)
		require.InDelta(t, float64(a.TVD), float64(b.TVD), 1e-9)
		require.InDelta(t, float64(a.North), float64(b.North), 1e-9)
		require.InDelta(t, float64(a.East), float64(b.East), 1e-9)
		require.InDelta(t, float64(a.Inclination), float64(b.Inclination), 1e-9)
		require.InDelta(t, float64(a.DoglegSeverity), float64(b.DoglegSeverity), 1e-9)
		// The section along the closure's azimuth is the closure.
		out, azimuth := a.Closure()
		require.InDelta(t, float64(out), float64(a.Section(azimuth)), 1e-9)
	}
	for i, at := range p.Positions() {
		require.Equal(t, p.Stations()[i].MD, at.MD)
		require.InDelta(t, float64(p.Stations()[i].Inclination), float64(at.Inclination), 1e-12)
	}
	require.Equal(t, unit.Length(3000), p.TotalDepth())
}

func TestStraightAndReversal(t *testing.T) {
	// A slant hole is a straight line.
	p := path(t, []float64{0, 1000, 2000}, []float64{30, 30, 30}, []float64{90, 90, 90})
	at, err := p.At(1700)
	require.NoError(t, err)
	require.InDelta(t, 1700*math.Cos(math.Pi/6), float64(at.TVD), 1e-9)
	require.InDelta(t, 850, float64(at.East), 1e-9)
	require.InDelta(t, 0, float64(at.DoglegSeverity), 1e-16)
	// From 5° north to 5° south the hole passes the vertical half-way, and comes
	// back to where it started horizontally.
	p = path(t, []float64{0, 100}, []float64{5, 5}, []float64{0, 180})
	at, err = p.At(50)
	require.NoError(t, err)
	require.InDelta(t, 0, float64(at.Inclination), 1e-9)
	end, err := p.At(100)
	require.NoError(t, err)
	require.InDelta(t, 0, float64(end.North), 1e-12)
	require.Greater(t, float64(at.North), 0.)
	// Across north: 359° to 1° turns by 2°, not by 358°.
	p = path(t, []float64{0, 100}, []float64{90, 90}, []float64{359, 1})
	at, err = p.At(100)
	require.NoError(t, err)
	require.InDelta(t, 2, at.DoglegSeverity.In(unit.DegreePer30Metres)*100/30, 1e-9)
	require.Equal(t, at.DoglegSeverity, p.Positions()[1].DoglegSeverity)
	require.Zero(t, p.Positions()[0].DoglegSeverity, "no arc ends at the first station")
	// Half a turn has no plane.
	for _, s := range [][]Station{
		{{}, {MD: 100, Inclination: math.Pi}},
		{{Inclination: math.Pi / 2}, {MD: 100, Inclination: math.Pi / 2, Azimuth: math.Pi}},
	} {
		_, err := NewPath(s)
		require.ErrorContains(t, err, "must be less than half a turn")
	}
}

func TestMDsOfLevelHole(t *testing.T) {
	p := path(t, []float64{0, 1000, 1500, 2500}, []float64{0, 0, 90, 90}, []float64{0, 0, 0, 0})
	deepest, err := p.TVD(2000)
	require.NoError(t, err)
	mds := p.MDs(deepest)
	require.Len(t, mds, 2, "both ends of the level stretch: %v", mds)
	require.InDelta(t, 1500, float64(mds[0]), 1e-3) // where it levels out is ill-conditioned
	require.InDelta(t, 2500, float64(mds[1]), 1e-6)
	require.Empty(t, p.MDs(deepest+1))
	require.Empty(t, p.MDs(-1))
	require.Empty(t, p.MDs(unit.Length(math.NaN())))
	require.Equal(t, []unit.Length{0}, p.MDs(0))
}

func TestPathFaults(t *testing.T) {
	nan := unit.Angle(math.NaN())
	_, err := NewPath([]Station{{MD: 100, Inclination: nan}, {MD: 100, Inclination: 190 * unit.Degree}, {MD: 200, Azimuth: 400 * unit.Degree}, {MD: unit.Length(math.Inf(1))}})
	for _, want := range []string{"stations[0].Inclination: is NaN", "stations[1].MD: is", "stations[1].Inclination: is 190 deg", "stations[2].Azimuth: is 400 deg", "stations[3].MD: is +Inf"} {
		require.ErrorContains(t, err, want)
	}
	for _, s := range [][]Station{nil, {{}}, {{MD: -1}, {MD: 5}}} {
		_, err := NewPath(s)
		require.Error(t, err)
	}
	for _, d := range []unit.Length{0, -1, unit.Length(math.NaN()), unit.Length(math.Inf(1))} {
		_, err := Vertical(d)
		require.Error(t, err)
	}
	p, err := Vertical(1000)
	require.NoError(t, err)
	for _, md := range []unit.Length{-0.001, 1000.001, unit.Length(math.NaN()), unit.Length(math.Inf(1))} {
		_, err := p.At(md)
		require.ErrorIs(t, err, ErrOutsidePath)
		_, err = p.TVD(md)
		require.ErrorIs(t, err, ErrOutsidePath)
	}
	for _, none := range []*Path{nil, {}} {
		_, err := none.At(0)
		require.ErrorIs(t, err, ErrOutsidePath)
		require.Empty(t, none.MDs(5))
		require.Empty(t, none.Stations())
		require.Empty(t, none.Positions())
		require.Zero(t, none.TotalDepth())
	}
}

// A first station below surface implies a vertical start.
func TestImpliedSurfaceStation(t *testing.T) {
	a := path(t, []float64{500, 800}, []float64{10, 20}, []float64{30, 40})
	b := path(t, []float64{0, 500, 800}, []float64{0, 10, 20}, []float64{0, 30, 40})
	require.Len(t, a.Stations(), 3)
	for _, md := range []unit.Length{0, 100, 500, 700, 800} {
		x, err := a.At(md)
		require.NoError(t, err)
		y, err := b.At(md)
		require.NoError(t, err)
		require.InDelta(t, float64(y.TVD), float64(x.TVD), 1e-12)
		require.InDelta(t, float64(y.North), float64(x.North), 1e-12)
	}
}

func TestLookupsDoNotAllocate(t *testing.T) {
	p, err := NewPath(survey(100))
	require.NoError(t, err)
	require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = p.At(543); _, _ = p.TVD(211) }))
}

func FuzzPath(f *testing.F) {
	f.Add(100.0, 0.5, 1.0, 200.0, 1.6, 2.0, 300.0, 2.5, 6.0, 0.3)
	f.Add(1e-9, 3.0, 0.0, 1.0, 0.0, 0.0, 1e9, 0.1, -6.0, 0.9)
	f.Fuzz(func(t *testing.T, m1, i1, a1, m2, i2, a2, m3, i3, a3, share float64) {
		p, err := NewPath([]Station{
			{unit.Length(m1), unit.Angle(i1), unit.Angle(a1)}, {unit.Length(m2), unit.Angle(i2), unit.Angle(a2)}, {unit.Length(m3), unit.Angle(i3), unit.Angle(a3)},
		})
		if err != nil || !(share >= 0 && share <= 1) || m3 > 1e6 {
			return
		}
		md := m3 * share
		at, err := p.At(unit.Length(md))
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range []float64{float64(at.TVD), float64(at.North), float64(at.East)} {
			if !(math.Abs(x) <= md*(1+1e-9)+1e-9) {
				t.Fatalf("%+v lies further away than its MD", at)
			}
		}
		mds := p.MDs(at.TVD)
		if len(mds) == 0 {
			t.Fatalf("TVD %v at MD %v isn't found again", at.TVD, md)
		}
		for _, m := range mds {
			if h, err := p.TVD(m); err != nil || math.Abs(float64(h-at.TVD)) > 1e-8*(1+md) {
				t.Fatalf("MDs(%v) has %v, where TVD is %v, %v", at.TVD, m, h, err)
			}
		}
	})
}
