package hydrostatics

import (
	"errors"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// idealGas has ρ = pM/(ZRT) at constant Z, p absolute.
type idealGas struct{ molar, z float64 }

func (g idealGas) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	const r = 8.31446261815324 // J/(mol·K), CODATA 2018
	absolute := float64(p + unit.Atmosphere)
	if absolute <= 0 {
		return 0, errors.New("no gas below vacuum")
	}
	return unit.Density(absolute * g.molar / (g.z * r * t.Kelvin())), nil
}

// hidden keeps a column from seeing that a fluid has a closed form.
type hidden struct{ f Fluid }

func (h hidden) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	return h.f.Density(p, t)
}

func straight(t testing.TB, surface, gradient float64) *TemperatureProfile {
	t.Helper()
	p, err := NewTemperatureProfile([]TemperaturePoint{
		{0, unit.Celsius(surface)}, {10000, unit.Celsius(surface + 10000*gradient)},
	})
	require.NoError(t, err)
	return p
}

func TestConstantDensityIsExact(t *testing.T) {
	mud := 10 * unit.PoundPerGallon
	c, err := NewColumn([]Layer{{Incompressible(mud), 0, 10000 * unit.Foot}}, nil, Reference{Pressure: 500 * unit.PSI})
	require.NoError(t, err)
	p, err := c.At(8000 * unit.Foot)
	require.NoError(t, err)
	require.Equal(t, 500*unit.PSI+Pressure(mud, 8000*unit.Foot), p)
}

// A gas at constant Z and temperature has p = p0·exp(M·g·z/(Z·R·T)); with a
// temperature straight in depth, (T/T0)^(M·g/(Z·R·G)).
func TestGasColumnClosedForm(t *testing.T) {
	const r = 8.31446261815324
	for _, gradient := range []float64{0, 0.03, -0.02} {
		for _, molar := range []float64{0.016, 0.028, 0.044} {
			for _, depth := range []float64{10, 1000, 4000, 6000} {
				g := idealGas{molar, 0.9}
				profile := straight(t, 20, gradient)
				c, err := NewColumn([]Layer{{g, 0, unit.Length(depth)}}, profile, Reference{Pressure: 20 * unit.Megapascal})
				require.NoError(t, err)
				p, err := c.At(unit.Length(depth))
				require.NoError(t, err)
				absolute := float64(20*unit.Megapascal + unit.Atmosphere)
				want := absolute * math.Exp(molar*gravity*depth/(0.9*r*293.15))
				if gradient != 0 {
					want = absolute * math.Pow(1+gradient*depth/293.15, molar*gravity/(0.9*r*gradient))
				}
				require.InEpsilon(t, want-absolute, float64(p)-float64(20*unit.Megapascal), 1e-9, "G %g M %g z %g", gradient, molar, depth)
			}
		}
	}
}

// curved is a liquid whose density bends in both pressure and temperature.
type curved struct{}

func (curved) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	x, c := float64(p)/1e8, t.Celsius()
	return unit.Density(1150 + 45*x - 8*x*x - 0.2*c - 0.003*c*c + 0.05*x*c), nil
}

// kinked has a density whose slope jumps at 20 MPa.
type kinked struct{}

func (kinked) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	return unit.Density(1000 + 20*math.Max(float64(p)/1e8-0.2, 0)), nil
}

// jumping has two phases.
type jumping struct{}

func (jumping) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	if p < 10*unit.Megapascal {
		return 200, nil
	}
	return 700, nil
}

// noisy isn't a function of the state at all.
type noisy struct{ n *int }

func (f noisy) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	*f.n++
	return unit.Density(1000 + float64(*f.n%7)), nil
}

// fine integrates by the classical Runge–Kutta rule with n equal steps: slow,
// and nothing in common with collocation.
func fine(f Fluid, profile *TemperatureProfile, p, from, to float64, n int) float64 {
	rho := func(z, p float64) float64 {
		d, err := f.Density(unit.Pressure(p), profile.At(unit.Length(z)))
		if err != nil {
			return math.NaN()
		}
		return float64(d) * gravity
	}
	h := (to - from) / float64(n)
	for i := range n {
		z := from + h*float64(i)
		k1 := rho(z, p)
		k2 := rho(z+h/2, p+h/2*k1)
		k3 := rho(z+h/2, p+h/2*k2)
		k4 := rho(z+h, p+h*k3)
		p += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
	}
	return p
}

