package hydrostatics

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

var brine = SlightlyCompressible{
	Reference: 9.2 * unit.PoundPerGallon, Temperature: unit.Fahrenheit(70),
	Compressibility: 3e-6 * unit.PerPSI, Expansivity: 2.5e-4 * unit.PerFahrenheit,
}

func BenchmarkNewColumnNumerical4000m(b *testing.B) {
	profile := straight(b, 15, 0.03)
	layers := []Layer{{hidden{brine}, 0, 4000}}
	for b.Loop() {
		c, _ := NewColumn(layers, profile, Reference{})
		_, _ = c.At(4000)
	}
}

func BenchmarkCarryNumerical4000m(b *testing.B) {
	c, err := NewColumn([]Layer{{hidden{brine}, 0, 4000}}, straight(b, 15, 0.03), Reference{})
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		_, _ = c.Carry(0, 0, 4000)
	}
}

func BenchmarkCarryClosedForm(b *testing.B) {
	c, err := NewColumn([]Layer{{brine, 0, 4000}}, straight(b, 15, 0.03), Reference{})
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		_, _ = c.Carry(0, 0, 4000)
	}
}

func benchmarkAt(b *testing.B, f Fluid) {
	c, err := NewColumn([]Layer{{f, 0, 4000}}, straight(b, 15, 0.03), Reference{})
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		_, _ = c.At(3000)
	}
}

func BenchmarkAtUniform(b *testing.B)    { benchmarkAt(b, Incompressible(1000)) }
func BenchmarkAtClosedForm(b *testing.B) { benchmarkAt(b, brine) }
func BenchmarkAtPrepared(b *testing.B)   { benchmarkAt(b, hidden{brine}) }

func BenchmarkProfile1000(b *testing.B) {
	c, err := NewColumn([]Layer{{hidden{brine}, 0, 4000}}, straight(b, 15, 0.03), Reference{})
	require.NoError(b, err)
	depths := make([]unit.Length, 1000)
	for i := range depths {
		depths[i] = unit.Length(4 * i)
	}
	dst := make([]unit.Pressure, len(depths))
	b.ReportAllocs()
	for b.Loop() {
		_ = c.Profile(depths, dst)
	}
}

func BenchmarkColumnDepth(b *testing.B) {
	c, err := NewColumn([]Layer{{hidden{brine}, 0, 4000}}, straight(b, 15, 0.03), Reference{})
	require.NoError(b, err)
	p, err := c.At(2345)
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		_, _ = c.Depth(p)
	}
}

// survey has a well that builds and turns, n stations 10 m apart.
func survey(n int) []Station {
	s := make([]Station, n)
	for i := range s {
		s[i] = Station{unit.Length(10 * i), unit.Angle(float64(i%300)/300) * 90 * unit.Degree, unit.Angle(i%360) * unit.Degree}
	}
	return s
}

func BenchmarkNewPath1000(b *testing.B) {
	s := survey(1000)
	b.ReportAllocs()
	for b.Loop() {
		_, _ = NewPath(s)
	}
}

func benchmarkLookup(b *testing.B, n int) {
	p, err := NewPath(survey(n))
	require.NoError(b, err)
	i := 0
	b.ReportAllocs()
	for b.Loop() {
		i = (i*7919 + 13) % n
		_, _ = p.TVD(unit.Length(10 * i))
	}
}

func BenchmarkTVD100(b *testing.B)   { benchmarkLookup(b, 100) }
func BenchmarkTVD1000(b *testing.B)  { benchmarkLookup(b, 1000) }
func BenchmarkTVD10000(b *testing.B) { benchmarkLookup(b, 10000) }
