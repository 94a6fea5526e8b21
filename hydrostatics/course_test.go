package hydrostatics

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

func TestCourseIsThePath(t *testing.T) {
	md := []float64{0, 400, 430, 460, 1500, 1530}
	inc := []float64{0, 0.02, 5, 45, 90, 91}
	azi := []float64{0, 310, 350, 10, 100, 100}
	p := path(t, md, inc, azi)
	s, at := p.Stations(), p.Positions()
	for i := 1; i < len(s); i++ {
		c := CourseBetween(s[i-1], s[i])
		require.InDelta(t, float64(at[i].TVD-at[i-1].TVD), float64(c.TVD), 1e-10)
		require.InDelta(t, float64(at[i].North-at[i-1].North), float64(c.North), 1e-10)
		require.InDelta(t, float64(at[i].East-at[i-1].East), float64(c.East), 1e-10)
		require.InDelta(t, float64(at[i].DoglegSeverity), float64(c.DoglegSeverity), 1e-15)
		require.GreaterOrEqual(t, c.RatioFactor, 1.0)
		workingtest.Check(t, c.Steps())
		// Back up the hole all changes turn their signs.
		back := CourseBetween(s[i], s[i-1])
		require.InDelta(t, -float64(c.TVD), float64(back.TVD), 1e-12)
		require.InDelta(t, float64(c.Bend), float64(back.Bend), 1e-15)
	}
	straight := CourseBetween(Station{}, Station{MD: 100})
	require.Equal(t, unit.Length(100), straight.TVD)
	require.Equal(t, 1.0, straight.RatioFactor)
	require.Zero(t, straight.DoglegSeverity)
	workingtest.Check(t, straight.Steps())
	require.True(t, math.IsNaN(float64(CourseBetween(Station{}, Station{MD: 100, Inclination: unit.Angle(math.NaN())}).TVD)))
	dimension.Check(t, dimension.Free, CourseBetween, Station{100, 0.1, 0.2}, Station{200, 0.3, 0.5})
}
