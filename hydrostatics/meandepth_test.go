package hydrostatics_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// bending is a hole that is straight down to 800 m, builds, and holds.
func bending(t testing.TB) *hydrostatics.Path {
	p, err := hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: 800 * unit.Metre}, {MD: 1400 * unit.Metre, Inclination: 40 * unit.Degree, Azimuth: 75 * unit.Degree},
		{MD: 4000 * unit.Metre, Inclination: 40 * unit.Degree, Azimuth: 75 * unit.Degree}})
	require.NoError(t, err)
	return p
}

// A quarter circle of radius R is at R sin(s/R): its mean over the whole of it is 2R/π
// (mean of a sine). Straight parts have their middle.
func TestMeanTVD(t *testing.T) {
	const R = 1000.0
	p, err := hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: unit.Length(R * math.Pi / 2), Inclination: 90 * unit.Degree}, {MD: 3000 * unit.Metre, Inclination: 90 * unit.Degree}})
	require.NoError(t, err)
	h, err := p.MeanTVD(0, unit.Length(R*math.Pi/2))
	require.NoError(t, err)
	require.InDelta(t, 2*R/math.Pi, float64(h), 1e-9)
	h, err = p.MeanTVD(2000*unit.Metre, 3000*unit.Metre) // level
	require.NoError(t, err)
	require.InDelta(t, R, float64(h), 1e-9)

	v, err := hydrostatics.Vertical(9000 * unit.Foot)
	require.NoError(t, err)
	h, err = v.MeanTVD(1000*unit.Foot, 9000*unit.Foot)
	require.NoError(t, err)
	require.InDelta(t, float64(5000*unit.Foot), float64(h), 1e-9)
}

// Many small steps come to the same, and two parts to the whole.
func TestMeanTVDByASum(t *testing.T) {
	p := bending(t)
	from, to := 500*unit.Metre, 3100*unit.Metre
	h, err := p.MeanTVD(from, to)
	require.NoError(t, err)
	const n = 20000
	sum := 0.0
	for i := range n {
		at, err := p.TVD(from + (to-from)*unit.Length((float64(i)+0.5)/n))
		require.NoError(t, err)
		sum += float64(at) / n
	}
	require.InDelta(t, sum, float64(h), 1e-5)
	a, err := p.MeanTVD(from, 1000*unit.Metre)
	require.NoError(t, err)
	b, err := p.MeanTVD(1000*unit.Metre, to)
	require.NoError(t, err)
	require.InDelta(t, float64(h), (float64(a)*500+float64(b)*2100)/2600, 1e-9)
}

func TestMeanTVDFaults(t *testing.T) {
	p := bending(t)
	for _, x := range [][2]unit.Length{{-1, 5}, {5, 5}, {6, 5}, {0, 5000}, {unit.Length(math.NaN()), 5}, {0, unit.Length(math.NaN())}} {
		_, err := p.MeanTVD(x[0], x[1])
		require.Error(t, err)
	}
	_, err := (*hydrostatics.Path)(nil).MeanTVD(0, 1)
	require.ErrorIs(t, err, hydrostatics.ErrOutsidePath)
}

// The mean depth of the closed space above a packer, for its mean pressure.
func ExamplePath_MeanTVD() {
	p, err := hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: 800 * unit.Metre}, {MD: 1400 * unit.Metre, Inclination: 40 * unit.Degree}, {MD: 4000 * unit.Metre, Inclination: 40 * unit.Degree}})
	if err != nil {
		fmt.Println(err)
		return
	}
	h, err := p.MeanTVD(0, 3000*unit.Metre)
	fmt.Printf("%.1f m %v\n", h.In(unit.Metre), err)
	// Output: 1372.4 m <nil>
}