func offshore(t testing.TB) *TemperatureProfile {
	t.Helper()
	p, err := Geothermal{
		GroundTVD: 1500, Ground: unit.Celsius(4), Gradient: 0.032,
		SeaTVD: 25, Sea: unit.Celsius(22), Water: []TemperaturePoint{{300, unit.Celsius(9)}},
	}.Profile(6000)
	require.NoError(t, err)
	return p
}

// Against an independent fine integration, down and up, across kinks of the
// temperature.
func TestColumnAgainstFineIntegration(t *testing.T) {
	profile := offshore(t)
	for name, f := range map[string]Fluid{
		"curved": curved{}, "gas": idealGas{0.018, 0.95}, "heavy gas": idealGas{0.044, 0.7}, "exponential": brine, "hidden": hidden{brine},
	} {
		c, err := NewColumn([]Layer{{f, 0, 6000}}, profile, Reference{Pressure: 15 * unit.Megapascal, TVD: 2000})
		require.NoError(t, err)
		for _, z := range []float64{0, 10, 299, 300, 301, 1500, 1999.5, 2000, 2500, 6000} {
			got, err := c.At(unit.Length(z))
			require.NoError(t, err)
			want := 15e6
			at := 2000.0
			for at != z { // the fine rule too must stop at the kinks
				next := profile.kink(at, z)
				want = fine(f, profile, want, at, next, 2000)
				at = next
			}
			require.InDelta(t, want-15e6, float64(got)-15e6, 1e-8*math.Abs(want-15e6)+1e-7, "%s at %g m", name, z)
			carried, err := c.Carry(15*unit.Megapascal, 2000, unit.Length(z))
			require.NoError(t, err)
			require.InDelta(t, float64(got), float64(carried), 5e-9*math.Abs(want-15e6)+1e-7, "%s at %g m", name, z)
			back, err := c.Depth(got)
			require.NoError(t, err)
			require.InDelta(t, z, float64(back), 1e-6, name)
		}
	}
}

// The closed form and the numerical column of one fluid agree.
func TestClosedFormIsTheNumericalColumn(t *testing.T) {
	for _, profile := range []*TemperatureProfile{straight(t, 15, 0.03), straight(t, 60, 0), straight(t, 90, -0.01), offshore(t)} {
		a, err := NewColumn([]Layer{{brine, 0, 5000}}, profile, Reference{TVD: 100})
		require.NoError(t, err)
		b, err := NewColumn([]Layer{{hidden{brine}, 0, 5000}}, profile, Reference{TVD: 100})
		require.NoError(t, err)
		for z := 0.0; z <= 5000; z += 123.4 {
			x, err := a.At(unit.Length(z))
			require.NoError(t, err)
			y, err := b.At(unit.Length(z))
			require.NoError(t, err)
			require.InDelta(t, float64(x), float64(y), 5e-9*math.Abs(float64(x))+1e-6)
		}
	}
	// Compressibility or expansivity alone.
	for _, f := range []SlightlyCompressible{
		{Reference: 1100, Compressibility: 4e-10},
		{Reference: 1100, Temperature: unit.Celsius(20), Expansivity: 5e-4},
	} {
		profile := straight(t, 15, 0.03)
		c, err := NewColumn([]Layer{{f, 0, 5000}}, profile, Reference{})
		require.NoError(t, err)
		p, err := c.At(5000)
		require.NoError(t, err)
		require.InEpsilon(t, fine(f, profile, 0, 0, 5000, 5000), float64(p), 1e-11)
	}
}

