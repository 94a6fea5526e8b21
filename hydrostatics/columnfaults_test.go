package hydrostatics

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

func TestColumnFaults(t *testing.T) {
	nan := unit.Length(math.NaN())
	_, err := NewColumn([]Layer{{nil, 0, 100}, {Incompressible(-5), 150, 120}, {curved{}, nan, 500}}, nil, Reference{Pressure: unit.Pressure(nan)})
	for _, want := range []string{"layers[0].Fluid: is missing", "layers[1].BottomTVD: is", "layers[1].TopTVD: is", "layers[1].Fluid.Density: is", "layers[2].TopTVD: is NaN", "layers[2].Fluid: has a density that varies", "at.Pressure: is NaN"} {
		require.ErrorContains(t, err, want)
	}
	_, err = NewColumn(nil, nil, Reference{})
	require.ErrorContains(t, err, "one layer or more")
	good := []Layer{{Incompressible(1000), 0, 100}}
	_, err = NewColumn(good, nil, Reference{TVD: 101})
	require.ErrorIs(t, err, ErrOutsideColumn)
	_, err = NewColumn(good, nil, Reference{TVD: nan})
	require.ErrorIs(t, err, ErrOutsideColumn)
	_, err = NewColumn([]Layer{{curved{}, 0, 100}}, &TemperatureProfile{}, Reference{})
	require.ErrorContains(t, err, "temperature profile")
	_, err = NewColumn([]Layer{{SlightlyCompressible{Reference: -1, Compressibility: -1, Expansivity: 1}, 0, 100}}, straight(t, 0, 0), Reference{})
	for _, want := range []string{"Fluid.Reference: is", "Fluid.Compressibility: is", "Fluid.Temperature: is"} {
		require.ErrorContains(t, err, want)
	}

	c, err := NewColumn(good, nil, Reference{Pressure: 1e6})
	require.NoError(t, err)
	for _, z := range []unit.Length{-1, 100.1, nan, unit.Length(math.Inf(1))} {
		_, err := c.At(z)
		require.ErrorIs(t, err, ErrOutsideColumn)
		_, err = c.Carry(0, 0, z)
		require.ErrorIs(t, err, ErrOutsideColumn)
		_, err = c.Density(z)
		require.ErrorIs(t, err, ErrOutsideColumn)
	}
	for _, p := range []unit.Pressure{0, 1e6 - 1, 3e6, unit.Pressure(nan)} {
		_, err := c.Depth(p)
		require.ErrorIs(t, err, ErrOutsideColumn)
	}
	for _, none := range []*Column{nil, {}} {
		_, err := none.At(0)
		require.ErrorIs(t, err, ErrOutsideColumn)
		_, err = none.Depth(0)
		require.ErrorIs(t, err, ErrOutsideColumn)
		_, err = none.Carry(0, 0, 0)
		require.ErrorIs(t, err, ErrOutsideColumn)
		_, err = none.WithReference(Reference{})
		require.ErrorIs(t, err, ErrOutsideColumn)
	}
	// Depths that differ by the rounding of a conversion are the same depth.
	_, err = NewColumn([]Layer{{Incompressible(1), 0, 100}, {Incompressible(1), 100 + 1e-9, 200}}, nil, Reference{TVD: 200 + 1e-9})
	require.NoError(t, err)
}

// A fluid that has no density at some depth is an error that says where.
func TestFluidOutOfRange(t *testing.T) {
	_, err := NewColumn([]Layer{{idealGas{0.02, 1}, 0, 3000}}, straight(t, 20, 0.03), Reference{Pressure: -2 * unit.Bar})
	require.ErrorContains(t, err, "no gas below vacuum")
	require.ErrorContains(t, err, "layer 1")
	_, err = NewColumn([]Layer{{brine, 0, 3000}}, &TemperatureProfile{}, Reference{})
	require.Error(t, err)
	huge := SlightlyCompressible{Reference: 1000, Compressibility: 1e-6}
	_, err = NewColumn([]Layer{{huge, 0, 3000}}, straight(t, 20, 0), Reference{})
	require.ErrorContains(t, err, "not finite")
}

func FuzzColumn(f *testing.F) {
	f.Add(1000.0, 4e-10, 3e-4, 15.0, 0.03, 0.0, 0.0, 4000.0, 0.3)
	f.Add(1.0, 1e-7, 0.0, -100.0, 0.1, 1e9, -50.0, 1e5, 1.0)
	f.Fuzz(func(t *testing.T, rho, c, alpha, surface, gradient, p, top, bottom, share float64) {
		profile, err := NewTemperatureProfile([]TemperaturePoint{{0, unit.Celsius(surface)}, {1000, unit.Celsius(surface + 1000*gradient)}})
		if err != nil || !(share >= 0 && share <= 1) {
			return
		}
		fluid := SlightlyCompressible{Reference: unit.Density(rho), Temperature: unit.Celsius(20), Compressibility: unit.Compressibility(c), Expansivity: unit.Expansivity(alpha)}
		z := top + share*(bottom-top)
		for _, f := range []Fluid{fluid, hidden{fluid}} {
			column, err := NewColumn([]Layer{{f, unit.Length(top), unit.Length(bottom)}}, profile, Reference{unit.Pressure(p), unit.Length(z)})
			if err != nil {
				continue
			}
			for _, at := range []float64{top, z, bottom, (top + z) / 2} {
				q, err := column.At(unit.Length(at))
				if err != nil && at >= top && at <= bottom {
					t.Fatal(err)
				}
				if math.IsNaN(float64(q)) || math.IsInf(float64(q), 0) {
					t.Fatalf("%v at %g", q, at)
				}
				d, err := column.Depth(q)
				if err == nil && !(float64(d) >= top && float64(d) <= bottom) {
					t.Fatalf("depth %v of %v", d, q)
				}
			}
		}
	})
}

func TestColumnSteps(t *testing.T) {
	c, err := NewColumn([]Layer{{idealGas{0.02, 0.9}, 0, 1000}, {Incompressible(1100), 1000, 2000}, {brine, 2000, 4000}}, offshore(t), Reference{Pressure: 3e7, TVD: 3000})
	require.NoError(t, err)
	workingtest.Check(t, c.Steps())
	require.Len(t, c.Steps(), 3)
	require.Empty(t, (*Column)(nil).Steps())
}
