package hydrostatics

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// The integral of the depth along an arc, worked with 256 bits on both sides of where the series gives
// way to the closed form: s²·[(1 − cos θ)·tv + (θ − sin θ)·nv]/θ², θ = β·s/l.
func TestMeanDepthOfAnArcWorked(t *testing.T) {
	for _, turned := range []float64{1e-6, 0.04, 0.29, 0.31, 1.7} {
		a := arc{length: 100, bend: turned * 1.25, along: vector{v: 0.4}, aside: vector{v: 0.8}}
		precise.Within(t, 1e-14, a.sunk(80), "x = β*80/100\n80*80*((1 - cos(x))*tv + (x - sin(x))*nv)/(x*x)", precise.Values{"β": a.bend, "tv": 0.4, "nv": 0.8})
	}
	straight := arc{length: 100, along: vector{v: 0.4}, aside: vector{v: 0.8}}
	require.InEpsilon(t, 80*80*0.4/2, straight.sunk(80), 1e-15)
	require.Zero(t, straight.sunk(0))
	// as the mean of the depth on a fine walk
	p, err := NewPath([]Station{{}, {MD: 500}, {MD: 1100, Inclination: 70 * unit.Degree, Azimuth: 30 * unit.Degree}, {MD: 1900, Inclination: 70 * unit.Degree, Azimuth: 60 * unit.Degree}})
	require.NoError(t, err)
	sum := 0.0
	for i := range 20000 {
		h, err := p.TVD(600 + 1200*(unit.Length(i)+0.5)/20000)
		require.NoError(t, err)
		sum += float64(h) / 20000
	}
	mean, err := p.MeanTVD(600, 1800)
	require.NoError(t, err)
	require.InEpsilon(t, sum, float64(mean), 1e-8)
}

// The depth of a pressure is where the column has it, whatever its reference.
func TestDepthIsWhereThePressureIs(t *testing.T) {
	c, err := NewColumn([]Layer{{Incompressible(900), 100, 700}, {Incompressible(1200), 700, 1500}, {SlightlyCompressible{Reference: 1300, Temperature: unit.Kelvin(300), Compressibility: 5e-10}, 1500, 2500}},
		straight(t, 15, 0.03), Reference{Pressure: 7e6, TVD: 100})
	require.NoError(t, err)
	for _, z := range []unit.Length{100, 300, 700, 900, 1500, 1501, 2200, 2500} {
		p, err := c.At(z)
		require.NoError(t, err)
		back, err := c.Depth(p)
		require.NoError(t, err)
		require.InDelta(t, float64(z), float64(back), 1e-8)
	}
	p, err := c.At(900)
	require.NoError(t, err)
	precise.Within(t, 1e-14, float64(p), "7e6 + 9.80665*(900*600 + 1200*200)", nil)
}

type broken struct{ why string }

func (b broken) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	return 0, errors.New(b.why)
}

// Which layer has no density, from the top.
func TestLayerThatHasNoDensity(t *testing.T) {
	for bad := range 3 {
		layers := []Layer{{Incompressible(900), 0, 100}, {Incompressible(900), 100, 200}, {Incompressible(900), 200, 300}}
		layers[bad].Fluid = broken{"boiled dry"}
		for _, at := range []unit.Length{0, 150, 300} {
			_, err := NewColumn(layers, straight(t, 15, 0.03), Reference{TVD: at})
			require.ErrorContains(t, err, "boiled dry", "%d from %v", bad, at)
			require.ErrorContains(t, err, fmt.Sprintf("layer %d", bad+1), "from %v", at)
		}
	}
}

// What a file of a survey may say: at most fifty faults are told, each with its line; units in brackets
// or after a stroke; headings that are none.
func TestSurveyFaultsAndHeadings(t *testing.T) {
	var b strings.Builder
	b.WriteString("MD,inclination,azimuth\n")
	for range 80 {
		b.WriteString("much,0 deg,0 deg\n")
	}
	_, err := ReadSurvey(strings.NewReader(b.String()))
	require.Equal(t, 50, strings.Count(err.Error(), "much"))
	require.ErrorContains(t, err, "line 2.MD")
	require.ErrorContains(t, err, "line 51.MD")
	for _, head := range []string{"MD (m),inclination [deg],azimuth (deg)", "depth/m,inc/deg,azi/deg"} {
		s, err := ReadSurvey(strings.NewReader(head + "\n100,10,20\n"))
		require.NoError(t, err, head)
		require.Equal(t, Station{MD: 100, Inclination: 10 * unit.Degree, Azimuth: 20 * unit.Degree}, s[0])
	}
	_, err = ReadSurvey(strings.NewReader("MD (m),inc (deg),azi (deg),(TVD)\n1,2,3,4\n"))
	require.ErrorContains(t, err, `has a column "(TVD)"`)
	_, err = ReadSurvey(strings.NewReader("MD (m),inc (deg),nothing\n1,2,3\n"))
	require.ErrorContains(t, err, "has no column azimuth")
	require.ErrorContains(t, err, `has a column "nothing"`)
	_, err = ReadSurvey(strings.NewReader("MD (m),inc (deg),azi (deg),TVD,TVD\n1,2,3,4,4\n"))
	require.NoError(t, err)
	_, err = ReadSurvey(strings.NewReader("MD (m),MD (m),inc (deg),azi (deg)\n1,1,2,3\n"))
	require.ErrorContains(t, err, "has the column MD twice")
}

