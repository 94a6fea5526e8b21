package hydrostatics_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// The older ways of working a survey, in feet: TVD, north and east of a course.
var surveyMethods = map[string]func(l, i1, a1, i2, a2 float64) [3]float64{
	"tangential": func(l, _, _, i, a float64) [3]float64 {
		return [3]float64{l * math.Cos(i), l * math.Sin(i) * math.Cos(a), l * math.Sin(i) * math.Sin(a)}
	},
	"balanced tangential": func(l, i1, a1, i2, a2 float64) [3]float64 {
		return [3]float64{l / 2 * (math.Cos(i1) + math.Cos(i2)), l / 2 * (math.Sin(i1)*math.Cos(a1) + math.Sin(i2)*math.Cos(a2)), l / 2 * (math.Sin(i1)*math.Sin(a1) + math.Sin(i2)*math.Sin(a2))}
	},
	"average angle": func(l, i1, a1, i2, a2 float64) [3]float64 {
		i, a := (i1+i2)/2, (a1+a2)/2
		return [3]float64{l * math.Cos(i), l * math.Sin(i) * math.Cos(a), l * math.Sin(i) * math.Sin(a)}
	},
	"radius of curvature": func(l, i1, a1, i2, a2 float64) [3]float64 {
		h := l * (math.Cos(i1) - math.Cos(i2)) / (i2 - i1)
		return [3]float64{l * (math.Sin(i2) - math.Sin(i1)) / (i2 - i1), h * (math.Sin(a2) - math.Sin(a1)) / (a2 - a1), h * (math.Cos(a1) - math.Cos(a2)) / (a2 - a1)}
	},
}

// Courses bent so much that the methods part: each printed answer of an older method is met by that
// method, and missed by CourseBetween, whose own are met in the published cases. Sources: worked examples
// on the web, drilling formulas, after Lapeyrouse, 2nd ed.; Lapeyrouse, web reprint. Two prints are wrong
// and missed by their own method as well.
func TestMethodsOfSurveyToldApart(t *testing.T) {
	type course struct{ md1, i1, a1, md2, i2, a2 float64 }
	first, second, third := course{3500, 15, 20, 3600, 25, 45}, course{7500, 45, 130, 7595, 52, 139}, course{7482, 4, 10, 7782, 8, 35}
	const tvd, north, east = 0, 1, 2
	for _, x := range []struct {
		method   string
		on       course
		what     int
		printed  float64
		apart    float64 // how far CourseBetween is from it at least
		misprint bool
	}{
		{"tangential", first, north, 29.88, 2.6, false}, {"tangential", first, east, 29.88, 10.4, false},
		{"balanced tangential", first, north, 27.10, 0.1, false}, {"balanced tangential", first, east, 19.37, 0.07, false}, {"balanced tangential", first, tvd, 93.61, 0.39, false},
		{"average angle", second, east, 50.74, 0.3, false}, {"average angle", second, tvd, 62.95, 0.02, false},
		{"radius of curvature", second, north, -49.97, 0, true}, // of −49.79, digits swapped
		{"radius of curvature", second, tvd, 62.91, 0.06, false},
		{"average angle", third, north, 28.97, 1.5, false}, {"average angle", third, east, 12.0, 1.7, false},
		{"radius of curvature", third, north, 28.56, 1.1, true}, // its printed steps give 28.72
	} {
		c := x.on
		deg := func(a float64) float64 { return a * math.Pi / 180 }
		got := surveyMethods[x.method](c.md2-c.md1, deg(c.i1), deg(c.a1), deg(c.i2), deg(c.a2))[x.what]
		if x.misprint {
			require.Greater(t, math.Abs(got-x.printed), 0.1, "%v", x)
		} else {
			require.InDelta(t, x.printed, got, 0.01, "%v", x) // some are cut off, not rounded
		}
		station := func(md, i, a float64) hydrostatics.Station {
			return hydrostatics.Station{MD: unit.Length(md) * unit.Foot, Inclination: unit.Angle(i) * unit.Degree, Azimuth: unit.Angle(a) * unit.Degree}
		}
		m := hydrostatics.CourseBetween(station(c.md1, c.i1, c.a1), station(c.md2, c.i2, c.a2))
		ours := [3]unit.Length{m.TVD, m.North, m.East}[x.what].In(unit.Foot)
		require.GreaterOrEqual(t, math.Abs(ours-x.printed), x.apart, "%v", x)
	}
}
