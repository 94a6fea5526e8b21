package hydrostatics

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// The older methods of working out a survey, for what they get wrong. i, a are
// inclination and azimuth at both ends; TVD, north and east over the length.
//
// Source: Bourgoyne et al., Applied Drilling Engineering (1986), ch. 8.
var olderMethods = map[string]func(i1, a1, i2, a2 float64) (v, n, e float64){
	"tangential": func(_, _, i2, a2 float64) (v, n, e float64) {
		return math.Cos(i2), math.Sin(i2) * math.Cos(a2), math.Sin(i2) * math.Sin(a2)
	},
	"balanced tangential": func(i1, a1, i2, a2 float64) (v, n, e float64) {
		return (math.Cos(i1) + math.Cos(i2)) / 2, (math.Sin(i1)*math.Cos(a1) + math.Sin(i2)*math.Cos(a2)) / 2, (math.Sin(i1)*math.Sin(a1) + math.Sin(i2)*math.Sin(a2)) / 2
	},
	"average angle": func(i1, a1, i2, a2 float64) (v, n, e float64) {
		i, a := (i1+i2)/2, (a1+a2)/2
		return math.Cos(i), math.Sin(i) * math.Cos(a), math.Sin(i) * math.Sin(a)
	},
	"radius of curvature": func(i1, a1, i2, a2 float64) (v, n, e float64) {
		flat := (math.Cos(i1) - math.Cos(i2)) / (i2 - i1)
		return (math.Sin(i2) - math.Sin(i1)) / (i2 - i1), flat * (math.Sin(a2) - math.Sin(a1)) / (a2 - a1), flat * (math.Cos(a1) - math.Cos(a2)) / (a2 - a1)
	},
}

// Worked examples with doglegs large enough to tell the methods apart: the older
// ones meet their printed answers, and ours, minimum curvature, is as far off as the
// difference of the methods is. A test of ours that they would pass is no test.
//
// Sources: a worked example on the web (drilling formulas) after Lapeyrouse, 3,500 to
// 3,600 ft and 7,500 to 7,595 ft; Lapeyrouse, Formulas and Calculations, web
// reprint, 7,482 to 7,782 ft.
func TestMinimumCurvatureIsNoneOfTheOlderMethods(t *testing.T) {
	station := func(md, inclination, azimuth float64) Station {
		return Station{unit.Length(md) * unit.Foot, unit.Angle(inclination) * unit.Degree, unit.Angle(azimuth) * unit.Degree}
	}
	type axis int
	const (
		tvd axis = iota
		north
		east
	)
	sharp := [2]Station{station(3500, 15, 20), station(3600, 25, 45)}
	steep := [2]Station{station(7500, 45, 130), station(7595, 52, 139)}
	flat := [2]Station{station(7482, 4, 10), station(7782, 8, 35)}
	for _, c := range []struct {
		method  string
		course  [2]Station
		axis    axis
		printed float64 // ft
		digit   float64 // half of the last one
		apart   float64 // what minimum curvature gives, less the printed answer, ft
		wrong   bool    // the print is a misprint: the method must miss it
	}{
		{"tangential", sharp, north, 29.88, 0.005, -2.67, false},
		{"tangential", sharp, east, 29.88, 0.005, -10.43, false},
		{"balanced tangential", sharp, north, 27.1, 0.05, 0.12, false},
		{"balanced tangential", sharp, east, 19.37, 0.005, 0.08, false},
		{"balanced tangential", sharp, tvd, 93.61, 0.005, 0.40, false},
		{"average angle", steep, east, 50.74, 0.01, -0.34, false}, // cut off, 50.748
		{"average angle", steep, tvd, 62.95, 0.005, 0.03, false},
		{"radius of curvature", steep, north, -49.97, 0.005, 0.01, true}, // digits swapped, for -49.79; minimum curvature nearly meets it
		{"radius of curvature", steep, tvd, 62.91, 0.005, 0.07, false},
		{"average angle", flat, north, 28.97, 0.005, -1.55, false},
		{"average angle", flat, east, 12.0, 0.05, 1.80, false},
		{"radius of curvature", flat, north, 28.56, 0.005, -1.14, true}, // its own steps give 28.72
	} {
		from, to := c.course[0], c.course[1]
		v, n, e := olderMethods[c.method](float64(from.Inclination), float64(from.Azimuth), float64(to.Inclination), float64(to.Azimuth))
		length := (to.MD - from.MD).In(unit.Foot)
		older := length * map[axis]float64{tvd: v, north: n, east: e}[c.axis]
		if missed := math.Abs(older-c.printed) > c.digit; missed != c.wrong {
			t.Errorf("%s, axis %d: %.4f ft, printed %v", c.method, c.axis, older, c.printed)
		}
		ours := CourseBetween(from, to)
		got := map[axis]unit.Length{tvd: ours.TVD, north: ours.North, east: ours.East}[c.axis].In(unit.Foot)
		require.InDelta(t, c.apart, got-c.printed, 0.011, "%s, axis %d", c.method, c.axis)
		require.Greater(t, math.Abs(got-older), 3*0.005, "%s, axis %d: the case doesn't tell the methods apart", c.method, c.axis)
	}
}