// Azimuths of a whole turn either way, and no more.
func TestAzimuthOfAWholeTurn(t *testing.T) {
	for azimuth, ok := range map[unit.Angle]bool{360 * unit.Degree: true, -360 * unit.Degree: true, 360.001 * unit.Degree: false, -360.001 * unit.Degree: false} {
		_, err := NewPath([]Station{{Azimuth: azimuth}, {MD: 10, Azimuth: azimuth}})
		require.Equal(t, ok, err == nil, "%v", azimuth)
	}
	// what is level or rises isn't in order of depth
	p, err := NewPath([]Station{{}, {MD: 100, Inclination: 90 * unit.Degree}})
	require.NoError(t, err)
	require.True(t, p.falling)
	p, err = NewPath([]Station{{}, {MD: 100, Inclination: 91 * unit.Degree}})
	require.NoError(t, err)
	require.False(t, p.falling)
	// an implied start at surface is vertical, with the first station's azimuth
	p, err = NewPath([]Station{{MD: 100, Inclination: 40 * unit.Degree, Azimuth: 50 * unit.Degree}})
	require.NoError(t, err)
	at, err := p.At(50)
	require.NoError(t, err)
	require.InDelta(t, float64(20*unit.Degree), float64(at.Inclination), 1e-12)
	require.InDelta(t, float64(50*unit.Degree), float64(at.Azimuth), 1e-12)
	_, err = (&Path{}).TVD(0)
	require.ErrorIs(t, err, ErrOutsidePath)
	_, err = (&Path{nodes: make([]node, 1)}).TVD(0)
	require.ErrorIs(t, err, ErrOutsidePath)
	end, err := p.At(100)
	require.NoError(t, err)
	require.InDelta(t, float64(40*unit.Degree)/100, float64(end.DoglegSeverity), 1e-15)
}

// Heat of a wall by Carslaw and Jaeger's integral: for short times a half-space's, 2·√(t/π) − t/2 + t^(3/2)/(2·√π).
func TestWallTimeShort(t *testing.T) {
	for _, td := range []float64{2e-6, 5e-6} {
		precise.Within(t, 1e-7, wallTime(td), "2*sqrt(t/pi) - t/2 + t*sqrt(t/pi)/2", precise.Values{"t": td})
	}
}

// Profiles that are none; between others only what both cover counts.
func TestTemperatureProfilesThatAreNone(t *testing.T) {
	line := func(points ...TemperaturePoint) *TemperatureProfile {
		p, err := NewTemperatureProfile(points)
		require.NoError(t, err)
		return p
	}
	for _, none := range []*TemperatureProfile{nil, {}} {
		require.Equal(t, unit.Temperature{}, none.At(5))
		at, slope := none.straight(1, 2)
		require.Equal(t, unit.Temperature{}, at)
		require.Zero(t, slope)
		require.Equal(t, 7.0, none.kink(1, 7))
		_, err := AfterShutIn(none, line(TemperaturePoint{0, unit.Kelvin(300)}, TemperaturePoint{10, unit.Kelvin(310)}), 0.5)
		require.ErrorContains(t, err, "ground: is missing")
		_, err = AfterShutIn(line(TemperaturePoint{0, unit.Kelvin(300)}, TemperaturePoint{10, unit.Kelvin(310)}), none, 0.5)
		require.ErrorContains(t, err, "flowing: is missing")
	}
	one := line(TemperaturePoint{5, unit.Kelvin(300)})
	require.Equal(t, 7.0, one.kink(1, 7))
	require.Equal(t, unit.Kelvin(300), one.At(50))
	three := line(TemperaturePoint{0, unit.Kelvin(300)}, TemperaturePoint{10, unit.Kelvin(310)}, TemperaturePoint{30, unit.Kelvin(320)})
	for _, x := range [][3]float64{{-5, 50, 10}, {10, 50, 50}, {9, 9.5, 9.5}, {50, -5, 10}, {10, -5, -5}} {
		require.Equal(t, x[2], three.kink(x[0], x[1]), "%v", x)
	}
	cooled, err := AfterShutIn(line(TemperaturePoint{-10, unit.Kelvin(280)}, TemperaturePoint{20, unit.Kelvin(310)}, TemperaturePoint{99, unit.Kelvin(400)}), three, 1)
	require.NoError(t, err)
	var depths []unit.Length
	for _, at := range cooled.Points() {
		depths = append(depths, at.TVD)
	}
	require.Equal(t, []unit.Length{0, 10, 20, 30}, depths)
	_, err = NewTemperatureProfile([]TemperaturePoint{{5, unit.Kelvin(300)}, {3, unit.Kelvin(300)}})
	require.ErrorContains(t, err, "points[1].TVD: is "+unit.Length(3).String()+"; must be above the last point's "+unit.Length(5).String())
}

// The working numbers its fluids from one; a governing point that isn't there has none.
func TestWorkingNumbersItsParts(t *testing.T) {
	s := weighed("p", "p", 0, make([]Standing, 3), 0)
	require.Equal(t, "ps+r1*g*h1+r2*g*h2+r3*g*h3", s.Equation)
	var symbols []string
	for _, in := range s.Inputs {
		symbols = append(symbols, in.Symbol)
	}
	require.Equal(t, []string{"ps", "r1", "h1", "r2", "h2", "r3", "h3"}, symbols)
	for weakest, ok := range map[int]bool{-1: false, 0: true, 1: false} {
		l := SurfaceLimit{Weakest: weakest, Points: make([]PointLimit, 1)}
		require.Equal(t, ok, len(l.Steps()) > 0, weakest)
	}
	require.False(t, math.IsNaN(wallTime(1)))
}
