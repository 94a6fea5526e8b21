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