func TestKinksAndJumpsOfTheFluid(t *testing.T) {
	profile := straight(t, 20, 0)
	c, err := NewColumn([]Layer{{kinked{}, 0, 4000}}, profile, Reference{})
	require.NoError(t, err)
	p, err := c.At(4000)
	require.NoError(t, err)
	z := 20e6 / (1000 * gravity) // down to the kink at 1,000 kg/m³, then exponential
	rest := 4000 - z
	k := 20 / 1e8
	require.InEpsilon(t, 20e6+1000/k*math.Expm1(k*gravity*rest), float64(p), 1e-8)

	c, err = NewColumn([]Layer{{jumping{}, 0, 8000}}, profile, Reference{})
	require.NoError(t, err)
	p, err = c.At(8000)
	require.NoError(t, err)
	z = 10e6 / (200 * gravity)
	require.InEpsilon(t, 10e6+700*gravity*(8000-z), float64(p), 1e-8)

	n := 0
	_, err = NewColumn([]Layer{{noisy{&n}, 0, 8000}}, profile, Reference{})
	require.ErrorContains(t, err, "smooth enough")
	require.Less(t, n, 1_000_000, "it must give up in good time")
}

func TestLayersAddUp(t *testing.T) {
	layers := []Layer{{Incompressible(0), 0, 100}, {Incompressible(850), 100, 2000}, {Incompressible(1200), 2000, 3000}}
	top, err := NewColumn(layers, nil, Reference{Pressure: 5e6})
	require.NoError(t, err)
	for _, row := range [][2]float64{{0, 5e6}, {100, 5e6}, {1100, 5e6 + 850*gravity*1000}, {2000, 5e6 + 850*gravity*1900}, {3000, 5e6 + gravity*(850*1900+1200*1000)}} {
		p, err := top.At(unit.Length(row[0]))
		require.NoError(t, err)
		require.InDelta(t, row[1], float64(p), 1e-8)
		// The same column hung from any depth of itself is the same column.
		other, err := top.WithReference(Reference{p, unit.Length(row[0])})
		require.NoError(t, err)
		for z := unit.Length(0); z <= 3000; z += 250 {
			a, err := top.At(z)
			require.NoError(t, err)
			b, err := other.At(z)
			require.NoError(t, err)
			require.InDelta(t, float64(a), float64(b), 1e-7)
		}
		require.Equal(t, Reference{p, unit.Length(row[0])}, other.Reference())
	}
	z, err := top.Depth(5e6)
	require.NoError(t, err)
	require.Zero(t, z, "the least depth of an empty layer")
	rho, err := top.EquivalentDensity(3000)
	require.NoError(t, err)
	require.InEpsilon(t, (5e6+gravity*(850*1900+1200*1000))/(gravity*3000), float64(rho), 1e-14)
	_, err = top.EquivalentDensity(0)
	require.Error(t, err)
	own, err := top.Density(2500)
	require.NoError(t, err)
	require.Equal(t, unit.Density(1200), own)
	own, err = top.Density(2000)
	require.NoError(t, err)
	require.Equal(t, unit.Density(850), own)
	require.Equal(t, layers, top.Layers())
	require.Equal(t, unit.Length(3000), top.Bottom())
}

func TestProfileIsAt(t *testing.T) {
	c, err := NewColumn([]Layer{{Incompressible(900), 0, 500}, {curved{}, 500, 4000}}, offshore(t), Reference{Pressure: 1e7, TVD: 3000})
	require.NoError(t, err)
	depths := []unit.Length{0, 499, 500, 501, 4000, 1200, 3, 2999, 3000, 3001}
	dst := make([]unit.Pressure, len(depths))
	require.NoError(t, c.Profile(depths, dst))
	for i, z := range depths {
		p, err := c.At(z)
		require.NoError(t, err)
		require.InDelta(t, float64(p), float64(dst[i]), 1e-7)
	}
	require.Zero(t, testing.AllocsPerRun(100, func() { _ = c.Profile(depths, dst) }))
	require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = c.At(1234); _, _ = c.Carry(1e6, 0, 4000) }))
	require.Error(t, c.Profile(depths, dst[:3]))
	require.ErrorIs(t, c.Profile([]unit.Length{5000}, dst[:1]), ErrOutsideColumn)
}

func TestPressureRisesWithDepth(t *testing.T) {
	c, err := NewColumn([]Layer{{idealGas{0.02, 0.9}, 0, 3000}, {curved{}, 3000, 6000}}, offshore(t), Reference{Pressure: 2e7})
	require.NoError(t, err)
	last := unit.Pressure(0)
	for z := unit.Length(0); z <= 6000; z += 0.37 {
		p, err := c.At(z)
		require.NoError(t, err)
		require.Greater(t, p, last, "at %v", z)
		last = p
	}
}
